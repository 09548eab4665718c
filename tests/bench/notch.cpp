// The exact notch of a panel against a wall of 1,000 triangles: cells, corefinement, Nef polyhedra.
// The two 3D ways are timed without the union of their shadow.
#include <benchmark/benchmark.h>

#include <cmath>

#include "bench/wall_and_panel.h"
#include "solid/polygon.h"

using namespace nook;
using namespace nook::bench;

namespace {

const WallAndPanel& input() {
  static const WallAndPanel made = wall_and_panel(25, 20);
  return made;
}

double outline_area() {
  return std::abs(signed_area(input().outline));
}

void cells(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(notch_by_cells(input()));
  state.counters["area"] = notch_by_cells(input());
  state.counters["exact"] = exact_area(notch_cells(input()), input().outline);
  state.counters["outline"] = outline_area();
}
BENCHMARK(cells)->Unit(benchmark::kMillisecond);

template <Shadow (*by)(const WallAndPanel&)>
void in_space(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(by(input()));
}
BENCHMARK_TEMPLATE(in_space, notch_by_corefinement)
    ->Name("corefinement_alone")
    ->Unit(benchmark::kMillisecond);
BENCHMARK_TEMPLATE(in_space, notch_by_nef)->Name("nef_alone")->Unit(benchmark::kMillisecond);

template <Shadow (*by)(const WallAndPanel&)>
void outline_from_space(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(area_of(by(input())));
  state.counters["area"] = area_of(by(input()));
  state.counters["exact"] = exact_area(by(input()), input().outline);
}
BENCHMARK_TEMPLATE(outline_from_space, notch_by_corefinement)
    ->Name("corefinement")
    ->Unit(benchmark::kMillisecond);
BENCHMARK_TEMPLATE(outline_from_space, notch_by_nef)->Name("nef")->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

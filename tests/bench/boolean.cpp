// 2D Booleans by the program, by GEOS and by an integer clipper, on the same outlines.
#include <benchmark/benchmark.h>
#include <polyclipping/clipper.hpp>

#include <cmath>

#include "solid/geos_twin.h"
#include "solid/random_shapes.h"

using namespace nook;
using namespace nook::twin;

namespace {

struct Pair {
  Polygon a, b;
};

// A rough disk.
Polygon disk(Random& random, Vec2 middle, int points) {
  Polygon ring;
  for (int i = 0; i < points; ++i) {
    const double turn = 2 * std::acos(-1.0) * i / points;
    const double radius = 1000 + 20 * std::sin(40 * turn) + even(random, -5, 5);
    ring.push_back(snapped(middle + radius * Vec2{std::cos(turn), std::sin(turn)}));
  }
  return ring;
}

Pair disks(int points) {
  Random random(17);
  return {disk(random, {0, 0}, points), disk(random, {150, 80}, points)};
}

ClipperLib::Path path_of(const Polygon& ring) {
  ClipperLib::Path path;
  for (const Vec2 p : ring)
    path.push_back({std::llround(p.x / kOutlineGrid), std::llround(p.y / kOutlineGrid)});
  return path;
}

double area_by_clipper(const Pair& pair) {
  ClipperLib::Clipper clipper;
  clipper.AddPath(path_of(pair.a), ClipperLib::ptSubject, true);
  clipper.AddPath(path_of(pair.b), ClipperLib::ptClip, true);
  ClipperLib::Paths result;
  clipper.Execute(ClipperLib::ctDifference, result, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  double sum = 0;
  for (const ClipperLib::Path& path : result) sum += ClipperLib::Area(path);
  return sum * kOutlineGrid * kOutlineGrid;
}

double area_here(const Pair& pair) {
  return area(subtract(unite({pair.a}), unite({pair.b})));
}
double area_by_geos(const Pair& pair) {
  return twin::area_by_geos({{pair.a, {}}}, {{pair.b, {}}}, Operation::subtract);
}

template <double (*area_by)(const Pair&)>
void boolean(benchmark::State& state) {
  const Pair pair = disks(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(area_by(pair));
  state.counters["area"] = area_by(pair);
}
BENCHMARK_TEMPLATE(boolean, area_here)
    ->Name("here")
    ->RangeMultiplier(10)
    ->Range(10, 10000)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_TEMPLATE(boolean, area_by_geos)
    ->Name("geos")
    ->RangeMultiplier(10)
    ->Range(10, 10000)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_TEMPLATE(boolean, area_by_clipper)
    ->Name("clipper")
    ->RangeMultiplier(10)
    ->Range(10, 10000)
    ->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

// The fit against the number of pieces and of points in an outline.
#include <benchmark/benchmark.h>

#include <cmath>

#include "fit/rooms_by_hand.h"
#include "survey/adjustment.h"

using namespace nook;
using namespace nook::by_hand;

namespace {

struct Job {
  Found found;
  std::vector<RoomShape> draws;
};

// A corner 1.4 degrees open with leaning walls, and draws of it.
Job room() {
  Job job{corner(91.4, 0.004, -0.003), {}};
  for (int i = 0; i < 400; ++i) {
    job.draws.push_back(corner(91.4 + 0.05 * std::sin(i), 0.004 + 0.001 * std::cos(i * 1.7),
                               -0.003 + 0.001 * std::sin(i * 2.3))
                            .room);
  }
  return job;
}

FitAnswer answer(const Job& job, const Design& design) {
  return fit({job.found.survey, design, job.found.room, job.draws, 0.95, true});
}

// Cleats in rows of 20 on the left wall, each by itself.
Design cleats(int count) {
  Design design = empty_design(18);
  for (int i = 0; i < count; ++i) {
    const std::string name = "cleat " + std::to_string(i);
    design.parts.push_back(
        panel(name, {100, 40}, {150.0 + 130 * (i % 20), 0, 100.0 + 80 * (i / 20)}, {-1, 0, 0}, kZ));
    design.contacts.push_back(meet(name, PieceFace::back, "left wall", Fitting::shim));
  }
  return design;
}

// A panel square to the left wall, its far edge a wave.
Design waved(int points) {
  Design design = empty_design(18);
  Part part = panel("panel", {600, 1800}, {1200, 0, 0}, kY, kZ);
  part.outline = {{0, 0}};
  for (int i = 0; i < points - 2; ++i) {
    const double v = 1800.0 * i / (points - 3);
    part.outline.push_back({600 + 20 * std::sin(v / 40), v});
  }
  part.outline.push_back({0, 1800});
  part.rectangle = false;
  design.parts.push_back(part);
  design.contacts.push_back(meet("panel", EdgeSide::left, "left wall"));
  return design;
}

void pieces(benchmark::State& state) {
  const Job job = room();
  const Design design = cleats(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(answer(job, design));
}
BENCHMARK(pieces)->Arg(5)->Arg(20)->Arg(50)->Arg(100)->Arg(200)->Arg(500)->Unit(
    benchmark::kMillisecond);

void points(benchmark::State& state) {
  const Job job = room();
  const Design design = waved(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(answer(job, design));
}
BENCHMARK(points)->Arg(10)->Arg(100)->Arg(1000)->Arg(3000)->Arg(10000)->Unit(
    benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

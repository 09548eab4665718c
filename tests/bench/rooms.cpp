// Simulated rooms a second: each adjusted, one panel fitted, its verdict from 400 draws.
#include <benchmark/benchmark.h>

#include "fit/rooms_by_hand.h"
#include "survey/adjustment.h"
#include "true_room.h"

using namespace nook;
using namespace nook::by_hand;

namespace {

std::vector<Survey> surveys(int count) {
  nook::test::Random random(5);
  const nook::test::Kind kind;
  std::vector<Survey> all;
  for (int i = 0; i < count; ++i) {
    const nook::test::TrueRoom room = nook::test::true_room(kind, random);
    all.push_back(nook::test::Person(room, kind, random).careful(3, 2));
  }
  return all;
}

Design one_panel() {
  Design design = empty_design(18);
  design.parts.push_back(panel("panel", {500, 1900}, {1200, 0, 0}, kY, kZ));
  design.contacts.push_back(meet("panel", EdgeSide::left, "left wall"));
  Group group = tight("panel", {"left wall"});
  group.height_from = HeightFrom::level_line;
  design.groups = {group};
  return design;
}

void rooms(benchmark::State& state) {
  static const std::vector<Survey> all = surveys(20);
  const Design design = one_panel();
  std::size_t next = 0;
  for (auto _ : state) {
    const Survey& survey = all[next++ % all.size()];
    const Adjustment adjusted = adjust(survey);
    const std::vector<RoomShape> draws = adjusted.draws(400);
    benchmark::DoNotOptimize(fit({survey, design, adjusted.room(), draws, 0.95, true}));
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(rooms)->Threads(1)->Threads(2)->UseRealTime()->Unit(benchmark::kMillisecond);

// Where a room's time goes.
void rooms_adjusted(benchmark::State& state) {
  const std::vector<Survey> all = surveys(20);
  std::size_t next = 0;
  for (auto _ : state) benchmark::DoNotOptimize(adjust(all[next++ % all.size()]));
}
BENCHMARK(rooms_adjusted)->Unit(benchmark::kMillisecond);

void rooms_drawn(benchmark::State& state) {
  const Adjustment adjusted = adjust(surveys(1)[0]);
  for (auto _ : state) benchmark::DoNotOptimize(adjusted.draws(400));
}
BENCHMARK(rooms_drawn)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

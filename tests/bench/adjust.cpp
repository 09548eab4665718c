// The adjustment against the number of readings.
#include <benchmark/benchmark.h>

#include "survey/adjustment.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;

namespace {

// Plumb lines of 45 readings and strings of 40, walls in turn, until there are as many; the
// diagonals and levels of a careful person come first.
Survey survey_of(int readings) {
  Random random(11);
  const Kind kind;
  const TrueRoom room = true_room(kind, random);
  Person person(room, kind, random);
  Survey survey = person.careful(3, 2);
  Survey more = person.careful(1, 1);
  int count = static_cast<int>(adjust(survey).report().readings.size());
  for (int wall = 0, row = 0; count < readings; wall = 1 - wall, ++row) {
    StringReading string = more.walls[wall].strings.front();
    const std::string id = "wall[" + std::to_string(wall) + "].string[" +
                           std::to_string(survey.walls[wall].strings.size()) + "].line[";
    string.height.value = millimetres(200 + row * 1800.0 / (1 + readings / 40));
    string.line.clear();
    for (int i = 0; i < 40 && count < readings; ++i, ++count) {
      Station station = more.walls[wall].strings.front().line.front();
      const double along = 80 + 45.0 * i;
      station.at = millimetres(along);
      station.reading.front().value =
          millimetres(25 - room.out(wall, along, string.height.value.mm) + gaussian(random) / 2);
      station.reading.front().id = id + std::to_string(i) + "]";
      string.line.push_back(station);
    }
    survey.walls[wall].strings.push_back(string);
  }
  return survey;
}

void adjustment(benchmark::State& state) {
  const Survey survey = survey_of(static_cast<int>(state.range(0)));
  for (auto _ : state) benchmark::DoNotOptimize(adjust(survey));
  state.counters["readings"] = static_cast<double>(adjust(survey).report().readings.size());
}
BENCHMARK(adjustment)
    ->Arg(50)
    ->Arg(100)
    ->Arg(250)
    ->Arg(500)
    ->Arg(1000)
    ->Arg(2000)
    ->Arg(5000)
    ->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();

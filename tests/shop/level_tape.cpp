// A tape across a piece reads from side to side, at its very ends too.
#include "shop/level_tape.h"

#include <catch2/catch.hpp>
#include <random>

#include "sample.h"
#include "shop/outline.h"

using namespace nook;
using Catch::WithinAbs;

namespace {

double read(const Polygon& outline, double at) {
  return LevelTape(outline, box_of(outline).low.y + at).read(outline, at);
}

const Polygon kSlantedTop{{0, 0}, {460, 0}, {460, 370}, {0, 360}};

}  // namespace

TEST_CASE("level tape: a rectangle is as wide at both ends and a little past them") {
  for (const double at : {0.0, 1e-9, 0.5, 350.0, 699.99, 700.0, 700.01, 706.0, 900.0})
    CHECK_THAT(read(sample::rectangle(360, 700), at), WithinAbs(360, 1e-9));
}

TEST_CASE("level tape: along a slanted top it reads from side to side") {
  for (const double at : {358.0, 360.0, 361.0, 366.0, 400.0})
    CHECK_THAT(read(kSlantedTop, at), WithinAbs(460, 1e-9));
}

TEST_CASE("level tape: a trapezoid by similar triangles, to its ends and past them") {
  const Polygon trapezoid{{0, 0}, {400, 0}, {340, 600}, {20, 600}};
  for (const double at : {0.0, 150.0, 600.0, 604.0})
    CHECK_THAT(read(trapezoid, at), WithinAbs(400 - 80 * at / 600, 1e-9));
}

TEST_CASE("level tape: a step and a gable are read where the tape lies") {
  const Polygon step{{0, 0}, {300, 0}, {300, 100}, {100, 100}, {100, 300}, {0, 300}};
  CHECK_THAT(read(step, 50), WithinAbs(300, 1e-9));
  CHECK_THAT(read(step, 250), WithinAbs(100, 1e-9));
  CHECK_THAT(read(step, 302), WithinAbs(100, 1e-9));
  const Polygon gable{{0, 0}, {100, 0}, {100, 80}, {50, 120}, {0, 80}};
  CHECK_THAT(read(gable, 79), WithinAbs(100, 1e-9));
  CHECK_THAT(read(gable, 110), WithinAbs(25, 1e-9));
  const Polygon low_gable{{0, 0}, {100, 0}, {100, 100}, {50, 125}, {0, 100}};
  CHECK_THAT(read(low_gable, 103), WithinAbs(100, 1e-9));
  CHECK_THAT(read(low_gable, 115), WithinAbs(40, 1e-9));
}

TEST_CASE("level tape: it keeps its edges when the corners move") {
  const LevelTape tape(sample::rectangle(360, 700), 700);
  // Leaning and out of square: the sides, as lines, are 360 + 4 apart at 700 above the bottom.
  const Polygon cut{{0, 0}, {360, 0}, {374, 700}, {10, 700}};
  CHECK_THAT(tape.read(cut, 700), WithinAbs(364, 1e-9));
  const Polygon higher{{0, 0}, {360, 0}, {360, 703}, {0, 698}};
  CHECK_THAT(tape.read(higher, 700), WithinAbs(360, 1e-9));
}

TEST_CASE("level tape: away from the corners it is the chord", "[property]") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> strays(-60, 60);
  for (int i = 0; i < 200; ++i) {
    Polygon quad = sample::rectangle(400, 600);
    for (Vec2& p : quad) p = p + Vec2{strays(random), strays(random)};
    const double low = box_of(quad).low.y;
    for (const double v : {100.0, 250.0, 500.0}) {
      INFO("seed 5, quadrilateral " << i << ", level " << v);
      CHECK_THAT(read(quad, v - low), WithinAbs(chord_level(quad, v).length(), 1e-6));
    }
  }
}

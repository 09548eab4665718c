// The tightest spot of a turn, against the closed form.
#include "sheet/turning.h"

#include <catch2/catch.hpp>

#include "shop/passage.h"

using namespace nook;

TEST_CASE("turning: closed form - the longest piece that passes just touches the inner corner",
          "[reference]") {
  const double width = GENERATE(1e-6, 20.0, 150.0);
  const TurnSize hall{900, 1000, 2400};
  TurnPicture turn{"", "", hall.from, hall.to, longest_round(hall, width), width};
  INFO("width " << width);
  CHECK(tightest(turn).clear == Approx(0).margin(0.05));
  turn.length += 50;
  CHECK(tightest(turn).clear < -5);
  turn.length -= 100;
  CHECK(tightest(turn).clear > 5);
}

// V shapes and slots found by the circles that they hold.
#include "safety/slot.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

namespace nook::safe {
namespace {

const Window kAll{{-100, -100}, {1300, 1600}};

Shadow plate(Polygon outline) {
  return {{Owner::Kind::piece, 0}, {std::move(outline), {}}};
}

// A plate 1200 wide with a V of this angle cut into its top, 400 wide above.
Air with_v(double degrees) {
  const double deep = 200 / std::tan(degrees / 2 * std::numbers::pi / 180);
  return Air({plate(
      {{0, 0}, {1200, 0}, {1200, 1500}, {800, 1500}, {600, 1500 - deep}, {400, 1500}, {0, 1500}})});
}

}  // namespace

TEST_CASE("slot: a V is found with its angle, opening upwards") {
  for (double angle : {20.0, 40.0, 54.0}) {
    const auto found = slots(with_v(angle), kAll, 228.6, 55);
    REQUIRE_FALSE(found.empty());
    for (const Slot& slot : found) {
      CHECK_THAT(slot.angle_deg, Catch::WithinAbs(angle, 0.05));
      CHECK(slot.opens.y > 0.99);
      CHECK(followed(with_v(angle), slot, 228.6) == SlotEnd::wide);
    }
  }
  CHECK(slots(with_v(56), kAll, 228.6, 55).empty());
}

TEST_CASE("slot: parallel sides are found with their width and nothing else is") {
  const Air air({plate({{0, 0}, {300, 0}, {300, 1000}, {0, 1000}}),
                 {{Owner::Kind::piece, 1}, {{{340, 0}, {700, 0}, {700, 1000}, {340, 1000}}, {}}}});
  const auto found = slots(air, kAll, 60, 20);
  REQUIRE(found.size() > 100);
  for (const Slot& slot : found) {
    CHECK_THAT(slot.across, Catch::WithinAbs(40, 1e-6));
    CHECK_THAT(slot.angle_deg, Catch::WithinAbs(0, 1e-6));
    CHECK(slot.sides[0].owner.index != slot.sides[1].owner.index);
  }
  CHECK(slots(air, kAll, 39, 20).empty());
}

TEST_CASE("slot: one that a sill closes above is blocked, one on the floor ends there") {
  const Shadow floor{{Owner::Kind::floor, 0},
                     {{{-500, -500}, {1500, -500}, {1500, 0}, {-500, 0}}, {}}};
  const Shadow left = plate({{0, 0}, {300, 0}, {300, 1000}, {0, 1000}});
  const Shadow right{{Owner::Kind::piece, 1}, {{{400, 0}, {700, 0}, {700, 1000}, {400, 1000}}, {}}};
  const Shadow sill{{Owner::Kind::piece, 2},
                    {{{300, 900}, {400, 900}, {400, 950}, {300, 950}}, {}}};
  const Air open({floor, left, right}), closed({floor, left, right, sill});
  const auto middle = [](const Air& air) {
    for (const Slot& slot : slots(air, kAll, 228.6, 55))
      if (std::abs(slot.middle.y - 500) < 20) return slot;
    return Slot{};
  };
  CHECK_THAT(middle(open).across, Catch::WithinAbs(100, 1e-6));
  CHECK(followed(open, middle(open), 228.6) == SlotEnd::wide);
  CHECK(followed(open, middle(open), 228.6, true) == SlotEnd::floor);
  CHECK(followed(closed, middle(closed), 228.6) == SlotEnd::blocked);
}

TEST_CASE("slot: a corner beside a wall is no side") {
  // 43 mm between an upright and a wall: above its end a larger circle touches wall and corner.
  const Air air(
      {plate({{43, 0}, {120, 0}, {120, 800}, {43, 800}}),
       {{Owner::Kind::wall, 0}, {{{-400, -100}, {0, -100}, {0, 1600}, {-400, 1600}}, {}}}});
  const auto found = slots(air, kAll, 228.6, 55);
  CHECK(found.size() > 50);
  for (const Slot& slot : found) CHECK(slot.across < 43 * 1.02);
}

}  // namespace nook::safe

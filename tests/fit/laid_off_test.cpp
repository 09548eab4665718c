// What stands on the floor goes down to it; wood is counted the same on both hands.
#include <catch2/catch.hpp>

#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

TEST_CASE("baseboard: a panel that stands on the floor meets it down to its corner",
          "[reference]") {
  for (double shoe : {0.0, 12.0})
    for (double height : {80.0, 600.0}) {
      INFO("shoe " << shoe << ", panel " << height << " high");
      Found c = corner(90);
      add_board(c.survey.walls[0], 130, 14, shoe);
      Design d = empty_design(18);
      d.parts.push_back(panel("panel", {700, height}, {1100, 0, 0}, kY, kZ));
      d.groups.push_back(tight("panel", {"left wall"}));
      d.groups[0].height_from = HeightFrom::floor;
      d.contacts.push_back(meet("panel", EdgeSide::left, "left wall"));
      const FitAnswer f = fit_exactly(c, d);
      CHECK_THAT(f.contacts[0].gap.least, WithinAbs(0, 1e-5));
      CHECK_THAT(f.contacts[0].line.front().gap, WithinAbs(0, 1e-5));
      // Above the board it stands off the wall by the board.
      const double off = height > 130 ? 14 + shoe : shoe;
      CHECK_THAT(f.contacts[0].gap.most, WithinAbs(off, 1e-5));
    }
}

TEST_CASE("closed corner: the wood for a taper is there on either hand", "[property]") {
  // A deck tight along the left wall, and its mirror image tight along the right one.
  const double wedge = 900 * std::tan(1.4 * std::acos(-1.0) / 180);
  Design left = empty_design(18);
  left.parts.push_back(panel("deck", {1150, 900}, {0, 0, 900}, kX, kY));
  left.groups.push_back(tight("deck", {"left wall", "right wall"}));
  left.contacts.push_back(meet("deck", EdgeSide::bottom, "left wall"));
  left.contacts.push_back(meet("deck", EdgeSide::left, "right wall", Fitting::taper));
  Design right = empty_design(18);
  right.parts.push_back(panel("deck", {900, 1150}, {0, 0, 900}, kX, kY));
  right.groups.push_back(tight("deck", {"right wall", "left wall"}));
  right.contacts.push_back(meet("deck", EdgeSide::left, "right wall"));
  right.contacts.push_back(meet("deck", EdgeSide::bottom, "left wall", Fitting::taper));
  for (const Design& d : {left, right}) {
    const FitAnswer f = fit_exactly(corner(88.6), d);
    CHECK_THAT(f.contacts[1].gap.most, WithinAbs(wedge, 0.05));
    CHECK_THAT(f.contacts[1].wood_mm, WithinAbs(wedge, 0.5));
  }
}

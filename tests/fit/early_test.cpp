// Shelves, the cleats under them, and the order in which they go in.
#include "fit/find_early.h"

#include <catch2/catch.hpp>

#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;

namespace {

constexpr double kThickness = 18, kTop = 800;
using Names = std::vector<std::string>;

// A shelf lying on a cleat that stands on edge against the left wall, screwed down to it.
Design shelf_and_cleat(bool shelf_first) {
  Design d = empty_design(kThickness);
  d.parts.push_back(panel("shelf", {600, 300}, {100, 0, kTop}, kX, kY));
  d.parts.push_back(panel("cleat", {500, 50}, {650, 0, kTop - 50}, -kX, kZ));
  d.contacts.push_back(meet("cleat", PieceFace::back, "left wall"));
  Fastening down, wall;
  down.part = "shelf", down.to = "cleat";
  wall.part = "cleat", wall.to = "left wall";
  d.fastenings = {down, wall};
  d.groups = {tight(shelf_first ? "shelf" : "cleat", {}),
              tight(shelf_first ? "cleat" : "shelf", {})};
  for (int g = 0; g < 2; ++g) d.groups[g].order = g + 1;
  return d;
}

std::vector<EarlyFit> early(const Design& d) {
  return fit_exactly(corner(90), d).early;
}

}  // namespace

TEST_CASE("fit: a shelf before the cleat it is screwed down to is told") {
  const auto found = early(shelf_and_cleat(true));
  REQUIRE(found.size() == 1);
  CHECK(found[0].part == "shelf");
  CHECK(found[0].on == Names{"cleat"});
  CHECK(early(shelf_and_cleat(false)).empty());
}

TEST_CASE("fit: a contact says as well as a screw what a shelf lies on") {
  Design d = shelf_and_cleat(true);
  d.fastenings.erase(d.fastenings.begin());
  CHECK(early(d).empty());
  d.contacts.push_back(meet("shelf", PieceFace::back, "cleat"));
  CHECK(early(d).size() == 1);
}

TEST_CASE("fit: a shelf that is screwed to the wall or lies on a post too is not early") {
  Design hung = shelf_and_cleat(true);
  Fastening wall;
  wall.part = "shelf", wall.to = "right wall";
  hung.fastenings.push_back(wall);
  CHECK(early(hung).empty());

  Design standing = shelf_and_cleat(true);
  standing.parts.push_back(panel("post", {100, kTop}, {650, 200, 0}, -kX, kZ));
  standing.groups.insert(standing.groups.begin(), tight("post", {}));
  standing.groups[0].order = 0;
  standing.contacts.push_back(meet("shelf", PieceFace::back, "post"));
  CHECK(early(standing).empty());
}

TEST_CASE("fit: what hangs from a piece that goes in before it is not carried by it") {
  Design d = shelf_and_cleat(true);
  d.parts[1].place_in_room.at.z = kTop + kThickness;  // a cleat on top of the shelf
  CHECK(early(d).empty());
}

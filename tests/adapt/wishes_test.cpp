// Wishes between pieces: a clearance, an edge that stays covered.
#include <catch2/catch.hpp>

#include "adapted.h"
#include "exact_corner.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr double in = kMillimetresPerInch;

constexpr const char* kDeck = R"(units = "inch"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = "3/4"
sheet = ["48", "96"]

[[part]]
name = "deck"
stock = "ply"
shape = { size = ["46", "36"] }
place = { at = ["0", "0", "42"], u = "+x", v = "+y" }
[[group]]
name = "deck"
tight_to = ["left wall", "right wall"]
height_from = "level line"
[[contact]]
part = "deck"
edge = "bottom"
meets = "left wall"
[[contact]]
part = "deck"
edge = "left"
meets = "right wall"
)";

// A shelf beside the deck, so far from it where it may be 1 in away at least.
std::string shelf_at(const std::string& x) {
  return R"([[part]]
name = "shelf"
stock = "ply"
shape = { size = ["20", "10"] }
place = { at = [")" +
         x + R"(", "0", "42"], u = "+x", v = "+y" }
[[group]]
name = "shelf"
tight_to = ["left wall"]
height_from = "level line"
[[contact]]
part = "shelf"
edge = "bottom"
meets = "left wall"
[[contact]]
part = "shelf"
edge = "left"
meets = "deck"
by = "clear"
gap = "1"
)";
}

// A board that hides the deck's front edge, its top at that height above the deck's lower face.
std::string front(const std::string& z, const std::string& margin) {
  return R"([[part]]
name = "front"
stock = "ply"
shape = { size = ["46", "6"] }
place = { at = ["46", "36", ")" +
         z + R"("], u = "-x", v = "+z" }
group = "deck"
[[covered]]
part = "deck"
edge = "top"
behind = "front"
margin = ")" +
         margin + "\"\n";
}

AdaptAnswer adapted_in_corner(const std::string& more) {
  static const MeasuredRoom room = measured(corner_room(90), 50);
  return adapted(room, kDeck + more);
}

}  // namespace

TEST_CASE("adapt: a piece too near to another is moved by what is missing, no more") {
  const AdaptAnswer answer = adapted_in_corner(shelf_at("46 3/4"));
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].part == "shelf");
  CHECK(answer.changes[0].kind == "move");
  CHECK(answer.changes[0].why ==
        "shelf, left edge at the deck: gap 3/4\", give or take under 1/16\", 1\" is the least: "
        "move it 1/4\"");
  CHECK(answer.draft.design->parts[1].place_in_room.at.x == Approx(47 * in).margin(1e-6));
  CHECK(answer.fit.verdict == Verdict::fits);
  CHECK(adapted_in_corner(shelf_at("47")).changes.empty());
}

TEST_CASE("adapt: a piece held at its other end is cut to keep its distance") {
  const AdaptAnswer answer = adapted_in_corner(shelf_at("46 3/4") + R"(
[[contact]]
part = "shelf"
edge = "right"
meets = "end"
keep = true
[[part]]
name = "end"
stock = "ply"
shape = { size = ["12", "12"] }
place = { at = ["66 3/4", "0", "36"], u = "+y", v = "+z" }
group = "deck"
)");
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].part == "shelf");
  CHECK(answer.changes[0].kind == "trim");
  const Part& shelf = answer.draft.design->parts[1];
  CHECK(shelf.outline[1].x - shelf.outline[0].x == Approx(19.75 * in).margin(1e-6));
  CHECK(shelf.place_in_room.at.x == Approx(47 * in).margin(1e-6));
  CHECK(answer.fit.verdict == Verdict::fits);
}

TEST_CASE("adapt: a board that leaves an edge bare is made wider until it covers it") {
  const AdaptAnswer answer = adapted_in_corner(front("36 1/2", "1/4"));
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].part == "front");
  CHECK(answer.changes[0].kind == "lengthen");
  CHECK(answer.changes[0].before == "6\" high");
  CHECK(answer.changes[0].after == "6 1/2\" high");
  CHECK(answer.changes[0].why ==
        "deck behind the front: its edge shows by 1/4\", 1/4\" is wanted: leave 1/2\" more on its "
        "top side");
  const Polygon& outline = answer.draft.design->parts[1].outline;
  CHECK(outline[2].y - outline[1].y == Approx(6.5 * in).margin(1e-6));
  CHECK(answer.fit.verdict == Verdict::fits);
  CHECK(adapted_in_corner(front("37", "1/4")).changes.empty());
}

TEST_CASE("adapt: no strip is cut away altogether") {
  for (const char* width : {"3/4", "1 1/4", "1 3/4"}) {
    std::string design = kDeck;
    design.resize(design.find("[[part]]"));
    design +=
        std::string("[[part]]\nname = \"cleat\"\nstock = \"ply\"\nshape = { size = [\"36\", \"") +
        width +
        R"("] }
place = { at = ["12", "0", "40"], u = "+x", v = "+y" }
[[group]]
name = "cleat"
turn = false
[[contact]]
part = "cleat"
edge = "left"
meets = "right wall"
keep = true
)";
    const AdaptAnswer answer = adapted(measured(corner_room(90), 50), design);
    CAPTURE(width, answer.draft.text);
    CHECK(answer.changes.empty());
    CHECK(answer.contradictions.size() == 1);
  }
}

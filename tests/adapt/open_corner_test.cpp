// The open corner: 91.4 degrees, flat walls, a deck 46 x 36 drawn square.
#include <catch2/catch.hpp>

#include "adapted.h"
#include "exact_corner.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr double in = kMillimetresPerInch;

// `by` of the deck's edge at the right wall, with any further keys.
std::string deck_design(const std::string& by) {
  return R"(# as drawn
units = "inch"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = "23/32"
sheet = ["48", "96"]

[[part]]
name = "deck"
stock = "ply"
shape = { size = ["46", "36"] }   # square
place = { at = ["0", "0", "42"], u = "+x", v = "+y" }
[[group]]
name = "deck"
tight_to = ["left wall"]
height_from = "level line"
[[contact]]
part = "deck"
edge = "bottom"
meets = "left wall"
[[contact]]
part = "deck"
edge = "left"
meets = "right wall"
)" + by;
}

// What the deck's far end meets, held off the right wall: the deck cannot be moved nearer to it.
constexpr const char* kEndPanel = R"(
[[part]]
name = "end panel"
stock = "ply"
shape = { size = ["36", "30"] }
place = { at = ["46", "0", "20"], u = "+y", v = "+z" }
group = "end"
[[part]]
name = "spacer"
stock = "ply"
shape = { size = ["46", "3"] }
place = { at = ["46", "0", "30"], u = "-x", v = "+z" }
group = "end"
[[group]]
name = "end"
order = 1
turn = false
tight_to = ["left wall", "right wall"]
height_from = "level line"
[[contact]]
part = "end panel"
edge = "left"
meets = "left wall"
[[contact]]
part = "spacer"
edge = "right"
meets = "right wall"
[[contact]]
part = "deck"
edge = "right"
meets = "end panel"
keep = true
)";

}  // namespace

TEST_CASE("adapt: an open corner makes the deck 46 at the back and 46 7/8 in front",
          "[reference]") {
  const MeasuredRoom room = measured(corner_room(91.4), 50);
  const std::string design = deck_design("");
  const AdaptAnswer answer = adapted(room, design);
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].kind == "taper");
  CHECK(answer.changes[0].part == "deck");
  const Polygon& outline = answer.draft.design->parts[0].outline;
  REQUIRE(outline.size() == 4);
  CHECK(outline[1].x - outline[0].x == Approx(46 * in).margin(1e-6));
  CHECK(outline[2].x - outline[3].x == Approx(46.875 * in).margin(1e-6));
  CHECK(answer.draft.design->parts[0].place_in_room.at.x == Approx(-0.875 * in).margin(1e-6));
  CHECK(answer.fit.verdict == Verdict::fits);
  CHECK(lines_changed(design, answer.draft.text) == 2);
}

TEST_CASE("adapt: running it on its own answer changes nothing") {
  const MeasuredRoom room = measured(corner_room(91.4), 50);
  const AdaptAnswer once = adapted(room, deck_design(""));
  const AdaptAnswer twice = adapted(room, once.draft.text);
  CHECK(twice.changes.empty());
  CHECK(twice.draft.text == once.draft.text);
}

TEST_CASE("adapt: a design that fits is left as it is, byte for byte") {
  const MeasuredRoom room = measured(corner_room(90), 50);
  const std::string design = deck_design("");
  const AdaptAnswer answer = adapted(room, design);
  CHECK(answer.changes.empty());
  CHECK(answer.fit.verdict == Verdict::fits);
  CHECK(answer.draft.text == design);
}

TEST_CASE("adapt: a wedge that caulk closes is caulked, not cut") {
  const MeasuredRoom room = measured(corner_room(90.3), 50);  // 36 tan .3 = .19
  const AdaptAnswer answer = adapted(room, deck_design(""));
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].kind == "caulk");
  CHECK(answer.changes[0].before == "butt");
  CHECK(answer.fit.verdict == Verdict::fits);
}

TEST_CASE("adapt: keep = true gets nothing added to by") {
  const MeasuredRoom room = measured(corner_room(90.3), 50);
  const AdaptAnswer answer = adapted(room, deck_design("keep = true\n"));
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].kind == "taper");
  CHECK(answer.draft.design->contacts[1].by == Fitting::butt);
  CHECK(answer.fit.verdict == Verdict::fits);
}

TEST_CASE("adapt: an end held off and a blank that the sheet does not give contradict each other") {
  std::string design = deck_design("keep = true\n") + kEndPanel;
  design.replace(design.find("[\"48\", \"96\"]"), 12, "[\"46\", \"46\"]");
  const MeasuredRoom room = measured(corner_room(91.4), 50);
  const AdaptAnswer answer = adapted(room, design);
  CHECK(answer.changes.empty());
  CHECK(answer.fit.verdict == Verdict::does_not_fit);
  REQUIRE(answer.contradictions.size() == 1);
  const Contradiction& told = answer.contradictions[0];
  CHECK(told.against.find("deck, right edge at the end panel") == 0);
  CHECK(told.by_mm == Approx((0.88 - 0.25) * in).margin(in / 16));  // both may be open 1/8
  CHECK(answer.draft.text == design);
}

TEST_CASE("adapt: an edge whose faces meet the wall unlike is beveled, and the kind says so") {
  std::string design = deck_design("allow = \"1/32\"\n");
  const std::string place = "place = { at = [\"0\", \"0\", \"42\"], u = \"+x\", v = \"+y\" }";
  design.replace(design.find(place), place.size(),
                 "place = { at = [\"46\", \"0\", \"42\"], u = \"-x\", v = \"+z\" }");
  design.replace(design.find("edge = \"bottom\""), 15, "face = \"back\"");
  design.replace(design.find("edge = \"left\""), 13, "edge = \"right\"");
  const MeasuredRoom room = measured(corner_room(95), 50);  // 23/32 tan 5 = 1/16
  const AdaptAnswer answer = adapted(room, design);
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].kind == "bevel");
  CHECK(answer.changes[0].after == "scribe");
  CHECK(answer.changes[0].why.find("beveled by 1/16\" over the thickness") != std::string::npos);
  CHECK(answer.fit.verdict == Verdict::fits);
}

TEST_CASE("adapt: a trim that does not cover the gap gives way, its key too") {
  const MeasuredRoom room = measured(corner_room(91.4), 50);
  const std::string design = deck_design("by = \"trim\"\ntrim = \"1/2\"\n") + kEndPanel;
  const AdaptAnswer answer = adapted(room, design);
  CHECK(answer.fit.verdict == Verdict::fits);
  REQUIRE(answer.changes.size() == 1);
  const Contact& contact = answer.draft.design->contacts[1];
  CHECK(contact.trim.has_value() == (contact.by == Fitting::trim));
}

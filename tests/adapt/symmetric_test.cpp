// A panel that is to stay alike on both sides, between two walls.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "adapted.h"
#include "fit/fit.h"
#include "job/job.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr double in = kMillimetresPerInch;

// A square alcove of that width, its left wall leaning in by so many mm/m, read without error.
std::string alcove(double width, double lean) {
  std::string text = "units = \"inch\"\n[flatness]\nsd = \"0\"\n";
  for (const char* wall : {"left", "back", "right"}) {
    const bool back = std::string(wall) == "back", left = std::string(wall) == "left";
    text += fmt::format("[[wall]]\nname = \"{}\"\nlength = {}\n", wall,
                        back ? exact(width) : exact(30 * in));
    if (back) text += "length_height = \"0\"\n";
    for (const int at : {6, 24}) {
      text += fmt::format("[[wall.plumb]]\nat = \"{}\"\nline = [", at);
      for (const int up : {12, 40, 88})
        text += fmt::format("[\"{}\", {}], ", up, exact(60 - (left ? lean : 0) * up * in / 1000));
      text += "]\n";
    }
  }
  for (const auto& [a, b] : {std::pair{"left", "back"}, {"back", "right"}})
    text += fmt::format(
        "[[corner]]\nwalls = [\"{}\", \"{}\"]\nheight = \"0\"\ndiagonals = [[{}, {}, {}]]\n", a, b,
        exact(18 * in), exact(24 * in), exact(30 * in));
  return text + "[level_line]\nby = \"laser\"\n";
}

std::string panel(const std::string& symmetric) {
  return fmt::format(R"(units = "inch"
corner = ["left", "back"]
[stock.ply]
kind = "plywood"
thickness = "3/4"
sheet = ["48", "96"]
[[part]]
name = "panel"
stock = "ply"
shape = {{ size = ["40", "30"] }}
cutouts = [{{ name = "window", circle = ["20", "15"], diameter = "8" }}]
{}place = {{ at = ["20", "0", "30"], u = "+y", v = "+z" }}
[[group]]
name = "panel"
turn = false
height_from = "level line"
[[contact]]
part = "panel"
edge = "left"
meets = "left wall"
keep = true
[[contact]]
part = "panel"
edge = "right"
meets = "right wall"
keep = true
)",
                     symmetric);
}

// Another one above it, and contacts that name the lower one.
void name_copies(std::string& design) {
  const std::string place = "place = { at";
  design.insert(design.find(place), "repeat = { count = 2, step = [\"0\", \"0\", \"40\"] }\n");
  const std::string part = "part = \"panel\"";
  for (std::size_t at; (at = design.find(part)) != std::string::npos;)
    design.replace(at, part.size(), "part = \"panel 1\"");
}

}  // namespace

TEST_CASE("adapt: a symmetric panel that is too wide is trimmed on both sides alike") {
  const MeasuredRoom room = measured(alcove(39.75 * in, 0), 50);
  REQUIRE(room.complete);
  const AdaptAnswer answer = adapted(room, panel("symmetric = true\n"));
  REQUIRE(answer.changes.size() == 1);
  CHECK(answer.changes[0].kind == "trim");
  CHECK(answer.changes[0].why.find("and the other side alike") != std::string::npos);
  CHECK(answer.fit.verdict == Verdict::fits);
  const Part& part = answer.draft.design->parts[0];
  CHECK(part.symmetric);
  const double width = part.outline[1].x - part.outline[0].x;
  CHECK(width == Approx(39.75 * in).margin(0.01));
  CHECK(part.cutouts[0].centre->x == Approx(width / 2).margin(0.01));
}

TEST_CASE("adapt: without symmetric the same panel is trimmed on one side") {
  const MeasuredRoom room = measured(alcove(39.75 * in, 0), 50);
  const AdaptAnswer answer = adapted(room, panel(""));
  REQUIRE(answer.changes.size() == 1);
  const Part& part = answer.draft.design->parts[0];
  const double width = part.outline[1].x - part.outline[0].x;
  CHECK(answer.fit.verdict == Verdict::fits);
  CHECK(std::abs(part.cutouts[0].centre->x - width / 2) > in / 16);
}

TEST_CASE("adapt: a wall that leans against a symmetric panel is tapered on both sides or told") {
  const MeasuredRoom room = measured(alcove(40.5 * in, 12), 50);  // 3/8 in over 30
  const AdaptAnswer answer = adapted(room, panel("symmetric = true\n"));
  const Part& part = answer.draft.design->parts[0];
  const Polygon& o = part.outline;
  CHECK(o[3].x + o[2].x == Approx(o[0].x + o[1].x).margin(0.01));  // one center line
  CHECK((answer.fit.verdict == Verdict::does_not_fit) != answer.contradictions.empty());
  const AdaptAnswer again = adapted(room, answer.draft.text);
  CHECK(again.draft.text == answer.draft.text);
}

TEST_CASE("fit: a symmetric panel that is to be scribed on one side only is told") {
  const MeasuredRoom room = measured(alcove(40.5 * in, 12), 0);
  std::string text = panel("symmetric = true\n");
  const std::string keep = "keep = true\n";
  text.replace(text.find(keep), keep.size(), "by = \"scribe\"\n");
  const auto design = parse_design(text, "design.toml");
  REQUIRE(design.has_value());
  const std::vector<RoomShape> none;
  const FitAnswer answer = fit({room.survey, *design, room.room, none, 0.95, true});
  REQUIRE(answer.shows.size() == 1);
  CHECK(answer.shows[0].what.find("no longer in the middle") != std::string::npos);
}

TEST_CASE("adapt: a symmetric panel is not notched on one side alone") {
  std::string text = alcove(40 * in, 0);
  const std::string left = "name = \"left\"\n";
  text.insert(text.find(left) + left.size(),
              "baseboard = { height = \"5 1/4\", thickness = \"9/16\" }\n");
  const std::string low = "height = \"0\"";
  for (std::size_t at; (at = text.find(low)) != std::string::npos;)
    text.replace(at, low.size(), "height = \"40\"");  // above the board
  const MeasuredRoom room = measured(text, 50);
  for (const auto& [symmetric, copies] :
       {std::pair{false, false}, {true, false}, {false, true}, {true, true}}) {
    std::string design = panel(symmetric ? "symmetric = true\n" : "");
    if (copies) name_copies(design);
    design.replace(design.find("\"0\", \"30\"]"), 10, "\"0\", \"2\"]");
    for (std::size_t at; (at = design.find("keep = true\n")) != std::string::npos;)
      design.erase(at, 12);
    const auto after = adapted(room, design).draft.design;
    INFO("symmetric " << symmetric << ", named as a copy " << copies);
    CHECK((after->contacts[0].notch != after->contacts[1].notch) == !symmetric);
  }
}

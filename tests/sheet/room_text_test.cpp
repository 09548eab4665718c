// The room's page and its JSON from a report made by hand.
#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <nlohmann/json.hpp>

#include "sheet/reading_name.h"
#include "sheet/room_json.h"
#include "sheet/room_table.h"
#include "sheet/room_text.h"

using namespace nook;

namespace {

ReadingReport reading(const std::string& id, int line, int wall, int corner) {
  ReadingReport out;
  out.id = id;
  out.given = "60 7/8";
  out.value_mm = 1546.2;
  out.sd_mm = 0.6;
  out.adjusted_mm = 1547;
  out.residual_mm = 0.8;
  out.redundancy = 0.4;
  out.w = 1.5;
  out.smallest_slip_mm = 3.2;
  out.line = line;
  out.wall = wall;
  out.corner = corner;
  return out;
}

RoomReport sample() {
  RoomReport report;
  report.corners = {{{"left", "right"}, {91.42, 0.12}}};
  report.walls = {{"left", Measured{3000, 1}, {-3.2, 1.1}, 4.2, {}},
                  {"right", {}, {0.1, 1.2}, 0, {}}};
  report.flatness_sd_mm = 2;
  report.flatness_reach_mm = 400;
  report.readings = {reading("corner[0].diagonals[1][0]", 41, -1, 0),
                     reading("corner[0].diagonals[1].second", 41, 1, 0),
                     reading("wall[0].plumb[0].line[5]", 23, 0, -1),
                     reading("span[3].is[1]", 0, -1, -1), reading("wall[1].length[1]", 9, 1, -1)};
  report.names["corner[0].diagonals[1][0]"] = "left/right corner, diagonal 36\" to 48\" (line 41)";
  report.chi2 = 20;
  report.chi2_limit = 50;
  report.dof = 21;
  return report;
}

Style inches_style() {
  Style style;
  style.rounding = usual_rounding(Unit::inch);
  return style;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

void check_width(const std::string& text) {
  std::size_t start = 0;
  for (std::size_t end; (end = text.find('\n', start)) != std::string::npos; start = end + 1)
    CHECK(end - start <= 80);
}

}  // namespace

TEST_CASE("reading names: in words, and never more than a few") {
  const RoomReport report = sample();
  CHECK(reading_name("corner[0].diagonals[1][0]", report) ==
        "left/right corner, diagonal 36\" to 48\" (line 41)");
  CHECK(reading_name("wall[7].level[0]", report) == "wall[7].level[0]");
  CHECK(names_of({"a", "b", "c"}, report, 2) == "a; b; and 1 more");
  CHECK(names_of({"a", "b", "c"}, report) == "a; b; c");
}

TEST_CASE("room page: a corner is called open or closed only where its give or take tells") {
  const auto said = [](double degrees, double sd) {
    RoomReport report = sample();
    report.corners[0].angle_deg = {degrees, sd};
    return room_text(report, Survey{}, inches_style());
  };
  CHECK(has(said(90.2, 0.15), "90.2 degrees, give or take 0.3: may be square."));
  CHECK(has(said(89.8, 0.15), ": may be square."));
  CHECK(has(said(90.2, 0.1), ": open."));
  CHECK(has(said(89.8, 0.1), ": closed."));
  CHECK(has(said(90.04, 0.01), ": square."));
}

TEST_CASE("room page: corner, walls, how surely, in 80 columns") {
  const std::string text = room_text(sample(), Survey{}, inches_style());
  check_width(text);
  CHECK(has(text, "Room: FITS"));
  CHECK(has(text, "The left/right corner is 91.4 degrees, give or take 0.3: open."));
  std::string flat = text;
  std::replace(flat.begin(), flat.end(), '\n', ' ');
  CHECK(has(flat, "leans away 1/8\" in 48\", give or take 1/8\""));
  CHECK(has(text, "hump of 3/16\""));
  CHECK(has(text, "The right wall stands plumb in 48\""));
  CHECK(has(text, "Walls usually stray 1/16\" from flat"));
  CHECK(!has(text, " mm"));  // an inch job
}

TEST_CASE("room page: suspects and what is missing, each with what to do") {
  RoomReport report = sample();
  report.suspects = {
      {{"corner[0].diagonals[1][0]"}, "60 7/8\"; the other readings say 59 7/8\"", 1520, 900}};
  report.missing = {
      {"nothing says how far the left wall leans: hold a level plumb against it", false}};
  report.uncheckable = {"wall[0].plumb[0].line[5]"};
  report.measure_next = {{"take a diagonal", 0.42}};
  report.facts = {"The outlet at 40\" is clear of every stud."};
  const std::string text = room_text(report, Survey{}, inches_style());
  check_width(text);
  CHECK(has(text, "Room: CANNOT TELL"));
  CHECK(has(text, "left/right corner, diagonal 36\" to 48\" (line 41): 60 7/8\""));
  CHECK(has(text, "-> take it again, or strike what is wrong (struck = true)"));
  CHECK(has(text, "-> hold a level plumb against it"));
  CHECK(has(text, "Other readings hardly check these"));
  CHECK(has(text, "take a diagonal (settles 42 % of what is open)"));
  CHECK(has(text, "clear of every stud"));
  const auto findings = room_findings(report);
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].verdict == Verdict::cannot_tell);
}

TEST_CASE("room page: what the others call a slip is not among what they do not check") {
  RoomReport report = sample();
  const std::string id = "corner[0].diagonals[1][0]";
  report.suspects = {{{id}, "60 7/8\"; the other readings say 59 7/8\"", 1520, 900}};
  report.uncheckable = {id};
  CHECK(!has(room_text(report, Survey{}, inches_style()), "hardly check"));
  report.uncheckable = {id, "wall[0].plumb[0].line[5]"};
  const std::string text = room_text(report, Survey{}, inches_style());
  const std::size_t from = text.find("hardly check");
  REQUIRE(from != std::string::npos);
  CHECK(text.find(reading_name("wall[0].plumb[0].line[5]", report), from) != std::string::npos);
  CHECK(text.find("diagonal", from) == std::string::npos);
}

TEST_CASE("room page: a reading and its repeat are one reading to take again") {
  RoomReport report = sample();
  report.names["wall[1].length[0]"] = "right wall, length (line 9)";
  report.suspects = {{{"wall[1].length[0]", "wall[1].length[1]", "wall[1].length[2]"},
                      "61\" each time",
                      1500,
                      9,
                      true}};
  const auto findings = room_findings(report);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].where == reading_name("wall[1].length[0]", report));
  CHECK(findings[0].next.rfind("take it again", 0) == 0);
}

TEST_CASE("room page: what cannot be told apart is named together") {
  RoomReport report = sample();
  report.suspects = {{{"corner[0].diagonals[1][0]", "wall[1].length[1]"}, "61\"", 1500, 9}};
  const auto findings = room_findings(report);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].where.rfind("one of left/right corner", 0) == 0);
  CHECK(has(findings[0].next, "again first"));
}

TEST_CASE("room page: nothing known yet is not printed as a number") {
  RoomReport report = sample();
  report.corners[0].angle_deg = {90, std::numeric_limits<double>::infinity()};
  report.walls[0].length_mm = Measured{1, std::numeric_limits<double>::infinity()};
  const std::string text = room_text(report, Survey{}, inches_style());
  CHECK(has(text, "The left/right corner: not known yet."));
  CHECK(!has(text, "inf"));
}

TEST_CASE("room page: quiet is one line, verbose adds the table") {
  Style style = inches_style();
  style.quiet = true;
  CHECK(room_text(sample(), Survey{}, style) == "Room: FITS\n");
  style.quiet = false;
  style.verbose = true;
  const std::string text = room_text(sample(), Survey{}, style);
  check_width(text);
  CHECK(has(text, "chi-squared 20.0 with 21 to spare"));
}

TEST_CASE("table: struck readings and what nothing checks have no numbers to show") {
  RoomReport report = sample();
  report.readings[0].struck = true;
  report.readings[1].w.reset();
  report.readings[1].smallest_slip_mm.reset();
  report.readings[2].residual_mm = -0.001;
  const std::string text = readings_table(report, inches_style());
  check_width(text);
  CHECK(has(text, "struck"));
  CHECK(!has(text, "-0.00"));
}

TEST_CASE("room JSON: the keys that must be there") {
  RoomReport report = sample();
  report.suspects = {{{"span[3].is[1]"}, "why", 1520, 900}};
  report.uncheckable = {"wall[1].length[1]"};
  report.measure_next = {{"take a diagonal", 0.42}};
  report.walls[0].studs = {{400, 1, StudReport::Found::edges, 1000}};
  const Json json = room_json(report, "rooms/sample");
  CHECK(json["answer"] == "room");
  CHECK(json["verdict"] == "cannot tell");
  CHECK(json["corners"][0]["angle_deg"] == 91.42);
  CHECK(json["corners"][0]["angle_sd_deg"] == 0.12);
  CHECK(json["corners"][0]["walls"] == Json({"left", "right"}));
  for (const char* key : {"name", "length_mm", "length_sd_mm", "lean_mm_per_m", "lean_sd_mm_per_m",
                          "hump_mm", "studs"})
    CHECK(json["walls"][0].contains(key));
  CHECK(json["walls"][1]["length_mm"].is_null());
  CHECK(json["walls"][0]["studs"][0]["found"] == "edges");
  CHECK(json["flatness"] == Json({{"sd_mm", 2.0}, {"reach_mm", 400.0}, {"chosen_by", "readings"}}));
  for (const char* key : {"id", "given", "value_mm", "sd_mm", "adjusted_mm", "adjusted_sd_mm",
                          "residual_mm", "w", "redundancy", "smallest_slip_mm", "line"})
    CHECK(json["readings"][0].contains(key));
  CHECK(
      json["suspects"][0] ==
      Json(
          {{"ids", {"span[3].is[1]"}}, {"reason", "why"}, {"likely_mm", 1520.0}, {"odds", 900.0}}));
  CHECK(json["uncheckable"] == Json({"wall[1].length[1]"}));
  CHECK(json["measure_next"][0] == Json({{"reading", "take a diagonal"}, {"gain", 0.42}}));
  CHECK(json["chi2"] == Json({{"value", 20.0}, {"dof", 21}, {"limit", 50.0}}));
}

TEST_CASE("room JSON: what is not known is null, angles also stand as angles") {
  RoomReport report = sample();
  report.corners[0].angle_deg = {90, std::numeric_limits<double>::infinity()};
  report.readings[0].w.reset();
  report.readings[1].blade_mm = 300;
  report.readings[1].value_mm = 300 * degrees(91.3).rad;
  const Json json = room_json(report, "x");
  CHECK(json["corners"][0]["angle_deg"].is_null());
  CHECK(json["corners"][0]["angle_sd_deg"].is_null());
  CHECK(json["readings"][0]["w"].is_null());
  CHECK(double(json["readings"][1]["value_deg"]) == Approx(91.3));
  CHECK(!json["readings"][0].contains("value_deg"));
}

// The drilling map as a page and as JSON.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "fasten/said.h"
#include "job/job.h"
#include "sheet/alike.h"
#include "sheet/check_text.h"
#include "sheet/cut_text.h"
#include "sheet/drill_json.h"
#include "sheet/drill_text.h"
#include "source_dir.h"
#include "survey/adjustment.h"

using namespace nook;

namespace {

Style inch_style() {
  Style style;
  style.rounding = usual_rounding(Unit::inch);
  return style;
}

// One ledger, two screws, the second in a stud that is only inferred.
DrillAnswer small_answer(bool runs_left) {
  DrillAnswer answer;
  answer.verdict = Verdict::cannot_tell;
  WallDrill wall;
  wall.name = runs_left ? "left" : "right";
  wall.runs_left = runs_left;
  wall.datum = PlumbDatum{0, inches(15.3125).mm, inches(40).mm};
  HungPiece piece;
  piece.part = "ledger";
  piece.top_from_line_mm = inches(2.25).mm;
  piece.screw = "#10 x 3\" wood screw";
  piece.far_mm = inches(46).mm;
  wall.pieces.push_back(piece);
  Hole hole;
  hole.id = wall.name + " 1";
  hole.part = "ledger";
  hole.stud = 0;
  hole.along_mm = inches(15.3125).mm;
  hole.from_line_mm = inches(1.75).mm;
  hole.from_datum_mm = 0;
  hole.end = runs_left ? "right" : "left";
  hole.from_end_mm = inches(15.3125).mm;
  hole.edge = "top";
  hole.from_edge_mm = inches(.5).mm;
  hole.hit_chance = .9995;
  hole.pilot_mm = 3.378;
  hole.shank_pilot_mm = 4.22;
  hole.clearance_mm = 5.22;
  hole.depth_mm = inches(3.125).mm;
  hole.drive = 1;
  wall.holes.push_back(hole);
  hole.id = wall.name + " 2";
  hole.stud = 1;
  hole.from_datum_mm = inches(16.0625).mm;
  hole.from_line_mm = inches(-.75).mm;
  hole.from_end_mm = inches(31.375).mm;
  hole.from_edge_mm = inches(3).mm;
  hole.shim_mm = inches(.125).mm;
  hole.hit_chance = .83;
  hole.sure = false;
  hole.probe_first = true;
  hole.drive = 2;
  hole.warnings = {"probe first: no stud was found here, it follows from the spacing"};
  wall.holes.push_back(hole);
  answer.walls.push_back(wall);
  return answer;
}

std::size_t code_points(const std::string& line) {
  return static_cast<std::size_t>(
      std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::optional<DrillAnswer> sample(const std::string& room) {
  const auto job = read_job(std::string(NOOKFIT_SOURCE_DIR "/rooms/") + room);
  if (!job || !job->design) return std::nullopt;
  const Adjustment adjustment = adjust(job->survey, job->origin_corner);
  const auto pieces = pieces_of(*job->design);
  std::vector<Frame> frames;
  for (const Piece& p : pieces) frames.push_back(p.frame);
  return drill({job->survey,
                *job->design,
                adjustment.room(),
                {},
                pieces,
                frames,
                .95,
                adjustment.complete()});
}

}  // namespace

TEST_CASE("drill page: every number reads from the plumb line, the level line or an edge",
          "[golden]") {
  const std::string expected = R"(Holes: CANNOT TELL

cannot tell   ledger at the left wall: hole 2 may miss
              -> probe first, both edges of the stud, by nail, behind the piece

The left wall, facing it; along counts from the corner on its right
  Strike a plumb line through the middle of the proven stud: 15 5/16" from the
  corner, 40" up. The holes count from it.

ledger: upper edge 2 1/4" above the level line; #10 x 3" wood screw
  bit 1/8" for the thread, flagged 3 1/8" from its tip, 5/32" for the shank;
  clearance hole 13/64"
   hole     plumb line     level line    right end     top edge    shim  drive
    1 ●          on it       1 3/4 up      15 5/16          1/2              1
    2 ○   16 1/16 left       3/4 down       31 3/8            3     1/8      2
  ! 2: probe first: no stud was found here, it follows from the spacing

Probe before you drill; a bit that stops on steel has met a plate: move it.
Strength figures are a help; your local code and a licensed person decide.
)";
  CHECK(drill_text(small_answer(true), inch_style()) == expected);
}

TEST_CASE("drill page: the mirrored wall swaps left and right and nothing else") {
  std::string left = drill_text(small_answer(true), inch_style());
  std::string right = drill_text(small_answer(false), inch_style());
  std::string swapped;
  std::istringstream words(left);
  for (std::string line; std::getline(words, line);) {
    for (std::size_t at = 0; at < line.size();) {
      if (line.compare(at, 4, "left") == 0)
        swapped += "right", at += 4;
      else if (line.compare(at, 5, "right") == 0)
        swapped += "left", at += 5;
      else
        swapped += line[at++];
    }
    swapped += "\n";
  }
  const auto without_blanks = [](std::string s) {
    s.erase(std::remove(s.begin(), s.end(), ' '), s.end());
    return s;
  };
  CHECK(without_blanks(swapped) == without_blanks(right));
}

TEST_CASE("drill page: bits are the next size below, in 64ths or half millimeters") {
  CHECK(bit_for(3.378, usual_rounding(Unit::inch)) == "1/8\"");
  CHECK(bit_for(inches(1.0 / 8).mm, usual_rounding(Unit::inch)) == "1/8\"");
  CHECK(bit_for(3.378, usual_rounding(Unit::mm)) == "3.0 mm");
  CHECK(bit_for(3.5, usual_rounding(Unit::cm)) == "3.5 mm");
}

TEST_CASE("drill page: in centimeters too nothing is so much of nothing") {
  const Rounding cm = usual_rounding(Unit::cm);
  CHECK(mark_at({-.4, "hole 1"}, cm) == "0");
  CHECK(mark_at({-4, "hole 1"}, cm) == "0.4 back");
  DrillAnswer answer = small_answer(true);
  answer.walls[0].holes[0].from_datum_mm = .4;
  answer.walls[0].holes[0].from_line_mm = -.4;
  Style style;
  style.rounding = cm;
  const std::string text = drill_text(answer, style);
  CAPTURE(text);
  CHECK(text.find("on it") != std::string::npos);
  CHECK(text.find(" 0.0") == std::string::npos);
}

TEST_CASE("drill page: a screw of a job in centimeters is bought in millimeters") {
  CHECK(Saying{Unit::cm}.screw(120) == "120 mm");
  CHECK(Saying{Unit::cm}.screw(7.94) == "7.9 mm");  // a 5/16 in lag screw
  CHECK(Saying{Unit::mm}.screw(76.2) == "76.2 mm");
  CHECK(Saying{Unit::inch}.screw(76.2) == "3\"");
  CHECK(purchase_words({Purchase::Kind::screw, "lag screw", 4, 120, 8}, usual_rounding(Unit::cm)) ==
        "4 lag screw x 120 mm, 8 mm thick");
}

TEST_CASE("drill page: the sample jobs fit 80 columns and print no decimals in inches") {
  for (const char* room : {"lookout", "corner-desk", "window-bench"}) {
    const auto answer = sample(room);
    REQUIRE(answer);
    INFO(room);
    Style style = inch_style();
    style.verbose = true;
    std::istringstream lines(drill_text(*answer, style));
    for (std::string line; std::getline(lines, line);) {
      INFO(line);
      CHECK(code_points(line) <= 80);
      CHECK(line.find("0.9") == std::string::npos);
    }
  }
}

TEST_CASE("drill page: the JSON carries the agreed keys, numbers unrounded") {
  const Json json = drill_json(small_answer(true), "job");
  CHECK(json["answer"] == "drill");
  CHECK(json["verdict"] == "cannot tell");
  for (const char* key : {"walls", "parts", "strength", "unreachable"}) CHECK(json.contains(key));
  const Json& hole = json["walls"][0]["holes"][1];
  for (const char* key :
       {"id", "part", "stud", "along_mm", "height_mm", "u_mm", "v_mm", "edge_distance_mm",
        "embedment_mm", "hit_chance", "pilot_mm", "clearance_mm", "shim_mm", "warnings"})
    CHECK(hole.contains(key));
  CHECK(hole["warnings"][0].get<std::string>().find("probe first") == 0);
  CHECK(hole["from_end_mm"] == inches(31.375).mm);
}

TEST_CASE("drill page: the JSON of strength has null where there is no figure") {
  DrillAnswer answer = small_answer(true);
  Strength s;
  s.part = "ledger";
  s.to = "left wall";
  s.load_n = 889.6;
  s.mode = "steel studs: the NDS gives no figure";
  answer.strength.push_back(s);
  answer.unreachable.push_back({"cleat", "no stud: lies behind it", "let in blocking"});
  const Json json = drill_json(answer, "job");
  CHECK(json["strength"][0]["capacity_n"].is_null());
  CHECK(json["strength"][0]["load_n"] == 889.6);
  CHECK(json["unreachable"][0]["part"] == "cleat");
  const auto findings = drill_findings(answer, inch_style());
  REQUIRE(findings.size() == 3);
  CHECK(findings[0].verdict == Verdict::does_not_fit);
  CHECK(findings[0].what == "no stud: lies behind it");
  CHECK(json["unreachable"][0]["reason"] == "no stud: lies behind it: let in blocking");
  CHECK(findings[0].next == "let in blocking");
  CHECK(findings[1].what.find("steel studs") != std::string::npos);
}

TEST_CASE("drill page: marks behind a story pole's start say so, without a minus") {
  const Rounding inch = usual_rounding(Unit::inch);
  CHECK(mark_at({inches(15.3125).mm, ""}, inch) == "15 5/16");
  CHECK(mark_at({-inches(15.3125).mm, ""}, inch) == "15 5/16 back");
  CHECK(mark_at({-0.2, ""}, inch) == "0");
  CHECK(mark_at({-59, ""}, usual_rounding(Unit::mm)) == "59 back");
}

TEST_CASE("drill page: copies bored alike are told in one line, with what to mind") {
  DrillAnswer answer;
  for (int k = 1; k <= 10; ++k) {
    Hole hole;
    hole.end = "left", hole.edge = "top";
    hole.from_edge_mm = inches(1).mm;
    hole.from_end_mm = inches(3).mm;
    hole.pilot_mm = 3, hole.embedment_mm = inches(.78).mm;
    hole.warnings = {"it may split"};
    answer.parts.push_back({"slat " + std::to_string(k), "rail", {hole}});
  }
  const std::string text = drill_text(answer, inch_style());
  CHECK(text.find("slat 1 to 10 into rail: 1 screw, 1\" from the top; from the left 3\"") !=
        std::string::npos);
  CHECK(text.find("3/4\" in the wood") != std::string::npos);  // never more than it is
  CHECK(bench_warnings(answer.parts) ==
        std::vector<std::string>{"slat 1 to 10 into rail: it may split"});
  CheckAnswer check;
  check.drill = answer;
  CHECK(check_text(check, inch_style()).find("slat 1 to 10 into rail: it may split") !=
        std::string::npos);
  answer.parts[1].holes[0].warnings.clear();
  CHECK(bench_warnings(answer.parts) ==
        std::vector<std::string>{"slat 1, slat 3 to 10 into rail: it may split"});
}

TEST_CASE("drill page: the same finding of several pieces is told once, with their places") {
  const Finding weak{Verdict::cannot_tell, 1, "rail 1 at the rung", "not known", "give it two"};
  Finding other = weak;
  other.where = "rail 2 at the rung";
  Finding longer = weak;
  longer.what = "weak";
  const auto told = told_once({weak, other, longer});
  REQUIRE(told.size() == 2);
  CHECK(told[0].where == "rail 1 at the rung; rail 2 at the rung");
  CHECK(told[1].where == weak.where);
}

TEST_CASE("drill page: a hole in a proved stud wants a thinner screw, another one a probe") {
  DrillAnswer answer = small_answer(true);
  answer.walls[0].holes[0].sure = false;
  answer.walls[0].holes[0].proved = true;
  const auto findings = drill_findings(answer, inch_style());
  REQUIRE(findings.size() == 2);
  CHECK(findings[0].what == "hole 2 may miss");
  CHECK(findings[1].what.find("hole 1 may come near the edge of the stud") == 0);
  CHECK(findings[1].next.find("thinner") != std::string::npos);
}

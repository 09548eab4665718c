// Adapts small designs to rooms made up by chance and measured with a tape's errors.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <set>
#include <sstream>

#include "adapted.h"
#include "brute_force.h"
#include "fit/fit.h"
#include "job/job.h"
#include "varied_room.h"

using namespace nook;
using namespace nook::test;

namespace {

// A tape read to 1 mm, its ends set to about half of one.
std::string read(Random& random, double mm) {
  return fmt::format("\"{} mm\"", std::round(mm + gaussian(random, 0.4)));
}

// A corner of 88 to 92 degrees, walls leaning to 4 mm/m, flat; a baseboard on the left wall.
std::string random_room(Random& random) {
  const double angle = even(random, 88, 92) * std::numbers::pi / 180;
  const double lean[2] = {gaussian(random, 0.002), gaussian(random, 0.002)};
  std::string text = "units = \"inch\"\n[flatness]\nsd = \"1 mm\"\n[tape]\nclass = \"I\"\n";
  for (int wall = 0; wall < 2; ++wall) {
    text +=
        fmt::format("[[wall]]\nname = \"{}\"\nlength = \"110\"\n", wall == 0 ? "left" : "right");
    if (wall == 0) text += "baseboard = { height = '5 1/4', thickness = '9/16' }\n";
    for (const int at : {12, 40, 60}) {
      text += fmt::format("[[wall.plumb]]\nat = \"{}\"\nline = [", at);
      for (const int up : {8, 24, 42, 60, 80})
        text += fmt::format("[\"{}\", {}], ", up, read(random, 60 - lean[wall] * up * 25.4));
      text += "]\n";
    }
  }
  text += "[[corner]]\nwalls = [\"left\", \"right\"]\nheight = \"8\"\ndiagonals = [";
  for (const auto& [a, b] : {std::pair{900., 1200.}, {1200., 900.}, {1500., 1500.}})
    text += fmt::format("[\"{} mm\", \"{} mm\", {}], ", a, b,
                        read(random, std::sqrt(a * a + b * b - 2 * a * b * std::cos(angle))));
  text += "]\n[level_line]\nby = \"laser\"\n[floor]\ndown = [";
  for (const char* wall : {"left", "right"})
    for (const int along : {6, 30, 60})
      for (const int out : {2, 30})
        text += fmt::format("[\"{}\", \"{}\", \"{}\", {}], ", wall, along, out, read(random, 1000));
  return text + "]\n";
}

const char* const kDrawn = R"(# a deck on its ledger, and a panel beside it
units = "inch"
corner = ["left", "right"]
[stock.ply]
kind = "plywood"
thickness = '3/4'
sheet = ['48', '96']
[stock.rail]   # ripped
kind = "lumber"
section = ['1 1/4', '3']
lengths = ['96']

[[part]]
name = "ledger"
stock = "rail"
shape = { length = '44' }
place = { at = ['45', '0', '38'], u = "-x", v = "+z" }
show = "none"
[[part]]
name = "deck"   # drawn square
stock = "ply"
shape = { size = ['46', '36'] }
place = { at = ['0', '0', '41'], u = "+x", v = "+y" }
cutouts = [{ name = "cable", circle = ['30', '10'], diameter = '2' }]
[[part]]
name = "panel"
stock = "ply"
shape = { size = ['30', '60'] }   # tall
place = { at = ['60', '0', '0'], u = "+y", v = "+z" }

[[group]]
name = "ledger"
tight_to = ["left wall"]
height_from = "level line"
[[group]]
name = "deck"
tight_to = ["left wall", "right wall"]
height_from = "level line"
[[group]]
name = "panel"
tight_to = ["left wall"]
height_from = "floor"

[[contact]]
part = "ledger"
face = "back"
meets = "left wall"
by = "shim"
[[contact]]
part = "deck"
edge = "bottom"
meets = "left wall"
[[contact]]
part = "deck"
edge = "left"
meets = "right wall"
keep = true   # shows
[[contact]]
part = "ledger"
edge = "top"
meets = "deck"
[[contact]]
part = "panel"
edge = "left"
meets = "left wall"
)";

// In every other room the edge at the right wall shows and keeps its butt.
std::string design_for(int seed) {
  std::string text = kDrawn;
  const std::string keep = "keep = true   # shows\n";
  if (seed % 2 == 0) text.erase(text.find(keep), keep.size());
  return text;
}

std::multiset<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::multiset<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.insert(line);
  return lines;
}

// Lines of `a` that `b` has not.
std::vector<std::string> only_in(const std::string& a, const std::string& b) {
  const auto left = lines_of(a), right = lines_of(b);
  std::vector<std::string> only;
  std::set_difference(left.begin(), left.end(), right.begin(), right.end(),
                      std::back_inserter(only));
  return only;
}

bool may_change(const std::string& line) {
  for (const char* key : {"shape ", "place ", "cutouts ", "by ", "trim "})
    if (line.rfind(key, 0) == 0) return true;
  return false;
}

std::string after_hash(const std::string& line) {
  return line.find('#') == std::string::npos ? "" : line.substr(line.find('#'));
}

void check_text(const std::string& before, const std::string& after) {
  const auto gone = only_in(before, after), come = only_in(after, before);
  std::multiset<std::string> remarks_gone, remarks_come;
  for (const std::string& line : gone) {
    CHECK(may_change(line));
    if (!after_hash(line).empty()) remarks_gone.insert(after_hash(line));
  }
  for (const std::string& line : come) {
    CHECK(may_change(line));
    if (!after_hash(line).empty()) remarks_come.insert(after_hash(line));
  }
  CHECK(remarks_gone == remarks_come);
}

int count(const FitAnswer& fit, Verdict verdict) {
  int n = 0;
  for (const auto& c : fit.contacts) n += c.verdict == verdict;
  for (const auto& c : fit.clashes) n += c.verdict == verdict;
  for (const auto& c : fit.clearances) n += c.verdict == verdict;
  for (const auto& c : fit.covered) n += c.verdict == verdict;
  return n;
}

// How often each verdict came out.
struct Score {
  int fits = 0, cannot_tell = 0, does_not_fit = 0, changed = 0, drawn_fits = 0;
};

void adapt_one(int seed, Score& score) {
  INFO("seed " << seed);
  Random random(seed);
  const MeasuredRoom room = measured(random_room(random), 100);
  REQUIRE(room.complete);
  const std::string text = design_for(seed);
  const AdaptAnswer answer = adapted(room, text);
  const auto design = parse_design(answer.draft.text, "design.toml");
  REQUIRE(design.has_value());
  const FitAnswer again = fit({room.survey, *design, room.room, room.draws, 0.95, true});
  const FitAnswer drawn =
      fit({room.survey, *parse_design(text, "d"), room.room, room.draws, 0.95, true});
  CHECK(again.verdict == answer.fit.verdict);
  CHECK(count(again, Verdict::does_not_fit) == static_cast<int>(answer.contradictions.size()));
  CHECK(count(again, Verdict::cannot_tell) == static_cast<int>(answer.open.size()));
  CHECK(count(again, Verdict::does_not_fit) <= count(drawn, Verdict::does_not_fit));
  for (const Contradiction& c : answer.contradictions) CHECK(!c.against.empty());
  CHECK(settled_by_brute_force(room, *design, again) == "");
  check_text(text, answer.draft.text);
  CHECK(adapted(room, answer.draft.text).draft.text == answer.draft.text);
  score.fits += again.verdict == Verdict::fits;
  score.cannot_tell += again.verdict == Verdict::cannot_tell;
  score.does_not_fit += again.verdict == Verdict::does_not_fit;
  score.changed += !answer.changes.empty();
  score.drawn_fits += drawn.verdict == Verdict::fits;
}

Score adapt_rooms(int first, int count) {
  Score score;
  for (int seed = first; seed < first + count; ++seed) adapt_one(seed, score);
  return score;
}

}  // namespace

TEST_CASE("adapt: in a score of rooms the adapted design fits or says why not", "[property]") {
  const Score score = adapt_rooms(1, 20);
  CAPTURE(score.fits, score.cannot_tell, score.does_not_fit, score.changed, score.drawn_fits);
  CHECK(score.drawn_fits == 0);  // the panel has no notch
  CHECK(score.changed == 20);
  CHECK(score.fits > 0);
  CHECK(score.fits + score.cannot_tell >= 18);
}

TEST_CASE("adapt: in a hundred rooms the adapted design fits or says why not",
          "[property][.full]") {
  const Score score = adapt_rooms(1000, 100);
  CAPTURE(score.fits, score.cannot_tell, score.does_not_fit, score.changed, score.drawn_fits);
  CHECK(score.fits + score.cannot_tell >= 90);
}

TEST_CASE("adapt: in three hundred rooms the adapted design fits or says why not",
          "[property][.full]") {
  const Score score = adapt_rooms(2000, 300);
  CAPTURE(score.fits, score.cannot_tell, score.does_not_fit, score.changed, score.drawn_fits);
  CHECK(score.fits + score.cannot_tell >= 270);
}

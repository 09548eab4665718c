// Boards and sheets: everything placed, nothing overlaps, waste told as it is.
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "shop/boards.h"
#include "shop/sheets.h"

using namespace nook;
using Catch::WithinAbs;

namespace {

// The fewest boards of one length that hold some sticks, by trying every way to share them out.
int fewest_boards(const std::vector<double>& sticks, double board, size_t next,
                  std::vector<double> left) {
  if (next == sticks.size()) return static_cast<int>(left.size());
  int fewest = 1000;
  for (size_t k = 0; k <= left.size(); ++k) {
    std::vector<double> then = left;
    if (k == left.size()) then.push_back(board + kKerf);
    if (then[k] < sticks[next] + kKerf - 1e-9) continue;
    then[k] -= sticks[next] + kKerf;
    fewest = std::min(fewest, fewest_boards(sticks, board, next + 1, then));
  }
  return fewest;
}

bool apart(const LaidPanel& a, const LaidPanel& b) {
  const double gap = kKerf - 1e-6;
  return a.x + a.width + gap <= b.x || b.x + b.width + gap <= a.x || a.y + a.length + gap <= b.y ||
         b.y + b.length + gap <= a.y;
}

}  // namespace

TEST_CASE("boards: each stick on one board, a kerf between, at most 11/9 of the fewest + 1",
          "[property]") {
  // First fit decreasing needs at most 11/9 OPT + 6/9 boards (Dosa 2007, from memory).
  const unsigned seed = 9;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> length(200, 1500);
  for (int i = 0; i < 30; ++i) {
    std::vector<Stick> sticks;
    std::vector<double> lengths;
    for (int k = 0; k < 7; ++k) {
      lengths.push_back(length(random));
      sticks.push_back({std::to_string(k), lengths.back()});
    }
    const BoardPlan plan = lay_on_boards(sticks, {2438.4});
    size_t laid = 0;
    for (const BoardCut& board : plan.boards) {
      laid += board.sticks.size();
      CHECK(board.used() <= board.length + 1e-6);
    }
    CHECK(laid == sticks.size());
    const int fewest = fewest_boards(lengths, 2438.4, 0, {});
    CHECK(static_cast<int>(plan.boards.size()) <= (11 * fewest + 6) / 9);
  }
}

TEST_CASE("boards: two halves of a board do not come off it - the kerf is missing") {
  CHECK(lay_on_boards({{"a", 1219.2}, {"b", 1219.2}}, {2438.4}).boards.size() == 2);
  CHECK(lay_on_boards({{"a", 1217}, {"b", 1217}}, {2438.4}).boards.size() == 1);
}

TEST_CASE("boards: each is as short as is sold, and what is too long is told") {
  const BoardPlan plan = lay_on_boards({{"a", 1500}, {"b", 1000}, {"c", 3000}}, {1829, 2438.4});
  REQUIRE(plan.boards.size() == 2);
  CHECK(plan.boards[0].length == 1829);
  CHECK(plan.too_long.size() == 1);
  CHECK_THAT(plan.waste(), WithinAbs(1 - 2500 / 3658.0, 1e-9));
  CHECK(lay_on_boards({{"a", 1500}}, {}).too_long.size() == 1);
}

TEST_CASE("sheets: nothing overlaps, all lies on the sheet, every panel is laid once",
          "[property]") {
  const unsigned seed = 4;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> across(150, 1200), along(150, 2430);
  for (int i = 0; i < 40; ++i) {
    std::vector<Panel> panels;
    for (int k = 0; k < 12; ++k)
      panels.push_back({std::to_string(k), across(random), along(random)});
    const SheetPlan plan = lay_on_sheets(panels, 1219.2, 2438.4);
    size_t laid = 0;
    double used = 0;
    for (const auto& sheet : plan.sheets)
      for (size_t a = 0; a < sheet.size(); ++a) {
        ++laid;
        used += sheet[a].width * sheet[a].length;
        CHECK((sheet[a].x >= 0 && sheet[a].x + sheet[a].width <= 1219.2 + 1e-6));
        CHECK((sheet[a].y >= 0 && sheet[a].y + sheet[a].length <= 2438.4 + 1e-6));
        for (size_t b = a + 1; b < sheet.size(); ++b) CHECK(apart(sheet[a], sheet[b]));
      }
    CHECK(laid == panels.size());
    CHECK(plan.too_large.empty());
    CHECK_THAT(plan.waste(), WithinAbs(1 - used / (plan.sheets.size() * 1219.2 * 2438.4), 1e-9));
  }
}

TEST_CASE("sheets: a panel is turned only where it does not go on along the grain") {
  const SheetPlan along = lay_on_sheets({{"a", 1000, 1200}}, 1219.2, 2438.4);
  CHECK_FALSE(along.sheets[0][0].turned);
  const SheetPlan turned = lay_on_sheets({{"a", 2000, 1000}}, 1219.2, 2438.4);
  CHECK(turned.sheets[0][0].turned);
  CHECK(lay_on_sheets({{"a", 1300, 1300}}, 1219.2, 2438.4).too_large.size() == 1);
}

TEST_CASE("sheets: two panels that fill a sheet need the kerf between them") {
  CHECK(lay_on_sheets({{"a", 609.6, 2400}, {"b", 609.6, 2400}}, 1219.2, 2438.4).sheets.size() == 2);
  CHECK(lay_on_sheets({{"a", 608, 2400}, {"b", 608, 2400}}, 1219.2, 2438.4).sheets.size() == 1);
}

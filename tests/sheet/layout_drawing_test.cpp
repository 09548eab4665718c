// The words on panels laid out on a sheet.
#include "sheet/layout_drawing.h"

#include <catch2/catch.hpp>
#include <map>

using namespace nook;

namespace {

// A sheet of 1250 x 2500 mm with panels that are wide, square, upright and too small for words.
SheetPlan plan() {
  SheetPlan plan;
  plan.width = 1250, plan.length = 2500;
  plan.sheets = {{{"front panel", 0, 0, 1225, 426},
                  {"seat strip", 0, 430, 1194, 130},
                  {"divider", 0, 600, 400, 420},
                  {"shelf", 800, 700, 300, 1500},
                  {"plug", 500, 900, 60, 60}}};
  return plan;
}

// How many pieces of text a panel has, and how many of them lie inside it.
struct Words {
  int all = 0, inside = 0;
};
std::map<std::string, Words> words_on(const SheetPlan& plan, const Drawing& drawing) {
  std::map<std::string, Words> found;
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes)
      for (const LaidPanel& panel : plan.sheets[0]) {
        const auto* text = std::get_if<Text>(&shape.form);
        if (!text || shape.name != "label " + panel.part) continue;
        const PageBox words = box_on_page(*text);
        Words& of = found[panel.part];
        ++of.all;
        of.inside += words.low.x >= panel.y && words.high.x <= panel.y + panel.length &&
                     words.low.y >= panel.x && words.high.y <= panel.x + panel.width;
      }
  return found;
}

}  // namespace

TEST_CASE("layout: each panel's words lie on it, turned where it stands upright") {
  const SheetPlan laid = plan();
  const Rounding mm = usual_rounding(Unit::mm);
  const Drawing drawing = layout_drawing(laid, 0, "ply", {180, 230, 4}, mm);
  auto words = words_on(laid, drawing);
  CHECK(words["front panel"].all == 2);  // the size under the name
  CHECK(words["front panel"].inside == 2);
  CHECK(words["seat strip"].inside == 1);
  CHECK(words["divider"].inside == words["divider"].all);
  CHECK(words["shelf"].all == 1);
  CHECK(words["shelf"].inside == 1);
  CHECK(words["plug"].all == 1);  // told beside it
  CHECK(words["plug"].inside == 0);
}

TEST_CASE("layout: where the usual type has no room the words are smaller, not beside the panel") {
  // A panel of 22 1/2 in on a page as wide as a phone.
  SheetPlan laid;
  laid.length = 2438.4, laid.width = 1219.2;
  laid.sheets = {{{"shelf", 0, 0, 571.5, 577.85}}};
  const Rounding inches = usual_rounding(Unit::inch);
  const Drawing drawing = layout_drawing(laid, 0, "ply", {120, 230, 4}, inches);
  auto words = words_on(laid, drawing);
  CHECK(words["shelf"].all == 2);
  CHECK(words["shelf"].inside == 2);
}

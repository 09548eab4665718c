// Full-size templates measured back from the printed page.
#include "sheet/template.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "base/length.h"
#include "sheet/draft.h"
#include "sheet/full_size.h"
#include "sheet/paper.h"
#include "sheet/pixels.h"
#include "sheet/tool.h"

using namespace nook;

namespace {

Vec2 in(double u, double v) {
  return {inches(u).mm, inches(v).mm};
}

PieceView notched_panel() {
  PieceView piece;
  piece.name = "front panel";
  piece.outline = {in(0.8125, 0), in(37.25, 0), in(37.25, 84),
                   in(0, 84),     in(0, 5.5),   in(0.8125, 5.5)};
  piece.notches = {{{in(0, 0), in(0.8125, 0), in(0.8125, 5.5), in(0, 5.5)}, "left wall baseboard"}};
  Cutout porthole;
  porthole.name = "porthole";
  porthole.centre = in(11, 25);
  porthole.diameter = inches(6.5);
  for (int k = 0; k < 180; ++k) {
    const Direction turn = direction(degrees(2.0 * k));
    porthole.outline.push_back(in(11 + 3.25 * turn.cos, 25 + 3.25 * turn.sin));
  }
  piece.cutouts = {porthole};
  return piece;
}

// A page with the layers of that name only, its lines made solid to measure.
Drawing only(Drawing page, const std::string& layer) {
  std::erase_if(page.layers, [&](const Layer& l) { return l.name != layer; });
  for (DrawnShape& shape : page.layer(layer).shapes)
    if (auto* line = std::get_if<Polyline>(&shape.form)) line->line = LineKind::thin;
  return page;
}

PageBox ink_of(const Drawing& page) {
  const TestFolder folder;
  return nook::ink_of(folder.write("page.pdf", pdf({page}, "page")), 1);
}

// Where each register mark lies in the drawing's own frame, by the page's shift.
std::map<std::string, std::vector<Vec2>> register_marks(const std::vector<Drawing>& pages) {
  std::map<std::string, std::vector<Vec2>> marks;
  for (const Drawing& page : pages)
    for (const Layer& layer : page.layers)
      for (const DrawnShape& shape : layer.shapes)
        if (const auto* circle = std::get_if<Circle>(&shape.form);
            circle && layer.name == "register marks")
          marks[shape.name].push_back(circle->centre);
  return marks;
}

}  // namespace

TEST_CASE("template: measured back at 300 dpi - notch, porthole and bars are true within 0.2 mm",
          "[reference]") {
  const PaperSize paper = GENERATE(PaperSize::letter, PaperSize::a4);
  const std::vector<Drawing> templates = templates_of(notched_panel(), usual_rounding(Unit::inch));
  REQUIRE(templates.size() == 2);
  for (const Drawing& full : templates) REQUIRE(template_pages(full, paper).size() == 1);
  const Drawing notch = template_pages(templates[0], paper)[0];
  const Drawing porthole = template_pages(templates[1], paper)[0];
  const double pen = 0.18;  // the width of a thin line, half on each side
  const PageBox cut = ink_of(only(notch, "cut away"));
  CHECK(cut.width() - pen == Approx(inches(0.8125).mm).margin(0.2));
  CHECK(cut.height() - pen == Approx(inches(5.5).mm).margin(0.2));
  const PageBox hole = ink_of(only(porthole, "cutout"));
  CHECK(hole.width() - 0.35 == Approx(inches(6.5).mm).margin(0.2));
  CHECK(hole.height() - 0.35 == Approx(inches(6.5).mm).margin(0.2));
}

TEST_CASE("template: measured back at 300 dpi - the check bars are 4 in and 100 mm long") {
  const Drawing page = template_pages(templates_of(notched_panel(), usual_rounding(Unit::inch))[0],
                                      PaperSize::letter)[0];
  for (const auto& [words, length] : {std::pair{"4 in", 101.6}, std::pair{"100 mm", 100.0}}) {
    Drawing bare = only(page, "check bars");
    std::erase_if(bare.layer("check bars").shapes,
                  [&](const DrawnShape& shape) { return shape.name.rfind(words, 0) != 0; });
    REQUIRE(bare.layer("check bars").shapes.size() == 1);
    const PageBox bar = ink_of(bare);
    CHECK(bar.width() == Approx(length).margin(0.2));
  }
}

TEST_CASE("template: round cutouts of one size share a template that says where each of them is") {
  PieceView piece = notched_panel();
  Cutout second = piece.cutouts[0], larger = piece.cutouts[0];
  second.name = "second porthole", second.centre = in(26, 25);
  larger.name = "hatch", larger.centre = in(18, 60), larger.diameter = inches(9.5);
  piece.cutouts.push_back(second);
  piece.cutouts.push_back(larger);
  const std::vector<Drawing> templates = templates_of(piece, usual_rounding(Unit::inch));
  REQUIRE(templates.size() == 3);
  CHECK(templates[1].title == "front panel: porthole, second porthole");
  CHECK(templates[2].title == "front panel: hatch");
  // What is said stands whole on one of the pages.
  for (const PaperSize paper : {PaperSize::letter, PaperSize::a4})
    for (const char* words : {"center 11\"", "center 26\""}) {
      bool found = false;
      for (const Drawing& page : template_pages(templates[1], paper))
        for (const Text& text : texts_of(page))
          found |= text.words.find(words) != std::string::npos;
      INFO(words);
      CHECK(found);
    }
}

TEST_CASE("template: a notch in a wild edge is measured on the finished piece and on the blank") {
  PieceView piece = notched_panel();
  piece.blank = {in(-0.5, 0), in(37.25, 0), in(37.25, 84), in(-0.5, 84)};
  const Drawing notch = templates_of(piece, usual_rounding(Unit::inch))[0];
  std::vector<std::string> words;
  for (const Text& text : texts_of(notch)) words.push_back(text.words);
  for (const char* wanted : {"13/16\"", "1 5/16\"", "5 1/2\"", "left edge of the blank",
                             "bottom edge of the blank", "cut away"}) {
    INFO(wanted);
    CHECK(std::count(words.begin(), words.end(), wanted) == 1);
  }
  REQUIRE(template_pages(notch, PaperSize::letter).size() == 1);
}

TEST_CASE("template: one larger than a page is tiled, and every join's marks meet") {
  const PaperSize paper = GENERATE(PaperSize::letter, PaperSize::a4);
  Draft draft = drafted_at(1, {}, usual_rounding(Unit::mm));
  draft.drawing.title = "big";
  draft.drawing.add("outline",
                    Polyline{{{0, 0}, {420, 0}, {400, 500}, {10, 480}}, true, LineKind::normal},
                    "outline");
  const Drawing full = finished(std::move(draft));
  const Tiling tiling = tiling_of(full, paper);
  const std::vector<Drawing> pages = template_pages(full, paper);
  REQUIRE(static_cast<int>(pages.size()) == tiling.pages());
  CHECK(tiling.columns >= 2);
  CHECK(tiling.rows >= 2);
  // Each mark twice, on the same spot of the drawing.
  std::map<std::string, std::vector<Vec2>> spots;
  for (int i = 0; i < tiling.pages(); ++i) {
    const PageBox seen = tiling.seen(i / tiling.columns, i % tiling.columns);
    for (const auto& [name, at] : register_marks({pages[i]}))
      for (Vec2 p : at) spots[name].push_back(p + seen.low);
  }
  CHECK(spots.size() ==
        2u * (tiling.rows * (tiling.columns - 1) + tiling.columns * (tiling.rows - 1)));
  for (const auto& [name, at] : spots) {
    INFO(name);
    REQUIRE(at.size() == 2);
    CHECK(norm(at[0] - at[1]) < 1e-9);
  }
}

TEST_CASE("template: the tiles together show every bit of the outline once or more") {
  Draft draft = drafted_at(1, {}, usual_rounding(Unit::mm));
  draft.drawing.add("outline",
                    Polyline{{{0, 0}, {420, 0}, {400, 500}, {10, 480}}, true, LineKind::normal});
  const Drawing full = finished(std::move(draft));
  const Tiling tiling = tiling_of(full, PaperSize::letter);
  double length = 0;
  for (int row = 0; row < tiling.rows; ++row)
    for (int column = 0; column < tiling.columns; ++column) {
      // Windows without overlap partition the drawing: their clipped lengths must add up.
      PageBox cell = tiling.seen(row, column);
      if (row + 1 < tiling.rows) cell.low.y += kTileOverlap;
      if (column + 1 < tiling.columns) cell.high.x -= kTileOverlap;
      for (const Layer& layer : clipped(full, cell).layers)
        for (const DrawnShape& shape : layer.shapes) {
          const auto& line = std::get<Polyline>(shape.form).points;
          for (std::size_t i = 0; i + 1 < line.size(); ++i) length += norm(line[i + 1] - line[i]);
        }
    }
  const double whole = 420 + std::hypot(20, 500) + std::hypot(390, 20) + std::hypot(10, 480);
  CHECK(length == Approx(whole).margin(1e-6));
}

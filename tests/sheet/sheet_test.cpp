// Whole sheets of the sample jobs: pages, files, and what must never stand on a wall's page.
#include "sheet/sheet_set.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <regex>
#include <sstream>

#include "sheet/assembly.h"
#include "sheet/cutting_sheet.h"
#include "sheet/drill_text.h"
#include "sheet/elevation.h"
#include "sheet/installing_sheet.h"
#include "sheet/measuring_sheet.h"
#include "sheet/pages.h"
#include "sheet/piece_view.h"
#include "sheet/sample_job.h"
#include "sheet/tool.h"
#include "sheet/wall_page.h"
#include "solid/polygon.h"
#include "source_dir.h"

using namespace nook;

namespace {

// All words of a section, in order; pictures by the words in them.
std::vector<std::string> words_of(const SheetSection& section) {
  std::vector<std::string> words{section.heading};
  for (const SheetBlock& block : section.blocks) {
    if (const auto* w = std::get_if<SheetWords>(&block)) words.push_back(w->words);
    if (const auto* l = std::get_if<SheetList>(&block))
      words.insert(words.end(), l->items.begin(), l->items.end());
    if (const auto* t = std::get_if<SheetTable>(&block)) {
      words.insert(words.end(), t->heads.begin(), t->heads.end());
      for (const auto& row : t->rows) words.insert(words.end(), row.begin(), row.end());
    }
    if (const auto* f = std::get_if<SheetFigure>(&block))
      for (const Text& text : texts_of(f->draw({180, 100, 4}))) words.push_back(text.words);
  }
  return words;
}

// What ezdxf finds in each DXF file of a job's sheets.
std::map<std::string, nlohmann::json> read_dxfs(const SampleJob& sample) {
  const TestFolder folder;
  std::vector<std::string> names;
  std::string paths;
  for (const SheetFile& file : sheet_files(sample.job(), true))
    if (file.name.ends_with(".dxf")) {
      names.push_back(file.name);
      paths += " " + folder.write(file.name, file.bytes);
    }
  std::istringstream lines(
      output_of("/usr/bin/python3 " NOOKFIT_SOURCE_DIR "/tests/sheet/read_dxf.py" + paths));
  std::map<std::string, nlohmann::json> read;
  std::string line;
  for (const std::string& name : names)
    if (std::getline(lines, line)) read[name] = nlohmann::json::parse(line);
  return read;
}

bool has_circle(const nlohmann::json& read, const Cutout& cutout) {
  const auto& circles = read["circles"];
  return std::any_of(circles.begin(), circles.end(), [&](const auto& circle) {
    return circle["layer"] == "CUTOUTS" &&
           std::abs(circle["centre"][0].template get<double>() - cutout.centre->x) < 1e-6 &&
           std::abs(circle["centre"][1].template get<double>() - cutout.centre->y) < 1e-6 &&
           std::abs(circle["radius"].template get<double>() - cutout.diameter->mm / 2) < 1e-6;
  });
}

// The page's x of a named circle's center or line's first point.
std::optional<double> x_of(const Drawing& drawing, const std::string& name) {
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes) {
      if (shape.name != name) continue;
      if (const auto* circle = std::get_if<Circle>(&shape.form)) return circle->centre.x;
      if (const auto* line = std::get_if<Polyline>(&shape.form)) return line->points.front().x;
    }
  return std::nullopt;
}

// Whether something stands to the right of it on its line.
bool beside(const std::vector<Text>& texts, std::size_t mark) {
  return std::any_of(texts.begin(), texts.end(), [&](const Text& text) {
    return std::abs(text.at.y - texts[mark].at.y) < 0.1 && text.at.x > texts[mark].at.x;
  });
}

int walls_of(const SampleJob& sample) {
  return static_cast<int>(sample.job().scene.room.walls.size());
}

}  // namespace

TEST_CASE("sheets: on paper - all words inside the margins, none over another, a wall on one page",
          "[release]") {
  const SampleJob& sample = sample_of(GENERATE("lookout", "window-bench", "corner-desk"));
  for (const Sheet& sheet : sample.sheets()) {
    const std::vector<Drawing> pages = pages_of(sheet);
    for (std::size_t p = 0; p < pages.size(); ++p) {
      INFO(sheet.title << ", page " << p + 1);
      CHECK(pages[p].extent.width() == size_of(sheet.paper).x);
      const std::vector<Text> texts = texts_of(pages[p]);
      for (std::size_t i = 0; i < texts.size(); ++i) {
        INFO(texts[i].words);
        const PageBox box = box_on_page(texts[i]);
        CHECK(box.low.x >= 5);
        CHECK(box.high.x <= size_of(sheet.paper).x - 5);
        CHECK(box.low.y >= 5);
        CHECK(box.high.y <= size_of(sheet.paper).y - 5);
        if (texts[i].words == "\xE2\x80\xA2") CHECK(beside(texts, i));
        for (std::size_t j = i + 1; j < texts.size(); ++j) {
          INFO("and " << texts[j].words);
          CHECK_FALSE(overlap(box, box_on_page(texts[j])));
        }
      }
    }
  }
  for (int wall = 0; wall < walls_of(sample); ++wall)
    if (const auto page = wall_page(sample.job(), wall)) {
      Sheet alone{"wall", "Wall", {*page}};
      INFO(page->heading);
      CHECK(pages_of(alone).size() == 1);
    }
}

TEST_CASE("wall page: no decimals in an inch job, no 1/32 on framing, no chance, no statistics") {
  const SampleJob& sample = sample_of("lookout");
  SheetJob job = sample.job();
  job.style.rounding.step = inches(1.0 / 32);
  for (int wall = 0; wall < walls_of(sample); ++wall) {
    const auto page = wall_page(job, wall);
    REQUIRE(page);
    for (const std::string& words : words_of(*page)) {
      INFO(words);
      CHECK_FALSE(std::regex_search(words, std::regex("[0-9]\\.[0-9]")));
      CHECK_FALSE(std::regex_search(words, std::regex("\\bsd\\b|\\bchance\\b|\\bx-|\\by-|origin")));
    }
  }
  // Only the plus-or-minus of a measured gap or diagonal may be finer than framing.
  const auto page = wall_page(job, 0);
  for (const SheetBlock& block : page->blocks)
    if (const auto* table = std::get_if<SheetTable>(&block))
      for (const auto& row : table->rows)
        for (const std::string& cell : row) CHECK(cell.find("/32") == std::string::npos);
}

TEST_CASE("wall page: numbers stand before cautions, and say along and up from a line") {
  const SampleJob& sample = sample_of("lookout");
  const auto page = wall_page(sample.job(), 0);
  REQUIRE(page);
  std::size_t table = 0, list = 0;
  for (std::size_t i = 0; i < page->blocks.size(); ++i) {
    if (std::holds_alternative<SheetTable>(page->blocks[i])) table = i;
    if (std::holds_alternative<SheetList>(page->blocks[i])) list = i;
  }
  CHECK(table > 0);
  if (list > 0) CHECK(list > table);
  for (const auto& row : std::get<SheetTable>(page->blocks[table]).rows) {
    CHECK(std::regex_match(row[1], std::regex("[0-9 /]+ (left|right)|on the line")));
    CHECK(std::regex_match(row[2], std::regex("[0-9 /]+ (up|down)|on the line")));
  }
  CHECK(page->heading == "LEFT WALL, as you face it; its corner is on the right");
}

TEST_CASE("wall page: what its table calls left lies left of the plumb line in its picture") {
  const SampleJob& sample = sample_of(GENERATE("lookout", "window-bench", "corner-desk"));
  int compared = 0;
  for (int wall = 0; wall < walls_of(sample); ++wall) {
    const auto page = wall_page(sample.job(), wall);
    if (!page) continue;
    const Drawing picture = elevation_of_work(sample.job().scene, wall, {180, 95, 4});
    const std::optional<double> line = x_of(picture, "plumb line");
    for (const SheetBlock& block : page->blocks)
      if (const auto* table = std::get_if<SheetTable>(&block))
        for (const auto& row : table->rows) {
          const auto hole = x_of(picture, "hole " + row[0].substr(0, row[0].find(' ')));
          INFO(page->heading << ", hole " << row[0] << ": " << row[1]);
          REQUIRE(hole);
          if (!row[1].ends_with("left") && !row[1].ends_with("right")) continue;
          REQUIRE(line);
          CHECK((*hole < *line) == row[1].ends_with("left"));
          ++compared;
        }
  }
  CHECK(compared >= 2);
}

TEST_CASE("sheets: the same job gives the same bytes") {
  const SampleJob first("corner-desk"), second("corner-desk");
  const std::vector<SheetFile> a = sheet_files(first.job(), true),
                               b = sheet_files(second.job(), true);
  REQUIRE(a.size() == b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    INFO(a[i].name);
    CHECK(a[i].name == b[i].name);
    CHECK(a[i].bytes == b[i].bytes);
  }
}

TEST_CASE("sheets: DXF through ezdxf - every outline is the cutting list's to 1e-6 mm",
          "[release]") {
  const SampleJob& sample = sample_of(GENERATE("lookout", "window-bench", "corner-desk"));
  const std::map<std::string, nlohmann::json> drawn = read_dxfs(sample);
  for (const CutPiece& piece : sample.job().cut->pieces) {
    const std::string name = "piece-" + file_name(piece.part) + ".dxf";
    INFO(name);
    REQUIRE(drawn.count(name) == 1);
    const nlohmann::json& read = drawn.at(name);
    CHECK(read["errors"].empty());
    const auto& lines = read["polylines"];
    const auto outline = std::find_if(lines.begin(), lines.end(),
                                      [](const auto& line) { return line["layer"] == "OUTLINE"; });
    REQUIRE(outline != lines.end());
    REQUIRE((*outline)["points"].size() == piece.outline.size());
    for (std::size_t i = 0; i < piece.outline.size(); ++i) {
      CHECK((*outline)["points"][i][0].get<double>() == Approx(piece.outline[i].x).margin(1e-6));
      CHECK((*outline)["points"][i][1].get<double>() == Approx(piece.outline[i].y).margin(1e-6));
    }
    for (const Cutout& cutout : cut_view(sample.job().scene, piece).cutouts)
      if (cutout.diameter) CHECK(has_circle(read, cutout));
  }
}

TEST_CASE("sheets: a notch's template takes away just what the finished outline lacks") {
  const SampleJob& sample = sample_of(GENERATE("lookout", "window-bench", "corner-desk"));
  int notches = 0;
  for (const CutPiece& piece : sample.job().cut->pieces) {
    const PieceView view = cut_view(sample.job().scene, piece);
    for (const PieceNotch& notch : view.notches) {
      INFO(piece.part << ", " << notch.around);
      ++notches;
      // In the outline, where it is a square one, stands its inner corner; its middle is no wood.
      const PageBox box = box_round(notch.polygon);
      CHECK_FALSE(contains({view.outline, {}}, 0.5 * (box.low + box.high)));
      double nearest = 1e300;
      for (Vec2 p : view.outline)
        for (Vec2 q : notch.polygon) nearest = std::min(nearest, norm(p - q));
      CHECK(nearest < 0.5);
    }
  }
  CHECK(notches >= 1);
}

TEST_CASE("sheets: what goes in behind something is dashed over it") {
  const JobScene& scene = sample_of("lookout").job().scene;
  const std::vector<InstallStep> steps = steps_of(scene);
  const auto dashed = [&](int count) {
    std::vector<std::string> names;
    for (const Layer& layer : assembly(scene, count, {58, 75, 4}).layers)
      if (layer.name == "hidden")
        for (const DrawnShape& shape : layer.shapes) names.push_back(shape.name);
    return names;
  };
  for (std::size_t s = 0; s < steps.size(); ++s) {
    INFO(steps[s].name);
    const bool behind = steps[s].name == "front cleat" || steps[s].name == "side cleat";
    CHECK(dashed(static_cast<int>(s) + 1) ==
          (behind ? std::vector<std::string>{steps[s].name} : std::vector<std::string>{}));
  }
}

TEST_CASE("sheets: figures abreast stand in one row and keep to their columns") {
  const auto box = [](const Canvas& canvas) {
    Draft draft = drafted_at(1, canvas, {});
    draft.drawing.title = "a box";
    draft.drawing.add("box", Polyline{{{0, 0}, {canvas.width, 20}}, false, LineKind::normal},
                      "box");
    return finished(std::move(draft));
  };
  Sheet sheet{"boxes", "Boxes", {{"Four", {}}}};
  for (int k = 0; k < 4; ++k) sheet.sections[0].blocks.push_back(SheetFigure{box, 30, 3});
  CHECK(abreast(sheet.sections[0].blocks, 0) == 3);
  CHECK(abreast(sheet.sections[0].blocks, 3) == 1);
  const std::vector<Drawing> pages = pages_of(sheet);
  REQUIRE(pages.size() == 1);
  std::vector<PageBox> boxes;
  for (const Layer& layer : pages[0].layers)
    for (const DrawnShape& shape : layer.shapes)
      if (shape.name == "box") boxes.push_back(box_on_page(shape));
  REQUIRE(boxes.size() == 4);
  for (int k = 0; k + 1 < 3; ++k) {
    CHECK(boxes[k].high.x < boxes[k + 1].low.x);
    CHECK(boxes[k].low.y == Approx(boxes[k + 1].low.y));
  }
  CHECK(boxes[3].high.y < boxes[0].low.y);
  CHECK(boxes[3].low.x == Approx(boxes[0].low.x));
}

TEST_CASE("sheets: every SVG is valid XML with title and description", "[release]") {
  const SampleJob& sample = sample_of(GENERATE("lookout", "window-bench", "corner-desk"));
  const TestFolder folder;
  std::string all;
  for (const SheetFile& file : sheet_files(sample.job(), true))
    if (file.name.ends_with(".svg")) {
      CHECK(file.bytes.find("<title ") != std::string::npos);
      CHECK(file.bytes.find("<desc ") != std::string::npos);
      all += " " + folder.write(file.name, file.bytes);
    }
  REQUIRE_FALSE(all.empty());
  output_of("xmllint --noout" + all);
}

TEST_CASE("sheets: a room that is not known yet has a measuring sheet only") {
  const SampleJob& sample = sample_of("lookout");
  const std::vector<SheetFile> files = sheet_files(sample.job(), false);
  REQUIRE(files.size() == 2);
  CHECK(files[0].name == "measuring.html");
  CHECK(files[1].name == "measuring.pdf");
}

TEST_CASE("sheets: file names hold letters, digits and hyphens only") {
  CHECK(file_name("front panel") == "front-panel");
  CHECK(file_name("../../etc/passwd") == "etc-passwd");
  CHECK(file_name("Gro\xC3\x9F & Klein!") == "gro-klein");
  CHECK(file_name("///") == "unnamed");
}

TEST_CASE("sheets: what to mind at holes bored on the bench stands on both sheets") {
  const SampleJob& sample = sample_of("corner-desk");
  std::vector<std::string> installing, cutting;
  for (const SheetSection& section : installing_sheet(sample.job()).sections)
    for (const std::string& words : words_of(section)) installing.push_back(words);
  for (const SheetSection& section : cutting_sheet(sample.job()).sections)
    for (const std::string& words : words_of(section)) cutting.push_back(words);
  const auto stands = [](const std::vector<std::string>& all, const std::string& words) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& line) {
      return line.find(words) != std::string::npos;
    });
  };
  const auto lines = bench_warnings(sample.job().drill().parts);
  REQUIRE_FALSE(lines.empty());
  for (const std::string& line : lines) {
    INFO(line);
    CHECK(stands(installing, line));
    CHECK(stands(cutting, line.substr(line.find(": "))));
  }
}

TEST_CASE("sheets: pieces bored alike share one table of their screws") {
  int tables = 0;
  for (const SheetSection& section : installing_sheet(sample_of("lookout").job()).sections)
    for (const SheetBlock& block : section.blocks)
      if (const auto* table = std::get_if<SheetTable>(&block))
        if (table->caption.find("flag it") != std::string::npos &&
            table->caption.find("ladder rail") == 0) {
          ++tables;
          CHECK(table->caption.find("ladder rail 1, ladder rail 2: bit") == 0);
        }
  CHECK(tables == 1);
}

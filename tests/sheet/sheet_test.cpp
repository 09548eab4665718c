// Whole sheets of the sample jobs: pages, files, and what must never stand on a wall's page.
#include "sheet/sheet_set.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <regex>

#include "sheet/cutting_sheet.h"
#include "sheet/installing_sheet.h"
#include "sheet/measuring_sheet.h"
#include "sheet/pages.h"
#include "sheet/sample_job.h"
#include "sheet/tool.h"
#include "sheet/wall_page.h"
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
  const std::vector<SheetFile> files = sheet_files(sample.job(), true);
  const TestFolder folder;
  for (const CutPiece& piece : sample.job().cut->pieces) {
    const std::string name = "piece-" + file_name(piece.part) + ".dxf";
    INFO(name);
    const auto file = std::find_if(files.begin(), files.end(),
                                   [&](const SheetFile& f) { return f.name == name; });
    REQUIRE(file != files.end());
    const auto read = nlohmann::json::parse(
        output_of("/usr/bin/python3 " + std::string(NOOKFIT_SOURCE_DIR) +
                  "/tests/sheet/read_dxf.py " + folder.write(name, file->bytes)));
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
  }
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

// Sheets opened in a browser: phone, desktop, paper.
#include "sheet/browser.h"

#include <catch2/catch.hpp>
#include <regex>

#include "sheet/html.h"
#include "sheet/sample_job.h"
#include "sheet/tool.h"

using namespace nook;

namespace {

// Words of a page of a PDF with their boxes, in points.
struct Word {
  double left, top, right, bottom;
  std::string words;
};
std::vector<std::vector<Word>> words_of(const std::string& pdf_file, double& width,
                                        double& height) {
  const std::string text = output_of("pdftotext -bbox " + pdf_file + " -");
  std::vector<std::vector<Word>> pages;
  const std::regex line(
      "<page width=\"([0-9.]+)\" height=\"([0-9.]+)\"|<word xMin=\"([-0-9.]+)\" "
      "yMin=\"([-0-9.]+)\" xMax=\"([-0-9.]+)\" "
      "yMax=\"([-0-9.]+)\">([^<]*)<");
  for (std::sregex_iterator it(text.begin(), text.end(), line), end; it != end; ++it) {
    const std::smatch& m = *it;
    if (m[1].matched) {
      width = std::stod(m[1]), height = std::stod(m[2]);
      pages.emplace_back();
    } else {
      pages.back().push_back(
          {std::stod(m[3]), std::stod(m[4]), std::stod(m[5]), std::stod(m[6]), m[7]});
    }
  }
  return pages;
}

// The page on which all these words stand in a row; -1 where none has them.
int page_with(const std::vector<std::vector<Word>>& pages, const std::vector<std::string>& row) {
  for (std::size_t p = 0; p < pages.size(); ++p)
    for (std::size_t i = 0; i + row.size() <= pages[p].size(); ++i) {
      bool all = true;
      for (std::size_t k = 0; k < row.size(); ++k) all &= pages[p][i + k].words == row[k];
      if (all) return static_cast<int>(p);
    }
  return -1;
}

// The page with the rules for paper in force on the screen.
std::string as_on_paper(std::string page) {
  for (const auto& [from, to] :
       {std::pair{"@media screen", "@media none"}, std::pair{"@media print", "@media all"}})
    for (std::size_t at = 0; (at = page.find(from, at)) != std::string::npos; at += 1)
      page.replace(at, std::string(from).size(), to);
  return page;
}

void check_clean(const std::string& name, const nlohmann::json& page) {
  INFO(name << ": " << page["width"] << " px, " << page.dump(1).substr(0, 2000));
  CHECK(page["scroll_width"] <= page["width"]);
  CHECK(page["wide"].empty());
  CHECK(page["overlaps"].empty());
  CHECK(page["outside"].empty());
  CHECK(page["headings"] >= 3);
  CHECK(page["texts"] >= 20);
}

}  // namespace

TEST_CASE("sheets: in a browser at 390 and 1280 px - nothing overflows, no words cover each other",
          "[release]") {
  const std::string name = GENERATE("lookout", "window-bench", "corner-desk");
  const SampleJob& sample = sample_of(name);
  std::vector<std::string> pages;
  for (const Sheet& sheet : sample.sheets()) pages.push_back(html(sheet));
  const nlohmann::json found = laid_out(pages, {390, 1280});
  REQUIRE(found.size() == 2 * pages.size());
  for (const auto& page : found) check_clean(name, page);
}

TEST_CASE("sheets: on paper between its margins - nothing overflows, no words cover each other",
          "[release]") {
  const std::string name = GENERATE("lookout", "window-bench", "corner-desk");
  std::vector<std::string> pages;
  for (const Sheet& sheet : sample_of(name).sheets()) pages.push_back(as_on_paper(html(sheet)));
  constexpr int kBetweenMargins = 702;  // CSS px of A4 less 2 x 12 mm; letter has more
  for (const auto& page : laid_out(pages, {kBetweenMargins})) check_clean(name, page);
}

TEST_CASE("sheets: the browser's measure finds what overflows, overlaps and sticks out",
          "[release]") {
  const std::string svg =
      "<svg viewBox='0 0 100 50' width='100' height='50'>"
      "<text x='10' y='20' dy='.365em' font-size='10'>first</text>"
      "<text x='15' y='22' dy='.365em' font-size='10'>second</text>"
      "<text x='90' y='40' dy='.365em' font-size='10'>outside</text></svg>";
  const std::string faulty = "<!doctype html><body style='margin:0'><main><h1>a</h1>" + svg +
                             "<p style='width:900px'>wide</p></main></body>";
  const nlohmann::json found = laid_out({faulty}, {390});
  REQUIRE(found.size() == 1);
  CHECK(found[0]["scroll_width"] > found[0]["width"]);
  CHECK_FALSE(found[0]["wide"].empty());
  CHECK(found[0]["overlaps"].size() == 1);
  CHECK(found[0]["outside"].size() == 1);
}

TEST_CASE("sheets: the browser's console is heard", "[release]") {
  CHECK(heard("<!doctype html><script>console.error('broken')</script>").find("broken") !=
        std::string::npos);
  CHECK(heard("<!doctype html><p>all well</p>").empty());
}

TEST_CASE("sheets: printed by a browser - all words on the page, a wall's page on one side",
          "[release]") {
  const std::string name = GENERATE("lookout", "window-bench", "corner-desk");
  const SampleJob& sample = sample_of(name);
  for (const Sheet& sheet : sample.sheets()) {
    const TestFolder folder;
    double width = 0, height = 0;
    const auto pages = words_of(
        printed(folder.write("sheet.html", html(sheet)), folder / "sheet.pdf"), width, height);
    REQUIRE_FALSE(pages.empty());
    for (std::size_t p = 0; p < pages.size(); ++p)
      for (const Word& word : pages[p]) {
        INFO(name << ", " << sheet.name << ", page " << p + 1 << ": " << word.words);
        CHECK(word.left >= 0);
        CHECK(word.right <= width);
        CHECK(word.top >= 0);
        CHECK(word.bottom <= height);
      }
    if (sheet.name != "installing") continue;
    const int left = page_with(pages, {"LEFT", "WALL,", "as", "you", "face", "it;"});
    const int right = page_with(pages, {"RIGHT", "WALL,", "as", "you", "face", "it;"});
    INFO(name << ": left wall on page " << left << ", right wall on page " << right);
    CHECK(left >= 1);
    CHECK(right >= left + 1);
    CHECK(right <= left + 2);  // an alcove has its back wall between them
  }
}

// Widths of words, against the font itself as it is printed.
#include "sheet/text_width.h"

#include <catch2/catch.hpp>
#include <regex>

#include "sheet/paper.h"
#include "sheet/tool.h"

using namespace nook;

TEST_CASE("text width: the printed font - a word is as wide as foretold", "[reference]") {
  const bool bold = GENERATE(false, true);
  const std::string word =
      GENERATE("41-3/8\"", "MMMMiiii", "leftledger", "W\xC3\xA4nde\xC2\xB1", "(Q@#%&)[]{}");
  Drawing page;
  page.extent = {{0, 0}, {300, 50}};
  page.add("words", Text{{10, 20}, word, 10, Align::start, 0, bold});
  const TestFolder folder;
  const std::string file = folder.write("page.pdf", pdf({page}, "width"));
  const std::string boxes = output_of("pdftotext -bbox " + file + " -");
  std::smatch box;
  REQUIRE(std::regex_search(boxes, box, std::regex("xMin=\"([0-9.]+)\".*xMax=\"([0-9.]+)\"")));
  const double printed = (std::stod(box[2]) - std::stod(box[1])) * 25.4 / 72;
  INFO(word << ", bold " << bold);
  // The PDF rounds each advance to 1/1000 of the em.
  CHECK(width_of(word, 10, bold) == Approx(printed).margin(0.001 * 10 * word.size()));
}

TEST_CASE("text width: lines stay within the width and lose no word", "[property]") {
  const std::string text =
      "Hold it plumb, touching at 36, and set the scribers to 9/16 extraordinarily";
  for (double width : {8.0, 20.0, 33.0, 80.0, 500.0}) {
    INFO(width);
    std::string joined;
    for (const std::string& line : lines_within(text, 4, width)) {
      CHECK(width_of(line, 4) <= width);
      joined += line;
    }
    const auto bare = [](std::string s) {
      std::erase(s, ' ');
      return s;
    };
    CHECK(bare(joined) == bare(text));
  }
}

TEST_CASE("text width: a letter outside the table counts as a whole em", "[reference]") {
  CHECK(width_of("\xE2\x80\x94", 10) == Approx(10));
}

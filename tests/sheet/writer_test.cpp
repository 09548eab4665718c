// What the writers write, read back by other programs.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "sheet/draft.h"
#include "sheet/dxf.h"
#include "sheet/paper.h"
#include "sheet/pixels.h"
#include "sheet/svg.h"
#include "sheet/tool.h"
#include "source_dir.h"

using namespace nook;

namespace {

Drawing awkward() {
  Drawing drawing;
  drawing.name = "awkward";
  drawing.title = "A <title> & \"more\" \x01 here";
  drawing.description = "It's 41 3/8\" \xC2\xB1 1/16\"";
  drawing.scale = 0.1;
  drawing.extent = {{-50, -20}, {1000, 800}};
  const Region region{{{0, 0}, {700.123456789, 0}, {650, 400.000000123}, {0, 333}},
                      {{{100, 100}, {100, 150}, {150, 150}}}};
  drawing.add("panel <1>", Patch{region, Paint::wood, LineKind::heavy}, "front & panel");
  drawing.add("panel <1>", Circle{{300, 200}, 117.475, Paint::none, LineKind::dashed}, "porthole");
  drawing.add("words",
              Text{{10, 700}, "caf\xC3\xA9 <b> 3/8\" \xE2\x80\xB3", 40, Align::middle, 30, true});
  drawing.add("line", Polyline{{{0, 500}, {1e-9, 510.5}, {900, 777}}, false, LineKind::dash_dot});
  return drawing;
}

}  // namespace

TEST_CASE("SVG: xmllint - valid XML with title and description") {
  const TestFolder folder;
  const std::string file = folder.write("awkward.svg", svg(awkward()));
  output_of("xmllint --noout " + file);
  CHECK(output_of("xmllint --xpath \"string(//*[local-name()='title'])\" " + file) ==
        "A <title> & \"more\" \xEF\xBF\xBD here\n");
  CHECK(output_of("xmllint --xpath \"string(//*[local-name()='desc'])\" " + file) ==
        "It's 41 3/8\" \xC2\xB1 1/16\"\n");
}

TEST_CASE("DXF: ezdxf - every outline comes back to 1e-6 mm") {
  const TestFolder folder;
  const std::string file = folder.write("awkward.dxf", dxf(awkward()));
  const auto read = nlohmann::json::parse(
      output_of("/usr/bin/python3 " NOOKFIT_SOURCE_DIR "/tests/sheet/read_dxf.py " + file));
  CHECK(read["version"] == "AC1009");
  CHECK(read["errors"].empty());
  const Region region = std::get<Patch>(awkward().layers[0].shapes[0].form).region;
  const auto same = [&](const nlohmann::json& line, const Polygon& outline) {
    CHECK(line["closed"] == true);
    CHECK(line["layer"] == "PANEL__1_");
    REQUIRE(line["points"].size() == outline.size());
    for (std::size_t i = 0; i < outline.size(); ++i) {
      CHECK(line["points"][i][0].get<double>() == Approx(outline[i].x).margin(1e-6));
      CHECK(line["points"][i][1].get<double>() == Approx(outline[i].y).margin(1e-6));
    }
  };
  REQUIRE(read["polylines"].size() == 3);
  same(read["polylines"][0], region.outline);
  same(read["polylines"][1], region.holes[0]);
  CHECK(read["polylines"][2]["closed"] == false);
  REQUIRE(read["circles"].size() == 1);
  CHECK(read["circles"][0]["radius"].get<double>() == Approx(117.475).margin(1e-6));
  REQUIRE(read["texts"].size() == 1);
  CHECK(read["texts"][0]["words"] == "caf\xC3\xA9 <b> 3/8\" \xE2\x80\xB3");
}

TEST_CASE("PDF: the same drawings give the same bytes, without today's date") {
  const std::string first = pdf({awkward(), awkward()}, "twice"),
                    second = pdf({awkward(), awkward()}, "twice");
  CHECK(first == second);
  CHECK(first.starts_with("%PDF-"));
  const TestFolder folder;
  const std::string about = output_of("pdfinfo -rawdates " + folder.write("twice.pdf", first));
  CHECK_THAT(about, Catch::Contains("20000101000000Z"));
  CHECK_THAT(about, Catch::Contains("Pages:           2"));
  CHECK_THAT(about, Catch::Contains("Title:           twice"));
}

TEST_CASE("PDF: at 300 dpi - lengths are true within 0.2 mm") {
  Drawing page;
  page.scale = 0.5;
  page.extent = {{0, 0}, {420, 594}};
  page.add("bar", Patch{region_of({{40, 60}, {240, 80}}), Paint::ink, LineKind::none});
  const TestFolder folder;
  const PageBox ink = ink_of(folder.write("bar.pdf", pdf({page}, "bar")), 1);
  CHECK(ink.low.x == Approx(20).margin(0.1));
  CHECK(ink.high.x == Approx(120).margin(0.1));
  CHECK(ink.low.y == Approx(30).margin(0.1));
  CHECK(ink.high.y == Approx(40).margin(0.1));
}

TEST_CASE("PNG: pngs have the size asked for and the same bytes every time") {
  const std::string bytes = png(awkward(), 2);
  CHECK(bytes == png(awkward(), 2));
  CHECK(bytes.substr(1, 3) == "PNG");
  const auto word = [&](std::size_t at) {
    return static_cast<unsigned char>(bytes[at + 2]) * 256 +
           static_cast<unsigned char>(bytes[at + 3]);
  };
  CHECK(word(16) == 210);  // IHDR: width, height
  CHECK(word(20) == 164);
}

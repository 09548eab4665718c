// Walls as one faces them: nothing mirrored, nothing overlapping.
#include "sheet/elevation.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <regex>

#include "sheet/assembly.h"
#include "sheet/plan.h"
#include "sheet/profile.h"
#include "sheet/sample_scene.h"
#include "sheet/svg.h"

using namespace nook;

namespace {

constexpr Canvas kPaper{180, 200, 4}, kPhone{94, 150, 3.4};

// The page's x of a named circle or of a named path's first point, in real mm, from the SVG's text.
double x_of(const std::string& text, const std::string& name) {
  std::smatch found;
  const std::regex circle("<circle class=\"[^\"]*\" cx=\"([-0-9.]+)\"[^>]*data-name=\"" + name +
                          "\"");
  const std::regex path("d=\"M([-0-9.]+) [^>]*data-name=\"" + name + "\"");
  INFO(name);
  const bool there = std::regex_search(text, found, circle) || std::regex_search(text, found, path);
  REQUIRE(there);
  const double at = std::stod(found[1]);
  REQUIRE(std::regex_search(text, found, std::regex("data-scale=\"([0-9.]+)\"")));
  return at / std::stod(found[1]);
}

std::vector<Drawing> all_drawings(const JobScene& scene, const Canvas& canvas) {
  std::vector<Drawing> all{plan(scene, canvas), plan_made_large(scene, canvas),
                           assembled(scene, canvas)};
  for (int wall = 0; wall < static_cast<int>(scene.room.walls.size()); ++wall) {
    all.push_back(elevation(scene, wall, canvas));
    all.push_back(where_measured(scene, wall, canvas));
    all.push_back(profile(scene, wall, canvas));
  }
  for (int step = 1; step <= static_cast<int>(steps_of(scene).size()); ++step)
    all.push_back(assembly(scene, step, canvas));
  return all;
}

}  // namespace

TEST_CASE("elevation: the left wall's corner stands at the right-hand end") {
  const SampleScene sample;
  const std::string text = svg(elevation(sample.scene(), 0, kPaper));
  const double corner = x_of(text, "corner");
  // Further from the corner is further to the left, by as much as the wall says.
  CHECK(corner - x_of(text, "hole 1") == Approx(inches(15.125).mm).margin(3));
  CHECK(corner - x_of(text, "hole 5") == Approx(inches(45).mm).margin(3));
  CHECK(corner - x_of(text, "stud 2 near edge") == Approx(inches(31.375 - 0.75).mm).margin(3));
  CHECK(corner - x_of(text, "outlet") > inches(72).mm - 3);
  CHECK(x_of(text, "hole 1") - x_of(text, "hole 5") == Approx(inches(29.875).mm).margin(1));
}

TEST_CASE("elevation: the right wall's corner stands at the left-hand end") {
  const SampleScene sample;
  const std::string text = svg(elevation(sample.scene(), 1, kPaper));
  const double corner = x_of(text, "corner");
  CHECK(x_of(text, "hole 1") - corner == Approx(inches(8).mm).margin(5));
  CHECK(x_of(text, "hole 2") - x_of(text, "hole 1") == Approx(inches(16).mm).margin(1));
  CHECK(x_of(text, "vent") > corner + inches(60).mm - 5);
}

TEST_CASE("plan: the left wall runs to the left of the corner, the right wall below it") {
  const SampleScene sample;
  const std::string text = svg(plan(sample.scene(), kPaper));
  CHECK(x_of(text, "outlet") > x_of(text, "switch"));
  CHECK(x_of(text, "vent") > x_of(text, "outlet"));
}

TEST_CASE("drawings: no two texts overlap, all lie on the page, on paper and phone") {
  const Canvas canvas = GENERATE(kPaper, kPhone);
  const SampleScene sample;
  for (const Drawing& drawing : all_drawings(sample.scene(), canvas)) {
    INFO(drawing.name << " on " << canvas.width << " mm");
    CHECK_FALSE(drawing.title.empty());
    CHECK_FALSE(drawing.description.empty());
    const std::vector<Text> texts = texts_of(drawing);
    for (std::size_t i = 0; i < texts.size(); ++i) {
      const PageBox box = box_on_page(texts[i]);
      CHECK(box.low.x >= drawing.extent.low.x);
      CHECK(box.high.x <= drawing.extent.high.x);
      for (std::size_t j = i + 1; j < texts.size(); ++j) {
        INFO(texts[i].words << " and " << texts[j].words);
        CHECK_FALSE(overlap(box, box_on_page(texts[j])));
      }
    }
    CHECK(drawing.extent.width() * drawing.scale <= 1.02 * canvas.width);
  }
}

TEST_CASE("elevation: found and inferred studs, sure and unsure holes are drawn differently") {
  const SampleScene sample;
  const Drawing drawing = elevation(sample.scene(), 0, kPaper);
  int shaded = 0, dashed = 0, filled = 0, open = 0;
  for (const Layer& layer : drawing.layers)
    for (const DrawnShape& shape : layer.shapes) {
      const auto* strip = std::get_if<Patch>(&shape.form);
      const auto* edge = std::get_if<Polyline>(&shape.form);
      const auto* hole = std::get_if<Circle>(&shape.form);
      if (layer.name == "studs" && strip) ++shaded;
      if (layer.name == "studs" && edge && edge->line == LineKind::dashed) ++dashed;
      if (layer.name == "holes" && hole) ++(hole->paint == Paint::ink ? filled : open);
    }
  CHECK(shaded == 3);
  CHECK(dashed == 2 * 3);
  CHECK(filled == 4);
  CHECK(open == 1);
}

TEST_CASE("plan made large: its factor keeps the faults on the page") {
  const SampleScene sample;
  const int factor = factor_made_large(sample.room);
  CHECK(factor == 10);  // 1.4 degrees: 20 times would be 28
  const Drawing drawing = plan_made_large(sample.scene(), kPaper);
  CHECK_THAT(drawing.title, Catch::Contains("10 times"));
  const std::vector<Text> texts = texts_of(drawing);
  CHECK(std::any_of(texts.begin(), texts.end(),
                    [](const Text& t) { return t.words == "errors 10 times"; }));
}

TEST_CASE("out of square: an open corner of 91.4 degrees is 7/8 in 36") {
  const Rounding inch = usual_rounding(Unit::inch);
  CHECK(out_of_square({91.4, 0.1}, inch) == "open 7/8\" in 36\", give or take 1/8\"");
  CHECK(out_of_square({88.6, 0.1}, inch) == "closed 7/8\" in 36\", give or take 1/8\"");
  CHECK(out_of_square({90.01, 0.001}, inch) == "square");
  CHECK(out_of_square({91, 0.05}, usual_rounding(Unit::mm)) ==
        "open 16 mm in 900 mm, give or take 2 mm");
}

TEST_CASE("out of square: what the give or take covers may be square") {
  // 0.3 degrees are 4.7 mm in 900 mm.
  CHECK(out_of_square({89.7, 0.16}, usual_rounding(Unit::mm)) == "may be square");
  CHECK(out_of_square({90.3, 0.16}, usual_rounding(Unit::mm)) == "may be square");
  CHECK(out_of_square({89.7, 0.15}, usual_rounding(Unit::mm)) ==
        "closed 5 mm in 900 mm, give or take 5 mm");
}

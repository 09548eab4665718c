// Published networks of distances as marks and spans: tests/reference/<author-year>/source.md.
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>

#include "source_dir.h"
#include "survey/adjustment.h"
#include "survey_builder.h"

using namespace nook;
using nook::test::SurveyBuilder;
using Json = nlohmann::json;

namespace {

constexpr double kStored = 2e-6;  // relative; the fixed span is not quite exact
constexpr double kSlips = 2e-5;   // the stored slips take 4.1321 for 4.13215

struct Published {
  std::string folder;
  double mm_per_metre;  // brings the net to room size
};

Json network(const Published& published) {
  std::ifstream file(std::string(NOOKFIT_SOURCE_DIR) + "/tests/reference/" + published.folder +
                     "/network.json");
  REQUIRE(file);
  return Json::parse(file);
}

// Two fixed points are a span between them that is known almost exactly.
Survey survey_of(const Json& net, double scale) {
  SurveyBuilder b(std::vector<std::string>{});
  std::vector<Json> fixed;
  for (const Json& point : net["points"]) {
    b.mark_named(point["name"]);
    if (point["fixed"]) fixed.push_back(point);
  }
  for (const Json& d : net["distances"]) {
    b.sd = millimetres(double(d["sigma"]) * scale);
    b.span(d["from"], d["to"], {double(d["value"]) * scale});
  }
  if (fixed.size() == 2) {
    b.sd = millimetres(1e-6);
    b.span(fixed[0]["name"], fixed[1]["name"],
           {std::hypot(double(fixed[0]["x"]) - double(fixed[1]["x"]),
                       double(fixed[0]["y"]) - double(fixed[1]["y"])) *
            scale});
  }
  return b.survey;
}

Vec2 place(const Json& net, const std::string& name) {
  for (const Json& point : net["points"])
    if (point["name"] == name && point["fixed"]) return {point["x"], point["y"]};
  const Json& at = net["expected"]["coords"][name];
  return {at["x"], at["y"]};
}

// A-priori variance of a distance from the stored covariance of the coordinates.
double distance_sd(const Json& net, const std::string& a, const std::string& b) {
  const Json& expected = net["expected"];
  const Vec2 way = place(net, b) - place(net, a);
  const Vec2 unit = (1 / norm(way)) * way;
  std::map<std::string, double> slope{
      {a + ".x", -unit.x}, {a + ".y", -unit.y}, {b + ".x", unit.x}, {b + ".y", unit.y}};
  double sum = 0;
  const auto& names = expected["unknown_order"];
  for (std::size_t i = 0; i < names.size(); ++i)
    for (std::size_t j = 0; j < names.size(); ++j)
      sum += slope[names[i]] * slope[names[j]] * double(expected["covariance_a_posteriori"][i][j]);
  return std::sqrt(sum) / double(expected["sigma0_ratio"]);
}

std::vector<std::string> names_of(const Json& net) {
  std::vector<std::string> names;
  for (const Json& point : net["points"]) names.push_back(point["name"]);
  return names;
}

}  // namespace

TEST_CASE("published networks: distances, their sds, redundancy, w and least slips",
          "[reference]") {
  const Published published = GENERATE(Published{"benning-2011", 5}, Published{"ghilani-2010", 1},
                                       Published{"strang-borre-1997", 20});
  const double scale = published.mm_per_metre;
  const Json net = network(published);
  const Adjustment adjusted = adjust(survey_of(net, scale));
  INFO(published.folder);
  REQUIRE(adjusted.complete());
  const RoomReport& report = adjusted.report();

  SECTION("every reading") {
    const Json& residuals = net["expected"]["residuals"];
    for (std::size_t i = 0; i < residuals.size(); ++i) {
      const Json& expected = residuals[i];
      const ReadingReport& reading = report.readings[i];
      INFO(expected["from"] << " " << expected["to"]);
      CHECK(reading.residual_mm / scale == Approx(double(expected["v"])).epsilon(1e-5));
      CHECK(reading.redundancy == Approx(double(expected["redundancy_number"])).epsilon(kStored));
      REQUIRE(reading.w);
      CHECK(*reading.w == Approx(double(expected["w"])).epsilon(1e-5));
      CHECK(*reading.smallest_slip_mm / scale ==
            Approx(double(expected["least_slip"])).epsilon(kSlips));
    }
  }
  SECTION("the global test") {
    CHECK(report.dof == net["expected"]["redundancy"]);
    CHECK(report.chi2 == Approx(double(net["expected"]["chi2"])).epsilon(1e-5));
  }
  SECTION("distances between all marks, with their a-priori sds") {
    const auto names = names_of(net);
    for (std::size_t i = 0; i < names.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) {
        const auto found = adjusted.expected_span(names[i], names[j]);
        REQUIRE(found);
        INFO(names[i] << " " << names[j]);
        const double distance = norm(place(net, names[i]) - place(net, names[j]));
        CHECK(found->value / scale == Approx(distance).margin(1e-6));
        CHECK(found->sd / scale ==
              Approx(distance_sd(net, names[i], names[j])).epsilon(1e-4).margin(1e-6));
      }
  }
}

// Overlaps, clearances and covered edges: the figure, and what to do that is as large as it lacks.
#include <catch2/catch.hpp>

#include "sheet/fit_text.h"

using namespace nook;
using Catch::Contains;

namespace {

constexpr double kIn = kMillimetresPerInch;

Finding only(const FitAnswer& fit) {
  const std::vector<Finding> found = fit_findings(fit, Style{});
  REQUIRE(found.size() == 1);
  return found[0];
}

Finding clash(double depth, double most) {
  FitAnswer fit;
  fit.clashes.push_back(
      {0, "shelf", "post", depth * kIn, 0, most * kIn, {}, 0, Verdict::does_not_fit});
  return only(fit);
}

Finding clearance(double least, double needed, Verdict verdict) {
  FitAnswer fit;
  fit.clearances.push_back({0, "ladder", "left wall", least * kIn, 0, needed * kIn, 0, verdict});
  return only(fit);
}

Finding covered(double margin, double needed, Verdict verdict) {
  FitAnswer fit;
  fit.covered.push_back({0, 0, "deck", "front panel", margin * kIn, 0, needed * kIn, 0, verdict});
  return only(fit);
}

}  // namespace

TEST_CASE("fit findings: an overlap is told with its depth, down to what a tape does not tell") {
  CHECK(clash(0.25, 0.3).what == "they overlap by 1/4\"");
  CHECK_THAT(clash(0.25, 0.3).next, Contains("by that much"));
  CHECK(clash(0, 0.125).what == "they touch, and may overlap by up to 1/8\"");
  CHECK(clash(0, 0.01).what == "they touch, and may bind by less than 1/16\"");
}

TEST_CASE("fit findings: what a clearance lacks is the way to move") {
  const Finding near = clearance(0.5, 0.75, Verdict::does_not_fit);
  CHECK(near.what == "1/2\" clear; 3/4\" is wanted");
  CHECK(near.next == "move it 1/4\" away");
  CHECK(clearance(0.74, 0.75, Verdict::does_not_fit).next ==
        "move it a hair further away, less than the tape tells");
  CHECK_THAT(clearance(0.75, 0.75, Verdict::cannot_tell).next, Contains("one more reading"));
  CHECK(clearance(1, 0.75, Verdict::fits).next.empty());
}

TEST_CASE("fit findings: a clearance that nobody asks for is told only where it does not fit") {
  FitAnswer fit;
  fit.clearances.push_back({0, "ladder", "left wall", kIn, 0, 0, 1, Verdict::fits});
  CHECK(fit_findings(fit, Style{}).empty());
}

TEST_CASE(
    "fit findings: an edge that shows wants a larger cover, by what shows and what is wanted") {
  const Finding shows = covered(-0.25, 0.125, Verdict::does_not_fit);
  CHECK(shows.what == "its edge shows by 1/4\"; 1/8\" is wanted");
  CHECK_THAT(shows.next, Contains(" larger there by 3/8\", or move one of the two"));
  CHECK(covered(0.25, 0.125, Verdict::fits).what == "covered by 1/4\"; 1/8\" is wanted");
  CHECK_THAT(covered(0.125, 0.125, Verdict::cannot_tell).next, Contains("it may show"));
}

// Nets of marks: first places from distances alone must lead to the best adjustment there is.
#include <catch2/catch.hpp>
#include <cmath>

#include "survey/adjustment.h"
#include "survey/mark_places.h"
#include "survey/solution.h"
#include "true_room.h"

using namespace nook;
using namespace nook::test;

namespace {

std::string name(int i) {
  return "m" + std::to_string(i);
}

struct Net {
  std::vector<Vec2> at;
  std::vector<Tie> ties;  // true distances
};

// Each mark is tied to at least three others before it: rigid, though hardly redundant.
Net random_net(int count, double more, Random& random) {
  Net net;
  for (int i = 0; i < count; ++i) net.at.push_back({even(random, 0, 4000), even(random, 0, 3000)});
  for (int i = 0; i < count; ++i)
    for (int j = 0, needed = std::min(i, 3); j < i; ++j) {
      const bool must = i - j <= needed;
      if (must || even(random, 0, 1) < more)
        net.ties.push_back({i, j, norm(net.at[i] - net.at[j])});
    }
  return net;
}

Survey survey_of(const Net& net, double sd, Random& random) {
  SurveyBuilder b(std::vector<std::string>{});
  b.sd = millimetres(sd);
  for (int i = 0; i < static_cast<int>(net.at.size()); ++i) b.mark_named(name(i));
  for (const Tie& tie : net.ties)
    b.span(name(tie.a), name(tie.b), {tie.distance + sd * gaussian(random)});
  return b.survey;
}

// The sum of squares from the true places on.
double chi2_from_truth(const Survey& survey, const Net& net) {
  RoomModel model = room_model(std::make_shared<Survey>(survey), 0, 0);
  for (int i = 0; i < static_cast<int>(net.at.size()); ++i) {
    model.unknowns[model.point.at(name(i))].start = net.at[i].x;
    model.unknowns[model.point.at(name(i)) + 1].start = net.at[i].y;
  }
  return solve(model, rows_in_use(model), first_state(model)).linear->chi2();
}

}  // namespace

TEST_CASE("nets of marks: the best adjustment is found from distances alone", "[property]") {
  const std::uint64_t seed = 31;
  INFO("seed " << seed);
  Random random(seed);
  int worse = 0, nets = 0;
  for (int i = 0; i < 60; ++i) {
    const int count = 4 + i % 8;
    const Net net = random_net(count, i % 3 == 0 ? 0.0 : 0.4, random);
    const Survey survey = survey_of(net, 1, random);
    const Adjustment adjusted = adjust(survey);
    ++nets;
    worse += adjusted.report().chi2 > chi2_from_truth(survey, net) + 1e-6;
  }
  INFO(worse << " of " << nets << " nets are worse than from the true places");
  CHECK(worse == 0);
}

namespace {

// Nets whose adjustment fits worse than the truth does: it stopped at a wrong fold.
int folded_wrong(int nets) {
  Random random(33);
  int worse = 0;
  for (int i = 0; i < nets; ++i) {
    const Net net = random_net(4 + i % 9, i % 3 == 0 ? 0.0 : 0.3, random);
    const Survey survey = survey_of(net, 1, random);
    worse += adjust(survey).report().chi2 > chi2_from_truth(survey, net) + 1e-6;
  }
  return worse;
}

}  // namespace

TEST_CASE("nets of marks by the hundred", "[property][release]") {
  CHECK(folded_wrong(120) <= 1);
}

TEST_CASE("nets of marks in hundreds", "[property][.full]") {
  CHECK(folded_wrong(600) <= 3);
}

TEST_CASE("a chain of two tapes: the far mark is loose, and said to be") {
  SurveyBuilder b(std::vector<std::string>{});
  b.mark_named("A").mark_named("B").mark_named("C").mark_named("D");
  b.span("A", "B", {3000}).span("B", "C", {4000}).span("A", "C", {5000}).span("C", "D", {2000});
  const Adjustment adjusted = adjust(b.survey);
  CHECK(!adjusted.complete());
  REQUIRE(adjusted.report().missing.size() == 1);
  CHECK(adjusted.report().missing[0].what ==
        "nothing says where the mark 'D' is: take one more tape to it");
  CHECK(adjusted.expected_span("A", "B"));
  CHECK(!adjusted.expected_span("A", "D"));
  const auto next = adjusted.measure_next({}, 1);
  REQUIRE(!next.empty());
  CHECK(next[0].reading.find("'D'") != std::string::npos);
}

TEST_CASE("a net that hangs on one corner may turn: no defect, its distances stand") {
  SurveyBuilder b;
  b.diagonal(0, 900, 1200, {1500});
  b.mark_named("door").mark_named("sill");
  b.span("left/right", "door", {3000})
      .span("door", "sill", {2500})
      .span("left/right", "sill", {2000});
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.complete());
  CHECK(adjusted.expected_span("door", "sill")->value == Approx(2500).margin(1e-6));
  CHECK(adjusted.expected_span("left/right", "door")->value == Approx(3000).margin(1e-6));
}

TEST_CASE("marks tied to places on both walls lie inside the room") {
  SurveyBuilder b;
  b.survey.flatness.sd = millimetres(0);
  b.sd = millimetres(0.01);
  b.diagonal(0, 900, 1200, {1500});
  for (const int wall : {0, 1}) b.level(wall, 500, 100, 1300, 0);
  b.mark_named("nail");
  const auto tie = [&](int wall, double along, double mm) {
    Span span;
    span.between[0].mark = "nail";
    span.between[1].wall = wall;
    span.between[1].along = b.reading(along, "span[" + std::to_string(wall) + "].along");
    span.is = {b.reading(mm, "span[" + std::to_string(wall) + "]")};
    b.survey.spans.push_back(span);
  };
  const Vec2 nail{1000, 700};
  tie(0, 300, std::hypot(nail.x - 300, nail.y));
  tie(1, 500, std::hypot(nail.x, nail.y - 500));
  const Adjustment adjusted = adjust(b.survey);
  REQUIRE(adjusted.complete());
  const auto found = adjusted.expected_span("left/right", "nail");
  REQUIRE(found);
  CHECK(found->value == Approx(norm(nail)).margin(1e-3));
}

TEST_CASE("unknown marks and marks apart are refused with a reason") {
  SurveyBuilder b(std::vector<std::string>{});
  b.mark_named("A").mark_named("B").mark_named("C").mark_named("D");
  b.span("A", "B", {3000}).span("C", "D", {2000});
  const Adjustment adjusted = adjust(b.survey);
  CHECK(adjusted.complete());
  CHECK(adjusted.expected_span("A", "E").error() == "no mark is called 'E'");
  CHECK(!adjusted.expected_span("A", "C"));
}

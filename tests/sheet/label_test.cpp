// Labels that never overlap, positions spread as little as may be.
#include "sheet/label.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace nook;

namespace {

// Sum of squares of how far positions are from their wishes.
double moved(const std::vector<double>& wanted, const std::vector<double>& placed) {
  double sum = 0;
  for (std::size_t i = 0; i < wanted.size(); ++i) sum += std::pow(placed[i] - wanted[i], 2);
  return sum;
}

// The same by cyclic projection on each neighbor's wish (Dykstra 1983): slow and independent.
std::vector<double> spread_slowly(std::vector<double> q, double apart) {
  std::vector<double> owed(q.size(), 0);
  for (int round = 0; round < 20000; ++round)
    for (std::size_t i = 0; i + 1 < q.size(); ++i) {
      const double a = q[i] - owed[i], b = q[i + 1] + owed[i];
      const double lack = std::max(0.0, apart - (b - a)) / 2;
      q[i] = a - lack, q[i + 1] = b + lack;
      owed[i] = -lack;
    }
  return q;
}

}  // namespace

TEST_CASE("labels: no two overlap, however crowded", "[property]") {
  const unsigned seed = GENERATE(range(1u, 9u));
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> anywhere(0, 1000);
  Draft draft = drafted_at(0.1, {100, 100, 3}, {});
  std::vector<Label> labels;
  std::vector<PageBox> taken;
  for (int i = 0; i < 60; ++i) {
    const Vec2 at{anywhere(random), anywhere(random)};
    labels.push_back({"label " + std::to_string(i), at, 1, i % 2 == 0, 0, ""});
    PageBox mark;
    mark.take_in(at);
    taken.push_back(mark.grown(8));
    draft.drawing.add("lines", Polyline{{at, {at.y, at.x}}, false, LineKind::normal});
  }
  place_labels(draft, labels, taken, {{0, 0}, {1000, 1000}});
  const std::vector<Text> texts = texts_of(draft.drawing);
  REQUIRE(texts.size() == labels.size());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    for (std::size_t j = i + 1; j < texts.size(); ++j) {
      INFO(texts[i].words << " and " << texts[j].words);
      CHECK_FALSE(overlap(box_on_page(texts[i]), box_on_page(texts[j])));
    }
    for (const PageBox& mark : taken) CHECK_FALSE(overlap(box_on_page(texts[i]), mark));
  }
}

TEST_CASE("labels: a label alone stands beside its point, without a leader") {
  Draft draft = drafted_at(0.1, {100, 100, 3}, {});
  place_labels(draft, {{"stud", {500, 500}, 1, false, 0, ""}}, {}, {{0, 0}, {1000, 1000}});
  const PageBox box = box_on_page(texts_of(draft.drawing).front());
  CHECK(box.low.x > 500);
  CHECK(box.low.x < 500 + draft.paper(3));
  for (const Layer& layer : draft.drawing.layers) CHECK(layer.name != "leaders");
}

TEST_CASE("labels: one far from its point has a leader to it") {
  Draft draft = drafted_at(0.1, {100, 100, 3}, {});
  place_labels(draft, {{"stud", {500, 500}, 1, false, 0, ""}}, {{{300, 300}, {700, 700}}},
               {{0, 0}, {1000, 1000}});
  const Layer& leaders = draft.drawing.layer("leaders");
  REQUIRE(leaders.shapes.size() == 1);
  CHECK(norm(std::get<Polyline>(leaders.shapes[0].form).points[0] - Vec2{500, 500}) ==
        Approx(draft.paper(1)));
}

TEST_CASE("spread: pool adjacent violators - as near to the wishes as the slow way", "[property]") {
  const unsigned seed = GENERATE(range(1u, 21u));
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> anywhere(0, 60);
  std::vector<double> wanted(9);
  for (double& w : wanted) w = anywhere(random);
  std::sort(wanted.begin(), wanted.end());
  const std::vector<double> placed = spread(wanted, 5, -1e9, 1e9);
  for (std::size_t i = 0; i + 1 < placed.size(); ++i) CHECK(placed[i + 1] - placed[i] >= 5 - 1e-9);
  const std::vector<double> slow = spread_slowly(wanted, 5);
  CHECK(moved(wanted, placed) == Approx(moved(wanted, slow)).epsilon(1e-4));
}

TEST_CASE("spread: bounds hold where there is room for all") {
  const std::vector<double> placed = spread({1, 2, 98, 99}, 10, 0, 100);
  CHECK(placed.front() >= 0);
  CHECK(placed.back() <= 100);
  for (std::size_t i = 0; i + 1 < placed.size(); ++i) CHECK(placed[i + 1] - placed[i] >= 10 - 1e-9);
}

TEST_CASE("labels: the name of a piece stands in its middle where the piece is high enough") {
  for (const double high : {60.0, 10.0}) {  // text of 3 paper mm at 1:10 is 30 mm
    Draft draft = drafted_at(0.1, {100, 100, 3}, {});
    const PageBox piece{{0, 0}, {800, high}};
    draft.drawing.add("piece", Patch{region_of(piece), Paint::wood, LineKind::normal});
    const Vec2 middle{400, high / 2};
    place_labels(draft, {{"left ledger", middle, 0, true, 0, "name"}}, {},
                 {{-500, -500}, {1500, 500}});
    const Layer& labels = draft.drawing.layers.back();
    REQUIRE(labels.shapes.size() == 1);
    const Text& text = std::get<Text>(labels.shapes[0].form);
    INFO("high " << high);
    CHECK((norm(text.at - middle) < 1e-9) == (high == 60));
  }
}

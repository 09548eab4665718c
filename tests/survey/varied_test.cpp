// Slopes of numbers that vary against differences of their values.
#include "survey/varied.h"

#include <catch2/catch.hpp>
#include <functional>

using namespace nook;
using Catch::WithinAbs;

namespace {

// All slopes of one index.
double slope(const Varied& number, int index) {
  double sum = 0;
  for (const Slope& s : number.slopes)
    if (s.index == index) sum += s.by;
  return sum;
}

using Formula = std::function<Varied(const Varied&, const Varied&)>;

void check(const std::string& name, const Formula& formula, double x, double y) {
  INFO(name);
  const auto at = [&](double a, double b) {
    return formula(Varied(a, {{0, 1}}), Varied(b, {{1, 1}})).value;
  };
  constexpr double kStep = 1e-6;
  const Varied number = formula(Varied(x, {{0, 1}}), Varied(y, {{1, 1}}));
  CHECK_THAT(slope(number, 0),
             WithinAbs((at(x + kStep, y) - at(x - kStep, y)) / (2 * kStep), 1e-8));
  CHECK_THAT(slope(number, 1),
             WithinAbs((at(x, y + kStep) - at(x, y - kStep)) / (2 * kStep), 1e-8));
}

}  // namespace

TEST_CASE("varied: the slopes of each operation are its differences", "[property]") {
  using V = const Varied&;
  for (const auto& [x, y] : {std::pair{0.7, 1.9}, {-1.3, 0.4}, {2.5, -3.1}}) {
    check(
        "sum", [](V a, V b) { return a + b; }, x, y);
    check(
        "difference", [](V a, V b) { return a - b; }, x, y);
    check(
        "negative", [](V a, V b) { return -(a * b); }, x, y);
    check(
        "product", [](V a, V b) { return a * b * a; }, x, y);
    check(
        "quotient", [](V a, V b) { return a / b; }, x, y);
    check(
        "sine", [](V a, V b) { return sine(a * b); }, x, y);
    check(
        "cosine", [](V a, V b) { return cosine(a + b); }, x, y);
    check(
        "tangent", [](V a, V b) { return tangent(a - b); }, x, y);
    check(
        "hypotenuse", [](V a, V b) { return hypotenuse(a, b, 0.8); }, x, y);
  }
}

TEST_CASE("varied: a right angle is exact, a length of nothing has no slope", "[reference]") {
  const Varied right(std::acos(-1.0) / 2, {{0, 1}});
  CHECK(cosine(right).value == 0);
  CHECK(sine(right).value == 1);
  CHECK(hypotenuse(Varied(0, {{0, 1}}), Varied(0, {{1, 1}})).slopes.empty());
  CHECK(hypotenuse(3, 4).value == 5);
}

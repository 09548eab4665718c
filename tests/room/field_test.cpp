// The reduced field against the kernel that it stands for.
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "room/field.h"

using namespace nook;

namespace {

double covariance(const FieldBasis& basis, Vec2 a, Vec2 b) {
  const auto at_a = basis.values(a), at_b = basis.values(b);
  double sum = 0;
  for (int k = 0; k < basis.size(); ++k)
    sum += at_a[k] * at_b[k] * basis.prior_sd()[k] * basis.prior_sd()[k];
  return sum;
}

double kernel(double reach, Vec2 a, Vec2 b) {
  const double d = norm(a - b);
  return std::exp(-d * d / (2 * reach * reach));
}

}  // namespace

TEST_CASE("field: its covariance is the squared exponential within 1e-4", "[property]") {
  const unsigned seed = 20240117;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  for (const double reach : {200.0, 400.0, 1000.0, 3000.0}) {
    const Vec2 low{-200, -200}, high{3200, 2640};
    const FieldBasis basis(low, high, reach);
    std::uniform_real_distribution<double> x(low.x, high.x), y(low.y, high.y);
    double worst = 0;
    for (int i = 0; i < 400; ++i) {
      const Vec2 a{x(random), y(random)}, b{x(random), y(random)};
      worst = std::max(worst, std::abs(covariance(basis, a, b) - kernel(reach, a, b)));
      worst = std::max(worst, std::abs(covariance(basis, a, a) - 1));
    }
    for (const Vec2 corner : {low, high, Vec2{low.x, high.y}})
      worst = std::max(worst, std::abs(covariance(basis, corner, corner) - 1));
    INFO("reach " << reach << ", " << basis.size() << " functions");
    CHECK(worst < 1e-4);
  }
}

TEST_CASE("field: sum and values are the same functions") {
  const FieldBasis basis({0, 0}, {3000, 2400}, 400);
  std::vector<double> weights(basis.size());
  for (int k = 0; k < basis.size(); ++k) weights[k] = std::sin(1.7 * k);
  const Vec2 spot{1234, 567};
  const auto values = basis.values(spot);
  double sum = 0;
  for (int k = 0; k < basis.size(); ++k) sum += weights[k] * values[k];
  CHECK(basis.sum(weights, spot) == Approx(sum).epsilon(1e-13));
  CHECK(basis.row_sum(basis.row(weights, spot.y), spot.x) == Approx(sum).epsilon(1e-12));
  CHECK(Field{}.at(spot) == 0);
}

TEST_CASE("field: beyond its rectangle it goes on as at the rectangle's edge") {
  const FieldBasis basis({0, 0}, {3000, 2400}, 400);
  CHECK(basis.values({-500, 100}) == basis.values({0, 100}));
  CHECK(basis.values({100, 9000}) == basis.values({100, 2400}));
}

TEST_CASE("field: turned end for end, odd functions along change sign") {
  const FieldBasis basis({-200, -200}, {2200, 2640}, 400);
  const auto here = basis.values({300, 900}), there = basis.values({1700, 900});
  for (int k = 0; k < basis.size(); ++k)
    CHECK(there[k] == Approx((basis.mode(k).x % 2 ? -1 : 1) * here[k]).margin(1e-15));
}

TEST_CASE("field: a reach under 200 mm is refused") {
  CHECK_THROWS(FieldBasis({0, 0}, {1000, 1000}, 199));
}

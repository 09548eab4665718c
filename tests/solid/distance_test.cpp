// Least distances of prisms: known ones, and against dense samples of both surfaces.
#include "solid/distance.h"

#include <catch2/catch.hpp>

#include "random_shapes.h"
#include "solid/cells.h"

using namespace nook;
using namespace nook::twin;
using Catch::WithinAbs;

namespace {

Mesh moved(Mesh mesh, Vec3 by) {
  for (Triangle& t : mesh)
    for (Vec3& p : t) p = p + by;
  return mesh;
}

// Points of a triangle on a grid of n steps.
std::vector<Vec3> samples(const Mesh& mesh, int n) {
  std::vector<Vec3> points;
  for (const Triangle& t : mesh)
    for (int i = 0; i <= n; ++i)
      for (int k = 0; i + k <= n; ++k)
        points.push_back(t[0] + (double(i) / n) * (t[1] - t[0]) + (double(k) / n) * (t[2] - t[0]));
  return points;
}

double sampled_distance(const Mesh& a, const Mesh& b, int n) {
  double least = 1e300;
  const std::vector<Vec3> other = samples(b, n);
  for (Vec3 p : samples(a, n))
    for (Vec3 q : other) least = std::min(least, norm(p - q));
  return least;
}

}  // namespace

TEST_CASE("distance: boxes side by side, corner to corner and touching", "[reference]") {
  const Polygon square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  const Mesh box = prism({square}, 10);
  CHECK_THAT(distance(box, moved(box, {17, 3, 2})), WithinAbs(7, 1e-12));
  CHECK_THAT(distance(box, moved(box, {13, 14, 10})), WithinAbs(5, 1e-12));
  CHECK_THAT(distance(box, moved(box, {10, 0, 0})), WithinAbs(0, 1e-12));
  CHECK_THAT(distance(box, moved(box, {5, 5, 5})), WithinAbs(0, 1e-12));
}

TEST_CASE("distance: never more than dense samples say, and not much less", "[property]") {
  Random random(9);
  for (int round = 0; round < 20; ++round) {
    INFO("round " << round);
    const Mesh a = prism({hull_of(star(random, {0, 0}, 30, 7))}, 15);
    const Mesh b = moved(prism({hull_of(star(random, {0, 0}, 30, 6))}, 8),
                         {even(random, 70, 90), even(random, -20, 20), even(random, -40, 40)});
    const double exact = distance(a, b), sampled = sampled_distance(a, b, 12);
    CHECK(exact <= sampled + 1e-9);
    CHECK(exact >= sampled - 2.5);  // the samples are up to 60 / 12 mm apart
  }
}

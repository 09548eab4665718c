// Corners by Newton's method on both surfaces.
#include "true_alcove.h"

#include <cmath>
#include <numbers>

namespace nook::test {
namespace {

Vec2 heading(double angle) {
  return {std::cos(angle), std::sin(angle)};
}

double reading(double length, double setting, double scale, Random& random) {
  const double permitted = 0.3 + 0.2 * std::ceil(length / 1000);
  return std::round(length + scale * permitted / std::sqrt(3.0) + setting * gaussian(random));
}

}  // namespace

TrueAlcove::TrueAlcove(const Kind& kind, Random& random) {
  const double right_angle = std::numbers::pi / 2, off = kind.angle_sd_deg * right_angle / 90;
  const double left = right_angle + off * gaussian(random),
               right = right_angle + off * gaussian(random);
  const Vec2 back = heading(right_angle), first = heading(right_angle - left);
  const Vec2 last = heading(-right_angle + right);
  sides[0] = {{0, 0}, first, {-first.y, first.x}, 0, {}};
  sides[1] = {{0, 0}, back, {1, 0}, 0, {}};
  sides[2] = {1800.0 * back, last, {last.y, -last.x}, 0, {}};
  for (Side& side : sides) {
    side.lean = kind.lean_sd * gaussian(random);
    side.waves = Waves(kind.flatness, kind.reach, random);
  }
}

double TrueAlcove::out(int wall, double a, double z) const {
  return sides[wall].lean * z + sides[wall].waves.at(a, z);
}

Vec2 TrueAlcove::point(int wall, double a, double z) const {
  const Side& s = sides[wall];
  return s.start + a * s.along + out(wall, a, z) * s.out;
}

std::array<double, 2> TrueAlcove::corner(int k, double z) const {
  double a = k == 0 ? 0 : 1800, b = 0;
  for (int i = 0; i < 6; ++i) {
    const double h = 1e-3;
    const Vec2 miss = point(k, a, z) - point(k + 1, b, z);
    const Vec2 da = (1 / h) * (point(k, a + h, z) - point(k, a, z));
    const Vec2 db = (-1 / h) * (point(k + 1, b + h, z) - point(k + 1, b, z));
    const double det = cross(da, db);
    a -= cross(miss, db) / det;
    b -= cross(da, miss) / det;
  }
  return {a, b};
}

Vec2 TrueAlcove::mark(int k, int wall, double along, double z) const {
  const auto at = corner(k, z);
  const double start = at[wall - k];
  const double way = wall == 1 && k == 1 ? -1 : 1;  // the back wall seen from its right corner
  const Vec2 from = point(wall, start, z);
  double a = start + way * along;
  for (int i = 0; i < 9; ++i) a += way * (along - norm(point(wall, a, z) - from));
  return point(wall, a, z);
}

double TrueAlcove::diagonal(int k, double first, double second, double z) const {
  return norm(mark(k, k, first, z) - mark(k, k + 1, second, z));
}

double TrueAlcove::back_length(double z) const {
  return norm(point(1, corner(1, z)[0], z) - point(1, corner(0, z)[1], z));
}

double TrueAlcove::across(double out_of_back, double z) const {
  return norm(mark(0, 0, out_of_back, z) - mark(1, 2, out_of_back, z));
}

Survey alcove_survey(const TrueAlcove& room, Random& random) {
  SurveyBuilder b({"left", "back", "right"});
  b.survey.tape = {TapeClass::II, millimetres(1), TapeEnd::block};
  const double scale = gaussian(random);
  const auto read = [&](double length, double setting) {
    return reading(length, setting, scale, random);
  };
  const auto diagonal = [&](int k, double first, double second) {
    const double u = 2 * first - read(first, 0.8), v = 2 * second - read(second, 0.8);
    const double straight = room.diagonal(k, u, v, 1000);
    b.diagonal(k, first, second, {read(straight, 0.3), read(straight, 0.3)});
  };
  diagonal(0, 600, 800);
  diagonal(0, 700, 500);
  diagonal(1, 800, 600);
  diagonal(1, 500, 700);
  const double back = room.back_length(1000);
  b.length(1, {read(back, 0.8), read(back, 0.8)});
  for (const double out : {300.0, 700.0}) b.across(out, read(room.across(out, 1000), 0.8));
  for (int wall = 0; wall < 3; ++wall) {
    const double start = room.corner(wall == 0 ? 0 : wall - 1, 1000)[wall == 0 ? 0 : 1];
    for (const double at : {250.0, 600.0}) {
      const double away = room.out(wall, start + at, 100) - room.out(wall, start + at, 1300);
      const double bubble = 0.6 * gaussian(random);
      b.level(wall, at, 100, 1300, read(std::abs(away) + (away > 0 ? bubble : -bubble), 0.3),
              away > 0);
    }
    std::vector<std::pair<double, double>> line;
    for (const double at : {100.0, 300.0, 500.0, 700.0})
      line.push_back({at, read(40 - room.out(wall, start + at, 1000), 0.3)});
    b.string(wall, 1000, line);
  }
  return b.survey;
}

}  // namespace nook::test

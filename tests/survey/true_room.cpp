// Random waves, corners by the secant method, readings with their errors.
#include "true_room.h"

#include <cmath>
#include <numbers>

namespace nook::test {
namespace {

constexpr double kInch = 25.4, kMark = kInch / 16, kPi = std::numbers::pi;
constexpr double kMudReach = 150;

// Every 16 in at most.
std::vector<double> spaced(double from, double to) {
  const int steps = std::max(2, static_cast<int>(std::ceil((to - from) / (16 * kInch) - 0.01)));
  std::vector<double> out;
  for (int i = 0; i <= steps; ++i) out.push_back(from + (to - from) * i / steps);
  return out;
}

double rounded(double mm) {
  return std::round(mm / kMark) * kMark;
}

}  // namespace

double even(Random& random, double low, double high) {
  return low + (high - low) * (static_cast<double>(random() >> 11) + 0.5) * 0x1p-53;
}

double gaussian(Random& random) {
  const double r = std::sqrt(-2 * std::log(even(random, 0, 1)));
  return r * std::cos(2 * kPi * even(random, 0, 1));
}

Waves::Waves(double sd, double reach, Random& random) {
  constexpr int kCount = 400;
  height_ = sd * std::sqrt(2.0 / kCount);
  for (int i = 0; i < kCount; ++i)
    waves_.push_back(
        {gaussian(random) / reach, gaussian(random) / reach, even(random, 0, 2 * kPi)});
}

double Waves::at(double a, double z) const {
  double sum = 0;
  for (const Wave& w : waves_) sum += std::cos(w.kx * a + w.ky * z + w.phase);
  return height_ * sum;
}

double TrueRoom::out(int wall, double a, double z) const {
  const double fade = std::max(0.0, 1 - std::max(a, 0.0) / kMudReach);
  return lean[wall] * z + waves[wall].at(a, z) + (a > step_at[wall] ? step[wall] : 0) + mud * fade;
}

Vec2 TrueRoom::point(int wall, double a, double z) const {
  const double o = out(wall, a, z);
  if (wall == 0) return {a, o};
  return {a * std::cos(angle) + o * std::sin(angle), a * std::sin(angle) - o * std::cos(angle)};
}

// Where `of` is zero, by the secant method from two places; surfaces are nearly flat, so a few
// steps reach the last digit.
template <class Of>
double zero_near(double a, double b, const Of& of) {
  double fa = of(a), fb = of(b);
  for (int i = 0; i < 40 && std::abs(b - a) > 1e-11 && fa != fb; ++i) {
    const double next = b - fb * (b - a) / (fb - fa);
    a = b, fa = fb;
    b = next, fb = of(b);
  }
  return b;
}

// Walk along the first wall until its surface lies in the second one's: the point's distance out of
// the second base line less the second surface there is zero.
Vec2 TrueRoom::corner(double z) const {
  const double a = zero_near(-1, 1, [&](double at) {
    const Vec2 p = point(0, at, z);
    const double along = p.x * std::cos(angle) + p.y * std::sin(angle);
    return p.x * std::sin(angle) - p.y * std::cos(angle) - out(1, along, z);
  });
  return point(0, a, z);
}

double TrueRoom::base(int wall, double along, double z) const {
  const Vec2 from = corner(z);
  const double start = wall == 0 ? from.x : from.x * std::cos(angle) + from.y * std::sin(angle);
  return zero_near(start + along - 1, start + along, [&](double a) {
    const double far = norm(point(wall, a, z) - from);
    return (a < start ? -far : far) - along;
  });
}

Vec2 TrueRoom::mark(int wall, double along, double z) const {
  return point(wall, base(wall, along, z), z);
}

double TrueRoom::diagonal(double first, double second, double z) const {
  return norm(mark(0, first, z) - mark(1, second, z));
}

TrueRoom true_room(const Kind& kind, Random& random) {
  TrueRoom room;
  room.angle = kPi / 2 + kind.angle_sd_deg * kPi / 180 * gaussian(random);
  for (int wall = 0; wall < 2; ++wall) {
    room.lean[wall] = kind.lean_sd * gaussian(random);
    room.waves[wall] = Waves(kind.flatness, kind.reach, random);
    room.step_at[wall] = even(random, 400, 1600);
    room.step[wall] = even(random, 0, 1) < 0.5 ? kind.step : -kind.step;
  }
  room.mud = kind.mud;
  return room;
}

Person::Person(const TrueRoom& room, const Kind& kind, Random& random)
    : room_(room), random_(random), scale_(gaussian(random)), stretch_(kind.tape_stretch) {}

double Person::read(double length, double setting) {
  const double permitted = 0.3 + 0.2 * std::ceil(length / 1000);  // class II
  const double tape = scale_ * permitted / std::sqrt(3.0) + stretch_ * length;
  return rounded(length + tape + setting * gaussian(random_));
}

SurveyBuilder Person::builder() const {
  SurveyBuilder b;
  b.mark = millimetres(kMark);
  b.survey.units = Unit::inch;
  b.survey.tape = {TapeClass::II, millimetres(kMark), TapeEnd::block};
  return b;
}

void Person::take_diagonal(SurveyBuilder& b, double first, double second, double z, int times) {
  // A mark laid off at a round reading stands elsewhere by the tape's errors, and stays there.
  const auto lay_off = [&](double at) { return 2 * at - read(at, 0.8); };
  const auto [place, fresh] = straight_.try_emplace({first, second, z});
  if (fresh) {
    const double u = lay_off(first), v = lay_off(second);
    place->second = room_.diagonal(u, v, z);
  }
  std::vector<double> readings;
  for (int i = 0; i < times; ++i) readings.push_back(read(place->second, 0.3));
  b.diagonal(0, first, second, readings, z);
}

void Person::take_straightedge(SurveyBuilder& b, int wall, double from, double to, double z) {
  std::vector<std::pair<double, double>> gaps;
  const auto out = [&](double at) { return room_.out(wall, room_.base(wall, at, z), z); };
  const double middle = (from + to) / 2, bow = out(middle) - (out(from) + out(to)) / 2;
  // It rests on the hump in the middle or on both ends.
  const double ends = std::max(bow, 0.0), gap = std::max(-bow, 0.0);
  gaps = {{from, read(ends, 0.3)}, {middle, read(gap, 0.3)}, {to, read(ends, 0.3)}};
  b.straightedge(wall, z, gaps);
}

void Person::take(Survey& survey, const NextReading& next) {
  SurveyBuilder b = builder();
  b.survey = std::move(survey);
  switch (next.kind) {
    case NextReading::Kind::level:
      take_level(b, next.of, next.at_mm, next.up_mm, next.to_mm);
      break;
    case NextReading::Kind::straightedge:
      take_straightedge(b, next.of, next.at_mm, next.to_mm, next.up_mm);
      break;
    case NextReading::Kind::plumb:
      take_plumb(b, next.of, next.at_mm, spaced(next.up_mm, next.to_mm));
      break;
    case NextReading::Kind::string:
      take_string(b, next.of, next.up_mm, spaced(next.at_mm, next.to_mm));
      break;
    case NextReading::Kind::drop:  // the floor is level, the line a meter above it
      b.drop(next.of, next.at_mm, next.to_mm, read(1000, 0.3));
      break;
    default:
      take_diagonal(b, next.at_mm, next.to_mm, next.up_mm, 1);
  }
  survey = std::move(b.survey);
}

void Person::take_level(SurveyBuilder& b, int wall, double at, double from, double to) {
  const double a = room_.base(wall, at, from);
  const double away = room_.out(wall, a, from) - room_.out(wall, a, to);
  const double bubble = 0.5e-3 * (to - from) * gaussian(random_);
  const bool top = away > 0;
  b.level(wall, at, from, to, read(std::abs(away) + (top ? bubble : -bubble), 0.3), top);
}

void Person::take_plumb(SurveyBuilder& b, int wall, double at, const std::vector<double>& up) {
  std::vector<std::pair<double, double>> line;
  const double a = room_.base(wall, at, up.front());
  for (const double z : up) line.push_back({z, read(60 - room_.out(wall, a, z), 0.3)});
  b.plumb(wall, at, line);
}

void Person::take_string(SurveyBuilder& b, int wall, double z, const std::vector<double>& places) {
  std::vector<std::pair<double, double>> line;
  for (const double at : places)
    line.push_back({at, read(40 + 0.004 * at - room_.out(wall, room_.base(wall, at, z), z), 0.3)});
  b.string(wall, z, line);
}

Survey Person::careful(int diagonals, int times) {
  SurveyBuilder b = builder();
  constexpr double kPairs[][2] = {{36, 48}, {60, 60}, {48, 36}, {72, 40}, {40, 72}, {24, 66}};
  for (int i = 0; i < diagonals; ++i)
    take_diagonal(b, kPairs[i][0] * kInch, kPairs[i][1] * kInch, 1000, times);
  for (int wall = 0; wall < 2; ++wall) {
    take_level(b, wall, 300, 100, 1300);
    take_level(b, wall, 1200, 100, 1300);
    take_plumb(b, wall, 700, {200, 800, 1400, 2000});
    take_string(b, wall, 1000, {100, 500, 900, 1300, 1700, 2100});
  }
  return b.survey;
}

Survey Person::nothing() {
  return builder().survey;
}

Survey Person::sparse() {
  SurveyBuilder b = builder();
  take_diagonal(b, 36 * kInch, 48 * kInch, 1000, 1);
  for (int wall = 0; wall < 2; ++wall) take_level(b, wall, 600, 100, 1300);
  return b.survey;
}

Survey careful_survey(std::uint64_t seed, int diagonals, int times) {
  Random random(seed);
  const Kind kind;
  const TrueRoom room = true_room(kind, random);
  return Person(room, kind, random).careful(diagonals, times);
}

}  // namespace nook::test

// A simulated room and a person who measures it: shares no code with the adjustment.
#pragma once

#include <array>
#include <map>
#include <random>
#include <vector>

#include "base/vector.h"
#include "room/survey.h"
#include "survey/report.h"
#include "survey_builder.h"

namespace nook::test {

using Random = std::mt19937_64;

/// N(0, 1) and even numbers, spelled out so that they are the same everywhere.
double gaussian(Random& random);
double even(Random& random, double low, double high);

/// A smooth surface made of many random waves: nearly Gaussian, mean zero.
class Waves {
 public:
  Waves() = default;
  Waves(double sd, double reach, Random& random);
  double at(double a, double z) const;

 private:
  struct Wave {
    double kx, ky, phase;
  };
  std::vector<Wave> waves_;
  double height_ = 0;
};

/// What a room is like, and how it may differ from what the adjustment takes it to be.
struct Kind {
  double flatness = 2, reach = 400;
  double lean_sd = 0.004, angle_sd_deg = 1.5;
  double step = 0;          // mm: each wall jumps by so much somewhere
  double mud = 0;           // mm: built up in the corner, fading out over 150 mm, not told
  double tape_stretch = 0;  // share: the tape is that much too short (reads long)
};

/// Two walls in plan: the first along +x, out = +y; the second at the angle from it.
struct TrueRoom {
  double angle = 0;  // rad
  std::array<double, 2> lean{};
  std::array<Waves, 2> waves;
  std::array<double, 2> step_at{}, step{};
  double mud = 0;

  /// How far wall `wall` stands out of its base line, `a` along it from the base corner.
  double out(int wall, double a, double z) const;
  Vec2 point(int wall, double a, double z) const;
  /// Where both surfaces meet.
  Vec2 corner(double z) const;
  /// The mark on a wall whose straight distance from the real corner at that height is `along`.
  Vec2 mark(int wall, double along, double z) const;
  double diagonal(double first, double second, double z) const;
  /// Base-line distance of that mark.
  double base(int wall, double along, double z) const;
};

TrueRoom true_room(const Kind& kind, Random& random);

/// A person with a tape read to 1/16 in, a block for inside corners, a 4 ft level.
class Person {
 public:
  Person(const TrueRoom& room, const Kind& kind, Random& random);

  /// Two walls with two levels, a plumb line and a string each, and `diagonals` pairs of marks,
  /// each straight taken `times` times.
  Survey careful(int diagonals, int times);
  /// The same with less: one diagonal and one level a wall.
  Survey sparse();
  /// Two walls and the tape, nothing read.
  Survey nothing();

  /// What the tape says for a true length; `setting` is the sd of setting its ends.
  double read(double length, double setting);

  void take_diagonal(SurveyBuilder& b, double first, double second, double z, int times);
  void take_level(SurveyBuilder& b, int wall, double at, double from, double to);
  void take_plumb(SurveyBuilder& b, int wall, double at, const std::vector<double>& up);
  void take_string(SurveyBuilder& b, int wall, double z, const std::vector<double>& places);
  void take_straightedge(SurveyBuilder& b, int wall, double from, double to, double z);
  /// Does what was advised.
  void take(Survey& survey, const NextReading& next);

 private:
  SurveyBuilder builder() const;

  const TrueRoom& room_;
  Random& random_;
  double scale_, stretch_;
  std::map<std::array<double, 3>, double> straight_;  // true, by marks and height as laid off
};

/// The usual kind of room, read by a careful person; the seed makes both.
Survey careful_survey(std::uint64_t seed, int diagonals, int times);

}  // namespace nook::test

// Conditioning one big normal distribution on the readings, in long double.
#include "dense_answer.h"

#include <Eigen/Dense>
#include <cmath>
#include <functional>
#include <map>
#include <numbers>

namespace nook::test {
namespace {

using Real = long double;
using Matrix = Eigen::Matrix<Real, Eigen::Dynamic, Eigen::Dynamic>;
using Vector = Eigen::Matrix<Real, Eigen::Dynamic, 1>;

struct Spot {
  int wall;
  Real a, z;
};

// Numbers of the room (angle, leans, tape, then what readings add) and the field at each spot asked
// for, in the order of asking.
struct World {
  std::vector<Real> numbers;
  std::vector<Real> field;
  std::vector<Spot> spots;

  Real out(int wall, Real a, Real z) {
    const std::size_t index = spots.size();
    spots.push_back({wall, a, z});
    if (field.size() <= index) field.resize(index + 1, 0);
    return numbers[1 + wall] * z + field[index];
  }
};

using Formula = std::function<Real(World&)>;

struct Row {
  Formula formula;
  Real value, sd;
};

struct Problem {
  const Survey& survey;
  std::vector<Real> start, prior_sd;
  std::vector<Row> rows;
  std::map<std::string, int> marks;

  int number(Real at, Real sd) {
    start.push_back(at);
    prior_sd.push_back(sd);
    return static_cast<int>(start.size()) - 1;
  }

  // Class II tape read to the smallest mark; the tape's scale is number 3.
  void add(const Reading& reading, Real setting, Formula formula, Real more = 0) {
    const Real value = reading.value.mm;
    const Real share = value == 0 ? 0 : (0.3L + 0.2L * std::ceil(value / 1000)) / std::sqrt(3.0L);
    const Real rounding = reading.smallest_mark.mm / std::sqrt(12.0L);
    rows.push_back({[=](World& w) { return formula(w) + share * w.numbers[3]; }, value,
                    std::sqrt(rounding * rounding + setting * setting + more * more)});
  }
};

struct Point {
  Real x, y;
};

// Crossing of the surfaces as straight lines, each through its point nearest the base corner.
Point corner(World& w, Real z) {
  const Real c = std::cos(w.numbers[0]), s = std::sin(w.numbers[0]);
  const Real o0 = w.out(0, 0, z), o1 = w.out(1, 0, z);
  const Real t = (o1 + o0 * c) / s;  // p = (t, o0) with p . (s, -c) = o1
  return {t, o0};
}

Real along_second(World& w, Point p) {
  return p.x * std::cos(w.numbers[0]) + p.y * std::sin(w.numbers[0]);
}

Point mark(World& w, int wall, Real from_corner, Real z, Point at) {
  if (wall == 0) {
    const Real a = at.x + from_corner;
    return {a, w.out(0, a, z)};
  }
  const Real c = std::cos(w.numbers[0]), s = std::sin(w.numbers[0]);
  const Real a = along_second(w, at) + from_corner, o = w.out(1, a, z);
  return {a * c + o * s, a * s - o * c};
}

Real straight(World& w, Real first, Real second, Real z) {
  const Point at = corner(w, z);
  const Point p = mark(w, 0, first, z, at), q = mark(w, 1, second, z, at);
  return std::hypot(p.x - q.x, p.y - q.y);
}

// Base-line distance of a reading along a wall.
Real base(World& w, int wall, Real at, Real z) {
  const Point p = corner(w, z);
  return at + (wall == 0 ? p.x : along_second(w, p));
}

constexpr Real kFree = 1e4L;  // sd of what has no prior, mm (rad): as good as none

int mark_of(Problem& p, const Reading& reading) {
  const auto found = p.marks.find(reading.id);
  if (found != p.marks.end()) return found->second;
  const int index = p.number(reading.value.mm, kFree);
  p.marks[reading.id] = index;
  const Real setting = p.survey.tape.corner == TapeEnd::bent ? 1.6L : 0.8L;
  p.add(reading, setting, [index](World& w) { return w.numbers[index]; });
  return index;
}

void add_corner(Problem& p) {
  for (const Diagonal& d : p.survey.corners[0].diagonals) {
    const int first = mark_of(p, d.first), second = mark_of(p, d.second);
    const Real z = d.height.value.mm;
    for (const Reading& reading : d.straight)
      p.add(reading, 0.3L,
            [=](World& w) { return straight(w, w.numbers[first], w.numbers[second], z); });
  }
}

void add_line(Problem& p, int wall, Real z, const std::vector<Station>& stations) {
  const int offset = p.number(0, kFree), tilt = p.number(0, 1);
  for (const Station& station : stations) {
    const Real at = station.at.mm;
    p.add(station.reading[0], 0.3L, [=](World& w) {
      const Real line = w.numbers[offset] + w.numbers[tilt] * at;
      return line - w.out(wall, base(w, wall, at, z), z);
    });
  }
}

void add_wall(Problem& p, int wall) {
  const Wall& entry = p.survey.walls[wall];
  for (const LevelReading& level : entry.levels) {
    const Real at = level.at.mm, low = level.from.value.mm, high = level.to.value.mm;
    const Real sign = level.gap_at_top ? 1 : -1;
    const Real bubble = p.survey.level.slope_error * (high - low);
    p.add(
        level.gap[0], 0.3L,
        [=](World& w) {
          const Real a = base(w, wall, at, low);
          return sign * (w.out(wall, a, low) - w.out(wall, a, high));
        },
        bubble);
  }
  for (const PlumbReading& plumb : entry.plumbs) {
    const int offset = p.number(0, kFree);
    const Real at = plumb.at.mm, foot = plumb.line[0].height.value.mm;
    for (const Station& station : plumb.line) {
      const Real z = station.height.value.mm;
      p.add(station.reading[0], 0.3L,
            [=](World& w) { return w.numbers[offset] - w.out(wall, base(w, wall, at, foot), z); });
    }
  }
  for (const StringReading& line : entry.strings)
    add_line(p, wall, line.height.value.mm, line.line);
  for (const StraightedgeReading& line : entry.straightedges)
    add_line(p, wall, line.height.value.mm, line.gaps);
}

Problem problem_of(const Survey& survey, const Statistics& known) {
  Problem p{survey, {}, {}, {}, {}};
  p.number(std::numbers::pi / 2, kFree);  // 0: the angle
  p.number(0, known.lean);                // 1, 2: leans
  p.number(0, known.lean);
  p.number(0, 1);  // 3: the tape
  add_corner(p);
  for (int wall = 0; wall < 2; ++wall) add_wall(p, wall);
  return p;
}

struct Values {
  Vector of;
  std::vector<Spot> spots;
};

Values evaluated(const std::vector<Formula>& formulas, std::vector<Real> numbers,
                 std::vector<Real> field) {
  World w{std::move(numbers), std::move(field), {}};
  Values out{Vector(formulas.size()), {}};
  for (std::size_t i = 0; i < formulas.size(); ++i) out.of[i] = formulas[i](w);
  out.spots = w.spots;
  return out;
}

Matrix jacobian(const std::vector<Formula>& formulas, const std::vector<Real>& numbers,
                const std::vector<Real>& field) {
  const std::size_t m = numbers.size(), all = m + field.size();
  Matrix out(formulas.size(), all);
  for (std::size_t j = 0; j < all; ++j) {
    const Real step = 1e-6L;
    auto up = numbers, down = numbers, field_up = field, field_down = field;
    (j < m ? up[j] : field_up[j - m]) += step;
    (j < m ? down[j] : field_down[j - m]) -= step;
    out.col(j) = (evaluated(formulas, up, field_up).of - evaluated(formulas, down, field_down).of) /
                 (2 * step);
  }
  return out;
}

Matrix prior(const Problem& p, const std::vector<Spot>& spots, const Statistics& known) {
  const std::size_t m = p.start.size(), all = m + spots.size();
  Matrix out = Matrix::Zero(all, all);
  for (std::size_t j = 0; j < m; ++j) out(j, j) = p.prior_sd[j] * p.prior_sd[j];
  for (std::size_t i = 0; i < spots.size(); ++i)
    for (std::size_t j = 0; j < spots.size(); ++j) {
      if (spots[i].wall != spots[j].wall) continue;
      const Real d = std::hypot(spots[i].a - spots[j].a, spots[i].z - spots[j].z) / known.reach;
      out(m + i, m + j) = known.flatness * known.flatness * std::exp(-d * d / 2);
    }
  return out;
}

}  // namespace

Measured dense_diagonal(const Survey& survey, const Statistics& known, double first, double second,
                        double height) {
  const Problem p = problem_of(survey, known);
  const auto n = static_cast<Eigen::Index>(p.rows.size());
  std::vector<Formula> formulas;
  Vector value(n + 1), variance(n);
  for (Eigen::Index i = 0; i < n; ++i) {
    formulas.push_back(p.rows[i].formula);
    value[i] = p.rows[i].value;
    variance[i] = p.rows[i].sd * p.rows[i].sd;
  }
  formulas.push_back([=](World& w) { return straight(w, first, second, height); });
  const auto m = static_cast<Eigen::Index>(p.start.size());
  const Vector start = Eigen::Map<const Vector>(p.start.data(), m);
  std::vector<Real> numbers = p.start, field;
  Measured out;
  for (int round = 0; round < 8; ++round) {
    const Values now = evaluated(formulas, numbers, field);
    field.resize(now.spots.size(), 0);
    const Matrix j = jacobian(formulas, numbers, field), k = prior(p, now.spots, known);
    Vector mean = Vector::Zero(k.rows()), at = mean;
    mean.head(m) = start;
    for (Eigen::Index i = 0; i < at.size(); ++i) at[i] = i < m ? numbers[i] : field[i - m];
    // Everything foretold by the prior through the tangent at the present state.
    const Vector foretold = now.of + j * (mean - at);
    const Matrix cross = k * j.topRows(n).transpose();
    Matrix seen = j.topRows(n) * cross;
    seen.diagonal() += variance;
    const Eigen::LDLT<Matrix> factor(seen);
    const Vector x = mean + cross * factor.solve(value.head(n) - foretold.head(n));
    const Vector g = j.row(n).transpose();
    const Real left =
        g.dot(k * g) - (g.transpose() * cross).dot(factor.solve(cross.transpose() * g));
    out = {static_cast<double>(foretold[n] + g.dot(x - mean)),
           static_cast<double>(std::sqrt(left))};
    for (Eigen::Index i = 0; i < x.size(); ++i) (i < m ? numbers[i] : field[i - m]) = x[i];
  }
  return out;
}

}  // namespace nook::test

// Sweeps and floods on grids.
#include "passage_sweep.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <numbers>
#include <vector>

#include "base/vector.h"

namespace nook::sweep {
namespace {

constexpr double kQuarter = std::numbers::pi / 2;

// Hall one runs along x below y = `from`, for x < `to`; hall two along y above, 0 < x < `to`.
//
//        | to |
//        |    |
//  ------+    |   inner corner (0, from)
//  from       |
//  -----------+   outer corner (to, 0)
struct Halls {
  double from, to;
  bool holds(Vec2 p) const { return p.x <= to && p.y >= 0 && (p.y <= from || p.x >= 0); }
};

struct Place {
  Vec2 centre;
  double angle;
};

std::array<Vec2, 4> corners(const Place& at, double p, double q) {
  const Vec2 along{std::cos(at.angle), std::sin(at.angle)}, across = left_of(along);
  const Vec2 l = 0.5 * p * along, w = 0.5 * q * across;
  return {at.centre - l - w, at.centre + l - w, at.centre + l + w, at.centre - l + w};
}

bool free_at(const Halls& halls, const Place& at, double p, double q) {
  for (const Vec2 corner : corners(at, p, q))
    if (!halls.holds(corner)) return false;
  const Vec2 along{std::cos(at.angle), std::sin(at.angle)};
  const Vec2 inner = Vec2{0, halls.from} - at.centre;
  return std::abs(dot(inner, along)) >= p / 2 || std::abs(cross(along, inner)) >= q / 2;
}

class Flood {
 public:
  Flood(Halls halls, double p, double q) : halls_(halls), p_(p), q_(q) {
    step_ = std::min(halls.from, halls.to) / 40;
    reach_ = std::max(p, q) + halls.from + halls.to;
    side_ = static_cast<int>(reach_ * 2 / step_);
    seen_.resize(static_cast<size_t>(side_) * side_ * kTurns);
  }
  bool arrives() {
    const double far = 0.6 * std::max(p_, q_) + 2 * step_;
    start_anywhere({-far, halls_.from / 2});
    while (!todo_.empty()) {
      const std::array<int, 3> now = todo_.front();
      todo_.pop_front();
      if (place(now).centre.y > halls_.from + far) return true;
      for (int k = 0; k < 3; ++k)
        for (const int d : {-1, 1}) {
          std::array<int, 3> next = now;
          next[k] += d;
          visit(next);
        }
    }
    return false;
  }

 private:
  static constexpr int kTurns = 90;  // 2 degrees each, half a turn

  Place place(const std::array<int, 3>& cell) const {
    return {{cell[0] * step_ - reach_, cell[1] * step_}, cell[2] * 2 * kQuarter / kTurns};
  }
  void start_anywhere(Vec2 centre) {
    const int x = static_cast<int>((centre.x + reach_) / step_);
    for (int y = 0; y * step_ < halls_.from; ++y)
      for (int turn = 0; turn < kTurns; ++turn) visit({x, y, turn});
  }
  void visit(std::array<int, 3> cell) {
    cell[2] = (cell[2] + kTurns) % kTurns;
    if (cell[0] < 0 || cell[0] >= side_ || cell[1] < 0 || cell[1] >= side_) return;
    const size_t index = (static_cast<size_t>(cell[0]) * side_ + cell[1]) * kTurns + cell[2];
    if (seen_[index] || !free_at(halls_, place(cell), p_, q_)) return;
    seen_[index] = true;
    todo_.push_back(cell);
  }

  Halls halls_;
  double p_, q_, step_, reach_;
  int side_;
  std::vector<bool> seen_;
  std::deque<std::array<int, 3>> todo_;
};

}  // namespace

bool lies_in_opening(double a, double b, double p, double q) {
  constexpr int kAngles = 20000;
  for (int i = 0; i <= kAngles; ++i) {
    const double s = std::sin(kQuarter * i / kAngles), c = std::cos(kQuarter * i / kAngles);
    if (p * c + q * s <= a && p * s + q * c <= b) return true;
  }
  return false;
}

double longest_swing(double from, double to, double width) {
  constexpr int kAngles = 20000;
  double longest = 1e300;
  for (int i = 1; i < kAngles; ++i) {
    // Its outer long side runs from (x, 0) on the one outer wall to (to, y) on the other.
    const double t = kQuarter * i / kAngles;
    const Vec2 along{std::cos(t), std::sin(t)}, inward = left_of(along);
    // Distance of the inner corner from the outer side of a box `length` long is `width` at most:
    // the side's point (to - length cos t, 0) moves left as the box grows.
    const Vec2 inner{0, from};
    const double reach = (dot(inner - Vec2{to, 0}, inward) - width) / -inward.x;
    longest = std::min(longest, reach / along.x);
  }
  return longest;
}

bool gets_round(double from, double to, double p, double q) {
  return Flood({from, to}, p, q).arrives();
}

double shortest_raised(double length, double deep, double height) {
  constexpr int kAngles = 200000;
  double shortest = 1e300;
  for (int i = 0; i <= kAngles; ++i) {
    const double s = std::sin(kQuarter * i / kAngles), c = std::cos(kQuarter * i / kAngles);
    if (length * s + deep * c <= height) shortest = std::min(shortest, length * c + deep * s);
  }
  return shortest;
}

bool some_raise_passes(const HallTurn& turn, const Box& box) {
  constexpr int kRaises = 2000;
  for (const auto& [deep, wide] :
       {std::pair{box.width, box.thickness}, {box.thickness, box.width}}) {
    const double narrow = std::min(turn.from.mm, turn.to.mm),
                 broad = std::max(turn.from.mm, turn.to.mm);
    const double swing = longest_swing(turn.from.mm, turn.to.mm, wide);
    for (int i = 0; i <= kRaises; ++i) {
      const double s = std::sin(kQuarter * i / kRaises), c = std::cos(kQuarter * i / kRaises);
      if (box.length * s + deep * c > turn.height.mm) continue;
      const double plan = box.length * c + deep * s;
      if (wide <= narrow && plan <= std::max(swing, broad)) return true;
      if (plan <= narrow && wide <= broad) return true;
    }
  }
  return false;
}

}  // namespace nook::sweep

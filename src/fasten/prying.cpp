// Of the ways a stiff piece can come off, the one that gives most to the pull without going in.
#include "fasten/prying.h"

#include <algorithm>
#include <cmath>

#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kSingular = 1e-9;  // of the determinant against its diagonal. Chosen
constexpr double kInto = 1e-7;      // of the lift at the pull; less is not in. Chosen

// Lift of the piece off what it lies on, mm of a spring of 1 N/mm: lift + slope . place.
struct Plane {
  double lift = 0;
  Vec2 slope;
  std::optional<Vec2> on;  // where it still bears

  double at(Vec2 p) const { return lift + dot(slope, p); }
};

// Solves the symmetric [xx xy; xy yy] g = b.
std::optional<Vec2> solved(double xx, double xy, double yy, Vec2 b) {
  const double det = xx * yy - xy * xy;
  if (det <= kSingular * xx * yy) return std::nullopt;
  return Vec2{(yy * b.x - xy * b.y) / det, (xx * b.y - xy * b.x) / det};
}

class Prying {
 public:
  Prying(const std::vector<Vec2>& screws, const PullAway& pull)
      : screws_(screws), pull_(pull), hull_(hull_of(pull.bearing)) {}

  Pried shares() {
    try_free();
    for (std::size_t i = 0; i < hull_.size(); ++i) {
      try_corner(hull_[i]);
      try_side(hull_[i], hull_[(i + 1) % hull_.size()]);
    }
    Pried out;
    if (!best_) return out;
    for (Vec2 s : screws_) out.newtons.push_back(std::max(0.0, best_->at(s)));
    out.bears_at = best_->on;
    return out;
  }

 private:
  // Turning about `pivot` by the slope that balances the moments about it; `lift` there.
  std::optional<Plane> turned(Vec2 pivot, double lift) const {
    double xx = 0, xy = 0, yy = 0;
    for (Vec2 s : screws_) {
      const Vec2 d = s - pivot;
      xx += d.x * d.x, xy += d.x * d.y, yy += d.y * d.y;
    }
    const auto slope = solved(xx, xy, yy, pull_.newtons * (pull_.at - pivot));
    if (!slope) return std::nullopt;
    return Plane{lift - dot(*slope, pivot), *slope, {}};
  }

  void try_free() {
    const double n = static_cast<double>(screws_.size());
    Vec2 middle;
    for (Vec2 s : screws_) middle = middle + (1 / n) * s;
    if (const auto plane = turned(middle, pull_.newtons / n)) keep(*plane);
  }

  void try_corner(Vec2 corner) {
    auto plane = turned(corner, 0);
    if (!plane) return;
    plane->on = corner;
    keep(*plane);
  }

  void try_side(Vec2 a, Vec2 b) {
    const Vec2 in = (1 / norm(b - a)) * left_of(b - a);
    double squares = 0;
    for (Vec2 s : screws_) squares += dot(s - a, in) * dot(s - a, in);
    if (squares <= 0) return;
    const Vec2 slope = (pull_.newtons * dot(pull_.at - a, in) / squares) * in;
    keep({-dot(slope, a), slope, foot(a, b)});
  }

  // The point of a side nearest to the pull.
  Vec2 foot(Vec2 a, Vec2 b) const {
    const double s = dot(pull_.at - a, b - a) / dot(b - a, b - a);
    return a + std::clamp(s, 0.0, 1.0) * (b - a);
  }

  // The energy stored is least where the pull has come off furthest.
  void keep(const Plane& plane) {
    const double off = plane.at(pull_.at);
    if (off <= 0 || (best_ && off <= best_->at(pull_.at) * (1 + kInto))) return;
    for (Vec2 p : hull_)
      if (plane.at(p) < -kInto * off) return;
    best_ = plane;
  }

  const std::vector<Vec2>& screws_;
  const PullAway& pull_;
  Polygon hull_;
  std::optional<Plane> best_;
};

}  // namespace

Pried pried(const std::vector<Vec2>& at, const PullAway& pull) {
  if (pull.newtons <= 0) return {std::vector<double>(at.size(), 0), {}};
  return Prying(at, pull).shares();
}

}  // namespace nook

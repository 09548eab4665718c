// Plain stepping and halving; no planes, no slopes, no shared stations.
#include "dense_twin.h"

#include <algorithm>
#include <cmath>

namespace nook::twin {
namespace {

bool even_odd(const Polygon& ring, double u, double v) {
  bool in = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    if ((ring[i].y > v) != (ring[j].y > v) &&
        u < (ring[j].x - ring[i].x) * (v - ring[i].y) / (ring[j].y - ring[i].y) + ring[i].x)
      in = !in;
  return in;
}

// How far the board stands out at a height above the floor; negative above its top.
double board_out(const Baseboard& board, double height) {
  if (height < 0 || height > board.height.mm) return -1;
  double out = board.thickness.mm;
  for (std::size_t i = 0; i + 1 < board.profile.size(); ++i) {
    const ProfilePoint &a = board.profile[i], &b = board.profile[i + 1];
    if (height < a.height.mm || height > b.height.mm || b.height.mm == a.height.mm) continue;
    const double t = (height - a.height.mm) / (b.height.mm - a.height.mm);
    out = a.out.mm + t * (b.out.mm - a.out.mm);
  }
  // A base shoe is 3/4 in high.
  if (board.shoe.mm > 0 && height <= 19.05)
    out = std::max(out, (board.profile.empty() ? board.thickness.mm : board.profile[0].out.mm) +
                            board.shoe.mm);
  return out;
}

}  // namespace

Solid DenseRoom::wall(int index) const {
  return [this, index](Vec3 p) {
    const WallShape& w = room_.walls[index];
    const Vec2 at = w.wall_from_room({p.x, p.y});
    return at.y < w.out_at(at.x, p.z);
  };
}

Solid DenseRoom::blocks(int index) const {
  return [this, index](Vec3 p) {
    const WallShape& w = room_.walls[index];
    const auto& board = survey_.walls[index].baseboard;
    if (!board) return false;
    const Vec2 at = w.wall_from_room({p.x, p.y});
    const double out = at.y - w.out_at(at.x, p.z);
    return out < board_out(*board, p.z - room_.floor.z(w.room_from_wall(at.x, 0)));
  };
}

Solid DenseRoom::floor() const {
  return [this](Vec3 p) { return p.z < room_.floor.z({p.x, p.y}); };
}

int DenseRoom::wall_named(const std::string& meets) const {
  for (std::size_t i = 0; i < room_.walls.size(); ++i)
    if (room_.walls[i].name + " wall" == meets) return static_cast<int>(i);
  return -1;
}

Solid piece(const FitAnswer& fit, int index, bool less_notches) {
  return [&fit, index, less_notches](Vec3 p) {
    const Frame& f = fit.frames[index];
    const Vec3 d = p - f.at;
    const double u = dot(d, f.u), v = dot(d, f.v), w = dot(d, f.w);
    if (w < 0 || w > fit.pieces[index].thickness) return false;
    if (!even_odd(fit.pieces[index].drawn->outline, u, v)) return false;
    if (less_notches)
      for (const NotchFit& n : fit.notches)
        if (n.piece == index && even_odd(n.polygon, u, v)) return false;
    return true;
  };
}

std::optional<double> stepped_gap(const Solid& solid, Vec3 from, Vec3 way) {
  constexpr double kStep = 0.5, kReach = 300;
  const bool inside = solid(from);
  const double step = inside ? -kStep : kStep;
  double s = 0;
  while (solid(from + (s + step) * way) == inside) {
    s += step;
    if (std::abs(s) > kReach) return std::nullopt;
  }
  double low = s, high = s + step;
  while (std::abs(high - low) > 1e-3) {
    const double middle = (low + high) / 2;
    (solid(from + middle * way) == inside ? low : high) = middle;
  }
  return (low + high) / 2;
}

double deepest_point(const FitAnswer& fit, int index, const Solid& solid, Vec3 out) {
  const Polygon& ring = fit.pieces[index].drawn->outline;
  const double thickness = fit.pieces[index].thickness;
  double width = 0, height = 0;
  for (Vec2 p : ring) width = std::max(width, p.x), height = std::max(height, p.y);
  const Solid whole = piece(fit, index, true);
  double deepest = 0;
  constexpr int kAlong = 60, kThrough = 2;
  for (int i = 0; i <= kAlong; ++i)
    for (int k = 0; k <= kAlong; ++k)
      for (int t = 0; t <= kThrough; ++t) {
        // A hair inside, so that borders count as the piece's own.
        const auto inside = [](double share, double size) {
          return std::clamp(share * size, 1e-6, size - 1e-6);
        };
        const Vec3 p = fit.frames[index].room_from_piece({inside(double(i) / kAlong, width),
                                                          inside(double(k) / kAlong, height),
                                                          inside(double(t) / kThrough, thickness)});
        if (!solid(p) || !whole(p)) continue;
        const auto gap = stepped_gap(solid, p, -out);
        if (gap) deepest = std::max(deepest, -*gap);
      }
  return deepest;
}

Solid either(Solid a, Solid b) {
  return [a = std::move(a), b = std::move(b)](Vec3 p) { return a(p) || b(p); };
}

}  // namespace nook::twin

// Reads a quadrilateral by plain geometry of its four sides.
#include "taping.h"

#include <cmath>

namespace nook::sample {
namespace {

constexpr double kInset = 50;

// Where the side from a to b is at level v (u of it), by similar triangles.
double u_at(Vec2 a, Vec2 b, double v) {
  return a.x + (v - a.y) / (b.y - a.y) * (b.x - a.x);
}
double v_at(Vec2 a, Vec2 b, double u) {
  return a.y + (u - a.x) / (b.x - a.x) * (b.y - a.y);
}

CheckedAt checked(double at, double value, const Taping& taping) {
  CheckedAt made;
  made.at = millimetres(at);
  made.measured = {taping.read(value)};
  return made;
}

}  // namespace

Length Taping::read(double mm) const {
  if (random) mm += std::normal_distribution<double>(0, sd)(*random);
  return millimetres(mark > 0 ? mark * std::round(mm / mark) : mm);
}

PieceAsCut taped(const std::string& part, const Polygon& q, const Taping& taping) {
  PieceAsCut piece;
  piece.part = part;
  const double top = std::min(q[2].y, q[3].y), right = std::min(q[1].x, q[2].x);
  for (const double v : {kInset, top - kInset})
    piece.widths.push_back(checked(v, u_at(q[1], q[2], v) - u_at(q[0], q[3], v), taping));
  for (const double u : {kInset, right - kInset})
    piece.heights.push_back(checked(u, v_at(q[3], q[2], u) - v_at(q[0], q[1], u), taping));
  piece.diagonals = {checked(0, norm(q[2] - q[0]), taping), checked(0, norm(q[3] - q[1]), taping)};
  return piece;
}

}  // namespace nook::sample

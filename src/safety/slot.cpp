// Balls rolled along every border.
#include "safety/slot.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nook::safe {
namespace {

constexpr double kOff = 0.01;      // mm: how far off its border a spot is tried for air; chosen
constexpr double kSettled = 1e-6;  // mm of radius
constexpr double kStride = 5;      // mm between looks along a slot; chosen
constexpr int kStrides = 1000;     // 5 m of slot
constexpr double kNarrower = 0.8;  // a slot that narrows to this share of its width ends; chosen
const double kFaces = std::cos(15 * std::numbers::pi / 180);  // more is a corner, no side; chosen
constexpr int kRounds = 30;  // the radius falls in each; slots settle in two to five

struct Ball {
  Vec2 middle;
  double radius = 0;
  Touch first, second;
};

// The largest ball up to `radius` that touches the border at p, on the side n, and overlaps
// nothing. Radius 0 where there is no room.
Ball shrunk(const Air& air, Vec2 p, Vec2 n, double radius) {
  Ball ball{p + radius * n, radius, {}, {}};  // touches nothing: no normal, so it faces nothing
  for (int round = 0; round < kRounds; ++round) {
    const Touch touch = air.nearest(ball.middle, ball.radius);
    if (touch.distance >= ball.radius - kSettled) return ball;
    const Vec2 to = touch.at - p;
    const double ahead = dot(n, to);
    if (ahead <= kSettled) return {};
    ball.radius = std::min(ball.radius - kSettled / 2, dot(to, to) / (2 * ahead));
    ball.middle = p + ball.radius * n;
    ball.second = touch;
  }
  return ball;
}

double between_deg(Vec2 a, Vec2 b) {
  return std::atan2(std::abs(cross(a, b)), dot(a, b)) * 180 / std::numbers::pi;
}

// The bisector away from the point of the V; across a parallel slot whichever way is more up.
Vec2 wider(const Ball& ball) {
  const Vec2 away = 2 * ball.middle - ball.first.at - ball.second.at;
  if (norm(away) > 1e-3 * ball.radius) return (1 / norm(away)) * away;
  const Vec2 along = left_of(ball.first.at - ball.second.at);
  return ((along.y < 0 ? -1 : 1) / norm(along)) * along;
}

// Whether it touches the side of the other thing, and not its corner.
bool faces(const Ball& ball) {
  return dot(ball.middle - ball.second.at, ball.second.normal) >= kFaces * ball.radius;
}

Slot slot_of(const Ball& ball) {
  const double sides = between_deg(ball.first.at - ball.middle, ball.second.at - ball.middle);
  return {ball.middle, 2 * ball.radius, 180 - sides, {ball.first, ball.second}, wider(ball)};
}

bool shows(Window window, Vec2 p) {
  return p.x >= window.low.x && p.x <= window.high.x && p.y >= window.low.y && p.y <= window.high.y;
}

// Spots along an edge, never at its ends.
template <class Try>
void along(Vec2 a, Vec2 b, Try attempt) {
  const int count = 1 + static_cast<int>(norm(b - a) / kBorderStep);
  for (int i = 0; i < count; ++i) attempt(a + ((i + 0.5) / count) * (b - a));
}

}  // namespace

std::vector<Slot> slots(const Air& air, Window window, double most, double angle_deg) {
  std::vector<Slot> found;
  const auto roll = [&](const Polygon& ring, Owner owner) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
      if (a == b) continue;
      const Vec2 n = (-1 / norm(b - a)) * left_of(b - a);
      along(a, b, [&](Vec2 p) {
        if (!shows(window, p) || air.nearest(p + kOff * n, kOff).distance < kOff * 0.99) return;
        Ball ball = shrunk(air, p, n, most / 2);
        if (ball.radius <= 0 || !faces(ball)) return;
        ball.first = {ball.radius, p, owner, n};
        const Slot slot = slot_of(ball);
        if (slot.angle_deg < angle_deg) found.push_back(slot);
      });
    }
  };
  for (const Shadow& shadow : air.shadows()) {
    roll(shadow.region.outline, shadow.owner);
    for (const Polygon& hole : shadow.region.holes) roll(hole, shadow.owner);
  }
  return found;
}

SlotEnd followed(const Air& air, const Slot& slot, double most, bool back) {
  const double radius = slot.across / 2;
  const Vec2 step = (back ? -kStride : kStride) * slot.opens;
  Vec2 p = slot.middle;
  for (int i = 0; i < kStrides; ++i, p = p + step) {
    const Touch touch = air.nearest(p, most / 2);
    if (touch.distance > most / 2) return SlotEnd::wide;
    if (touch.owner.kind == Owner::Kind::floor) return SlotEnd::floor;
    if (touch.distance < kNarrower * radius) return SlotEnd::blocked;
  }
  return SlotEnd::wide;
}

}  // namespace nook::safe

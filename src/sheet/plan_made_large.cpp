// The walls beside the square room they are not.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sheet/label.h"
#include "sheet/plan.h"
#include "sheet/seen_from_above.h"

namespace nook {
namespace {

// The interior angle that walls k and k + 1 make, less a right angle, in degrees.
double error_of(const RoomShape& room, std::size_t k) {
  const Vec2 a = k == 0 ? room.walls[k].along : -room.walls[k].along;
  return std::acos(std::clamp(dot(a, room.walls[k + 1].along), -1.0, 1.0)) * 180 /
             std::numbers::pi -
         90;
}

Vec2 turned(Vec2 v, double by_deg) {
  const double a = by_deg * std::numbers::pi / 180;
  return {v.x * std::cos(a) - v.y * std::sin(a), v.x * std::sin(a) + v.y * std::cos(a)};
}

// The room with every corner's error times `factor` (0: the square room), walls turned about
// their corners from the first wall on.
RoomShape with_errors(const RoomShape& room, double factor) {
  RoomShape large = room;
  for (std::size_t k = 0; k + 1 < room.walls.size(); ++k) {
    const WallShape& before = large.walls[k];
    const Vec2 from = k == 0 ? before.along : -before.along;
    WallShape& next = large.walls[k + 1];
    next.start = k == 0 ? before.start : before.start + before.length * before.along;
    const double sense = cross(from, before.out) > 0 ? 1 : -1;
    next.along = turned(from, sense * (90 + factor * error_of(room, k)));
    next.out = dot(left_of(next.along), from) > 0 ? left_of(next.along) : -left_of(next.along);
  }
  return large;
}

double stray_at(const RoomShape& room, std::size_t wall, double a) {
  return room.walls[wall].out_at(a, kHeightShown) - room.walls[wall].out_at(0, kHeightShown);
}

std::vector<Vec2> strayed(const RoomShape& room, const RoomShape& large, std::size_t k, double by) {
  std::vector<Vec2> points;
  for (int i = 0; i <= kPlanStations; ++i) {
    const double a = room.walls[k].length * i / kPlanStations;
    points.push_back(large.walls[k].room_from_wall(a, by * stray_at(room, k, a)));
  }
  return points;
}

}  // namespace

std::string squareness(Measured angle_deg) {
  constexpr double kStraight = 0.05;  // degrees; nobody can tell that from square. Chosen
  const double off = angle_deg.value - 90, give = kTwoSided95 * angle_deg.sd;
  if (std::abs(off) <= give && give >= kStraight) return "may be square";
  if (std::abs(off) < kStraight) return "square";
  return off > 0 ? "open" : "closed";
}

std::string out_of_square(Measured angle_deg, const Rounding& rounding) {
  const std::string how = squareness(angle_deg);
  if (how.ends_with("square")) return how;
  // As with a 3-4-5: a side of 3 ft or 900 mm, and how far its end is off the square line.
  const Length side = rounding.unit == Unit::inch ? inches(36) : millimetres(900);
  const auto off_by = [&](double deg) { return side * std::tan(deg * std::numbers::pi / 180); };
  return fmt::format("{} {} in {}, give or take {}", how,
                     with_unit(off_by(std::abs(angle_deg.value - 90)), rounding),
                     with_unit(side, rounding),
                     give_or_take(off_by(kTwoSided95 * angle_deg.sd), rounding));
}

int factor_made_large(const RoomShape& room) {
  int best = 1;
  for (int factor : {2, 5, 10, 20, 50}) {
    for (std::size_t k = 0; k + 1 < room.walls.size(); ++k)
      if (factor * std::abs(error_of(room, k)) > 15) return best;
    for (std::size_t k = 0; k < room.walls.size(); ++k)
      for (int i = 0; i <= kPlanStations; ++i)
        if (factor * std::abs(stray_at(room, k, room.walls[k].length * i / kPlanStations)) >
            room.walls[k].length / 10)
          return best;
    best = factor;
  }
  return best;
}

Drawing plan_made_large(const JobScene& scene, const Canvas& canvas) {
  const int factor = factor_made_large(scene.room);
  const RoomShape large = with_errors(scene.room, factor), square = with_errors(scene.room, 0);
  const SeenFromAbove above(large);
  std::vector<std::vector<Vec2>> walls, ideal;
  PageBox real;
  for (std::size_t k = 0; k < large.walls.size(); ++k) {
    for (Vec2& p : walls.emplace_back(strayed(scene.room, large, k, factor)))
      real.take_in(p = above(p));
    for (Vec2& p : ideal.emplace_back(strayed(scene.room, square, k, 0)))
      real.take_in(p = above(p));
  }
  Draft draft = drafted(canvas, scene.rounding, real, {4, 8 * canvas.text});
  draft.drawing.name = "plan-made-large";
  draft.drawing.title =
      fmt::format("Out of square and out of flat, {} times as much as it is", factor);
  draft.drawing.description =
      "Heavy lines: the walls with their errors made large. Dashed lines: a square room.";
  std::vector<Label> labels{{fmt::format("errors {} times", factor),
                             {(real.low.x + real.high.x) / 2, real.low.y},
                             0,
                             true,
                             0,
                             "factor"}};
  for (std::size_t k = 0; k < walls.size(); ++k) {
    draft.drawing.add("square room", Polyline{ideal[k], false, LineKind::dashed});
    draft.drawing.add("walls", Polyline{walls[k], false, LineKind::heavy},
                      large.walls[k].name + " wall");
    labels.push_back({large.walls[k].name, walls[k][kPlanStations / 2], 1, false, 0, ""});
  }
  for (std::size_t k = 0; k < scene.report.corners.size(); ++k)
    labels.push_back({out_of_square(scene.report.corners[k].angle_deg, scene.rounding),
                      above(large.walls[k + 1].start), 2, true, 0, "corner " + std::to_string(k)});
  place_labels(draft, labels, {}, canvas_round(draft, real));
  return finished(std::move(draft));
}

}  // namespace nook

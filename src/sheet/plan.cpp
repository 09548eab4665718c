// Walls from above, and the square room they are not.
#include "sheet/plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sheet/dimension.h"
#include "sheet/label.h"
#include "sheet/seen_from_above.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kBehind = 90;  // mm of wall drawn behind its surface. Chosen

// One wall's surface from its near to its far end, in plan.
std::vector<Vec2> surface_of(const RoomShape& room, int wall) {
  const FacedWall faced(room, wall);
  const Vec2 ends = faced.ends_at(kHeightShown);
  std::vector<Vec2> points;
  for (int i = 0; i <= kPlanStations; ++i) {
    const Vec3 p =
        room.walls[wall].point(ends.x + (ends.y - ends.x) * i / kPlanStations, kHeightShown);
    points.push_back({p.x, p.y});
  }
  return points;
}

// The spot behind both walls of a corner.
Vec2 behind_corner(const RoomShape& room, int k) {
  return room.corner_at(k, kHeightShown) - kBehind * (room.walls[k].out + room.walls[k + 1].out);
}

void draw_walls(Draft& draft, const RoomShape& room, const SeenFromAbove& above) {
  for (std::size_t k = 0; k < room.walls.size(); ++k) {
    std::vector<Vec2> surface;
    for (Vec2 p : surface_of(room, static_cast<int>(k))) surface.push_back(above(p));
    Polygon band = surface;
    const Vec2 back = -kBehind * above(room.walls[k].out);
    const bool corner_too = k > 0 && k + 1 < room.walls.size();
    band.push_back(corner_too ? above(behind_corner(room, static_cast<int>(k)))
                              : surface.back() + back);
    for (auto p = surface.rbegin() + 1; p + 1 < surface.rend(); ++p) band.push_back(*p + back);
    const bool corner = room.walls.size() > 1;
    band.push_back(corner ? above(behind_corner(room, k ? static_cast<int>(k) - 1 : 0))
                          : surface.front() + back);
    draft.drawing.add("walls", Patch{{band, {}}, Paint::wall, LineKind::none});
    hatch(draft, "walls", {band, {}}, 45, 2);
    draft.drawing.add("walls", Polyline{surface, false, LineKind::heavy},
                      room.walls[k].name + " wall");
  }
}

bool level(const Frame& frame) {
  return std::abs(frame.w.z) > 0.999;
}

Region seen_from_above(const SeenFromAbove& above, const Piece& piece, const Frame& frame) {
  if (!level(frame)) {
    std::vector<Vec2> points;
    for (Vec3 p : solid_of(piece, frame)) points.push_back(above(p));
    return {hull_of(std::move(points)), {}};
  }
  Region region;
  for (Vec2 p : piece.drawn->outline)
    region.outline.push_back(above(frame.room_from_piece({p.x, p.y, 0})));
  return region;
}

// Level pieces hang over what is below: dashed, without a ground.
void draw_pieces(Draft& draft, const JobScene& scene, const SeenFromAbove& above,
                 std::vector<Label>& labels) {
  std::string last;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i) {
    const Piece& piece = scene.pieces[i];
    const Region region = seen_from_above(above, piece, scene.frames[i]);
    if (level(scene.frames[i]))
      draft.drawing.add("pieces above", Polyline{region.outline, true, LineKind::dashed},
                        piece.name);
    else
      draft.drawing.add("pieces", Patch{region, Paint::wood, LineKind::normal}, piece.name);
    if (piece.drawn->name == last) continue;  // one label for all copies
    last = piece.drawn->name;
    PageBox box;
    for (Vec2 p : region.outline) box.take_in(p);
    labels.push_back({last, 0.5 * (box.low + box.high), 0, false, 0, "label " + last});
  }
}

void draw_obstacles(Draft& draft, const JobScene& scene, const SeenFromAbove& above,
                    std::vector<Label>& labels) {
  for (std::size_t k = 0; k < scene.survey.walls.size(); ++k) {
    const WallShape& shape = scene.room.walls[k];
    for (const Obstacle& o : scene.survey.walls[k].obstacles) {
      Polygon box;
      const double z = (o.height[0].value.mm + o.height[1].value.mm) / 2;
      const double a = scene.room.base_along(static_cast<int>(k), o.along[0].mm, z, o.from_right);
      const double b = scene.room.base_along(static_cast<int>(k), o.along[1].mm, z, o.from_right);
      for (Vec2 p :
           {Vec2{a, o.out[0].mm}, Vec2{b, o.out[0].mm}, Vec2{b, o.out[1].mm}, Vec2{a, o.out[1].mm}})
        box.push_back(above(shape.room_from_wall(p.x, p.y)));
      draft.drawing.add("obstacles", Patch{{box, {}}, Paint::shade, LineKind::normal}, o.name);
      labels.push_back({o.name, 0.5 * (box[0] + box[2]), 0, false, 0, "label " + o.name});
    }
  }
}

std::string wall_words(const JobScene& scene, std::size_t wall) {
  const WallReport& report = scene.report.walls[wall];
  std::string words = report.name + " wall";
  if (report.length_mm)
    words += " " + with_unit(millimetres(report.length_mm->value), scene.rounding);
  return words;
}

void label_walls(const JobScene& scene, const SeenFromAbove& above, std::vector<Label>& labels) {
  for (std::size_t k = 0; k < scene.report.walls.size(); ++k) {
    const WallShape& wall = scene.room.walls[k];
    const Vec2 behind = wall.room_from_wall(0.6 * wall.length, -kBehind);
    labels.push_back({wall_words(scene, k), above(behind), 0, true, 0, "label " + wall.name});
  }
  for (std::size_t k = 0; k < scene.report.corners.size(); ++k)
    labels.push_back({out_of_square(scene.report.corners[k].angle_deg, scene.rounding),
                      above(behind_corner(scene.room, static_cast<int>(k))), 0, true, 0,
                      "corner " + std::to_string(k)});
}

PageBox real_extent(const RoomShape& room, const SeenFromAbove& above) {
  PageBox box;
  for (std::size_t k = 0; k < room.walls.size(); ++k)
    for (Vec2 p : surface_of(room, static_cast<int>(k))) box.take_in(above(p));
  return box.grown(kBehind);
}

}  // namespace

Drawing plan(const JobScene& scene, const Canvas& canvas) {
  const SeenFromAbove above(scene.room);
  const PageBox real = real_extent(scene.room, above);
  Draft draft = drafted(canvas, scene.rounding, real, {4, 10 * canvas.text});
  draft.drawing.name = "plan";
  draft.drawing.title = "The room from above";
  draft.drawing.description = fmt::format(
      "Plan of {}, true to scale, the wall one faces at the top. Dashed: what hangs above.",
      scene.survey.title);
  std::vector<Label> labels;
  draw_walls(draft, scene.room, above);
  label_walls(scene, above, labels);
  draw_obstacles(draft, scene, above, labels);
  draw_pieces(draft, scene, above, labels);
  place_labels(draft, labels, {}, canvas_round(draft, real));
  return finished(std::move(draft));
}

}  // namespace nook

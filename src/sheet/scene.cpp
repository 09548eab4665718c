// Frames of faced walls, and pieces seen on them.
#include "sheet/scene.h"

#include <algorithm>
#include <cmath>

#include "solid/cells.h"
#include "solid/polygon.h"

namespace nook {
namespace {

constexpr double kFlat = 0.999;  // cosine to the wall from which a piece lies flat on it. Chosen

Polygon on_page(const FacedWall& wall, const Frame& frame, const Polygon& outline, double w) {
  Polygon out;
  for (Vec2 p : outline) out.push_back(wall.page_from_room(frame.room_from_piece({p.x, p.y, w})));
  if (signed_area(out) < 0) std::reverse(out.begin(), out.end());
  return out;
}

bool names(const std::string& wanted, const Piece& piece, const Design& design) {
  return wanted == piece.name || wanted == design.parts[piece.part].name;
}

}  // namespace

FacedWall::FacedWall(const RoomShape& room, int wall)
    : room_(room),
      index_(wall),
      side_(dot(room.walls[wall].along, left_of(room.walls[wall].out)) > 0 ? 1 : -1) {}

Vec2 FacedWall::page_from_reading(double along, double height, bool from_right) const {
  // The corner leans little: the height above the room's zero does for finding it.
  const double rough = room_.base_along(index_, along, height, from_right);
  const double z = floor_at(rough) + height;
  return page(room_.base_along(index_, along, z, from_right), z);
}

Vec2 FacedWall::page_from_reading(double along, const Height& height, bool from_right) const {
  if (!height.from_line) return page_from_reading(along, height.value.mm, from_right);
  const double z = room_.line_z.value_or(0) + height.value.mm;
  return page(room_.base_along(index_, along, z, from_right), z);
}

Vec2 FacedWall::page_from_room(Vec3 p) const {
  return page(wall().wall_from_room({p.x, p.y}).x, p.z);
}

double FacedWall::floor_at(double a) const {
  return room_.floor.z(wall().room_from_wall(a, 0));
}

double FacedWall::top_at(double a, double usual) const {
  return room_.ceiling ? room_.ceiling->z(wall().room_from_wall(a, 0)) : usual;
}

Vec2 FacedWall::ends_at(double z) const {
  const int corners = static_cast<int>(room_.walls.size()) - 1;
  double near = 0, far = wall().length;
  if (corners > 0) near = room_.corner_along(index_ == 0 ? 0 : index_ - 1, index_, z);
  if (index_ > 0 && index_ < corners) far = room_.corner_along(index_, index_, z);
  return {near, far};
}

std::vector<Vec3> solid_of(const Piece& piece, const Frame& frame) {
  std::vector<Vec3> corners;
  for (double w : {0.0, piece.thickness})
    for (Vec2 p : piece.drawn->outline) corners.push_back(frame.room_from_piece({p.x, p.y, w}));
  return corners;
}

Region seen_on(const FacedWall& wall, const Piece& piece, const Frame& frame) {
  const Vec2 out = wall.wall().out;
  if (std::abs(dot(frame.w, Vec3{out.x, out.y, 0})) > kFlat) {
    Region region{on_page(wall, frame, piece.drawn->outline, piece.thickness), {}};
    for (const Cutout& cutout : piece.drawn->cutouts)
      region.holes.push_back(on_page(wall, frame, cutout.outline, piece.thickness));
    return region;
  }
  std::vector<Vec2> points;
  for (Vec3 p : solid_of(piece, frame)) points.push_back(wall.page_from_room(p));
  return {hull_of(std::move(points)), {}};
}

bool touches_wall(const JobScene& scene, int piece, const std::string& wall) {
  if (!scene.design) return false;
  const Design& design = *scene.design;
  const Piece& it = scene.pieces[piece];
  const auto fastened = [&](const Fastening& f) {
    return wall_named(f.to) == wall && names(f.part, it, design);
  };
  const auto meets = [&](const Contact& c) {
    return wall_named(c.meets) == wall && names(c.part, it, design);
  };
  return std::any_of(design.fastenings.begin(), design.fastenings.end(), fastened) ||
         std::any_of(design.contacts.begin(), design.contacts.end(), meets);
}

double usual_top(const JobScene& scene) {
  double top = 2150;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    for (Vec3 p : solid_of(scene.pieces[i], scene.frames[i])) top = std::max(top, p.z);
  return top + 250;
}

}  // namespace nook

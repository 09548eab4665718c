// Rooms and designs written out by hand, for tests that know the answer.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "base/length.h"
#include "design/design.h"
#include "fit/fit.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook::by_hand {

constexpr double in = kMillimetresPerInch;

/// A corner of flat walls: left along +x, right at `angle_deg` from it; leans in mm per mm.
struct Found {
  RoomShape room;
  Survey survey;
};
inline Found corner(double angle_deg, double lean_left = 0, double lean_right = 0) {
  Found c;
  const double a = angle_deg * std::acos(-1.0) / 180;
  const Vec2 along{angle_deg == 90 ? 0 : std::cos(a), angle_deg == 90 ? 1 : std::sin(a)};
  WallShape left{"left", {0, 0}, {1, 0}, {0, 1}, 3000, lean_left, {}, 0, 0, 0, 0};
  WallShape right{"right", {0, 0}, along, {along.y, -along.x}, 3000, lean_right, {}, 0, 0, 0, 0};
  c.room.walls = {left, right};
  c.room.line_z = 1000;
  c.survey.walls.resize(2);
  c.survey.walls[0].name = "left";
  c.survey.walls[1].name = "right";
  return c;
}

inline void add_board(Wall& wall, double height, double thickness, double shoe = 0) {
  Baseboard board;
  board.height = {height};
  board.thickness = {thickness};
  board.shoe = {shoe};
  wall.baseboard = board;
}

inline Design empty_design(double thickness = 23.0 / 32 * in) {
  Design d;
  d.corner[0] = "left";
  d.corner[1] = "right";
  Stock ply;
  ply.name = "ply";
  ply.thickness = {thickness};
  d.stock.push_back(ply);
  return d;
}

inline Part panel(const std::string& name, Vec2 size, Vec3 at, Vec3 u, Vec3 v) {
  Part p;
  p.name = p.group = name;
  p.outline = {{0, 0}, {size.x, 0}, size, {0, size.y}};
  p.rectangle = true;
  p.place_in_room = {at, u, v, {}, {}};
  p.show = ShowFace::both;
  return p;
}

inline Contact meet(const std::string& part, EdgeChoice edge, const std::string& meets,
                    Fitting by = Fitting::butt) {
  Contact c;
  c.part = part;
  c.edge = edge;
  c.edge_given = "edge";
  c.meets = meets;
  c.by = by;
  return c;
}

inline Group tight(const std::string& name, std::vector<std::string> to) {
  Group g;
  g.name = name;
  g.tight_to = std::move(to);
  return g;
}

inline FitAnswer fit_exactly(const Found& c, const Design& design) {
  static const std::vector<RoomShape> none;
  return fit({c.survey, design, c.room, none, 0.95, true});
}

inline constexpr Vec3 kX{1, 0, 0}, kY{0, 1, 0}, kZ{0, 0, 1};

}  // namespace nook::by_hand

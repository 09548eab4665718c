// The sample room's walls, studs, pieces and holes.
#include "sheet/sample_scene.h"

namespace nook {
namespace {

Length in(double x) {
  return inches(x);
}

Height up(double x) {
  Height height;
  height.value = in(x);
  return height;
}

Obstacle obstacle(ObstacleKind kind, const std::string& name, Vec2 along, Vec2 height) {
  Obstacle o;
  o.kind = kind;
  o.name = name;
  o.along[0] = in(along.x), o.along[1] = in(along.y);
  o.height[0] = up(height.x), o.height[1] = up(height.y);
  o.out[1] = in(0.25);
  return o;
}

Wall wall(const std::string& name) {
  Wall w;
  w.name = name;
  w.baseboard = Baseboard{in(5.25), in(0.5625), in(0.5), {}, in(0), std::nullopt, false, {}};
  w.studs = Studs{};
  return w;
}

Part panel(const std::string& name, Vec2 size, Placement place) {
  Part part;
  part.name = part.group = name;
  part.outline = {{0, 0}, {in(size.x).mm, 0}, {in(size.x).mm, in(size.y).mm}, {0, in(size.y).mm}};
  part.rectangle = true;
  part.place_in_room = place;
  return part;
}

Vec3 at(double x, double y, double z) {
  return {in(x).mm, in(y).mm, in(z).mm};
}

StudReport stud(double centre, StudReport::Found found) {
  return {in(centre).mm, 1, found, 1000};
}

Hole hole(const std::string& id, double along, double height, bool probe) {
  Hole h;
  h.id = id;
  h.part = id.substr(0, id.find(' ')) + " ledger";
  h.along_mm = in(along).mm;
  h.height_mm = in(height).mm;
  h.from_datum_mm = in(along - 15.3125).mm;
  h.from_line_mm = in(height - 40).mm;
  h.u_mm = in(46 - along).mm;
  h.v_mm = in(height - 38).mm;
  h.end = "right", h.from_end_mm = in(along).mm;
  h.edge = "top", h.from_edge_mm = in(41 - height).mm;
  h.pilot_mm = 3.3, h.shank_pilot_mm = 4.2, h.clearance_mm = 4.8, h.depth_mm = in(2.75).mm;
  h.probe_first = probe;
  return h;
}

std::shared_ptr<const FieldBasis> basis() {
  static const auto it = std::make_shared<const FieldBasis>(Vec2{0, 0}, Vec2{3100, 2500}, 500);
  return it;
}

Field bumps(double size, int seed) {
  Field field{basis(), std::vector<double>(basis()->size())};
  for (int k = 0; k < basis()->size(); ++k)
    field.weights[k] = size * basis()->prior_sd()[k] * std::sin(1.7 * k * k + seed);
  return field;
}

RoomShape walls(double angle_deg, double bump) {
  RoomShape room;
  const Direction turn = direction(degrees(angle_deg));
  WallShape left{"left", {0, 0}, {1, 0}, {0, 1}, in(118.375).mm, 0.004, bumps(bump, 1)};
  WallShape right{"right",   {0, 0}, {turn.cos, turn.sin}, {turn.sin, -turn.cos},
                  in(92).mm, -0.003, bumps(bump, 2)};
  room.walls = {left, right};
  room.floor.slope = {0.003, -0.002};
  room.line_z = in(40).mm;
  return room;
}

}  // namespace

SampleScene::SampleScene() : room(walls(91.4, 3)) {
  survey.title = "Back bedroom, window corner";
  survey.walls = {wall("left"), wall("right")};
  survey.walls[0].obstacles = {
      obstacle(ObstacleKind::outlet, "outlet", {72, 74.75}, {12, 16.5}),
      obstacle(ObstacleKind::switch_box, "switch", {105, 107.75}, {48, 52.5})};
  survey.walls[1].obstacles = {obstacle(ObstacleKind::vent, "vent", {60, 70}, {6, 12})};
  for (int k = 0; k < 40; ++k)
    draws.push_back(walls(91.4 + 0.05 * std::sin(9.0 * k), 3 + std::cos(5.0 * k)));
  report.corners = {{{"left", "right"}, {91.4, 0.05}}};
  report.walls = {{"left", Measured{in(118.375).mm, 1}, {4, 0.3}, 5, {}},
                  {"right", Measured{in(92).mm, 1}, {-3, 0.3}, -4, {}}};
  design.stock = {Stock{}};
  design.stock[0].name = "ply";
  design.stock[0].thickness = in(0.71875);
  design.corner[0] = "left", design.corner[1] = "right";
  design.parts = {panel("left ledger", {46, 3}, {at(46, 0, 38), {-1, 0, 0}, {0, 0, 1}, {}, {}}),
                  panel("right ledger", {36, 3}, {at(0, 0, 38), {0, 1, 0}, {0, 0, 1}, {}, {}}),
                  panel("front panel", {37.25, 84}, {at(47, 0, 0), {0, 1, 0}, {0, 0, 1}, {}, {}}),
                  panel("side panel", {30, 80}, {at(47, 36, 0), {-1, 0, 0}, {0, 0, 1}, {}, {}}),
                  panel("deck", {46, 36}, {at(46, 0, 41), {-1, 0, 0}, {0, 1, 0}, {}, {}})};
  design.parts[2].cutouts = {Cutout{"porthole", {}, Vec2{in(18).mm, in(24).mm}, in(9.25), {}}};
  for (int k = 0; k < 96; ++k) {
    const Direction turn = direction(degrees(k * 3.75));
    design.parts[2].cutouts[0].outline.push_back(
        {in(18 + 4.625 * turn.cos).mm, in(24 + 4.625 * turn.sin).mm});
  }
  for (const char* name : {"left", "right"}) {
    Fastening f;
    f.part = std::string(name) + " ledger";
    f.to = std::string(name) + " wall";
    f.screw.gauge = 10, f.screw.length = in(3);
    design.fastenings.push_back(f);
  }
  Contact c;
  c.part = "front panel", c.edge_given = "left", c.meets = "left wall";
  design.contacts.push_back(c);
  pieces = pieces_of(design);
  for (const Piece& piece : pieces) frames.push_back(piece.frame);
  WallDrill left;
  left.name = "left";
  left.datum = PlumbDatum{0, in(15.3125).mm, 1000};
  left.studs = {stud(15.3125, StudReport::Found::edges), stud(31.375, StudReport::Found::edges),
                stud(47.25, StudReport::Found::centre),  stud(63.3, StudReport::Found::inferred),
                stud(79.3, StudReport::Found::inferred), stud(95.3, StudReport::Found::inferred)};
  left.holes = {hole("left 1", 15.125, 40.25, false), hole("left 2", 15.5, 38.75, false),
                hole("left 3", 31.1875, 40.25, false), hole("left 4", 31.5625, 38.75, false),
                hole("left 5", 45, 40.25, true)};
  WallDrill right;
  right.name = "right";
  right.studs = {stud(8, StudReport::Found::centre), stud(24, StudReport::Found::inferred)};
  right.holes = {hole("right 1", 8, 40.25, false), hole("right 2", 24, 39, true)};
  drill.walls = {left, right};
}

}  // namespace nook

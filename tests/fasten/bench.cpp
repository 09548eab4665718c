// The bench's room, studs, ledgers and screws.
#include "fasten/bench.h"

using namespace nook;

namespace {

WallShape flat_wall(const std::string& name, Vec2 along, Vec2 out) {
  WallShape wall;
  wall.name = name;
  wall.along = along;
  wall.out = out;
  wall.length = inches(118).mm;
  return wall;
}

Stock lumber(const std::string& name, double thickness, double width) {
  Stock stock;
  stock.name = name;
  stock.kind = StockKind::lumber;
  stock.thickness = inches(thickness);
  stock.width = inches(width);
  stock.gravity = .42;
  return stock;
}

}  // namespace

Reading reading(double value, const std::string& id) {
  Reading r;
  r.value = inches(value);
  r.smallest_mark = inches(1.0 / 16);
  r.id = id;
  return r;
}

Bench::Bench() {
  room.walls = {flat_wall("left", {1, 0}, {0, 1}), flat_wall("right", {0, 1}, {1, 0})};
  room.line_z = inches(38).mm;
  for (const WallShape& shape : room.walls) {
    Wall wall;
    wall.name = shape.name;
    wall.studs.emplace();
    wall.studs->kind = StudKind::wood;
    wall.studs->spacing = inches(16);
    survey.walls.push_back(wall);
  }
  survey.corners.emplace_back();
  design.corner[0] = "left";
  design.corner[1] = "right";
  design.stock.push_back(lumber("rail", 1.25, 3));
}

StudFound& Bench::nailed(int wall, double centre) {
  Studs& studs = *survey.walls[wall].studs;
  StudFound found;
  found.by = FoundBy::nail;
  found.height = Height{inches(38), false, {}};
  found.id =
      "wall[" + std::to_string(wall) + "].studs.found[" + std::to_string(studs.found.size()) + "]";
  found.left_edge = {reading(centre - .75, found.id + ".edges[0]")};
  found.right_edge = {reading(centre + .75, found.id + ".edges[1]")};
  studs.found.push_back(found);
  return studs.found.back();
}

StudFound& Bench::found_centre(int wall, double centre, double height) {
  Studs& studs = *survey.walls[wall].studs;
  StudFound found;
  found.by = FoundBy::finder;
  found.height = Height{inches(height), false, {}};
  found.id =
      "wall[" + std::to_string(wall) + "].studs.found[" + std::to_string(studs.found.size()) + "]";
  found.centre = {reading(centre, found.id + ".centre")};
  studs.found.push_back(found);
  return studs.found.back();
}

Part& Bench::ledger(int wall, const std::string& name, Along place, double height) {
  Part part;
  part.name = name;
  const double l = inches(place.length).mm, w = inches(3).mm;
  part.outline = {{0, 0}, {l, 0}, {l, w}, {0, w}};
  part.rectangle = true;
  part.group = name;
  const double s = inches(place.start).mm, z = inches(height).mm;
  if (wall == 0)
    part.place_in_room = {{s + l, 0, z}, {-1, 0, 0}, {0, 0, 1}, {}, {}};
  else
    part.place_in_room = {{0, s, z}, {0, 1, 0}, {0, 0, 1}, {}, {}};
  design.parts.push_back(part);
  return design.parts.back();
}

Fastening& Bench::screws(const std::string& part, const std::string& to) {
  Fastening f;
  f.part = part;
  f.to = to;
  f.screw.gauge = 10;
  f.screw.length = inches(3);
  f.prebored = true;
  design.fastenings.push_back(f);
  return design.fastenings.back();
}

DrillAnswer Bench::drilled(double sure) const {
  pieces_ = pieces_of(design);
  std::vector<Frame> frames;
  for (const Piece& p : pieces_) frames.push_back(p.frame);
  return drill({survey, design, room, draws, pieces_, frames, sure});
}

Bench two_studs(int wall) {
  Bench bench;
  bench.nailed(wall, 15 + 5.0 / 16);
  bench.nailed(wall, 31 + 3.0 / 8);
  bench.ledger(wall, "ledger", {0, 46}, 37);
  bench.screws("ledger", wall == 0 ? "left wall" : "right wall");
  return bench;
}

Obstacle obstacle(ObstacleKind kind, const std::string& name, double left, double right) {
  Obstacle o;
  o.kind = kind;
  o.name = name;
  o.along[0] = inches(left);
  o.along[1] = inches(right);
  o.height[0] = Height{inches(12), false, {}};
  o.height[1] = Height{inches(16.5), false, {}};
  o.out[1] = inches(.25);
  return o;
}

bool warns(const Hole& hole, const std::string& words) {
  for (const std::string& w : hole.warnings)
    if (w.find(words) != std::string::npos) return true;
  return false;
}

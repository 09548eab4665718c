// Rooms and designs for the shop's tests.
#include "sample.h"

#include <algorithm>
#include <cmath>

namespace nook::sample {
namespace {

WallShape wall(const std::string& name, Vec2 start, Vec2 end, bool room_on_left) {
  WallShape shape;
  shape.name = name;
  shape.start = start;
  shape.length = norm(end - start);
  shape.along = (1 / shape.length) * (end - start);
  shape.out = room_on_left ? left_of(shape.along) : -left_of(shape.along);
  return shape;
}

}  // namespace

Drawn::Drawn() {
  design.corner[0] = "left";
  design.corner[1] = "right";
}

int Drawn::stock(double thickness) {
  for (size_t k = 0; k < design.stock.size(); ++k)
    if (design.stock[k].thickness.mm == thickness) return static_cast<int>(k);
  Stock ply;
  ply.name = "ply";
  ply.thickness = millimetres(thickness);
  ply.sheet[0] = inches(48), ply.sheet[1] = inches(96);
  design.stock.push_back(ply);
  return static_cast<int>(design.stock.size()) - 1;
}

Part& Drawn::piece(const std::string& name, Polygon outline, double thickness) {
  Part part;
  part.name = part.group = name;
  part.stock = stock(thickness);
  part.outline = std::move(outline);
  part.rectangle = part.outline.size() == 4;
  part.place_in_room = {{0, 0, 0}, {0, 1, 0}, {0, 0, 1}, {}, {}};
  design.parts.push_back(std::move(part));
  return design.parts.back();
}

FitAnswer as_drawn(const Design& design) {
  FitAnswer fit;
  fit.pieces = pieces_of(design);
  for (int k = 0; k < static_cast<int>(fit.pieces.size()); ++k) {
    fit.frames.push_back(fit.pieces[k].frame);
    const std::string& group = fit.pieces[k].drawn->group;
    const auto found = std::find_if(fit.groups.begin(), fit.groups.end(),
                                    [&](const GroupFit& g) { return g.name == group; });
    if (found == fit.groups.end())
      fit.groups.push_back({group, {k}, {}, 0, {}});
    else
      found->pieces.push_back(k);
  }
  return fit;
}

RoomShape square_room(double length, double ceiling) {
  RoomShape room;
  room.walls.push_back(wall("left", {0, 0}, {length, 0}, true));
  room.walls.push_back(wall("right", {0, 0}, {0, length}, false));
  if (ceiling > 0) room.ceiling = LevelSurface{ceiling, {}, {}};
  return room;
}

RoomShape alcove(double back, double front, double deep) {
  const double closes = 0.5 * (back - front);
  RoomShape room;
  // The left wall counts from its corner with the back wall, towards the room.
  room.walls.push_back(wall("left", {0, 0}, {closes, -deep}, true));
  room.walls.push_back(wall("back", {0, 0}, {back, 0}, false));
  room.walls.push_back(wall("right", {back, 0}, {back - closes, -deep}, false));
  return room;
}

}  // namespace nook::sample

// Designs for tests.
#include "loft.h"

#include <cmath>
#include <numbers>

namespace nook::test {
namespace {

constexpr double kIn = kMillimetresPerInch;

Vec3 way(const std::string& name) {
  const double sign = name[0] == '-' ? -1 : 1;
  return {name[1] == 'x' ? sign : 0, name[1] == 'y' ? sign : 0, name[1] == 'z' ? sign : 0};
}

WallShape wall(const std::string& name, Vec2 along, Vec2 out) {
  WallShape shape;
  shape.name = name;
  shape.along = along, shape.out = out;
  shape.length = 3000;
  return shape;
}

Vec3 swapped(Vec3 p) {
  return {p.y, p.x, p.z};
}

}  // namespace

Loft::Loft() {
  room.walls = {wall("left", {1, 0}, {0, 1}), wall("right", {0, 1}, {1, 0})};
  for (const char* name : {"left", "right"}) {
    Wall read;
    read.name = name;
    survey.walls.push_back(read);
  }
  design.corner[0] = "left", design.corner[1] = "right";
}

Loft& Loft::use(User by, double youngest, double oldest, Purpose purpose, double mattress) {
  design.use.by = by;
  if (by != User::adult) design.use.ages[0] = youngest, design.use.ages[1] = oldest;
  design.use.purpose = purpose;
  design.use.mattress = inches(mattress);
  return *this;
}

Part& Loft::panel(const std::string& name, Polygon outline, Vec3 at, const char* u, const char* v,
                  double thickness) {
  Stock stock;
  stock.name = name + " stock";
  stock.thickness = inches(thickness);
  stock.density = 577;  // 36 lb/ft3
  design.stock.push_back(stock);
  Part part;
  part.name = part.group = name;
  part.stock = static_cast<int>(design.stock.size()) - 1;
  for (Vec2 p : outline) part.outline.push_back(kIn * p);
  part.place_in_room = {kIn * at, way(u), way(v), {}, {}};
  design.parts.push_back(part);
  return design.parts.back();
}

Part& Loft::board(const std::string& name, double width, double height, Vec3 at, const char* u,
                  const char* v, double thickness) {
  return panel(name, {{0, 0}, {width, 0}, {width, height}, {0, height}}, at, u, v, thickness);
}

void Loft::bore(Part& part, const std::string& name, Vec2 centre, double diameter) {
  constexpr int kSides = 64;
  Cutout cutout;
  cutout.name = name;
  const double radius = kIn * diameter / 2 / std::cos(std::numbers::pi / kSides);
  for (int k = 0; k < kSides; ++k) {
    const double turn = 2 * std::numbers::pi * k / kSides;
    cutout.outline.push_back(kIn * centre + radius * Vec2{std::cos(turn), std::sin(turn)});
  }
  part.cutouts.push_back(cutout);
}

void Loft::screw(const std::string& part, const std::string& to, double length) {
  Fastening fastening;
  fastening.part = part, fastening.to = to;
  fastening.screw.gauge = 10;
  fastening.screw.length = inches(length);
  design.fastenings.push_back(fastening);
}

SafetyAnswer Loft::answer(const FitAnswer* fit) const {
  const auto pieces = pieces_of(design);
  std::vector<Frame> frames;
  for (const Piece& piece : pieces) frames.push_back(piece.frame);
  return safety({survey, design, room, draws, pieces, frames, fit, true, 0.95});
}

Loft platform(double top, double guard) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("deck", 46, 36, {0, 0, top - 0.75}, "+x", "+y");
  loft.board("front", 36.75, top + guard, {46, 0, 0}, "+y", "+z");
  loft.board("side", 46, top + guard, {46, 36, 0}, "-x", "+z");
  return loft;
}

Loft with_ladder(double top, const std::vector<double>& rung_tops, double thick) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("deck", 46, 36, {0, 0, top - 0.75}, "+x", "+y");
  loft.board("front", 36.75, top + 38, {46, 0, 0}, "+y", "+z");
  loft.board("side", 29, top + 38, {46, 36, 0}, "-x", "+z");
  loft.board("near rail", 3, top + 38, {2, 39.5, 0}, "-y", "+z", 1.25);
  loft.board("far rail", 3, top + 38, {17, 39.5, 0}, "-y", "+z", 1.25);
  for (std::size_t k = 0; k < rung_tops.size(); ++k)
    loft.board("rung " + std::to_string(k + 1), 13.75, thick, {2, 37.5, rung_tops[k] - thick}, "+x",
               "+y", thick);
  for (Part& part : loft.design.parts)
    if (part.name.ends_with("rail") || part.name.starts_with("rung")) part.group = "ladder";
  return loft;
}

Loft bed(double base, double rail) {
  Loft loft;
  loft.use(User::child, 8, 12, Purpose::sleep, 6);
  const double top = base + 0.75, high = top + 6 + rail;
  loft.board("bed", 78, 36, {0.75, 0.75, base}, "+x", "+y");
  loft.board("wall rail", 79.5, high - base, {79.5, 0, base}, "-x", "+z");
  loft.board("front rail", 79.5, high - base, {0, 37.5, base}, "+x", "+z");
  loft.board("head", 36, high - base, {0, 0.75, base}, "+y", "+z");
  loft.board("foot", 36, high - base, {78.75, 0.75, base}, "+y", "+z");
  return loft;
}

Loft mirrored(const Loft& loft) {
  Loft other = loft;
  for (std::size_t k = 0; k < 2; ++k) {
    std::swap(other.room.walls[k].along.x, other.room.walls[k].along.y);
    std::swap(other.room.walls[k].out.x, other.room.walls[k].out.y);
  }
  std::swap(other.room.walls[0], other.room.walls[1]);
  std::swap(other.room.walls[0].name, other.room.walls[1].name);
  for (Part& part : other.design.parts) {
    // Mirrored in the plane x = y; the frame stays right-handed by running u the other way.
    double wide = 0;
    for (Vec2 p : part.outline) wide = std::max(wide, p.x);
    Placement& place = part.place_in_room;
    place.at = swapped(place.at) + wide * swapped(place.u);
    place.u = -swapped(place.u), place.v = swapped(place.v);
    const auto flip = [&](Polygon& ring) {
      for (Vec2& p : ring) p.x = wide - p.x;
      ring = Polygon(ring.rbegin(), ring.rend());
    };
    flip(part.outline);
    for (Cutout& cutout : part.cutouts) flip(cutout.outline);
  }
  return other;
}

std::optional<Caution> find(const SafetyAnswer& answer, const std::string& id) {
  for (const Caution& caution : answer.cautions)
    if (caution.id == id) return caution;
  return {};
}

std::vector<Caution> all(const SafetyAnswer& answer, const std::string& id) {
  std::vector<Caution> found;
  for (const Caution& caution : answer.cautions)
    if (caution.id == id) found.push_back(caution);
  return found;
}

std::string severity_of(const SafetyAnswer& answer, const std::string& id) {
  const auto first = find(answer, id);
  return first ? std::string(words(first->severity)) : "";
}

}  // namespace nook::test

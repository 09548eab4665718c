// Pieces sunk into the covering, what the readings leave open, shadows of everything.
#include "safety/scene.h"

#include <algorithm>
#include <cmath>

#include "fit/find_floor.h"
#include "room/covering.h"

namespace nook::safe {
namespace {

constexpr int kDrawsTried = 100;  // chosen: an sd good to 7 %

Measured sinking(const SquashRange& range) {
  return {range.likely, (range.most - range.least) / std::sqrt(12.0)};
}

// What stands on a piece, N: the loads of its feet; none where it has none or one states no load.
struct Standing {
  bool feet = false;
  std::optional<double> load;
};
Standing standing_on(const SafetyInput& in, int piece) {
  Standing out;
  for (const Foot& foot : in.design.feet) {
    if (!is_named(in.pieces[piece], foot.part)) continue;
    const bool first = !out.feet;
    out.feet = true;
    out.load = (first || out.load) && foot.load_n
                   ? std::optional(out.load.value_or(0) + *foot.load_n)
                   : std::nullopt;
  }
  return out;
}

// mm^2 of floor under a piece that stands on the end or the edge of its outline.
double footprint(const Piece& piece) {
  const Box2 box = box_of(piece.drawn->outline);
  const Vec2 size = box.high - box.low;
  return piece.thickness *
         (std::abs(piece.frame.u.z) > std::abs(piece.frame.v.z) ? size.y : size.x);
}

Measured sinking(const SafetyInput& in, int piece) {
  if (in.fit)
    for (const FloorFit& floor : in.fit->floor)
      if (floor.piece == piece)
        return sinking({floor.squash_mm, floor.squash_least_mm, floor.squash_most_mm});
  const Floor& floor = in.survey.floor;
  const Standing on = standing_on(in, piece);
  if (!on.feet || !gives(floor)) return {};
  return sinking(on.load ? squash_under(floor, *on.load / footprint(in.pieces[piece]))
                         : squash_untold(floor));
}

// A group sinks as far as the foot of it that sinks most.
std::vector<Measured> sinkings(const SafetyInput& in) {
  const int count = static_cast<int>(in.pieces.size());
  std::vector<Measured> own, sink(count);
  for (int k = 0; k < count; ++k) own.push_back(sinking(in, k));
  for (int k = 0; k < count; ++k)
    for (int other = 0; other < count; ++other)
      if (group_of(in.pieces[k]) == group_of(in.pieces[other]) &&
          own[other].value + own[other].sd > sink[k].value + sink[k].sd)
        sink[k] = own[other];
  return sink;
}

Vec3 wall_drift(const Scene& scene, int wall, Vec3 p, const RoomShape& draw) {
  const WallShape& found = scene.in.room.walls[wall];
  const double moved = before(found, p) - before(draw.walls[wall], p);
  return moved * Vec3{found.out.x, found.out.y, 0};
}

// How far a spot of a piece is from where it was found, in a draw that the fit has placed it in.
Vec3 piece_drift(const Scene& scene, int piece, Vec3 p, int draw) {
  if (!scene.in.fit || scene.in.fit->frames_in_draws.empty()) return {};
  const Frame& drawn = scene.in.fit->frames_in_draws[draw][piece];
  return drawn.room_from_piece(scene.in.frames[piece].piece_from_room(p)) - p;
}

// How far the surface at a spot is from where it was found, in one draw.
Vec3 drift(const Scene& scene, const Spot& spot, int number) {
  const Vec2 p{spot.at.x, spot.at.y};
  const RoomShape &room = scene.in.room, &draw = scene.in.draws[number];
  switch (spot.owner.kind) {
    case Owner::Kind::piece:
      return piece_drift(scene, spot.owner.index, spot.at, number);
    case Owner::Kind::wall:
      return wall_drift(scene, spot.owner.index, spot.at, draw);
    case Owner::Kind::floor:
      return {0, 0, draw.floor.z(p) - room.floor.z(p)};
    case Owner::Kind::ceiling:
      return {0, 0, draw.ceiling->z(p) - room.ceiling->z(p)};
    case Owner::Kind::fill:
      return {};
  }
  return {};
}

double sink_sd(const Scene& scene, const Spot& spot) {
  return spot.owner.kind == Owner::Kind::piece ? scene.sink[spot.owner.index].sd : 0;
}

bool move_together(const Scene& scene, const Spot& a, const Spot& b) {
  if (a.owner == b.owner) return true;
  return a.owner.kind == Owner::Kind::piece && b.owner.kind == Owner::Kind::piece &&
         group_of(scene.piece(a.owner.index)) == group_of(scene.piece(b.owner.index));
}

void widen(Window& window, Vec2 p, double margin) {
  window.low = {std::min(window.low.x, p.x - margin), std::min(window.low.y, p.y - margin)};
  window.high = {std::max(window.high.x, p.x + margin), std::max(window.high.y, p.y + margin)};
}

}  // namespace

Scene scene_of(const SafetyInput& input) {
  Scene scene{input, audience_of(input.design.use), sinkings(input), {}};
  for (std::size_t k = 0; k < input.pieces.size(); ++k) {
    Frame frame = input.frames[k];
    frame.at.z -= scene.sink[k].value;
    scene.bodies.push_back(body_of(input.pieces[k], frame));
  }
  return scene;
}

std::string name_of(const Scene& scene, Owner owner) {
  switch (owner.kind) {
    case Owner::Kind::piece:
      return scene.piece(owner.index).name;
    case Owner::Kind::wall:
      return scene.in.room.walls[owner.index].name + " wall";
    case Owner::Kind::floor:
      return "floor";
    case Owner::Kind::ceiling:
      return "ceiling";
    case Owner::Kind::fill:
      return {};
  }
  return {};
}

std::string between(const Scene& scene, std::vector<Owner> owners) {
  std::sort(owners.begin(), owners.end());
  owners.erase(std::unique(owners.begin(), owners.end()), owners.end());
  std::vector<std::string> names;
  for (Owner owner : owners)
    if (owner.kind != Owner::Kind::fill) names.push_back(name_of(scene, owner));
  return names.size() < 2 ? joined(names) : "between " + joined(names);
}

double spread(const Scene& scene, const Spot& a, const Spot& b, Vec3 direction) {
  if (move_together(scene, a, b)) return 0;
  const int count = std::min<int>(kDrawsTried, static_cast<int>(scene.in.draws.size()));
  double sum = 0, squares = 0;
  for (int d = 0; d < count; ++d) {
    const double x = dot(direction, drift(scene, b, d) - drift(scene, a, d));
    sum += x, squares += x * x;
  }
  const double variance = count > 1 ? (squares - sum * sum / count) / (count - 1) : 0;
  const double sinks = std::abs(direction.z) * std::hypot(sink_sd(scene, a), sink_sd(scene, b));
  return std::hypot(std::sqrt(std::max(variance, 0.0)), sinks);
}

Measured height_of(const Scene& scene, Owner owner, Vec3 at) {
  const double floor = scene.room_known() ? scene.in.room.floor.z({at.x, at.y}) : 0;
  const Spot below{{Owner::Kind::floor, 0}, {at.x, at.y, floor}};
  return {at.z - floor, spread(scene, below, {owner, at}, {0, 0, 1})};
}

View view_of(const Scene& scene, const Sight& sight, Slab slab, double margin) {
  std::vector<Shadow> shadows;
  Window window{{1e9, 1e9}, {-1e9, -1e9}};
  for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k)
    for (Region& region : shadows_of(scene.bodies[k], sight, slab)) {
      for (Vec2 p : region.outline) widen(window, p, margin);
      shadows.push_back({{Owner::Kind::piece, k}, std::move(region)});
    }
  if (scene.room_known() && !shadows.empty())
    for (Shadow& shadow : shadows_of(scene.in.room, sight, window))
      shadows.push_back(std::move(shadow));
  return {sight, slab, window, Air(std::move(shadows))};
}

bool in_body(const Body& body, Vec3 p) {
  const Vec3 q = body.frame.piece_from_room(p);
  return q.z >= 0 && q.z <= body.piece->thickness && contains(body.region, {q.x, q.y});
}

bool in_wall(const Scene& scene, Vec3 p) {
  const auto& walls = scene.in.room.walls;
  return scene.room_known() && std::any_of(walls.begin(), walls.end(), [&](const WallShape& wall) {
           return before(wall, p) <= 0;
         });
}

}  // namespace nook::safe

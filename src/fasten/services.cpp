// Zones of known services on a wall.
#include "fasten/services.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

// Chosen: room left round a known thing for its bends and for laying out; how near a box hangs to
// its stud; how far apart in height two boxes on one level run may be.
constexpr double kRound = 25, kBeside = 50, kSameLevel = 150;

// A pipe that does not stand out of the wall runs in it.
bool in_wall(const Obstacle& o) {
  const bool hidden_pipe = o.kind == ObstacleKind::pipe && std::max(o.out[0], o.out[1]).mm <= 0;
  return is_box(o.kind) || hidden_pipe || std::min(o.out[0], o.out[1]).mm < 0;
}

struct Spot {
  Vec2 low, high;
  std::string name;
};

std::optional<Spot> spot_of(const Obstacle& o, const WallFrame& frame) {
  const double guess = frame.base(o.along[0].mm, kUsualHeight, o.from_right);
  const auto z0 = frame.z(o.height[0], guess), z1 = frame.z(o.height[1], guess);
  if (!z0 || !z1) return std::nullopt;
  const double z = (*z0 + *z1) / 2;
  const double a = frame.base(o.along[0].mm, z, o.from_right);
  const double b = frame.base(o.along[1].mm, z, o.from_right);
  return Spot{{std::min(a, b), std::min(*z0, *z1)}, {std::max(a, b), std::max(*z0, *z1)}, o.name};
}

std::vector<Spot> boxes_on(const Survey& survey, const RoomShape& room, int wall) {
  std::vector<Spot> boxes;
  const WallFrame frame(room, wall);
  for (const Obstacle& o : survey.walls[wall].obstacles)
    if (is_box(o.kind))
      if (const auto spot = spot_of(o, frame)) boxes.push_back(*spot);
  return boxes;
}

// The stud that carries a box: the one whose side is nearest to the box's side.
const StudLine* carrier(const Spot& box, const WallStuds& studs) {
  const double z = (box.low.y + box.high.y) / 2;
  const StudLine* nearest = nullptr;
  double least = kBeside;
  for (const StudLine& s : studs.lines) {
    const double half = s.belief.plies() * s.belief.width() / 2, c = s.centre(z);
    const double off = std::max({box.low.x - (c + half), (c - half) - box.high.x, 0.0});
    if (off > least) continue;
    if (nearest && off == least) continue;
    least = off;
    nearest = &s;
  }
  return nearest;
}

bool same_level(const Spot& a, const Spot& b) {
  return std::abs(a.low.y + a.high.y - b.low.y - b.high.y) / 2 <= kSameLevel;
}

class ZoneMaker {
 public:
  ZoneMaker(const RoomShape& room, int wall) : frame_(room, wall) {}

  void solid(const Obstacle& o) {
    if (const auto spot = spot_of(o, frame_)) add(spot->low, spot->high, false, "the " + o.name);
  }
  void upright(const Spot& box, const WallStuds& studs) {
    const std::string what = "the cable of the " + box.name;
    add({box.low.x, -kTall}, {box.high.x, kTall}, true, what);
    const StudLine* stud = carrier(box, studs);
    if (!stud) return;
    const double z = (box.low.y + box.high.y) / 2;
    const double half = stud->belief.plies() * stud->belief.width() / 2, c = stud->centre(z);
    add({std::min(c - half, box.low.x), -kTall}, {std::max(c + half, box.high.x), kTall}, true,
        what);
  }
  void level(const Spot& a, const Spot& b) {
    add({std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
        {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}, true,
        "a cable from the " + a.name + " to the " + b.name);
  }
  void round_corner(const Spot& box, bool at_start) {
    const double z = (box.low.y + box.high.y) / 2;
    const double corner = at_start ? frame_.start(z) : frame_.end(z);
    add({std::min(corner, box.low.x), box.low.y}, {std::max(corner, box.high.x), box.high.y}, true,
        "a cable from the " + box.name + " round the corner");
  }
  std::vector<ServiceZone> zones;

 private:
  static constexpr double kTall = 1e5;  // floor to ceiling and beyond
  void add(Vec2 low, Vec2 high, bool deep_only, std::string what) {
    const Vec2 round{kRound, kRound};
    zones.push_back({low - round, high + round, deep_only, std::move(what)});
  }
  WallFrame frame_;
};

// Boxes on the next wall at the same level send a cable round the corner between.
void add_round_corners(ZoneMaker& maker, const Survey& survey, const RoomShape& room, int wall) {
  for (int step : {-1, 1}) {
    const int other = wall + step;
    if (other < 0 || other >= static_cast<int>(survey.walls.size())) continue;
    // The first wall counts from its only corner, so its start is where wall 1 begins.
    const bool at_start = wall == 0 || step < 0;
    for (const Spot& mine : boxes_on(survey, room, wall))
      for (const Spot& theirs : boxes_on(survey, room, other))
        if (same_level(mine, theirs)) maker.round_corner(mine, at_start);
  }
}

}  // namespace

std::vector<ServiceZone> services_on(const Survey& survey, const RoomShape& room, int wall,
                                     const WallStuds& studs) {
  ZoneMaker maker(room, wall);
  for (const Obstacle& o : survey.walls[wall].obstacles)
    if (in_wall(o)) maker.solid(o);
  const auto boxes = boxes_on(survey, room, wall);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    maker.upright(boxes[i], studs);
    for (std::size_t j = i + 1; j < boxes.size(); ++j)
      if (same_level(boxes[i], boxes[j])) maker.level(boxes[i], boxes[j]);
  }
  add_round_corners(maker, survey, room, wall);
  return std::move(maker.zones);
}

std::optional<ServiceHit> service_at(const std::vector<ServiceZone>& zones, Vec2 at,
                                     double embedment) {
  std::optional<ServiceHit> hit;
  for (const ServiceZone& z : zones) {
    if (at.x < z.low.x || at.x > z.high.x || at.y < z.low.y || at.y > z.high.y) continue;
    const bool forbidden = !z.deep_only || embedment > kServiceDepth;
    // The strictest zone speaks.
    if (!hit || (forbidden && !hit->forbidden) || (hit->shallow_allowed && !z.deep_only))
      hit = ServiceHit{forbidden, z.deep_only, z.what};
  }
  return hit;
}

std::vector<std::string> boxes_without_stud(const Survey& survey, const RoomShape& room, int wall,
                                            const WallStuds& studs) {
  std::vector<std::string> names;
  for (const Spot& box : boxes_on(survey, room, wall))
    if (!carrier(box, studs)) names.push_back(box.name);
  return names;
}

}  // namespace nook

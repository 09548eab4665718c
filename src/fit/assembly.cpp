// Which pieces go in together, in which order, and where each group starts.
#include "fit/assembly.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "design/fitting.h"

namespace nook {
namespace {

constexpr double kOnFloor = 1;  // mm; a piece drawn this near the floor stands on it. Chosen

const Group* group_named(const Design& design, const std::string& name) {
  for (const Group& group : design.groups)
    if (group.name == name) return &group;
  return nullptr;
}

const Group* settings_of(const Scene& scene, const Assembly& group) {
  if (const Group* named = group_named(scene.design, group.name)) return named;
  const Part& part = *scene.pieces[group.pieces.front()].drawn;
  return group_named(scene.design, part.group);
}

bool has(const Assembly& group, int piece) {
  return std::find(group.pieces.begin(), group.pieces.end(), piece) != group.pieces.end();
}

// Whether a name in the file means a piece of the group.
bool means(const Scene& scene, const Assembly& group, const std::string& name) {
  return std::any_of(group.pieces.begin(), group.pieces.end(),
                     [&](int p) { return is_named(scene.pieces[p], name); });
}

// Walls that the group touches by contact, fastening or wish.
std::set<int> walls_of(const Scene& scene, const Site& site, const std::vector<Joint>& joints,
                       const Assembly& group) {
  std::set<int> walls;
  const auto add = [&](const std::string& meets) {
    if (const int wall = site.wall_named(meets); wall >= 0) walls.insert(wall);
  };
  for (const std::string& target : group.tight_to) add(target);
  for (int j : group.joints) add(joints[j].how->meets);
  for (const Fastening& f : scene.design.fastenings)
    if (means(scene, group, f.part)) add(f.to);
  return walls;
}

bool meets(const std::vector<Joint>& joints, const Assembly& group, const std::string& what) {
  return std::any_of(group.joints.begin(), group.joints.end(), [&](int j) {
    return joints[j].how->meets == what && joints[j].how->by != Fitting::clear;
  });
}

// What stands on the floor once it is fitted: a piece that is cut to it holds nothing up.
void add_standing(const std::vector<Joint>& joints, const Assembly& group, std::set<int>& feet) {
  std::set<int> cut;
  for (int j : group.joints) {
    const Contact& how = *joints[j].how;
    if (how.meets != "floor" || how.by == Fitting::clear) continue;
    (is_cut_to_fit(how.by) ? cut : feet).insert(joints[j].piece);
  }
  if (feet.empty()) feet = cut;
}

// Pieces said to stand; without any, those drawn on the floor.
std::vector<int> feet_of(const Scene& scene, const std::vector<Joint>& joints,
                         const Assembly& group) {
  std::set<int> feet;
  for (const Foot& foot : scene.design.feet)
    for (int p : group.pieces)
      if (is_named(scene.pieces[p], foot.part)) feet.insert(p);
  add_standing(joints, group, feet);
  if (feet.empty())
    for (int p : group.pieces)
      if (std::abs(lowest(scene.pieces[p], scene.pieces[p].frame)) <= kOnFloor) feet.insert(p);
  return {feet.begin(), feet.end()};
}

std::vector<int> lowest_of(const Scene& scene, const Assembly& group) {
  const auto z = [&](int p) { return lowest(scene.pieces[p], scene.pieces[p].frame); };
  double least = z(group.pieces.front());
  for (int p : group.pieces) least = std::min(least, z(p));
  std::vector<int> found;
  for (int p : group.pieces)
    if (z(p) <= least + kOnFloor) found.push_back(p);
  return found;
}

// Whether a piece outside the group meets one of it from below or above, or the other way round.
bool rests_on_parts(const Scene& scene, const std::vector<Joint>& joints, const Assembly& group) {
  return std::any_of(joints.begin(), joints.end(), [&](const Joint& joint) {
    if (joint.meets.kind != Surface::Kind::part || joint.feelers.empty()) return false;
    const Ray ray = ray_of(joint.feelers.front(), scene.pieces[joint.piece].frame);
    if (std::abs(ray.way.z) < 0.9 || joint.how->by == Fitting::clear) return false;
    const bool own = has(group, joint.piece);
    return std::any_of(joint.parts.begin(), joint.parts.end(),
                       [&](int p) { return has(group, p) != own; });
  });
}

void set_height(const Scene& scene, const std::vector<Joint>& joints, bool on_wall,
                Assembly& group) {
  const Group* settings = settings_of(scene, group);
  group.feet = feet_of(scene, joints, group);
  if (settings && settings->height_from)
    group.height =
        *settings->height_from == HeightFrom::floor ? HeightRule::floor : HeightRule::level_line;
  else if (!group.feet.empty())
    group.height = HeightRule::floor;
  else if (on_wall)
    group.height = HeightRule::level_line;
  else if (rests_on_parts(scene, joints, group))
    group.height = HeightRule::rests;
  else if (meets(joints, group, "ceiling"))
    group.height = HeightRule::ceiling;
  if (group.height != HeightRule::floor || !group.feet.empty()) return;
  group.feet = lowest_of(scene, group);
  group.above_floor = lowest(scene.pieces[group.feet[0]], scene.pieces[group.feet[0]].frame);
}

// What meets its wall by less than this stands across to it, mm. Chosen.
constexpr double kAlong = 50;

// Whether a group lies along a wall: it is screwed to it, or no contact says that it stands across.
bool lies_along(const Scene& scene, const std::vector<Joint>& joints, const Assembly& group,
                int wall) {
  const std::string& name = scene.survey.walls[wall].name;
  for (const Fastening& how : scene.design.fastenings)
    for (int p : group.pieces)
      if (wall_named(how.to) == name && is_named(scene.pieces[p], how.part)) return true;
  Stretch x{1e300, -1e300}, y = x;
  for (int j : group.joints) {
    const Joint& joint = joints[j];
    if (joint.meets.kind != Surface::Kind::wall || joint.meets.wall != wall) continue;
    for (Vec3 corner : joint.corners) {
      const Vec3 at = scene.pieces[joint.piece].frame.room_from_piece(corner);
      x = {std::min(x.from, at.x), std::max(x.to, at.x)};
      y = {std::min(y.from, at.y), std::max(y.to, at.y)};
    }
  }
  return x.to < x.from || std::hypot(x.to - x.from, y.to - y.from) >= kAlong;
}

void settle(const Scene& scene, const Site& site, const std::vector<Joint>& joints,
            Assembly& group) {
  if (const Group* settings = settings_of(scene, group)) {
    group.tight_to = settings->tight_to;
    group.may_turn = settings->turn;
    if (settings->parallel_to) {
      if (const int wall = site.wall_named(*settings->parallel_to); wall >= 0)
        group.parallel_to = wall;
      else
        for (int p : pieces_named(scene.pieces, scene.design, *settings->parallel_to))
          group.along_piece = group.along_piece.value_or(p);
    }
  }
  const std::set<int> walls = walls_of(scene, site, joints, group);
  if (walls.size() == 1) {
    group.start_wall = *walls.begin();
    group.turns_with_wall =
        group.may_turn.value_or(true) && lies_along(scene, joints, group, *group.start_wall);
  }
  set_height(scene, joints, !walls.empty(), group);
}

double order_of(const Scene& scene, const Assembly& group, std::size_t index) {
  const Group* settings = settings_of(scene, group);
  return settings && settings->order ? *settings->order : static_cast<double>(index + 1);
}

// The way a wall faces where it is drawn, as quarter turns from +y clockwise.
double drawn_facing(int wall, int first_wall) {
  return std::numbers::pi / 2 * (1 - (wall - first_wall));
}

}  // namespace

std::vector<Assembly> assemblies_of(const Scene& scene, const Site& site,
                                    const std::vector<Joint>& joints) {
  std::vector<Assembly> groups;
  std::map<std::string, std::size_t> index;
  for (int p = 0; p < static_cast<int>(scene.pieces.size()); ++p) {
    const std::string name = group_of(scene.pieces[p]);
    const auto [it, fresh] = index.emplace(name, groups.size());
    if (fresh) groups.emplace_back().name = name;
    groups[it->second].pieces.push_back(p);
  }
  std::vector<Assembly*> of_piece(scene.pieces.size());
  for (Assembly& group : groups)
    for (int p : group.pieces) of_piece[p] = &group;
  for (int j = 0; j < static_cast<int>(joints.size()); ++j)
    of_piece[joints[j].piece]->joints.push_back(j);
  std::vector<std::pair<double, std::size_t>> order;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    settle(scene, site, joints, groups[g]);
    order.emplace_back(order_of(scene, groups[g], g), g);
  }
  std::stable_sort(order.begin(), order.end());
  std::vector<Assembly> sorted;
  for (const auto& [key, g] : order) sorted.push_back(std::move(groups[g]));
  return sorted;
}

double turn_of_wall(const RoomShape& room, int wall, int first_wall) {
  const Vec2 out = room.walls[wall].out;
  const double facing = drawn_facing(wall, first_wall);
  const Direction drawn = direction({facing});
  return std::atan2(cross({drawn.cos, drawn.sin}, out), dot({drawn.cos, drawn.sin}, out));
}

Motion start_motion(const Assembly& group, const RoomShape& room, int first_wall, bool turned) {
  if (!group.start_wall) return {};
  const int wall = *group.start_wall;
  const double turn = turned ? turn_of_wall(room, wall, first_wall) : 0;
  Vec2 corner, drawn;  // where the wall's readings count from: as found, as drawn
  if (wall > first_wall + 1) {
    corner = room.walls[wall].start;
    Vec2 before;  // the design's corner
    for (int k = first_wall + 2; k <= wall; ++k) {
      const Direction facing = direction({drawn_facing(k - 1, first_wall)});
      drawn = drawn + norm(room.walls[k].start - before) * left_of({facing.cos, facing.sin});
      before = room.walls[k].start;
    }
  } else if (wall < first_wall) {
    corner = room.walls[first_wall].start;
    drawn = {norm(corner), 0};
  }
  const Motion about = turned_about(drawn, turn, {});
  return {turn, about.move + Vec3{corner.x - drawn.x, corner.y - drawn.y, 0}};
}

}  // namespace nook

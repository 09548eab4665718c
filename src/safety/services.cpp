// Cables and pipes: what is usual in a wall, and what was found.
#include <algorithm>
#include <set>

#include "fasten/drill.h"
#include "fasten/screw_size.h"
#include "fasten/wall_frame.h"
#include "safety/checks.h"
#include "safety/on_wall.h"
#include "safety/source.h"

namespace nook::safe {
namespace {

/// A piece that is screwed to a wall.
struct Hung {
  int piece, wall;
  std::optional<double> in_stud;  // mm, of its deepest screw; none where no screw is placed
};

// As deep as they are to be driven; where no holes are laid out yet, as deep as they go without
// shims.
std::optional<double> depth_of(const Scene& scene, int piece, const Fastening& fastening,
                               int wall) {
  if (!scene.in.drill)
    return embedment_of(fastening.screw, scene.piece(piece).thickness,
                        scene.in.survey.walls[wall].wallboard.mm);
  std::optional<double> deepest;
  for (const Hole& hole : scene.in.drill->walls[wall].holes)
    if (hole.part == scene.piece(piece).name)
      deepest = std::max(deepest.value_or(hole.embedment_mm), hole.embedment_mm);
  return deepest;
}

std::vector<Hung> hung_on_walls(const Scene& scene) {
  std::vector<Hung> hung;
  for (const Fastening& fastening : scene.in.design.fastenings) {
    const int wall = wall_into(scene, fastening);
    if (wall < 0) continue;
    for (int k : pieces_of(scene, fastening))
      hung.push_back({k, wall, depth_of(scene, k, fastening, wall)});
  }
  return hung;
}

void judge_depth(const Scene& scene, const Hung& hung, Cautions& cautions) {
  if (!hung.in_stud) return;
  const Measured depth{*hung.in_stud};
  cautions.judge(
      chance_at_most(depth, mm(Of::stud_cable)),
      {"screw-reaches-cable",
       scene.piece(hung.piece).name,
       {"Its screws enter the studs by up to {}: over {} they may reach a cable or a pipe, "
        "and a bit that stops on steel has met a protection plate: move. Switch the circuit "
        "off before drilling.",
        {depth, Of::stud_cable}},
       {Of::stud_cable},
       cited(From::pipe_depth),
       depth});
}

void judge_services(const Scene& scene, const Hung& hung, Cautions& cautions) {
  const Patch piece = patch_of(scene, hung.wall, scene.bodies[hung.piece]);
  const std::string& where = scene.piece(hung.piece).name;
  for (const Obstacle& obstacle : scene.in.survey.walls[hung.wall].obstacles) {
    const auto patch = patch_of(scene, hung.wall, obstacle);
    if (!patch) continue;
    const bool above = share_along(piece, *patch), beside = share_height(piece, *patch);
    if (is_box(obstacle.kind) && (above || beside))
      cautions.say(
          {"cable-run",
           where,
           {"It is screwed {} the {}: cables run straight up, straight down and level from a "
            "box, also from one on the far side of the wall.",
            {std::string(above ? "over or under" : "level with"), obstacle.name}},
           {},
           std::string(words(Known::no_source)),
           {}});
    if (obstacle.kind == ObstacleKind::pipe && above && beside)
      cautions.say({"pipe-behind",
                    where,
                    {"The {} runs behind it.", {obstacle.name}},
                    {},
                    std::string(words(Known::no_source)),
                    {}});
  }
}

// How near it comes to a corner of two walls, or to the ceiling.
double to_corner(const Scene& scene, const Hung& hung) {
  const Patch piece = patch_of(scene, hung.wall, scene.bodies[hung.piece]);
  const WallFrame frame(scene.in.room, hung.wall);
  double least = piece.low.x - frame.start(piece.low.y);
  if (frame.has_far_corner()) least = std::min(least, frame.end(piece.low.y) - piece.high.x);
  const Vec3 top = frame.shape().point(piece.low.x, piece.high.y);
  if (scene.in.room.ceiling)
    least = std::min(least, scene.in.room.ceiling->z({top.x, top.y}) - piece.high.y);
  return std::max(least, 0.0);
}

// One for all that is screwed to a wall: it is about the wall, and about British wiring only.
void judge_zone(const Scene& scene, const std::vector<Hung>& all, int wall, Cautions& cautions) {
  Measured near{1e9}, deep{0};
  for (const Hung& hung : all) {
    if (hung.wall != wall) continue;
    near.value = std::min(near.value, to_corner(scene, hung));
    if (hung.in_stud)
      deep.value = std::max(deep.value, *hung.in_stud + scene.in.survey.walls[wall].wallboard.mm);
  }
  const std::string where = scene.in.survey.walls[wall].name + " wall";
  if (chance_at_most(near, mm(Of::cable_zone)) > 0)
    cautions.say(
        {"corner-cables",
         where,
         {"What is screwed to it comes within {} of a corner or the ceiling: in British wiring "
          "cables run in the "
          "{} next to those.",
          {near, Of::cable_zone}},
         {Of::cable_zone},
         "",
         near});
  if (chance_at_most(deep, mm(Of::cable_depth)) == 0)
    cautions.say(
        {"corner-cables",
         where,
         {"Screws go {} into the wall: in British wiring a cable over {} deep may run anywhere.",
          {deep, Of::cable_depth}},
         {Of::cable_depth},
         "",
         deep});
}

// A usual height, inches.
Measured usual(double height) {
  return {inches(height).mm, 0};
}

void judge_record(const Scene& scene, int wall, Cautions& cautions) {
  const Wall& read = scene.in.survey.walls[wall];
  if (std::any_of(read.obstacles.begin(), read.obstacles.end(),
                  [](const Obstacle& o) { return is_box(o.kind); }))
    return;
  cautions.say(
      {"boxes-not-recorded",
       read.name + " wall",
       {"No outlet or switch is on record: look on both sides of the wall, about {} or {} and {} "
        "to {} above the floor, and enter what is there.",
        {usual(12), usual(15), usual(48), usual(52)}},
       {},
       std::string(words(Known::no_source)),
       {}});
}

}  // namespace

void services(const Scene& scene, Cautions& cautions) {
  const std::vector<Hung> all = hung_on_walls(scene);
  std::set<int> walls;
  for (const Hung& hung : all) {
    walls.insert(hung.wall);
    judge_depth(scene, hung, cautions);
    if (scene.room_known()) judge_services(scene, hung, cautions);
  }
  for (int wall : walls) {
    if (scene.room_known()) judge_zone(scene, all, wall, cautions);
    judge_record(scene, wall, cautions);
  }
}

}  // namespace nook::safe

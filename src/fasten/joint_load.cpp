// A load down, split into what shears and what pulls the screws of a joint.
#include "fasten/joint_load.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "fasten/joint_row.h"
#include "fasten/load_share.h"
#include "fasten/prying.h"

namespace nook {
namespace {

// Screws driven level or nearly so share the load like a ledger's; steeper ones alike. Chosen: 60.
const double kLevelEnough = direction(degrees(60)).cos;

// Where screws and load stand, in the room frame; `bearing`: what the pieces meet on, in the
// meeting's plane.
struct JointLoad {
  std::vector<Vec3> at;
  Vec3 load_at;
  const CutPlane& plane;
  const Polygon& bearing;
  bool spread = false;  // no place is stated: over all of where they meet
};

Vec3 load_place(const Fastening& f, const Placed& part) {
  const Box2 box = box_of(part.piece.drawn->outline);
  const Vec2 middle = 0.5 * (box.low + box.high);
  return part.frame.room_from_piece({f.load_at ? f.load_at->mm : middle.x, middle.y, 0});
}

JointLoad load_of(const Joining& j, const JointScrews& screws) {
  JointLoad load{{},
                 load_place(j.fastening, j.part),
                 j.meeting.plane,
                 largest_of(j.meeting.overlap).outline,
                 !j.fastening.load_at};
  for (const Hole& h : screws.drill.holes)
    load.at.push_back(j.part.frame.room_from_piece({h.u_mm, h.v_mm, 0}));
  return load;
}

Loaded loaded_of(const Joining& j, const JointScrews& screws) {
  const auto gravity = [&](const Placed& p) {
    return j.design.stock[p.piece.drawn->stock].gravity.value_or(kUsualGravity);
  };
  const Fastening& f = j.fastening;
  Loaded l{f, j.part.piece.name, j.to.piece.name, f.load_n, f.pull_n};
  l.main_gravity = gravity(j.to);
  l.side_gravity = gravity(j.part);
  l.side_length = j.part.piece.thickness - f.screw.head_below.mm;
  l.main_angle = l.side_angle = 90;  // the worse, for lags
  l.end_grain = screws.end_grain;
  l.wood_depth = screws.wood_depth;
  for (std::size_t i = 0; i < screws.drill.holes.size(); ++i) {
    const Hole& h = screws.drill.holes[i];
    l.screws.push_back({h.id, screws.gaps[i], h.embedment_mm});
  }
  return l;
}

std::vector<ScrewLoad> sideways(const JointLoad& joint, double load) {
  const Vec3 into = joint.plane.normal;
  const auto& at = joint.at;
  const double across = std::hypot(into.x, into.y);
  const double shear = load * across;
  if (across < kLevelEnough)
    return std::vector<ScrewLoad>(at.size(), {shear / static_cast<double>(at.size()), 0});
  const Vec3 level{into.y / across, -into.x / across, 0};
  std::vector<Vec2> places;
  for (Vec3 p : at) places.push_back({dot(p, level), p.z});
  return shares(places, shear, dot(joint.load_at, level));
}

// A stated place says where along the piece; across it the force stands in the middle of what
// meets.
Pried parted(const JointLoad& joint, double force) {
  const CutPlane& plane = joint.plane;
  const Box2 box = box_of(joint.bearing);
  PullAway pull{force, 0.5 * (box.low + box.high), joint.bearing};
  if (!joint.spread) pull.at.x = plane.plane_from_room(joint.load_at).x;
  std::vector<Vec2> screws;
  for (Vec3 p : joint.at) screws.push_back(plane.plane_from_room(p));
  return pried(screws, pull);
}

Strength rated(const Joining& j, const JointScrews& screws) {
  Loaded loaded = loaded_of(j, screws);
  const JointLoad joint = load_of(j, screws);
  const Saying& say = j.say;
  if (joint.at.empty()) return strength_of(loaded, say);
  const double load = loaded.load.value_or(0);
  const auto side = sideways(joint, load);
  if (side.empty()) {
    loaded.no_figure = "one screw and a load beside it: the piece turns about it";
    loaded.no_figure_advice =
        "give it two screws: where the pieces meet over more, or put another piece beside it";
  }
  // normal.z < 0: driven down, the load presses.
  const double hanging = std::max(0.0, joint.plane.normal.z * load);
  const Pried pull = parted(joint, loaded.pull.value_or(0) + hanging);
  if (pull.newtons.empty()) loaded.no_figure = kNoHold;
  for (std::size_t i = 0; i < side.size(); ++i) {
    loaded.screws[i].sideways = std::hypot(side[i].down, side[i].level);
    if (!pull.newtons.empty()) loaded.screws[i].pull = pull.newtons[i];
  }
  Strength out = strength_of(loaded, say);
  if (pull.bears_at)
    out.notes.push_back(
        fmt::format("the pull on {} pries: it bears on {} beside the screws", out.part, out.to));
  return out;
}

// The least number of screws that fit between the two and carry the load, up to twice as many.
std::size_t more_screws(const Joining& j, std::size_t screws) {
  for (std::size_t count = screws + 1; count <= 2 * screws; ++count) {
    Fastening fastening = j.fastening;
    fastening.per_stud = static_cast<int>(count);
    const Joining more{j.part, j.to, j.meeting, fastening, j.design, j.say, j.row, j.sure};
    const JointScrews set = joint_screws(more);
    if (set.drill.holes.size() < count || !set.unreachable.empty()) return 0;
    if (rated(more, set).ratio.value_or(2) <= 1) return count;
  }
  return 0;
}

std::string cure_for(const Joining& j, std::size_t screws) {
  if (const std::size_t count = more_screws(j, screws); count > 0)
    return fmt::format("{} screws in place of {}, or rated ones", count, screws);
  return "more screws there do not fit or will not do; use rated ones, or hold the load at more "
         "pieces";
}

}  // namespace

Strength strength_of_joint(const Joining& joining, const JointScrews& screws) {
  Strength out = rated(joining, screws);
  if (out.ratio.value_or(0) > 1)
    relieve(out, cure_for(joining, screws.drill.holes.size()), joining.say);
  return out;
}

}  // namespace nook

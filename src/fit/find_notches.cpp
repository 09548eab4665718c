// Depths over all rooms, then one exact union and intersection for each piece.
#include "fit/find_notches.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "design/side.h"
#include "fit/notch_edge.h"
#include "fit/notch_shape.h"
#include "fit/notch_warnings.h"
#include "solid/boolean.h"
#include "solid/simplified.h"

namespace nook {
namespace {

// mm; points that stray less from the line of their neighbors are left out. Chosen: half the grid
// that outlines are rounded to.
constexpr double kInLine = kOutlineGrid / 2;
constexpr double kFollows = 0.4;  // mm, 1/64 in, that steps to lay out may stray. Chosen

// Names of the blocks of a zone, each once.
std::string names_of(const Trials& trials, const Joint& joint, const NotchZone& zone) {
  std::set<std::string> names;
  for (int k : zone.blocks) names.insert(trials.layout.site.blocks(joint.meets.wall)[k].name);
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

void add_cut(const Trials& trials, const Joint& joint, const Regions& shape, NotchFit notch,
             std::vector<NotchFit>& notches) {
  const Piece& piece = trials.layout.scene.pieces[joint.piece];
  for (const Region& region : intersect(shape, Regions{{piece.drawn->outline, {}}})) {
    notch.polygon = simplified(region.outline, kInLine);
    notches.push_back(notch);
  }
}

// Depths that are never less than the outline's, in order along the edge.
std::vector<NotchFit::Step> steps_of(const Polygon& polygon, const Joint& joint,
                                     const NotchZone& zone) {
  const EdgeLine line = edge_line(joint, zone);
  const EdgeSide* side = std::get_if<EdgeSide>(&joint.how->edge);
  const bool along_v = side && upright(*side);
  std::vector<NotchFit::Step> steps;
  for (const Vec2 p : simplified(polygon, kFollows)) {
    const double deep = dot(p - line.at, line.inwards());
    const double t = line.t + dot(p - line.at, line.way);
    if (deep > kFollows) steps.push_back({!side ? t : along_v ? p.y : p.x, deep + kFollows});
  }
  std::sort(steps.begin(), steps.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
  return steps;
}

NotchFit named(const Trials& trials, const Joint& joint) {
  NotchFit notch;
  notch.piece = joint.piece;
  notch.contact = joint.contact;
  notch.part = trials.layout.scene.pieces[joint.piece].name;
  return notch;
}

void add_edge_notches(const Trials& trials, const Joint& joint, double sure,
                      std::vector<NotchFit>& notches) {
  for (const NotchZone& zone : joint.zones) {
    const NotchDepth depth = notch_depth(trials, joint, zone, sure);
    if (!depth.needed) continue;
    NotchFit notch = named(trials, joint);
    notch.around = names_of(trials, joint, zone);
    notch.follows_profile = joint.how->notch_profile;
    notch.depth_mm = depth.depth;
    notch.depth_sd_mm = depth.sd;
    const Regions shape = joint.how->notch_profile
                              ? profile_notch(trials, joint, zone, depth)
                              : Regions{{square_notch(joint, zone, depth), {}}};
    const std::size_t before = notches.size();
    add_cut(trials, joint, shape, notch, notches);
    for (std::size_t k = before; notch.follows_profile && k < notches.size(); ++k)
      notches[k].steps = steps_of(notches[k].polygon, joint, zone);
  }
}

void add_face_notches(const Trials& trials, const Joint& joint, double sure,
                      std::vector<NotchFit>& notches) {
  for (const NotchZone& zone : joint.zones) {
    NotchFit notch = named(trials, joint);
    notch.around = names_of(trials, joint, zone);
    notch.depth_mm = trials.layout.scene.pieces[joint.piece].thickness;
    add_cut(trials, joint, {{face_notch(trials, joint, zone, sure), {}}}, notch, notches);
  }
}

void add_part_notches(const Trials& trials, const Joint& joint, double sure,
                      std::vector<NotchFit>& notches) {
  for (int part : joint.parts) {
    NotchFit notch = named(trials, joint);
    notch.around = trials.layout.scene.pieces[part].name;
    add_cut(trials, joint, part_notch(trials, joint, part, sure), notch, notches);
  }
}

}  // namespace

std::vector<NotchFit> find_notches(const Trials& trials, double sure) {
  std::vector<NotchFit> notches;
  for (const Joint& joint : trials.layout.joints) {
    if (!joint.how->notch || !joint.can_meet) continue;
    if (joint.meets.kind == Surface::Kind::part)
      add_part_notches(trials, joint, sure, notches);
    else if (joint.face)
      add_face_notches(trials, joint, sure, notches);
    else
      add_edge_notches(trials, joint, sure, notches);
  }
  warn_of_notches(trials, notches);
  return notches;
}

Regions cut_out_of(const std::vector<NotchFit>& notches, int piece) {
  std::vector<Polygon> polygons;
  for (const NotchFit& notch : notches)
    if (notch.piece == piece) polygons.push_back(notch.polygon);
  return unite(polygons);
}

}  // namespace nook

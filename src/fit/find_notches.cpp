// Depths over all rooms, then one exact union and intersection for each piece.
#include "fit/find_notches.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "fit/notch_shape.h"
#include "solid/boolean.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kLittleWood = 19;  // mm, 3/4 in; less than this beside a notch breaks off. Chosen

// Names of the blocks of a zone, each once.
std::string names_of(const Trials& trials, const Joint& joint, const NotchZone& zone) {
  std::set<std::string> names;
  for (int k : zone.blocks) names.insert(trials.layout.site.blocks(joint.meets.wall)[k].name);
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

// How many pieces of wood are left without a region.
std::size_t left_without(const Region& whole, const Polygon& cut) {
  return subtract(Regions{whole}, Regions{{cut, {}}}).size();
}

void warn(const Trials& trials, NotchFit& notch) {
  const Piece& piece = trials.layout.scene.pieces[notch.piece];
  const Region& region = trials.layout.scene.bodies[notch.piece].region;
  const Polygon wide = grown(hull_of(notch.polygon), kLittleWood);
  for (const Cutout& cutout : piece.drawn->cutouts)
    if (!intersect(Regions{{cutout.outline, {}}}, Regions{{wide, {}}}).empty())
      notch.warnings.push_back("comes within 3/4\" (19 mm) of the " +
                               (cutout.name.empty() ? "cutout" : cutout.name));
  const std::size_t whole = left_without(region, notch.polygon);
  if (whole > 1)
    notch.warnings.push_back("cuts the piece in two");
  else if (left_without(region, wide) != 1)
    notch.warnings.push_back("leaves a neck of less than 3/4\" (19 mm)");
}

void add_cut(const Trials& trials, const Joint& joint, const Regions& shape, NotchFit notch,
             std::vector<NotchFit>& notches) {
  const Piece& piece = trials.layout.scene.pieces[joint.piece];
  for (const Region& region : intersect(shape, Regions{{piece.drawn->outline, {}}})) {
    notch.polygon = region.outline;
    notch.warnings.clear();
    warn(trials, notch);
    notches.push_back(notch);
  }
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
    notch.depth_mm = depth.depth;
    notch.depth_sd_mm = depth.sd;
    const Regions shape = joint.how->notch_profile
                              ? profile_notch(trials, joint, zone, depth)
                              : Regions{{square_notch(joint, zone, depth), {}}};
    add_cut(trials, joint, shape, notch, notches);
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
  return notches;
}

Regions cut_out_of(const std::vector<NotchFit>& notches, int piece) {
  std::vector<Polygon> polygons;
  for (const NotchFit& notch : notches)
    if (notch.piece == piece) polygons.push_back(notch.polygon);
  return unite(polygons);
}

}  // namespace nook

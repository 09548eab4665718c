// Contacts as joints of single pieces, and what their feelers meet.
#include "fit/joint.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "fit/joint_builder.h"
#include "fit/surface_ahead.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kNear = 40;  // mm; a block this near a feeler's path may be met in a draw. Chosen
const double kFlatLimit = direction(degrees(30)).cos;  // from the gap's definition

bool near_block(const SiteView& view, int wall, const BlockHere& here, Vec2 spot) {
  const double low = view.z_of(here.block->height_from, wall, spot.x);
  const double high = view.z_of(here.block->height_to, wall, spot.x);
  return spot.x > here.a_from - kNear && spot.x < here.a_to + kNear && spot.y > low - kNear &&
         spot.y < high + kNear;
}

Surface surface_named(const Site& site, const std::string& meets) {
  if (meets == "floor") return {Surface::Kind::floor, 0};
  if (meets == "ceiling") return {Surface::Kind::ceiling, 0};
  const int wall = site.wall_named(meets);
  if (wall >= 0) return {Surface::Kind::wall, wall};
  return {Surface::Kind::part, 0};
}

// An edge of a piece that lies flat against what it should meet has no way square to it.
bool edge_can_meet(const RoomShape& room, const Joint& joint, const Frame& frame) {
  if (joint.face || joint.meets.kind == Surface::Kind::part) return true;
  if (joint.meets.kind != Surface::Kind::wall) return std::abs(frame.w.z) < kFlatLimit;
  const Vec2 out = room.walls[joint.meets.wall].out;
  return std::abs(dot(plan(frame.w), out)) < kFlatLimit;
}

// Whether no feeler comes nearer to the wall, floor or ceiling: the opposite edge or face is meant.
bool faces_away(const RoomShape& room, const Joint& joint, const Frame& frame) {
  const double least = direction(degrees(85)).cos;  // so square to it that it gets nowhere. Chosen
  Vec3 inward{0, 0, joint.meets.kind == Surface::Kind::floor ? -1.0 : 1.0};
  if (joint.meets.kind == Surface::Kind::wall) {
    const Vec2 out = room.walls[joint.meets.wall].out;
    inward = {-out.x, -out.y, 0};
  }
  return joint.meets.kind != Surface::Kind::part && !joint.feelers.empty() &&
         std::all_of(joint.feelers.begin(), joint.feelers.end(), [&](const Feeler& feeler) {
           return dot(way_in_room(feeler, frame), inward) < least;
         });
}

Joint joint_of(const Scene& scene, const Site& site, int contact, int piece) {
  Joint joint;
  joint.contact = contact;
  joint.piece = piece;
  joint.how = &scene.design.contacts[contact];
  joint.meets = surface_named(site, joint.how->meets);
  joint.face = std::holds_alternative<PieceFace>(joint.how->edge);
  if (joint.meets.kind != Surface::Kind::part) return joint;
  for (int p : pieces_named(scene.pieces, scene.design, joint.how->meets))
    if (p != piece) joint.parts.push_back(p);
  return joint;
}

// Whether an edge only runs along the faces of its parts: a hair inside its own faces no ray gets
// to them.
bool runs_beside(const JointBuilder& b, const Joint& joint) {
  constexpr double kHair = 0.05;  // mm, more than what a ray along a face may touch. Chosen
  if (joint.face || joint.meets.kind != Surface::Kind::part) return false;
  std::vector<Standing> parts;
  for (int p : joint.parts) parts.push_back({p, &b.scene.bodies[p], b.frames[p]});
  const double inner = b.scene.pieces[joint.piece].thickness - kHair;
  return std::none_of(joint.feelers.begin(), joint.feelers.end(), [&](Feeler feeler) {
    feeler.at.z = std::clamp(feeler.at.z, kHair, inner);
    return part_hit(parts, ray_of(feeler, b.frame)).has_value();
  });
}

void bound(Joint& joint) {
  Polygon points;
  std::set<double> depths;
  for (const Feeler& f : joint.feelers) {
    points.push_back({f.at.x, f.at.y});
    depths.insert(f.at.z);
  }
  const Polygon hull = hull_of(points);
  for (Vec2 p : hull.empty() ? points : hull)  // one spot has no hull
    for (double w : depths) joint.corners.push_back(at_face(p, w));
}

}  // namespace

double wanted_clear(const Scene& scene, int piece) {
  double widest = 0;
  for (const Contact& how : scene.design.contacts)
    if (how.by == Fitting::clear && is_named(scene.pieces[piece], how.part) &&
        !wall_named(how.meets).empty())
      widest = std::max(widest, how.gap.mm);
  return widest;
}

EdgeRun run_of(const EdgeChoice& edge, const Polygon& outline) {
  if (const EdgeSide* side = std::get_if<EdgeSide>(&edge)) return side_of(outline, *side);
  return std::get<EdgeRun>(edge);
}

Polygon run_points(const EdgeRun& run, const Polygon& outline) {
  const int n = static_cast<int>(outline.size());
  const int edges = (run.last - run.first + n) % n + 1;
  Polygon points;
  for (int k = 0; k <= edges; ++k) points.push_back(outline[(run.first + k) % n]);
  return points;
}

Feeler feeler_for(Site& site, Surface surface, const Frame& frame, Vec3 at, Vec3 way, bool coarse) {
  Feeler feeler{at, way, -1, {}, {}, 0, {}};
  if (surface.kind == Surface::Kind::part) return feeler;
  const RoomShape& room = site.fields().room(0);
  if (surface.kind == Surface::Kind::ceiling && !room.ceiling) return feeler;
  const SiteView& view = site.adjusted();
  const Ray ray = ray_of(feeler, frame);
  // The field is wanted where the ray meets the surface: two rounds find that spot.
  Vec2 spot = spot_of(room, surface, ray.from);
  if (!std::isfinite(rough_gap(room, surface, spot, ray))) return feeler;  // it runs along it
  for (int round = 0; round < 2; ++round) {
    const double reach = std::clamp(rough_gap(room, surface, spot, ray), -kReach, kReach);
    spot = spot_of(room, surface, ray.from + reach * ray.way);
  }
  feeler.spot = site.fields().add(surface, spot, coarse);
  if (surface.kind != Surface::Kind::wall) return feeler;
  const Vec2 start = spot_of(room, surface, ray.from);
  const auto& blocks = view.blocks(surface.wall);
  for (int k = 0; k < static_cast<int>(blocks.size()); ++k)
    if (near_block(view, surface.wall, blocks[k], spot) ||
        near_block(view, surface.wall, blocks[k], start))
      feeler.blocks.push_back(k);
  return feeler;
}

std::vector<Joint> joints_of(const Scene& scene, Site& site, const std::vector<Frame>& frames) {
  std::vector<Joint> joints;
  for (int c = 0; c < static_cast<int>(scene.design.contacts.size()); ++c)
    for (int p : pieces_named(scene.pieces, scene.design, scene.design.contacts[c].part)) {
      Joint joint = joint_of(scene, site, c, p);
      const RoomShape& room = site.fields().room(0);
      joint.can_meet = edge_can_meet(room, joint, frames[p]);
      const JointBuilder builder{scene, site, site.adjusted(), frames, frames[p]};
      if (joint.can_meet) joint.face ? build_face(builder, joint) : build_edge(builder, joint);
      if (faces_away(room, joint, frames[p])) {
        joint = joint_of(scene, site, c, p);
        joint.can_meet = false;
        joint.faces_away = true;
      }
      if (runs_beside(builder, joint)) joint.can_meet = false;
      for (Feeler& feeler : joint.feelers)
        if (joint.how->notch) notch_blocks(feeler, joint.stops);
      bound(joint);
      joints.push_back(std::move(joint));
    }
  return joints;
}

void notch_blocks(Feeler& feeler, const std::vector<int>& stops) {
  const auto cut = std::stable_partition(feeler.blocks.begin(), feeler.blocks.end(), [&](int k) {
    return std::find(stops.begin(), stops.end(), k) != stops.end();
  });
  feeler.notched.assign(cut, feeler.blocks.end());
  feeler.blocks.erase(cut, feeler.blocks.end());
}

void keep_faces(Joint& joint, const Frame& frame, const std::vector<Standing>& parts) {
  if (joint.meets.kind != Surface::Kind::part) return;
  for (Feeler& feeler : joint.feelers) feeler.face = part_face(parts, ray_of(feeler, frame));
}

}  // namespace nook

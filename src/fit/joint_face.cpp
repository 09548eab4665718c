// Spots over faces, and the boxes that obstacles cut out of them.
#include <algorithm>
#include <cmath>

#include "fit/joint_builder.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kFaceStep = 50;  // mm; greatest grid of a face contact

// What a body shows to a face: the box, seen square on, of its points on the near side. Those on
// the far side would widen the box of a body that stands askew, and rays at its rim would miss.
Box2 seen_on(const Frame& face, bool front, const Frame& other, const Body& body) {
  std::vector<Vec3> seen;
  for (Vec2 p : body.region.outline)
    for (double w : {0.0, body.thickness})
      seen.push_back(face.piece_from_room(other.room_from_piece(at_face(p, w))));
  const auto nearer = [&](const Vec3& a, const Vec3& b) { return front ? a.z < b.z : a.z > b.z; };
  const auto [first, last] = std::minmax_element(seen.begin(), seen.end(), nearer);
  const double middle = (first->z + last->z) / 2;
  Polygon points;
  for (const Vec3& q : seen)
    if ((q.z < middle) == front) points.push_back({q.x, q.y});
  return box_of(points);
}

Box2 common(const Box2& a, const Box2& b) {
  return {{std::max(a.low.x, b.low.x), std::max(a.low.y, b.low.y)},
          {std::min(a.high.x, b.high.x), std::min(a.high.y, b.high.y)}};
}

bool empty(const Box2& box) {
  return box.low.x > box.high.x || box.low.y > box.high.y;
}

bool is_front(const Joint& joint) {
  return std::get<PieceFace>(joint.how->edge) == PieceFace::front;
}

// A little inside, so that no ray grazes a side. Chosen: 1 mm, or half of what there is.
Box2 inset(const Box2& box) {
  const double x = std::min(1.0, (box.high.x - box.low.x) / 4);
  const double y = std::min(1.0, (box.high.y - box.low.y) / 4);
  return {box.low + Vec2{x, y}, box.high - Vec2{x, y}};
}

// The parts of the face that look at what it meets.
std::vector<Box2> boxes_of(const JointBuilder& b, const Joint& joint) {
  const Box2 own = box_of(b.scene.pieces[joint.piece].drawn->outline);
  if (joint.meets.kind != Surface::Kind::part) return {own};
  std::vector<Box2> boxes;
  for (int p : joint.parts) {
    const Box2 box = common(own, seen_on(b.frame, is_front(joint), b.frames[p], b.scene.bodies[p]));
    if (!empty(box)) boxes.push_back(inset(box));
  }
  return boxes;
}

// From where to where the piece reaches along a wall.
Stretch along_wall(const JointBuilder& b, const Joint& joint) {
  const WallShape& wall = b.view.shape().walls[joint.meets.wall];
  Stretch along{1e300, -1e300};
  for (Vec2 p : b.scene.pieces[joint.piece].drawn->outline) {
    const double a = wall.wall_from_room(plan(b.frame.room_from_piece(at_face(p, 0)))).x;
    along = {std::min(along.from, a), std::max(along.to, a)};
  }
  return along;
}

// A block's front as a box on the face, grown by a clearance; of a block that runs on past the
// piece as much as lies beside it.
Box2 block_box(const JointBuilder& b, const Joint& joint, const BlockHere& here, double c) {
  const WallShape& wall = b.view.shape().walls[joint.meets.wall];
  const double out = wall.wall_from_room(plan(b.frame.at)).y;
  const Stretch own = along_wall(b, joint);
  Polygon corners;
  for (double a : {std::max(here.a_from, own.from - 2 * c), std::min(here.a_to, own.to + 2 * c)})
    for (const Block::Bound& bound : {here.block->height_from, here.block->height_to}) {
      const Vec2 p = wall.room_from_wall(a, out);
      const Vec3 q = b.frame.piece_from_room({p.x, p.y, b.view.z_of(bound, joint.meets.wall, a)});
      corners.push_back({q.x, q.y});
    }
  Box2 box = box_of(corners);
  return {box.low - Vec2{c, c}, box.high + Vec2{c, c}};
}

bool beside(const BlockHere& here, const Stretch& own, double clearance) {
  return here.a_from < own.to + clearance && here.a_to > own.from - clearance;
}

std::vector<NotchZone> face_zones(const JointBuilder& b, const Joint& joint) {
  std::vector<NotchZone> zones;
  if (!joint.how->notch || joint.meets.kind != Surface::Kind::wall) return zones;
  const Box2 own = box_of(b.scene.pieces[joint.piece].drawn->outline);
  const auto& blocks = b.view.blocks(joint.meets.wall);
  const Stretch along = along_wall(b, joint);
  for (int k = 0; k < static_cast<int>(blocks.size()); ++k) {
    if (!beside(blocks[k], along, joint.how->clearance.mm)) continue;
    const Box2 box = block_box(b, joint, blocks[k], joint.how->clearance.mm);
    if (!empty(common(own, box))) zones.push_back({{}, box, {k}});
  }
  return zones;
}

bool in_box(Vec2 p, const NotchZone& zone) {
  return p.x > zone.box.low.x && p.x < zone.box.high.x && p.y > zone.box.low.y &&
         p.y < zone.box.high.y;
}

// A line of spots across the face, and whether the draws look at it.
struct Tick {
  double at;
  bool coarse;
};

// Evenly, every other one coarse, and at the ends that blocks have on the face: what stands out of
// a wall that leans is met first at its rim.
std::vector<Tick> ticks(double low, double high, const std::vector<double>& rims) {
  const int n = std::max(2, static_cast<int>(std::ceil((high - low) / kFaceStep)));
  std::vector<Tick> all;
  for (int i = 0; i <= n; ++i) all.push_back({low + (high - low) * i / n, i % 2 == 0 || i == n});
  for (double rim : rims)
    if (rim > low && rim < high) all.push_back({rim, true});
  std::sort(all.begin(), all.end(), [](const Tick& a, const Tick& b) { return a.at < b.at; });
  return all;
}

// Just inside the blocks that the face looks at, in u and in v.
struct Rims {
  std::vector<double> u, v;
};
Rims rims_of(const JointBuilder& b, const Joint& joint) {
  Rims rims;
  if (joint.how->notch || joint.meets.kind != Surface::Kind::wall) return rims;
  const Stretch along = along_wall(b, joint);
  for (const BlockHere& here : b.view.blocks(joint.meets.wall)) {
    if (!beside(here, along, 0)) continue;
    const Box2 box = block_box(b, joint, here, 0);
    rims.u.insert(rims.u.end(), {box.low.x + kInsideBlock, box.high.x - kInsideBlock});
    rims.v.insert(rims.v.end(), {box.low.y + kInsideBlock, box.high.y - kInsideBlock});
  }
  return rims;
}

void add_face_spot(const JointBuilder& b, Joint& joint, JointSpot spot) {
  const bool front = is_front(joint);
  const double thickness = b.scene.pieces[joint.piece].thickness;
  spot.notched = std::any_of(joint.zones.begin(), joint.zones.end(),
                             [&](const NotchZone& z) { return in_box(spot.uv, z); });
  joint.spots.push_back(spot);
  joint.feelers.push_back(feeler_for(b.site, joint.meets, b.frame,
                                     at_face(spot.uv, front ? thickness : 0),
                                     {0, 0, front ? 1.0 : -1.0}, spot.coarse));
}

}  // namespace

void build_face(const JointBuilder& b, Joint& joint) {
  joint.zones = face_zones(b, joint);
  const Rims rims = rims_of(b, joint);
  for (const Box2& box : boxes_of(b, joint)) {
    const auto us = ticks(box.low.x, box.high.x, rims.u), vs = ticks(box.low.y, box.high.y, rims.v);
    const bool lying = box.high.x - box.low.x >= box.high.y - box.low.y;
    for (const Tick& v : vs)
      for (const Tick& u : us) {
        const Vec2 uv{u.at, v.at};
        if (!contains(b.scene.bodies[joint.piece].region, uv)) continue;
        add_face_spot(b, joint,
                      {uv, lying ? uv.y : uv.x, lying ? uv.x : uv.y, u.coarse && v.coarse, false});
      }
  }
}

}  // namespace nook

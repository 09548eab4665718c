// The layout of a design in the adjusted room, and every group placed in its turn.
#include "fit/place.h"

#include <algorithm>
#include <cmath>

#include "fit/joint_builder.h"
#include "fit/push.h"

namespace nook {
namespace {

constexpr double kLowest = 1;  // mm; what is this near the lowest point of a foot stands. Chosen
constexpr double kStep = 50;   // mm between spots of a foot; chosen
constexpr double kLevelFace = 0.9;

void add_foot(Site& site, const Frame& frame, Vec3 at, std::vector<FootSpot>& feet, int index) {
  const Vec3 way{-frame.u.z, -frame.v.z, -frame.w.z};
  feet.push_back({index, feeler_for(site, {Surface::Kind::floor, 0}, frame, at, way, true)});
}

// The lowest edges of a piece, and its lower face where that is level.
void add_feet(const Scene& scene, Site& site, int index, const Frame& frame,
              std::vector<FootSpot>& feet) {
  const Piece& piece = scene.pieces[index];
  const double low = lowest(piece, frame);
  const Polygon& ring = piece.drawn->outline;
  for (std::size_t i = 0; i < ring.size(); ++i)
    for (double w : {0.0, piece.thickness}) {
      const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
      const int n = std::max(1, static_cast<int>(std::ceil(norm(b - a) / kStep)));
      for (int k = 0; k < n; ++k) {
        const Vec3 at = at_face(a + (static_cast<double>(k) / n) * (b - a), w);
        if (frame.room_from_piece(at).z < low + kLowest) add_foot(site, frame, at, feet, index);
      }
    }
  if (std::abs(frame.w.z) < kLevelFace) return;
  const Box2 box = box_of(ring);
  for (double v = box.low.y + kStep; v < box.high.y; v += kStep)
    for (double u = box.low.x + kStep; u < box.high.x; u += kStep)
      if (contains(scene.bodies[index].region, {u, v}))
        add_foot(site, frame, {u, v, frame.w.z > 0 ? 0 : piece.thickness}, feet, index);
}

// Half way between the lowest and the highest point of a group.
double middle_height(const Scene& scene, const Assembly& group, const std::vector<Frame>& frames) {
  double low = 1e300, high = -1e300;
  for (int p : group.pieces)
    for (Vec2 q : scene.pieces[p].drawn->outline)
      for (double w : {0.0, scene.pieces[p].thickness}) {
        const double z = frames[p].room_from_piece(at_face(q, w)).z;
        low = std::min(low, z);
        high = std::max(high, z);
      }
  return (low + high) / 2;
}

// Pieces joined by a notch go through each other on purpose.
bool notched_together(const Layout& layout, int a, int b) {
  return std::any_of(layout.joints.begin(), layout.joints.end(), [&](const Joint& j) {
    const auto meets = [&](int p) {
      return std::find(j.parts.begin(), j.parts.end(), p) != j.parts.end();
    };
    return j.how->notch && ((j.piece == a && meets(b)) || (j.piece == b && meets(a)));
  });
}

void add_partings(const Scene& scene, Layout& layout) {
  const int count = static_cast<int>(scene.pieces.size());
  std::vector<PieceSolid> solids;
  std::vector<RoomBox> boxes;
  for (int p = 0; p < count; ++p) {
    solids.push_back(solid_of(scene.bodies[p], p));
    boxes.push_back(box_of(solids[p].hull.corners, scene.pieces[p].frame));
  }
  for (int a = 0; a < count; ++a)
    for (int b = a + 1; b < count; ++b) {
      if (apart(boxes[a], boxes[b]) > kPartingNear) continue;
      if (layout.group_of[a] == layout.group_of[b] || notched_together(layout, a, b)) continue;
      const auto found =
          partings_of(solids[a], scene.pieces[a].frame, solids[b], scene.pieces[b].frame);
      layout.partings.insert(layout.partings.end(), found.begin(), found.end());
    }
}

// What each group has to look at, in order and once.
void sort_by_group(Layout& layout) {
  const std::size_t count = layout.groups.size();
  layout.joints_at.resize(count);
  layout.guards_at.resize(count);
  layout.partings_at.resize(count);
  const auto add = [&](std::vector<std::vector<int>>& at, int piece, std::size_t index) {
    std::vector<int>& list = at[layout.group_of[piece]];
    if (list.empty() || list.back() != static_cast<int>(index))
      list.push_back(static_cast<int>(index));
  };
  for (std::size_t j = 0; j < layout.joints.size(); ++j) {
    add(layout.joints_at, layout.joints[j].piece, j);
    for (int p : layout.joints[j].parts) add(layout.joints_at, p, j);
  }
  for (std::size_t g = 0; g < layout.guards.size(); ++g)
    add(layout.guards_at, layout.guards[g].piece, g);
  for (std::size_t p = 0; p < layout.partings.size(); ++p) {
    add(layout.partings_at, layout.partings[p].a, p);
    add(layout.partings_at, layout.partings[p].b, p);
  }
}

}  // namespace

Layout layout_for(const Scene& scene, Site& site, int first_wall,
                  const std::vector<Frame>& frames) {
  Layout layout{scene,
                site,
                Obstacles(scene, site, frames),
                first_wall,
                joints_of(scene, site, frames),
                {},
                {},
                {},
                {},
                {},
                {},
                {},
                {},
                {},
                {}};
  layout.guards = guards_of(scene, site, frames, layout.joints);
  layout.groups = assemblies_of(scene, site, layout.joints);
  layout.group_of.assign(scene.pieces.size(), 0);
  for (int g = 0; g < static_cast<int>(layout.groups.size()); ++g) {
    layout.feet.emplace_back();
    for (int p : layout.groups[g].pieces) layout.group_of[p] = g;
    for (int p : layout.groups[g].feet) add_feet(scene, site, p, frames[p], layout.feet[g]);
    const int wall = layout.groups[g].start_wall.value_or(first_wall);
    layout.laid_off.push_back(
        site.corner_of(wall, first_wall, middle_height(scene, layout.groups[g], frames)));
  }
  add_partings(scene, layout);
  sort_by_group(layout);
  for (int g = 0; g < static_cast<int>(layout.groups.size()); ++g)
    layout.pulls.push_back(pulls_of(layout, g));
  return layout;
}

Placing place_all(const Layout& layout, const SiteView& view, const Placing* like) {
  Placing placing;
  for (const Piece& piece : layout.scene.pieces) placing.frames.push_back(piece.frame);
  for (int g = 0; g < static_cast<int>(layout.groups.size()); ++g) {
    Push push(layout, view, g, placing);
    placing.start.push_back(push.start());
    placing.stops.push_back(like ? like->stops[g] : StopsOnTheWay{});
    placing.placed.push_back(push.home(like ? like->moves[g] : Moves{}, placing.stops.back()));
    placing.moves.push_back(push.moves());
    for (int p : layout.groups[g].pieces)
      placing.frames[p] = placing.placed[g].frame(layout.scene.pieces[p].frame);
  }
  return placing;
}

std::vector<Standing> standing_parts(const Layout& layout, const Joint& joint,
                                     const std::vector<Frame>& frames) {
  std::vector<Standing> parts;
  for (int p : joint.parts) parts.push_back({p, &layout.scene.bodies[p], frames[p]});
  return parts;
}

bool share_joint(const Layout& layout, int a, int b) {
  return std::any_of(layout.joints.begin(), layout.joints.end(), [&](const Joint& j) {
    const int other = j.piece == a ? b : j.piece == b ? a : -1;
    return std::find(j.parts.begin(), j.parts.end(), other) != j.parts.end();
  });
}

}  // namespace nook

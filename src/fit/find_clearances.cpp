// Distances of triangles in the adjusted room; in the draws their change along the parting axis.
#include "fit/find_clearances.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

#include "fit/block.h"
#include "fit/find_notches.h"
#include "fit/surface_ahead.h"
#include "solid/distance.h"

namespace nook {
namespace {

// What is further off is not told, but where a contact asks for more. Chosen.
constexpr double kNear = 2 * kMillimetresPerInch;
constexpr double kNextNearest = 12;  // mm; cells further off by that come no nearer. Chosen
constexpr double kApart = 0.05;      // mm; nearer than this touches. Chosen

// One least distance in every room.
using Distances = std::map<std::pair<int, std::string>, Tally>;

// The lesser of two in every room.
void keep_least(Tally& least, const Tally& other) {
  least.adjusted = std::min(least.adjusted, other.adjusted);
  for (std::size_t r = 0; r < std::min(least.drawn.size(), other.drawn.size()); ++r)
    least.drawn[r] = std::min(least.drawn[r], other.drawn[r]);
}

void add_least(const std::pair<int, std::string>& key, const Tally& tally, Distances& found) {
  const auto [it, fresh] = found.emplace(key, tally);
  if (!fresh) keep_least(it->second, tally);
}

Mesh placed(const Mesh& mesh, const Frame& frame) {
  Mesh moved = mesh;
  for (Triangle& t : moved)
    for (Vec3& p : t) p = frame.room_from_piece(p);
  return moved;
}

Mesh mesh_of(const ObstacleSolid& solid) {
  Polygon section;
  for (std::size_t i = 0; i < solid.corners.size() / 2; ++i)
    section.push_back({solid.corners[i].x, solid.corners[i].y});
  return prism({section}, solid.corners.back().z);
}

// Two cells, and what parts them in the adjusted room.
struct CellPair {
  const CellSolid *a, *b;
  Apart adjusted;
};

// The cells of two pieces that may be nearest to each other in some draw, the nearest first; the
// pieces as they are seen from outside where those do not meet.
std::vector<CellPair> nearest(const PieceSolid& a, const Frame& frame_a, const PieceSolid& b,
                              const Frame& frame_b) {
  const Apart hulls = apart(a.hull, frame_a, b.hull, frame_b);
  if (hulls.distance >= 0) return {{&a.hull, &b.hull, hulls}};
  std::vector<CellPair> pairs;
  for (const CellSolid& ca : a.cells)
    for (const CellSolid& cb : b.cells)
      pairs.push_back({&ca, &cb, apart(ca, frame_a, cb, frame_b)});
  std::sort(pairs.begin(), pairs.end(), [](const CellPair& x, const CellPair& y) {
    return x.adjusted.distance < y.adjusted.distance;
  });
  const double far = pairs.front().adjusted.distance + kNextNearest;
  std::erase_if(pairs, [&](const CellPair& p) { return p.adjusted.distance > far; });
  return pairs;
}

// How far apart two pieces are in a draw that are `exact` apart in the adjusted room. Corners that
// pass each other are further apart than along any axis, by as much as there. `a`: the first one as
// it is in the draw; null: its cells stay as they are.
double drawn(const std::vector<CellPair>& pairs, double exact, const CellSolid* a,
             const Frame& frame_a, const Frame& frame_b) {
  double least = kReach;
  for (const CellPair& pair : pairs) {
    const double before = pair.adjusted.distance;
    const double past = before < 0 ? 0 : std::max(0.0, exact - before);
    const CellSolid& there = a ? *a : *pair.a;
    const double enough = least - past;
    // Along any axis they are never further apart than they are.
    if (apart_along(pair.adjusted, there.corners, frame_a, pair.b->corners, frame_b) < enough)
      least = std::min(least, past + apart(there, frame_a, *pair.b, frame_b, enough).distance);
  }
  return std::max(0.0, least);
}

class DistanceFinder {
 public:
  // The pieces with their notches cut.
  DistanceFinder(const Trials& trials, const std::vector<NotchFit>& notches) : trials_(trials) {
    for (int p = 0; p < static_cast<int>(trials.layout.scene.bodies.size()); ++p) {
      const Regions cut = cut_out_of(notches, p);
      const Body& whole = trials.layout.scene.bodies[p];
      const Body body = cut.empty() ? whole : body_less(whole, cut);
      solids_.push_back(solid_of(body, p));
      reach_.push_back(std::max(kNear, wanted_clear(trials.layout.scene, p)));
      boxes_.push_back(box_of(solids_[p].hull.corners, trials.placings[0].frames[p]));
      meshes_.push_back(placed(prism(body.cells, body.thickness), trials.placings[0].frames[p]));
    }
  }

  Distances from_surfaces() const {
    Distances found;
    for (const Guard& guard : trials_.layout.guards) {
      const std::string name = name_of(guard.surface);
      Tally tally;
      for (int r = 0; r < trials_.rooms(); ++r) tally.add(r, least_of(guard, r));
      add_least({guard.piece, name}, tally, found);
    }
    for (std::size_t j = 0; j < trials_.layout.joints.size(); ++j)
      if (trials_.layout.joints[j].face || trials_.layout.joints[j].how->by == Fitting::clear)
        add_joint(j, found);
    return found;
  }

  Distances from_obstacles() const {
    Distances found;
    for (std::size_t b = 0; b < trials_.layout.obstacles.size(); ++b) {
      const ObstacleSolid block = trials_.obstacle(0, b);
      const RoomBox box = box_of(block.corners, block.frame);
      for (std::size_t p = 0; p < solids_.size(); ++p)
        if (apart(box, boxes_[p]) <= reach_[p]) add_obstacle(static_cast<int>(p), b, block, found);
    }
    return found;
  }

  bool near(int a, int b, double reach = kNear) const {
    return apart(boxes_[a], boxes_[b]) <= reach;
  }

  // Between two pieces, if they are near.
  std::optional<Tally> between(int a, int b, double reach = kNear) const {
    if (!near(a, b, reach)) return std::nullopt;
    const auto& frames = trials_.placings[0].frames;
    const std::vector<CellPair> cells = nearest(solids_[a], frames[a], solids_[b], frames[b]);
    if (cells.front().adjusted.distance > reach) return std::nullopt;
    Tally tally;
    tally.adjusted = distance(meshes_[a], meshes_[b]);
    for (int r = 1; r < trials_.rooms(); ++r) {
      const auto& there = trials_.placings[r].frames;
      tally.add(r, drawn(cells, tally.adjusted, nullptr, there[a], there[b]));
    }
    return tally;
  }

 private:
  std::string name_of(Surface surface) const {
    if (surface.kind == Surface::Kind::floor) return "floor";
    if (surface.kind == Surface::Kind::ceiling) return "ceiling";
    return trials_.views[0].shape().walls[surface.wall].name + " wall";
  }

  double least_of(const Guard& guard, int room) const {
    SurfaceAhead ahead(trials_.views[room], trials_.layout.site.fields(), guard.surface,
                       trials_.placings[room].frames[guard.piece]);
    double least = kReach;
    for (const Feeler& f : guard.feelers) least = std::min(least, ahead.surface(f).gap);
    return least;
  }

  // A contact's own feelers look along the piece; their gaps are brought square to the wall.
  void add_joint(std::size_t j, Distances& found) const {
    const Joint& joint = trials_.layout.joints[j];
    if (joint.meets.kind == Surface::Kind::part || !joint.can_meet || unread(joint)) return;
    std::vector<double> square;
    for (std::size_t f = 0; f < joint.feelers.size(); ++f) square.push_back(squareness(joint, f));
    Tally tally;
    for (int r = 0; r < trials_.rooms(); ++r) {
      double least = kReach;
      for (std::size_t f = 0; f < joint.feelers.size(); ++f)
        if (const double gap = trials_.gaps[r][j][f]; !std::isnan(gap))
          least = std::min(least, gap * square[f]);
      tally.add(r, least);
    }
    add_least({joint.piece, joint.how->meets}, tally, found);
  }

  // A ceiling that nobody measured.
  bool unread(const Joint& joint) const {
    return joint.meets.kind == Surface::Kind::ceiling && !trials_.views[0].shape().ceiling;
  }

  // How much shorter the way square to the surface is than along the feeler.
  double squareness(const Joint& joint, std::size_t f) const {
    if (joint.meets.kind != Surface::Kind::wall) return 1;
    const Vec3 way = ray_of(joint.feelers[f], trials_.placings[0].frames[joint.piece]).way;
    return std::abs(dot(plan(way), trials_.views[0].shape().walls[joint.meets.wall].out));
  }

  // `block`: obstacle b in the adjusted room.
  void add_obstacle(int p, std::size_t b, const ObstacleSolid& block, Distances& found) const {
    const Frame& frame = trials_.placings[0].frames[p];
    const PieceSolid solid{block.cell(), {block.cell()}};
    const std::vector<CellPair> cells = nearest(solid, block.frame, solids_[p], frame);
    const auto key = std::pair(p, trials_.layout.obstacles.name(trials_.layout.site, b));
    const auto so_far = found.find(key);
    // Along an axis they are never further apart than they are.
    const double least = so_far == found.end() ? reach_[p] : so_far->second.adjusted;
    if (cells.front().adjusted.distance > least) return;
    const double exact = distance(placed(mesh_of(block), block.frame), meshes_[p]);
    if (so_far != found.end() && so_far->second.adjusted <= exact) return;
    Tally& tally = found[key];
    tally = {exact, {}};
    for (int r = 1; r < trials_.rooms(); ++r) {
      const ObstacleSolid there = trials_.obstacle(r, b);
      const CellSolid cell = there.cell();
      tally.add(r, drawn(cells, exact, &cell, there.frame, trials_.placings[r].frames[p]));
    }
  }

  const Trials& trials_;
  std::vector<PieceSolid> solids_;
  std::vector<double> reach_;  // mm; how far off an obstacle counts
  std::vector<RoomBox> boxes_;
  std::vector<Mesh> meshes_;  // where they stand in the adjusted room
};

ClearanceFit clearance_of(const Trials& trials, int piece, const std::string& from,
                          const Tally& tally) {
  ClearanceFit found;
  found.piece = piece;
  found.part = trials.layout.scene.pieces[piece].name;
  found.from = from;
  found.least_mm = tally.adjusted;
  found.sd_mm = tally.sd();
  return found;
}

void judge(const Tally& tally, double needed, double sure, ClearanceFit& found, Holds& all_hold) {
  Holds holds(1 + static_cast<int>(tally.drawn.size()));
  holds.set(0, tally.adjusted >= needed - kClearTolerance);
  for (std::size_t r = 0; r < tally.drawn.size(); ++r)
    holds.set(static_cast<int>(r) + 1, tally.drawn[r] >= needed - kClearTolerance);
  found.needed_mm = needed;
  found.chance = holds.chance();
  found.verdict = holds.verdict(sure);
  all_hold.both(holds);
}

// Everything on one wall that a contact with it is to stay clear of.
std::optional<Tally> from_wall(const Joint& joint, const Distances& surfaces,
                               const Distances& obstacles) {
  std::optional<Tally> least;
  for (const Distances* all : {&surfaces, &obstacles})
    for (const auto& [key, tally] : *all) {
      if (key.first != joint.piece || !is_on(key.second, joint.how->meets)) continue;
      if (least)
        keep_least(*least, tally);
      else
        least = tally;
    }
  return least;
}

std::optional<Tally> from_parts(const DistanceFinder& finder, const Joint& joint) {
  std::optional<Tally> least;
  for (int p : joint.parts)
    if (const auto tally = finder.between(joint.piece, p, std::max(kNear, joint.how->gap.mm))) {
      if (least)
        keep_least(*least, *tally);
      else
        least = tally;
    }
  return least;
}

bool meet(const Trials& trials, int piece, const std::string& name) {
  return std::any_of(trials.layout.joints.begin(), trials.layout.joints.end(),
                     [&](const Joint& j) { return j.piece == piece && is_on(name, j.how->meets); });
}

}  // namespace

std::vector<ClearanceFit> find_clearances(const Trials& trials,
                                          const std::vector<NotchFit>& notches, double sure,
                                          Holds& all_hold) {
  const DistanceFinder finder(trials, notches);
  const Distances surfaces = finder.from_surfaces(), obstacles = finder.from_obstacles();
  std::vector<ClearanceFit> found;
  for (const Joint& joint : trials.layout.joints) {
    if (joint.how->by != Fitting::clear) continue;
    const auto tally = joint.meets.kind == Surface::Kind::part
                           ? from_parts(finder, joint)
                           : from_wall(joint, surfaces, obstacles);
    if (!tally) continue;
    found.push_back(clearance_of(trials, joint.piece, joint.how->meets, *tally));
    judge(*tally, joint.how->gap.mm, sure, found.back(), all_hold);
  }
  for (const Distances* all : {&surfaces, &obstacles})
    for (const auto& [key, tally] : *all)
      if (tally.adjusted > kApart && tally.adjusted < kNear && key.second != "floor" &&
          (all == &obstacles || !meet(trials, key.first, key.second)))
        found.push_back(clearance_of(trials, key.first, key.second, tally));
  const int count = static_cast<int>(trials.layout.scene.pieces.size());
  for (int a = 0; a < count; ++a)
    for (int b = a + 1; b < count; ++b) {
      if (trials.layout.group_of[a] == trials.layout.group_of[b] || !finder.near(a, b) ||
          share_joint(trials.layout, a, b))
        continue;
      const auto tally = finder.between(a, b);
      if (tally && tally->adjusted > kApart && tally->adjusted < kNear)
        found.push_back(clearance_of(trials, a, trials.layout.scene.pieces[b].name, *tally));
    }
  return found;
}

}  // namespace nook

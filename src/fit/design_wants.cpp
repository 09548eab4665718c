// Stations along the edges, and what a group that is pushed home leaves of each.
#include "fit/design_wants.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "base/measured.h"
#include "design/piece.h"
#include "fit/joint_gaps.h"

namespace nook {
namespace {

constexpr double kApart = 406.4;     // mm between stations, 16 in: usual (common practice)
constexpr double kScribe = 9.525;    // mm, 3/8 in: more is filled or trimmed, not scribed. Chosen
constexpr double kLeastLimit = 1.5;  // mm, 1/16 in: nobody builds closer. Chosen
constexpr double kEven = 6.35;       // mm, 1/4 in: what steps may differ by (CPSC 325, 5.2)
constexpr double kTight = 25;        // weight of a wall that the group is tight to. Chosen
constexpr double kTurns = 300;       // mm of contact in plan that let a group turn. Chosen
constexpr double kMatters = 0.02;    // of a station's weight; less is left out
constexpr double kLeastReach = 1000, kAlcove = 600;  // mm, of a wall with a free end. Chosen
constexpr double kBeside = 100;  // mm out from a wall that the floor is read at. Chosen

// One place where a piece meets a wall or the floor.
struct Station {
  Undecided::Term term;
  double limit = 0;  // mm of gap that its contact accepts
  Vec2 at;           // in plan
  Vec2 pull;         // of the gap with a move of the group in plan
  double weight = 1;
};

std::vector<Vec2> edge_points(const Polygon& outline, const EdgeRun& run) {
  const int n = static_cast<int>(outline.size());
  std::vector<Vec2> out{outline[run.first]};
  for (int e = run.first;; e = (e + 1) % n) {
    const Vec2 from = outline[e], way = outline[(e + 1) % n] - from;
    const int steps = std::max(1, static_cast<int>(std::ceil(norm(way) / kApart - 0.01)));
    for (int i = 1; i <= steps; ++i) out.push_back(from + (double(i) / steps) * way);
    if (e == run.last) return out;
  }
}

// The middle line of a face, along its longer way.
std::vector<Vec2> face_points(const Polygon& outline) {
  Vec2 low = outline.front(), high = low;
  for (const Vec2 p : outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  const Vec2 size = high - low, middle = 0.5 * (low + high);
  const bool wide = size.x > size.y;
  const int steps = std::max(1, static_cast<int>(std::ceil((wide ? size.x : size.y) / kApart)));
  std::vector<Vec2> out;
  for (int i = 0; i <= steps; ++i) {
    const double share = double(i) / steps;
    out.push_back(wide ? Vec2{low.x + share * size.x, middle.y}
                       : Vec2{middle.x, low.y + share * size.y});
  }
  return out;
}

std::vector<Vec3> points_of(const Piece& piece, const EdgeChoice& choice) {
  const Polygon& outline = piece.drawn->outline;
  std::vector<Vec2> flat;
  if (const auto* run = std::get_if<EdgeRun>(&choice))
    flat = edge_points(outline, *run);
  else if (const auto* side = std::get_if<EdgeSide>(&choice))
    flat = edge_points(outline, side_of(outline, *side));
  else
    flat = face_points(outline);
  std::vector<Vec3> out;
  for (const Vec2 p : flat)
    out.push_back(piece.frame.room_from_piece({p.x, p.y, piece.thickness / 2}));
  return out;
}

double limit_of(const Contact& how) {
  const double allowed = allowed_gap(how);
  if (how.by == Fitting::scribe && !how.shop) return std::max(allowed, kScribe);
  if (how.by == Fitting::clear) return std::max(allowed, kMillimetresPerInch / 8);
  return std::max(allowed, kLeastLimit);
}

class Wants {
 public:
  Wants(const Design& design, const RoomShape& room)
      : design_(design), room_(room), pieces_(pieces_of(design)) {}

  DesignWants all() {
    for (const std::string& group : groups()) {
      add_walls(group);
      add_floor(group);
    }
    if (hangs() && wants_.plan.floor.empty()) add_beside();
    add_studs();
    add_reach();
    wants_.plan.whole = true;
    wants_.plan.heights = heights_of(design_);
    return std::move(wants_);
  }

 private:
  std::vector<std::string> groups() const {
    std::vector<std::string> names;
    for (const Part& part : design_.parts)
      if (std::find(names.begin(), names.end(), part.group) == names.end())
        names.push_back(part.group);
    return names;
  }

  const Group* group_named(const std::string& name) const {
    for (const Group& group : design_.groups)
      if (group.name == name) return &group;
    return nullptr;
  }

  int wall_of(const std::string& meets) const {
    const std::string name = wall_named(meets);
    for (std::size_t w = 0; w < room_.walls.size(); ++w)
      if (room_.walls[w].name == name) return static_cast<int>(w);
    return -1;
  }

  // What hangs by height: on the level line, or screwed to a wall.
  bool hangs() const {
    const auto on_line = [](const Group& g) { return g.height_from == HeightFrom::level_line; };
    const auto to_wall = [](const Fastening& f) { return !wall_named(f.to).empty(); };
    return std::any_of(design_.groups.begin(), design_.groups.end(), on_line) ||
           std::any_of(design_.fastenings.begin(), design_.fastenings.end(), to_wall);
  }

  // Each station of the group's contacts that `on` takes.
  template <class On>
  std::vector<Station> stations(const std::string& group, const On& on) const {
    std::vector<Station> out;
    for (const Contact& how : design_.contacts)
      for (const int p : pieces_named(pieces_, design_, how.part)) {
        if (pieces_[p].drawn->group != group) continue;
        for (const Vec3& point : points_of(pieces_[p], how.edge))
          if (auto station = on(how, point)) out.push_back(*station);
      }
    return out;
  }

  double weight_of(const std::string& group, const std::string& meets) const {
    const Group* named = group_named(group);
    if (!named || named->tight_to.empty()) return 1;
    return named->tight_to.front() == meets ? kTight : 1;
  }

  std::vector<Station> wall_stations(const std::string& group) const {
    return stations(group, [&](const Contact& how, const Vec3& point) -> std::optional<Station> {
      const int wall = wall_of(how.meets);
      if (wall < 0) return {};
      const WallShape& shape = room_.walls[wall];
      const Vec2 at{point.x, point.y};
      const double along = std::clamp(shape.wall_from_room(at).x, 0.0, shape.length);
      const SurfaceSpot spot{SurfaceSpot::On::wall, wall, along, std::max(0.0, point.z), {}};
      return Station{{spot, 1}, limit_of(how), at, shape.out, weight_of(group, how.meets)};
    });
  }

  bool may_turn(const std::string& group, const std::vector<Station>& stations) const {
    const Group* named = group_named(group);
    if (named && named->turn) return *named->turn;
    if (named && named->parallel_to) return true;
    double span = 0;
    for (const Station& a : stations)
      for (const Station& b : stations) span = std::max(span, norm(a.at - b.at));
    return span >= kTurns;
  }

  // What is left of each station's stray once the group has moved to suit them all.
  void add_left(const std::vector<Station>& stations, const Eigen::MatrixXd& moves) {
    const int n = static_cast<int>(stations.size());
    if (n == 0) return;
    Eigen::VectorXd weight(n);
    for (int i = 0; i < n; ++i) weight[i] = stations[i].weight;
    const Eigen::MatrixXd weighed = weight.cwiseSqrt().asDiagonal() * moves;
    const Eigen::MatrixXd inverse = weighed.completeOrthogonalDecomposition().pseudoInverse();
    const Eigen::MatrixXd settled = moves * inverse * weight.cwiseSqrt().asDiagonal();
    for (int i = 0; i < n; ++i) {
      Undecided wanted;
      wanted.tolerance = stations[i].limit / kOneSided95;
      for (int j = 0; j < n; ++j) {
        const double share = (i == j ? 1 : 0) - settled(i, j);
        if (std::abs(share) < kMatters) continue;
        wanted.terms.push_back(stations[j].term);
        wanted.terms.back().weight = share;
      }
      if (!wanted.terms.empty()) wants_.plan.surfaces.push_back(std::move(wanted));
    }
  }

  void add_walls(const std::string& group) {
    const std::vector<Station> all = wall_stations(group);
    const bool turns = may_turn(group, all);
    Eigen::MatrixXd moves(all.size(), turns ? 3 : 2);
    for (int i = 0; i < static_cast<int>(all.size()); ++i) {
      moves(i, 0) = all[i].pull.x;
      moves(i, 1) = all[i].pull.y;
      if (turns) moves(i, 2) = dot(all[i].pull, left_of(all[i].at)) / kTurns;
    }
    add_left(all, moves);
  }

  void add_floor(const std::string& group) {
    const std::vector<Station> all =
        stations(group, [&](const Contact& how, const Vec3& point) -> std::optional<Station> {
          if (how.meets != "floor") return {};
          const Vec2 at{point.x, point.y};
          return Station{{{SurfaceSpot::On::floor, 0, 0, 0, at}, 1}, limit_of(how), at, {}, 1};
        });
    add_left(all, Eigen::MatrixXd::Ones(static_cast<int>(all.size()), 1));
    if (!hangs()) return;
    for (const Station& station : all) add_under_line(station.at);
  }

  // The height of the floor at a place, unless one close by is wanted already.
  void add_under_line(Vec2 at) {
    int wall = 0;
    Vec2 spot{0, 1e300};
    for (int w = 0; w < static_cast<int>(room_.walls.size()); ++w) {
      const Vec2 here = room_.walls[w].wall_from_room(at);
      if (std::abs(here.y) < spot.y) wall = w, spot = {here.x, std::abs(here.y)};
    }
    const FloorWanted wanted{wall, std::max(kBeside, spot.x), std::max(kBeside, spot.y),
                             kEven / kOneSided95};
    for (const FloorWanted& other : wants_.plan.floor)
      if (other.wall == wall &&
          std::hypot(other.along - wanted.along, other.out - wanted.out) < kApart)
        return;
    wants_.plan.floor.push_back(wanted);
  }

  void add_beside() {
    for (const Fastening& how : design_.fastenings) {
      const int wall = wall_of(how.to);
      if (wall < 0) continue;
      for (const int p : pieces_named(pieces_, design_, how.part)) {
        const StudsWanted run = run_of(wall, pieces_[p]);
        add_under_line(room_.walls[wall].room_from_wall((run.from + run.to) / 2, kBeside));
      }
    }
  }

  StudsWanted run_of(int wall, const Piece& piece) const {
    StudsWanted run{wall, 1e300, -1e300, 0, piece.name};
    double low = 1e300, high = -1e300;
    for (const Vec2 p : piece.drawn->outline) {
      const Vec3 at = piece.frame.room_from_piece({p.x, p.y, 0});
      const double along = room_.walls[wall].wall_from_room({at.x, at.y}).x;
      run.from = std::min(run.from, along), run.to = std::max(run.to, along);
      low = std::min(low, at.z), high = std::max(high, at.z);
    }
    run.from = std::max(0.0, run.from);
    run.height = (low + high) / 2;
    return run;
  }

  void add_studs() {
    for (const Fastening& how : design_.fastenings) {
      const int wall = wall_of(how.to);
      if (wall < 0) continue;
      for (const int p : pieces_named(pieces_, design_, how.part))
        wants_.studs.push_back(run_of(wall, pieces_[p]));
    }
  }

  // No mark far beyond the pieces on a wall whose length nobody knows.
  void add_reach() {
    wants_.plan.reach.assign(room_.walls.size(), 0);
    for (const Undecided& wanted : wants_.plan.surfaces)
      for (const Undecided::Term& term : wanted.terms) {
        if (term.spot.on != SurfaceSpot::On::wall) continue;
        double& reach = wants_.plan.reach[term.spot.wall];
        reach = std::max(reach, term.spot.along);
      }
    for (std::size_t w = 0; w < room_.walls.size(); ++w) {
      const bool free = w == 0 || w + 1 == room_.walls.size(), alcove = room_.walls.size() > 2;
      double& reach = wants_.plan.reach[w];
      if (free)
        reach = alcove ? std::max(reach, kAlcove) + kBeside : std::max(reach, kLeastReach) + kApart;
    }
  }

  const Design& design_;
  const RoomShape& room_;
  std::vector<Piece> pieces_;
  DesignWants wants_;
};

}  // namespace

DesignWants design_wants(const Design& design, const RoomShape& room) {
  return Wants(design, room).all();
}

HeightsWanted heights_of(const Design& design) {
  const auto meets = [&](const std::string& what) {
    return std::any_of(design.contacts.begin(), design.contacts.end(),
                       [&](const Contact& contact) { return contact.meets == what; });
  };
  const bool by_height =
      std::any_of(design.groups.begin(), design.groups.end(),
                  [](const Group& group) { return group.height_from.has_value(); });
  return {meets("floor") || by_height || !design.feet.empty(), meets("ceiling")};
}

}  // namespace nook

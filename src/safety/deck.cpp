// Level pieces joined side by side, their edges looked at one by one.
#include "safety/deck.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "solid/polygon.h"

namespace nook::safe {
namespace {

const double kLevel = std::cos(5 * std::numbers::pi / 180);  // within 5 degrees; chosen
constexpr double kSameTop = 6.35;  // mm: tops this close are one surface; chosen, 1/4 in
constexpr double kEasyBend = 10;   // mm: an edge is straight when it strays less; chosen
constexpr int kLooks = 6;          // spots each way that are tried for room above; chosen
const double kSameWay = std::cos(3 * std::numbers::pi / 180);
constexpr double kSameLine = 50;  // mm: edges this close in line are one side; chosen

struct Top {
  int piece;
  double z, underside;
  Polygon outline;  // in plan
};

Polygon plan_of(const Body& body) {
  Polygon plan;
  for (Vec2 p : body.region.outline) {
    const Vec3 at = body.frame.room_from_piece({p.x, p.y, 0});
    plan.push_back({at.x, at.y});
  }
  if (signed_area(plan) < 0) std::reverse(plan.begin(), plan.end());
  return plan;
}

std::vector<Top> tops_of(const Scene& scene) {
  std::vector<Top> tops;
  for (int k = 0; k < static_cast<int>(scene.bodies.size()); ++k) {
    const Body& body = scene.bodies[k];
    if (std::abs(body.frame.w.z) < kLevel) continue;
    const double a = body.frame.at.z, b = a + body.piece->thickness * body.frame.w.z;
    tops.push_back({k, std::max(a, b), std::min(a, b), plan_of(body)});
  }
  return tops;
}

bool side_by_side(const Top& a, const Top& b) {
  if (std::abs(a.z - b.z) > kSameTop) return false;
  const double reach = mm(Of::head_small);
  const auto close = [&](const Polygon& from, const Polygon& to) {
    return std::any_of(from.begin(), from.end(), [&](Vec2 p) {
      return contains({to, {}}, p) || border_distance({to, {}}, p) <= reach;
    });
  };
  return close(a.outline, b.outline) || close(b.outline, a.outline);
}

std::vector<std::vector<Top>> joined_tops(std::vector<Top> tops) {
  std::vector<std::vector<Top>> sets;
  while (!tops.empty()) {
    std::vector<Top> set{tops.front()};
    tops.erase(tops.begin());
    for (std::size_t i = 0; i < set.size(); ++i)
      for (std::size_t k = 0; k < tops.size();)
        if (side_by_side(set[i], tops[k]))
          set.push_back(tops[k]), tops.erase(tops.begin() + static_cast<std::ptrdiff_t>(k));
        else
          ++k;
    sets.push_back(std::move(set));
  }
  return sets;
}

// The box of the whole set in the axes of its leading piece.
Box2 extent(const Scene& scene, const std::vector<Top>& set) {
  const Frame& frame = scene.bodies[set.front().piece].frame;
  Polygon all;
  for (const Top& top : set)
    for (Vec2 p : top.outline)
      all.push_back({dot({p.x, p.y, 0}, frame.u), dot({p.x, p.y, 0}, frame.v)});
  return box_of(all);
}

bool covered(const std::vector<Top>& tops, const Top& own, Vec2 p) {
  return std::any_of(tops.begin(), tops.end(), [&](const Top& top) {
    return top.z > own.z + kSameTop && top.underside < own.z + mm(Of::deck_room) &&
           contains({top.outline, {}}, p);
  });
}

// Whether most of it has room above.
bool free_above(const std::vector<Top>& tops, const std::vector<Top>& set) {
  int looked = 0, found = 0;
  for (const Top& top : set) {
    const Box2 box = box_of(top.outline);
    for (int i = 0; i < kLooks * kLooks; ++i) {
      const int column = i % kLooks, row = i / kLooks;
      const Vec2 d = (1.0 / kLooks) * Vec2{column + 0.5, row + 0.5};
      const Vec2 p = {box.low.x + d.x * (box.high.x - box.low.x),
                      box.low.y + d.y * (box.high.y - box.low.y)};
      if (!contains({top.outline, {}}, p)) continue;
      ++looked;
      if (!covered(tops, top, p)) ++found;
    }
  }
  return 2 * found > looked;
}

// The points that bend the outline by more than kEasyBend (Douglas and Peucker 1973).
void keep_bends(const Polygon& ring, std::size_t from, std::size_t to, std::vector<char>& kept) {
  std::size_t worst = from;
  double most = kEasyBend;
  for (std::size_t i = from + 1; i < to; ++i) {
    const double off = segment_distance(ring[from], ring[to % ring.size()], ring[i]);
    if (off > most) most = off, worst = i;
  }
  if (worst == from) return;
  kept[worst] = 1;
  keep_bends(ring, from, worst, kept);
  keep_bends(ring, worst, to, kept);
}

Polygon straightened(const Polygon& ring) {
  std::size_t far = 0;
  for (std::size_t i = 1; i < ring.size(); ++i)
    if (norm(ring[i] - ring[0]) > norm(ring[far] - ring[0])) far = i;
  std::vector<char> kept(ring.size());
  kept[0] = kept[far] = 1;
  keep_bends(ring, 0, far, kept);
  keep_bends(ring, far, ring.size(), kept);
  Polygon straight;
  for (std::size_t i = 0; i < ring.size(); ++i)
    if (kept[i]) straight.push_back(ring[i]);
  return straight;
}

bool goes_on(const std::vector<Top>& set, const Top& own, Vec2 p, Vec2 out) {
  return std::any_of(set.begin(), set.end(), [&](const Top& top) {
    if (top.piece == own.piece) return false;
    for (double k : {0.01, 0.35, 0.7, 1.0})
      if (contains({top.outline, {}}, p + k * mm(Of::head_small) * out)) return true;
    return false;
  });
}

Station station_at(const Scene& scene, const Side& side, double s) {
  Station station{s, Station::Kind::open, -1, kWallReach};
  const Vec3 p = side.sight.room({s, 0}), n = side.sight.n;
  for (int k = 0; scene.room_known() && k < static_cast<int>(scene.in.room.walls.size()); ++k) {
    const WallShape& wall = scene.in.room.walls[k];
    const double facing = -dot(n, {wall.out.x, wall.out.y, 0});
    if (facing < 0.5) continue;  // the wall runs away from the edge
    const double gap = before(wall, p) / facing;
    if (gap < station.gap) station.wall = k, station.gap = gap;
  }
  if (station.wall >= 0 && station.gap < mm(Of::head_large)) station.kind = Station::Kind::wall;
  return station;
}

/// The sides of a set of tops under construction.
class SideMaker {
 public:
  SideMaker(const Scene& scene, const std::vector<Top>& set) : scene_(scene), set_(set) {}

  std::vector<Side> all() {
    for (const Top& top : set_) {
      const Polygon ring = straightened(top.outline);
      for (std::size_t i = 0; i < ring.size(); ++i) add(top, ring[i], ring[(i + 1) % ring.size()]);
    }
    for (Side& side : sides_)
      std::stable_sort(side.stations.begin(), side.stations.end(),
                       [](const Station& a, const Station& b) { return a.s < b.s; });
    return std::move(sides_);
  }

 private:
  Side& along(Vec3 at, Vec3 out) {
    for (Side& side : sides_)
      if (dot(side.sight.n, out) > kSameWay && std::abs(side.sight.depth(at)) < kSameLine)
        return side;
    sides_.push_back({sight_across(at, out), {}, 0, 0, {}});
    return sides_.back();
  }

  void add(const Top& top, Vec2 a, Vec2 b) {
    const Vec2 d = (1 / norm(b - a)) * (b - a), out = -left_of(d);
    Side& side = along({a.x, a.y, top.z}, {out.x, out.y, 0});
    const int count = 1 + static_cast<int>(norm(b - a) / kStationStep);
    for (int i = 0; i < count; ++i) {
      const Vec2 p = a + ((i + 0.5) / count) * (b - a);
      Station station = station_at(scene_, side, side.sight.seen({p.x, p.y, top.z}).x);
      if (goes_on(set_, top, p, out)) station.kind = Station::Kind::inner;
      side.stations.push_back(station);
    }
    const double ends[] = {side.sight.seen({a.x, a.y, 0}).x, side.sight.seen({b.x, b.y, 0}).x};
    const bool first = side.from == side.to;
    side.from = std::min({first ? ends[0] : side.from, ends[0], ends[1]});
    side.to = std::max({first ? ends[0] : side.to, ends[0], ends[1]});
  }

  const Scene& scene_;
  const std::vector<Top>& set_;
  std::vector<Side> sides_;
};

Deck deck_of(const Scene& scene, const std::vector<Top>& set) {
  Deck deck;
  deck.top = set.front().z, deck.underside = set.front().underside;
  Vec2 sum;
  for (const Top& top : set) {
    deck.pieces.push_back(top.piece);
    deck.area += area({scene.bodies[top.piece].region});
    const Box2 box = box_of(top.outline);
    sum = sum + 0.5 * (box.low + box.high);
  }
  const double count = static_cast<double>(set.size());
  deck.middle = {sum.x / count, sum.y / count, deck.top};
  deck.sides = SideMaker(scene, set).all();
  return deck;
}

}  // namespace

std::vector<Deck> decks_of(const Scene& scene) {
  const std::vector<Top> tops = tops_of(scene);
  std::vector<Deck> decks;
  for (const auto& set : joined_tops(tops)) {
    const Vec2 size = extent(scene, set).high - extent(scene, set).low;
    if (std::min(size.x, size.y) < mm(Of::deck_width) || !free_above(tops, set)) continue;
    decks.push_back(deck_of(scene, set));
  }
  return decks;
}

Measured drop_of(const Scene& scene, const Deck& deck) {
  Measured most;
  for (const Side& side : deck.sides)
    for (const Station& station : side.stations) {
      if (station.kind != Station::Kind::open || !scene.room_known()) continue;
      const Vec3 p = side.sight.room({station.s, 0});
      const double drop = deck.top - scene.in.room.floor.z({p.x, p.y});
      if (drop > most.value) most = {drop, 0};
    }
  const Measured middle = height_of(scene, {Owner::Kind::piece, deck.lead()}, deck.middle);
  return {std::max(most.value, middle.value), middle.sd};
}

std::string name_of(const Scene& scene, const Deck& deck) {
  return scene.piece(deck.lead()).name;
}

}  // namespace nook::safe

// Contacts of thousands of short edges: few spots are looked at in the draws, against all of them.
#include <catch2/catch.hpp>

#include "fit/joint.h"
#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

constexpr double kRadius = 5000, kWide = 600;

// How far the bulging edge lies inside its chord's height at u.
double edge_v(double u) {
  const double x = u - kWide / 2;
  return kRadius - std::sqrt(kRadius * kRadius - x * x);
}

// A deck whose bottom edge bulges as an arc of `edges` lines, tight to the right wall.
Design bulging(int edges, double allow) {
  Design d = empty_design(18);
  Part deck = panel("deck", {kWide, 400}, {0, 0, 400}, kX, kY);
  deck.outline.clear();
  for (int i = 0; i <= edges; ++i)
    deck.outline.push_back({kWide * i / edges, edge_v(kWide * i / edges)});
  deck.outline.push_back({kWide, 400});
  deck.outline.push_back({0, 400});
  deck.rectangle = false;
  d.parts.push_back(deck);
  d.contacts.push_back(meet("deck", EdgeSide::left, "right wall"));
  d.contacts.push_back(meet("deck", EdgeRun{0, edges - 1}, "left wall", Fitting::shim));
  d.contacts[1].allow = Length{allow};
  d.groups.push_back(tight("deck", {"right wall"}));
  return d;
}

// Corners open by up to 0.4 degrees either way, and walls that lean.
std::vector<RoomShape> draws_of(int count) {
  std::vector<RoomShape> draws;
  for (int i = 0; i < count; ++i) {
    Found c = corner(90 + 0.4 * std::sin(1.7 * i), 0.003 * std::cos(2.3 * i), 0);
    draws.push_back(c.room);
  }
  return draws;
}

// The widest and the least gap of every line's both ends, by plain geometry: flat walls.
GapRange slow_gaps(const Design& d, const Frame& frame, const RoomShape& room, int edges) {
  GapRange range{1e300, -1e300};
  const Polygon& ring = d.parts[0].outline;
  for (int e = 0; e < edges; ++e) {
    const Vec2 way = ring[e + 1] - ring[e], out = (-1 / norm(way)) * left_of(way);
    const Vec3 ray = out.x * frame.u + out.y * frame.v;
    for (const Vec2 p : {ring[e], ring[e + 1]})
      for (double w : {0.0, 18.0}) {
        const Vec3 at = frame.room_from_piece({p.x, p.y, w});
        const double gap = (at.y - room.walls[0].lean * at.z) / -ray.y;
        range.least = std::min(range.least, gap);
        if (w == 0) range.most = std::max(range.most, gap);
        if (w == 18) range.most = std::max(range.most, gap);
      }
  }
  return range;
}

}  // namespace

TEST_CASE("short edges: verdicts over the draws are those of all spots", "[property]") {
  const Found c = corner(90);
  const int edges = 3000;
  for (double allow : {9.5, 11.0, 12.5}) {
    INFO("accepted " << allow);
    const Design d = bulging(edges, allow);
    const auto draws = draws_of(60);
    const FitAnswer f = fit({c.survey, d, c.room, draws, 0.95, true});
    int hold = 0, near_limit = 0;
    for (std::size_t r = 0; r < draws.size(); ++r) {
      const GapRange slow = slow_gaps(d, f.frames_in_draws[r][0], draws[r], edges);
      CHECK(slow.least > -0.1);
      CHECK(slow.least < 0.1);
      hold += slow.most <= allow;
      near_limit += std::abs(slow.most - allow) < 0.1;
    }
    const double share = static_cast<double>(hold) / static_cast<double>(draws.size());
    const double play = (near_limit + 0.5) / static_cast<double>(draws.size());
    CHECK_THAT(f.contacts[1].chance, WithinAbs(share, play));
  }
}

TEST_CASE("short edges: the draws look at few spots of ten thousand", "[property]") {
  const Found c = corner(90);
  const Design d = bulging(9999, 10);
  const std::vector<Piece> pieces = pieces_of(d);
  const std::vector<Body> bodies = {{{d.parts[0].outline, {}}, {}, pieces[0].thickness}};
  const std::vector<RoomShape> none;
  Site site(c.survey, c.room, none);
  const auto joints = joints_of({c.survey, d, pieces, bodies}, site, {pieces[0].frame});
  int looked_at = 0;
  double last = 0, widest = 0;
  for (const JointSpot& spot : joints[1].spots)
    if (spot.coarse) {
      ++looked_at;
      widest = std::max(widest, spot.t - last);
      last = spot.t;
    }
  CHECK(joints[1].spots.size() > 9999);
  CHECK(looked_at < 100);
  CHECK(looked_at >= 7);
  CHECK(widest <= 101);
}

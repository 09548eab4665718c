// Fits of simulated rooms and designs against dense sampling of the same surfaces: within 1/64 in.
#include <catch2/catch.hpp>

#include "dense_twin.h"
#include "simulated_rooms.h"

using namespace nook;
using namespace nook::by_hand;

namespace {

constexpr double kSixtyFourth = in / 64;

// The two ends of a side of a rectangle, in the order of `at`, and the way out.
struct Side {
  Vec2 from, to, out;
};
Side side_of_rectangle(const Polygon& r, EdgeSide side) {
  switch (side) {
    case EdgeSide::left:
      return {r[0], r[3], {-1, 0}};
    case EdgeSide::right:
      return {r[1], r[2], {1, 0}};
    case EdgeSide::bottom:
      return {r[0], r[1], {0, -1}};
    case EdgeSide::top:
      return {r[3], r[2], {0, 1}};
  }
  return {};
}

double interpolated(const std::vector<GapPoint>& line, double at) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    if (line[i].at <= at && at <= line[i + 1].at) {
      const double d = line[i + 1].at - line[i].at;
      const double t = d > 0 ? (at - line[i].at) / d : 0;
      return line[i].gap + t * (line[i + 1].gap - line[i].gap);
    }
  return NAN;
}

// Gaps jump where a board begins or ends: not compared within 0.7 mm of a jump.
bool near_jump(const std::vector<GapPoint>& line, double at) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    if (line[i + 1].at - line[i].at < 0.01 && std::abs(line[i].at - at) < 0.7) return true;
  return false;
}

struct Checker {
  const Found& found;
  const FitAnswer& fit;
  twin::DenseRoom room;
  int compared = 0;

  twin::Solid met(const ContactFit& c) const {
    if (c.meets == "floor") return room.floor();
    const int wall = room.wall_named(c.meets);
    if (wall >= 0)
      return c.how->notch ? room.wall(wall) : twin::either(room.wall(wall), room.blocks(wall));
    for (std::size_t p = 0; p < fit.pieces.size(); ++p)
      if (fit.pieces[p].name == c.meets) return twin::piece(fit, static_cast<int>(p), false);
    return {};
  }

  void compare_line(const ContactFit& c, const std::vector<GapPoint>& line, double w) {
    const Side side =
        side_of_rectangle(fit.pieces[c.piece].drawn->outline, std::get<EdgeSide>(c.how->edge));
    const Frame& f = fit.frames[c.piece];
    const Vec3 way = side.out.x * f.u + side.out.y * f.v;
    for (int i = 0; i <= 24; ++i) {
      const Vec2 uv = side.from + (i / 24.0) * (side.to - side.from);
      const double at = side.out.x != 0 ? uv.y : uv.x;
      const double gap = interpolated(line, at);
      if (std::isnan(gap) || near_jump(line, at)) continue;
      const auto dense = twin::stepped_gap(met(c), f.room_from_piece({uv.x, uv.y, w}), way);
      INFO(c.part << " at " << c.meets << ", spot " << at << ", w " << w);
      REQUIRE(dense);
      CHECK(std::abs(*dense - gap) < kSixtyFourth);
      ++compared;
    }
  }

  void compare_field(const ContactFit& c) {
    const bool front = std::get<PieceFace>(c.how->edge) == PieceFace::front;
    const Frame& f = fit.frames[c.piece];
    for (std::size_t i = 0; i < c.field.size(); i += 7) {
      const FieldPoint& p = c.field[i];
      const double w = front ? fit.pieces[c.piece].thickness : 0;
      const auto dense =
          twin::stepped_gap(met(c), f.room_from_piece({p.u, p.v, w}), (front ? 1.0 : -1.0) * f.w);
      INFO(c.part << " on " << c.meets << ", u " << p.u << ", v " << p.v);
      REQUIRE(dense);
      CHECK(std::abs(*dense - p.gap) < kSixtyFourth);
      ++compared;
    }
  }

  void compare_gaps() {
    for (const ContactFit& c : fit.contacts) {
      if (!c.meets_anything) continue;
      if (std::holds_alternative<PieceFace>(c.how->edge)) {
        compare_field(c);
        continue;
      }
      compare_line(c, c.back, 0);
      compare_line(c, c.front, fit.pieces[c.piece].thickness);
    }
  }

  bool cut_at(int piece, const std::string& surface) const {
    for (const ContactFit& c : fit.contacts)
      if (c.piece == piece && surface.starts_with(c.meets) &&
          (c.how->by == Fitting::scribe || c.how->by == Fitting::taper))
        return true;
    return false;
  }

  double told(int piece, const std::string& with) const {
    double depth = 0;
    for (const ClashFit& c : fit.clashes)
      if (c.piece == piece && c.with.starts_with(with)) depth = std::max(depth, c.depth_mm);
    return depth;
  }

  // What is not told must not be there, and the other way round.
  void compare_overlap() {
    for (std::size_t p = 0; p < fit.pieces.size(); ++p)
      for (std::size_t w = 0; w < found.room.walls.size(); ++w) {
        const int piece = static_cast<int>(p), wall = static_cast<int>(w);
        const Vec2 out = found.room.walls[w].out;
        const std::string name = found.room.walls[w].name + " wall";
        if (cut_at(piece, name)) continue;
        const double depth = twin::deepest_point(
            fit, piece, twin::either(room.wall(wall), room.blocks(wall)), {out.x, out.y, 0});
        INFO(fit.pieces[p].name << " in the " << name << ": " << depth << " deep");
        CHECK(depth < std::max(0.1, told(piece, name)) + kSixtyFourth);
      }
  }

  // A notch clears what it is for, and takes no more than the clearance and 1/32 in beyond that.
  void compare_notches() {
    for (const NotchFit& n : fit.notches) {
      const Contact& how = fit.pieces.empty() ? *fit.contacts[0].how : *contact(n.contact).how;
      const int wall = room.wall_named(how.meets);
      if (wall < 0) continue;
      const Frame& f = fit.frames[n.piece];
      const twin::Solid blocks = room.blocks(wall);
      double deepest = 0;
      const double top = 200;
      for (double v = 0.3; v < top; v += 1)
        for (double w : {1e-6, fit.pieces[n.piece].thickness - 1e-6})
          for (double u = 60; u > 0; u -= 0.25)
            if (blocks(f.room_from_piece({u, v, w}))) {
              deepest = std::max(deepest, u);
              break;
            }
      double width = 0;
      for (Vec2 p : n.polygon) width = std::max(width, p.x);
      INFO(n.part << " for " << n.around);
      CHECK(width > deepest + how.clearance.mm - kSixtyFourth);
      CHECK(width < deepest + how.clearance.mm + 2 * kSixtyFourth + 0.02 * how.clearance.mm);
    }
  }

  const ContactFit& contact(int index) const {
    for (const ContactFit& c : fit.contacts)
      if (c.contact == index) return c;
    return fit.contacts.front();
  }
};

// The wishes of a placement by dense rays, most wanted first: overlap, tight gap, greatest gap.
struct Wishes {
  double overlap = 0, tight = -1e300, most = -1e300;
};

Wishes wishes_at(const Checker& checker, const FitAnswer& moved, const std::string& tight) {
  Wishes wishes;
  for (const ContactFit& c : checker.fit.contacts) {
    const Side side =
        side_of_rectangle(moved.pieces[c.piece].drawn->outline, std::get<EdgeSide>(c.how->edge));
    const Frame& f = moved.frames[c.piece];
    for (double w : {0.0, moved.pieces[c.piece].thickness})
      for (int i = 0; i <= 40; ++i) {
        const Vec2 uv = side.from + (i / 40.0) * (side.to - side.from);
        const auto gap = twin::stepped_gap(checker.met(c), f.room_from_piece({uv.x, uv.y, w}),
                                           side.out.x * f.u + side.out.y * f.v);
        if (!gap) continue;
        wishes.overlap = std::max(wishes.overlap, -*gap);
        wishes.most = std::max(wishes.most, *gap);
        if (c.meets == tight) wishes.tight = std::max(wishes.tight, *gap);
      }
  }
  return wishes;
}

// Better in one wish by more than rays of 1/40 of an edge can tell, and not worse in those before.
bool better(const Wishes& a, const Wishes& b) {
  constexpr double kTell = 0.15, kSame = 0.02;
  if (a.overlap < b.overlap - kTell) return true;
  if (a.overlap > b.overlap + kSame) return false;
  if (a.tight < b.tight - kTell) return true;
  return a.tight < b.tight + kSame && a.most < b.most - kTell;
}

void check_home(const Found& found, const Design& design, const std::string& tight) {
  const FitAnswer fit = fit_exactly(found, design);
  const Checker checker{found, fit, {found.room, found.survey}};
  const Wishes home = wishes_at(checker, fit, tight);
  for (int i = 1; i < 27; ++i) {
    const double dx = 0.6 * (i % 3 - 1), dy = 0.6 * (i / 3 % 3 - 1);
    const double turn = 0.0008 * (i / 9 - 1), c = std::cos(turn), s = std::sin(turn);
    FitAnswer moved = fit;
    const Vec3 middle = fit.frames[0].room_from_piece({200, 200, 0});
    const auto turned = [&](Vec3 v) { return Vec3{c * v.x - s * v.y, s * v.x + c * v.y, v.z}; };
    Frame& f = moved.frames[0];
    f = {middle + turned(f.at - middle) + Vec3{dx, dy, 0}, turned(f.u), turned(f.v), f.w};
    INFO("moved by " << dx << ", " << dy << ", turned by " << turn);
    CHECK_FALSE(better(wishes_at(checker, moved, tight), home));
  }
}

int check_fit(const Found& found, const Design& design) {
  const FitAnswer fit = fit_exactly(found, design);
  Checker checker{found, fit, {found.room, found.survey}};
  checker.compare_gaps();
  checker.compare_overlap();
  checker.compare_notches();
  return checker.compared;
}

void check_rooms(std::uint64_t seed, int rooms) {
  int compared = 0;
  for (int i = 0; i < rooms; ++i) {
    Random random(seed + static_cast<std::uint64_t>(i));
    INFO("seed " << seed + static_cast<std::uint64_t>(i) << ", room " << i);
    if (i % (kCornerKinds + 1) == kCornerKinds) {
      const Found found = simulated_alcove(random, {});
      compared += check_fit(found, simulated_shelf(random, found.room.walls[1].length));
    } else {
      const Found found = simulated_corner(random, {});
      compared += check_fit(found, simulated_design(random, i % (kCornerKinds + 1)));
    }
  }
  CHECK(compared > 20 * rooms);
}

}  // namespace

TEST_CASE("fit: no small move out of its place serves the wishes better", "[property]") {
  for (int i = 0; i < 6; ++i) {
    INFO("room " << i);
    Random random(40 + i);
    Wildness wild;
    wild.field = 3;
    if (i % 2 == 0) {
      const Found found = simulated_corner(random, wild);
      Design deck = simulated_design(random, 1);
      deck.groups = {tight("deck", {"left wall"})};
      for (Contact& c : deck.contacts) c.by = Fitting::butt;
      check_home(found, deck, "left wall");
    } else {
      const Found found = simulated_alcove(random, wild);
      check_home(found, simulated_shelf(random, found.room.walls[1].length - 90), "back wall");
    }
  }
}

TEST_CASE("fit: a score of simulated rooms agree with dense sampling", "[property]") {
  check_rooms(1000, 24);
}

TEST_CASE("fit: three hundred simulated rooms agree with dense sampling", "[property][release]") {
  check_rooms(5000, 300);
}

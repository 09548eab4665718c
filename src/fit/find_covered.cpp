// Chords of the cover square to the edge, at every spot where its border bends.
#include "fit/find_covered.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

namespace nook {
namespace {

constexpr double kStep = 10;    // mm along the edge; between border points it is straight. Chosen
constexpr double kHair = 0.01;  // mm to both sides of a corner of the border
constexpr int kWorst = 6;       // spots that are looked at again in the draws; chosen
constexpr double kOnEnd =
    10;  // mm; an edge may run this far past the end of its cover, as at a floor. Chosen

// The edge as seen on the cover: points in its u, v and the direction square to the edge.
struct Seen {
  Vec2 at, square;
};

class Cover {
 public:
  Cover(const Trials& trials, const Covered& covered, int piece, int behind)
      : trials_(trials), piece_(piece), behind_(behind) {
    const Polygon& outline = trials.layout.scene.pieces[piece].drawn->outline;
    run_ = run_points(run_of(covered.edge, outline), outline);
  }

  Tally margins() const {
    Tally tally;
    const std::vector<Vec3> all = spots(trials_.placings[0].frames);
    std::vector<std::pair<double, std::size_t>> order;
    for (std::size_t i = 0; i < all.size(); ++i)
      order.emplace_back(margin(all[i], trials_.placings[0].frames), i);
    std::sort(order.begin(), order.end());
    if (order.empty()) return tally;
    tally.adjusted = order[0].first;
    order.resize(std::min<std::size_t>(order.size(), kWorst));
    for (int r = 1; r < trials_.rooms(); ++r) {
      double least = 1e300;
      for (const auto& [m, i] : order)
        least = std::min(least, margin(all[i], trials_.placings[r].frames));
      tally.add(r, least);
    }
    return tally;
  }

  double margin_at(const std::vector<Frame>& frames) const {
    double least = 1e300;
    for (Vec3 spot : spots(frames)) least = std::min(least, margin(spot, frames));
    return least;
  }

 private:
  const Region& region() const { return trials_.layout.scene.bodies[behind_].region; }

  // Along each straight edge, evenly and wherever the cover's border has a corner beside it.
  std::vector<Vec3> spots(const std::vector<Frame>& frames) const {
    std::vector<Vec3> all;
    const Polygon& points = run_;
    const Body& body = trials_.layout.scene.bodies[piece_];
    for (std::size_t i = 0; i + 1 < points.size(); ++i)
      for (double w : {0.0, body.thickness}) {
        std::set<double> shares = {0, 1};
        const double length = norm(points[i + 1] - points[i]);
        const int n = static_cast<int>(length / kStep);
        for (int k = 1; k < n; ++k) shares.insert(static_cast<double>(k) / n);
        add_corners(frames, points[i], points[i + 1], shares);
        for (double t : shares) {
          const Vec2 uv = points[i] + t * (points[i + 1] - points[i]);
          all.push_back({uv.x, uv.y, w});
        }
      }
    return all;
  }

  void add_corners(const std::vector<Frame>& frames, Vec2 from, Vec2 to,
                   std::set<double>& shares) const {
    const auto look = [&](const Polygon& ring) {
      for (Vec2 p : ring) {
        const Vec3 q =
            frames[piece_].piece_from_room(frames[behind_].room_from_piece({p.x, p.y, 0}));
        const double t = dot(Vec2{q.x, q.y} - from, to - from) / dot(to - from, to - from);
        for (double beside : {t - kHair / norm(to - from), t + kHair / norm(to - from)})
          if (beside > 0 && beside < 1) shares.insert(beside);
      }
    };
    look(region().outline);
    for (const Polygon& hole : region().holes) look(hole);
  }

  // How far the cover reaches beyond the edge on its narrower side.
  double margin(Vec3 spot, const std::vector<Frame>& frames) const {
    const Frame &own = frames[piece_], &cover = frames[behind_];
    const Vec3 at = cover.piece_from_room(own.room_from_piece(spot));
    const Vec2 d = run_.back() - run_.front();
    const Vec3 along = d.x * own.u + d.y * own.v;
    Vec2 seen{dot(along, cover.u), dot(along, cover.v)};
    const Vec2 p{at.x, at.y};
    if (norm(seen) < 1e-3 * norm(d))
      return (contains(region(), p) ? 1 : -1) * border_distance(region(), p);
    seen = (1 / norm(seen)) * seen;
    if (const auto here = chord_beside(p, left_of(seen))) return *here;
    const Vec2 inner = nudged(p, seen);
    // Right at an end of the cover a chord may miss it by rounding: a hair to each side too.
    for (double aside : {0.0, kHair, -kHair})
      if (const auto beside = chord_beside(inner + aside * seen, left_of(seen))) return *beside;
    return chord_margin(inner, left_of(seen));
  }

  // The narrower side of the cover's chord through p; nothing where p is not on one.
  std::optional<double> chord_beside(Vec2 p, Vec2 square) const {
    for (Stretch s : inside(region(), p, square))
      if (s.from <= 0 && s.to >= 0) return std::min(-s.from, s.to);
    return std::nullopt;
  }

  // An edge that ends a little past the cover's own end is looked at inside of it.
  Vec2 nudged(Vec2 p, Vec2 along) const {
    if (contains(region(), p)) return p;
    const Region& whole = region();
    if (contains({whole.outline, {}}, p)) return p;  // in a cutout
    for (double step : {kOnEnd, -kOnEnd})
      if (contains(whole, p + step * along)) return p + step * along;
    return p;
  }

  // How far p is beside the nearest stretch of the cover, negative.
  double chord_margin(Vec2 p, Vec2 square) const {
    double nearest = 1e300;
    for (Stretch s : inside(region(), p, square))
      nearest = std::min(nearest, s.from > 0 ? s.from : -s.to);
    return nearest < 1e299 ? -nearest : -border_distance(region(), p);
  }

  const Trials& trials_;
  int piece_, behind_;
  Polygon run_;  // the edge
};

CoveredFit found_of(const Trials& trials, int index, int piece, int behind) {
  CoveredFit found;
  found.covered = index;
  found.piece = piece;
  found.part = trials.layout.scene.pieces[piece].name;
  found.behind = trials.layout.scene.pieces[behind].name;
  found.needed_mm = trials.layout.scene.design.covered[index].margin.mm;
  return found;
}

}  // namespace

double cover_margin(const Trials& trials, int covered, int piece, int behind,
                    const std::vector<Frame>& frames) {
  return Cover(trials, trials.layout.scene.design.covered[covered], piece, behind)
      .margin_at(frames);
}

std::vector<CoveredFit> find_covered(const Trials& trials, double sure, Holds& all_hold) {
  const Scene& scene = trials.layout.scene;
  std::vector<CoveredFit> all;
  for (int c = 0; c < static_cast<int>(scene.design.covered.size()); ++c) {
    const Covered& covered = scene.design.covered[c];
    for (int piece : pieces_named(scene.pieces, scene.design, covered.part))
      for (int behind : pieces_named(scene.pieces, scene.design, covered.behind)) {
        CoveredFit found = found_of(trials, c, piece, behind);
        const Tally margins = Cover(trials, covered, piece, behind).margins();
        Holds holds(trials.rooms());
        holds.set(0, margins.adjusted >= found.needed_mm - 1e-6);
        for (std::size_t r = 0; r < margins.drawn.size(); ++r)
          holds.set(static_cast<int>(r) + 1, margins.drawn[r] >= found.needed_mm - 1e-6);
        found.margin_mm = margins.adjusted;
        found.sd_mm = margins.sd();
        found.chance = holds.chance();
        found.verdict = holds.verdict(sure);
        all_hold.both(holds);
        all.push_back(found);
      }
  }
  return all;
}

}  // namespace nook

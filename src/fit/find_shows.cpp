// Pieces right behind another, seen through its cutouts and past its edges.
#include <algorithm>
#include <cmath>

#include "design/fitting.h"
#include "fit/find_covered.h"
#include "solid/boolean.h"
#include "solid/cells.h"

namespace nook {
namespace {

constexpr double kBehind = 25;   // mm; what is further back is not taken for an end. Chosen
constexpr double kNotable = 1;   // mm; less does not catch the eye. Chosen
constexpr double kLopsided = 3;  // mm of one side more than of the other; chosen

// The outline of a piece as seen square on to another, and how far behind its back it begins.
struct Silhouette {
  std::vector<Polygon> cells;
  double depth = 1e300;
};
Silhouette seen_on(const Trials& trials, const std::vector<Frame>& frames, int front, int other) {
  const Body& body = trials.layout.scene.bodies[other];
  const double thickness = trials.layout.scene.bodies[front].thickness;
  const bool back_shows = trials.layout.scene.pieces[front].drawn->show == ShowFace::back;
  Silhouette seen;
  for (const Polygon& cell : body.cells) {
    Polygon points;
    for (double w : {0.0, body.thickness})
      for (Vec2 p : cell) {
        const Vec3 q = frames[front].piece_from_room(frames[other].room_from_piece({p.x, p.y, w}));
        points.push_back({q.x, q.y});
        seen.depth = std::min(seen.depth, back_shows ? q.z - thickness : -q.z);
      }
    seen.cells.push_back(hull_of(std::move(points)));
  }
  return seen;
}

double narrow_width(const Polygon& ring) {
  const Box2 box = box_of(ring);
  return std::min(box.high.x - box.low.x, box.high.y - box.low.y);
}

void look_in_cutouts(const Trials& trials, int front, int other, const Silhouette& seen,
                     std::vector<ShowFit>& shows) {
  const Piece& piece = trials.layout.scene.pieces[front];
  for (const Cutout& cutout : piece.drawn->cutouts) {
    const Regions part = intersect(seen.cells, Regions{{cutout.outline, {}}});
    if (part.empty() || area(part) > 0.999 * std::abs(signed_area(cutout.outline))) continue;
    double widest = 0;
    for (const Region& r : part) widest = std::max(widest, narrow_width(r.outline));
    if (widest < kNotable) continue;
    const std::string name = cutout.name.empty() ? "cutout" : cutout.name;
    shows.push_back({trials.layout.scene.pieces[other].name, name + " of " + piece.name,
                     "its end shows there", widest});
  }
}

// Edges of a piece that meet something: what stands out past them is against it, not seen.
std::vector<bool> meeting_edges(const Trials& trials, int piece) {
  const Polygon& outline = trials.layout.scene.pieces[piece].drawn->outline;
  const int n = static_cast<int>(outline.size());
  std::vector<bool> meets(n, false);
  for (const Joint& joint : trials.layout.joints) {
    if (joint.piece != piece || joint.face) continue;
    const EdgeRun run = run_of(joint.how->edge, outline);
    for (int k = 0; k <= (run.last - run.first + n) % n; ++k) meets[(run.first + k) % n] = true;
  }
  return meets;
}

// How far a silhouette stands out past the free edges of an outline.
double overhang(const Silhouette& seen, const Polygon& outline, const std::vector<bool>& meets) {
  double most = 0;
  const std::size_t n = outline.size();
  for (const Polygon& cell : seen.cells)
    for (Vec2 p : cell) {
      if (contains({outline, {}}, p)) continue;
      std::size_t nearest = 0;
      double least = 1e300;
      for (std::size_t e = 0; e < n; ++e) {
        const double distance = segment_distance(outline[e], outline[(e + 1) % n], p);
        if (distance < least) least = distance, nearest = e;
      }
      if (!meets[nearest]) most = std::max(most, least);
    }
  return most;
}

void look_past_edges(const Trials& trials, int front, int other, const Silhouette& fitted,
                     std::vector<ShowFit>& shows) {
  const auto& pieces = trials.layout.scene.pieces;
  if (!share_joint(trials.layout, front, other)) return;
  std::vector<Frame> drawn;
  for (const Piece& piece : pieces) drawn.push_back(piece.frame);
  const Polygon& outline = pieces[front].drawn->outline;
  const std::vector<bool> meets = meeting_edges(trials, front);
  const double before = overhang(seen_on(trials, drawn, front, other), outline, meets);
  const double now = overhang(fitted, outline, meets);
  if (before > kNotable / 2 || now < before + kNotable) return;
  shows.push_back(
      {pieces[other].name, pieces[front].name, "stands out past the edge it is drawn behind", now});
}

// A symmetrical set of cutouts, of which more wood goes on one side than on the other.
bool symmetrical(const Part& part) {
  const Box2 box = box_of(part.outline);
  const double twice = box.low.x + box.high.x;
  const auto middle = [](const Cutout& c) {
    const Box2 b = box_of(c.outline);
    return 0.5 * (b.low + b.high);
  };
  return !part.cutouts.empty() &&
         std::all_of(part.cutouts.begin(), part.cutouts.end(), [&](const Cutout& a) {
           const Vec2 mirrored{twice - middle(a).x, middle(a).y};
           return std::any_of(part.cutouts.begin(), part.cutouts.end(), [&](const Cutout& b) {
             return norm(middle(b) - mirrored) < kNotable;
           });
         });
}

void look_at_symmetry(const Trials& trials, const std::vector<ContactFit>& contacts, int piece,
                      std::vector<ShowFit>& shows) {
  const Piece& p = trials.layout.scene.pieces[piece];
  if (!p.drawn->symmetric && !symmetrical(*p.drawn)) return;
  double gone[2] = {0, 0};  // left, right
  for (const ContactFit& c : contacts) {
    const EdgeSide* side = std::get_if<EdgeSide>(&c.how->edge);
    const bool cut = is_cut_to_fit(c.how->by);
    if (c.piece != piece || !side || !cut || !c.meets_anything) continue;
    if (*side == EdgeSide::left) gone[0] = c.scribe_mm;
    if (*side == EdgeSide::right) gone[1] = c.scribe_mm;
  }
  const double more = std::abs(gone[0] - gone[1]);
  const char* what = p.drawn->cutouts.empty()
                         ? "it is no longer alike on both sides once it is cut"
                         : "its cutouts are no longer in the middle once it is cut";
  if (more > (p.drawn->symmetric ? kNotable : kLopsided))
    shows.push_back({p.name, p.name, what, more});
}

}  // namespace

std::vector<ShowFit> find_shows(const Trials& trials, const std::vector<ContactFit>& contacts) {
  std::vector<ShowFit> shows;
  const auto& pieces = trials.layout.scene.pieces;
  const auto& frames = trials.placings[0].frames;
  for (int front = 0; front < static_cast<int>(pieces.size()); ++front) {
    if (pieces[front].drawn->show == ShowFace::none) continue;
    for (int other = 0; other < static_cast<int>(pieces.size()); ++other) {
      if (other == front) continue;
      const Silhouette seen = seen_on(trials, frames, front, other);
      if (seen.depth < -kNotable || seen.depth > kBehind) continue;
      look_in_cutouts(trials, front, other, seen, shows);
      look_past_edges(trials, front, other, seen, shows);
    }
    look_at_symmetry(trials, contacts, front, shows);
  }
  return shows;
}

}  // namespace nook

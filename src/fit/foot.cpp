// Edges that face down, and the floor's plane seen in the piece's frame.
#include "fit/foot.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kLowest = 1;       // mm; as for feet
constexpr double kFacesDown = 0.7;  // cosine: legs slope by less than 45 degrees. Chosen
constexpr double kLies = 0.9;       // cosine of a face that is level
constexpr double kLeans = 1;        // degree; chosen

// An edge of the outline that stands on the floor.
struct FootEdge {
  double length = 0;
  Vec2 way, out;  // units
};

std::vector<FootEdge> foot_edges(const Piece& piece, const Frame& frame) {
  const Polygon& ring = piece.drawn->outline;
  const double low = lowest(piece, frame);
  const auto height = [&](Vec2 q) {
    return std::min(frame.room_from_piece({q.x, q.y, 0}).z,
                    frame.room_from_piece({q.x, q.y, piece.thickness}).z);
  };
  std::vector<FootEdge> edges;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
    const double length = norm(b - a);
    if (length < 1e-9) continue;
    const Vec2 way = (1 / length) * (b - a), out = -left_of(way);
    const double down = -(out.x * frame.u.z + out.y * frame.v.z);
    if (down > kFacesDown && std::min(height(a), height(b)) < low + kLowest)
      edges.push_back({length, way, out});
  }
  return edges;
}

// How a plane with this normal runs off square to the piece, per unit.
struct Slopes {
  double across = 0, through = 0;
};
Slopes slopes_of(const Frame& frame, const FootEdge& foot, Vec3 up) {
  const Vec2 seen{dot(up, frame.u), dot(up, frame.v)};
  const double square = std::abs(dot(seen, foot.out));
  return {std::abs(dot(seen, foot.way)) / square, std::abs(dot(up, frame.w)) / square};
}

double degrees_of(double slope) {
  return in_degrees({std::atan(slope)});
}

bool lies(const Frame& frame) {
  return std::abs(frame.w.z) > kLies;
}

}  // namespace

double foot_area(const Trials& trials, int p) {
  const Piece& piece = trials.layout.scene.pieces[p];
  const Frame& frame = trials.placings[0].frames[p];
  if (lies(frame)) return area({trials.layout.scene.bodies[p].region});
  double level = 0;
  for (const FootEdge& edge : foot_edges(piece, frame))
    level += edge.length / -(edge.out.x * frame.u.z + edge.out.y * frame.v.z);
  return level * piece.thickness;
}

FootCut foot_cut(const Trials& trials, int p) {
  const Piece& piece = trials.layout.scene.pieces[p];
  const Frame& frame = trials.placings[0].frames[p];
  const std::vector<FootEdge> edges = foot_edges(piece, frame);
  if (lies(frame) || edges.empty()) return {};
  const FootEdge& foot =
      *std::max_element(edges.begin(), edges.end(),
                        [](const FootEdge& a, const FootEdge& b) { return a.length < b.length; });
  const Slopes plumb = slopes_of(frame, foot, {0, 0, 1});
  if (std::max(degrees_of(plumb.across), degrees_of(plumb.through)) < kLeans) return {};
  const Vec2 slope = trials.views[0].shape().floor.slope;
  const Slopes cut = slopes_of(frame, foot, {-slope.x, -slope.y, 1});
  return {degrees_of(cut.across), degrees_of(cut.through),
          cut.across * foot.length + cut.through * piece.thickness};
}

}  // namespace nook

// Trims on the four corners that a piece as cut has, read again with its own tape readings.
#include "shop/trimmed.h"

#include <algorithm>
#include <cmath>

#include "design/side.h"

namespace nook {
namespace {

constexpr double kApart = 1;  // mm between two corners, else they are one. Chosen
constexpr int kRounds = 50;   // of the corners' moves; they settle in ten. Chosen

// The sides by the edges of a ring of corners: lower left, lower right, upper right, upper left.
constexpr EdgeSide kSides[] = {EdgeSide::bottom, EdgeSide::right, EdgeSide::top, EdgeSide::left};

// Whether the ring runs along a side from its top or right end.
bool backwards(EdgeSide side) {
  return side == EdgeSide::top || side == EdgeSide::left;
}

using Corners = std::array<Vec2, 4>;
Vec2 along(const Corners& ring, int edge) {
  const Vec2 way = ring[(edge + 1) % 4] - ring[edge];
  return (1 / norm(way)) * way;
}

Corners corners_as_cut(const Judged& judged) {
  const Polygon& needed = judged.needed->outline;
  return corners_of(with_corners(needed, judged.shape.off), needed);
}

bool four_corners(const Corners& ring) {
  for (int i = 0; i < 4; ++i)
    if (norm(ring[(i + 1) % 4] - ring[i]) < kApart) return false;
  return true;
}

Corners without(const Corners& ring, const Trim& trim) {
  const int edge = static_cast<int>(std::find(kSides, kSides + 4, trim.side) - kSides);
  const EdgeMove by =
      backwards(trim.side) ? EdgeMove{-trim.last, -trim.first} : EdgeMove{-trim.first, -trim.last};
  const Polygon left = moved(Polygon(ring.begin(), ring.end()), {edge, edge}, by);
  return {left[0], left[1], left[2], left[3]};
}

// Turned so that an edge lies along another ring's, and moved so that a corner lies on its corner.
Corners laid(Corners ring, const Corners& on, int edge, int corner) {
  const Vec2 from = along(ring, edge), to = along(on, edge), at = ring[corner];
  const double cosine = dot(from, to), sine = dot(left_of(from), to);
  for (Vec2& p : ring) p = on[corner] + cosine * (p - at) + sine * left_of(p - at);
  return ring;
}

// How the outline's corners have to stray for it to have these.
CornerVector strayed_to(const Corners& corners, const Polygon& needed) {
  CornerVector off{};
  for (int round = 0; round < kRounds; ++round) {
    const Corners now = corners_of(with_corners(needed, off), needed);
    for (int c = 0; c < 4; ++c)
      off[2 * c] += corners[c].x - now[c].x, off[2 * c + 1] += corners[c].y - now[c].y;
  }
  return off;
}

// From one ring's edge in to the other's, at the first and at the last corner of the edge; taken
// back where that is out.
std::pair<double, double> inward(const Corners& cut, const Corners& needed, int edge) {
  const Vec2 in = left_of(along(cut, edge)), square = left_of(along(needed, edge));
  const auto at = [&](int corner) {
    return dot(needed[edge] - cut[corner % 4], square) / dot(in, square);
  };
  const double first = at(edge), last = at(edge + 1);
  const double out = std::max({0.0, -first, -last});
  return {first + out, last + out};
}

double wild_at(const Judged& judged, int edge) {
  return judged.needed->sides[static_cast<size_t>(kSides[edge % 4])].wild;
}

std::vector<Trim> trims_for(const Judged& judged, const Corners& cut, const Corners& needed) {
  std::vector<Trim> trims;
  for (int edge = 0; edge < 4; ++edge) {
    auto [first, last] = inward(cut, needed, edge);
    first = std::max(first - wild_at(judged, edge), 0.0);
    last = std::max(last - wild_at(judged, edge), 0.0);
    if (std::max(first, last) < kLeastTrim) continue;
    const bool back = backwards(kSides[edge]);
    trims.push_back({kSides[edge], back ? last : first, back ? first : last});
  }
  return trims;
}

}  // namespace

std::vector<CutFigure> figures_after(const Judged& judged, const std::vector<Trim>& trims) {
  const Polygon& needed = judged.needed->outline;
  Corners ring = corners_as_cut(judged);
  if (!four_corners(ring)) return {};
  for (const Trim& trim : trims) ring = without(ring, trim);
  ring = laid(ring, corners_of(needed, needed), 0, 0);
  const PieceAsCut piece =
      read_from(with_corners(needed, strayed_to(ring, needed)), judged.piece, needed);
  const double sd = judged.scale.sd;
  return figures_of(piece, *judged.needed, cut_shape(piece, *judged.needed, sd), sd);
}

double changes_ends(const Judged& judged, const Trim& trim) {
  const Corners before = corners_as_cut(judged), after = without(before, trim);
  const auto length = [](const Corners& ring, int edge) {
    return norm(ring[(edge + 1) % 4] - ring[edge]);
  };
  double most = 0;
  for (const int edge : {upright(trim.side) ? 1 : 0, upright(trim.side) ? 3 : 2})
    most = std::max(most, std::abs(length(after, edge) - length(before, edge)));
  return most;
}

std::vector<std::vector<Trim>> layings(const Judged& judged) {
  const Polygon& outline = judged.needed->outline;
  const Corners cut = corners_as_cut(judged), needed = corners_of(outline, outline);
  std::vector<std::vector<Trim>> ways;
  if (!four_corners(cut)) return ways;
  for (int edge = 0; edge < 4; ++edge)
    for (const int corner : {edge, (edge + 1) % 4}) {
      const int beside = corner == edge ? edge + 3 : edge + 1;
      if (wild_at(judged, edge) + wild_at(judged, beside) > 0) continue;
      ways.push_back(trims_for(judged, cut, laid(needed, cut, edge, corner)));
    }
  return ways;
}

}  // namespace nook

// Edges by the side they face most, and how far one end of each lies in from the blank.
#include "shop/cut_slants.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/length.h"
#include "design/side.h"
#include "solid/simplified.h"

namespace nook {
namespace {

constexpr double kInLine = 1;    // mm that a point may stand off the line of its neighbors. Chosen
constexpr double kSlant = 0.79;  // mm, 1/32 in: an edge that runs off by less is square. Chosen

// An edge from its lower (left) end to its upper (right) one, and the side that it faces most.
struct FacingEdge {
  EdgeSide side;
  Vec2 first, last;

  Vec2 run() const { return last - first; }
  double off() const { return std::abs(upright(side) ? run().x : run().y); }
};

// `rise`: how much an edge rises at least that faces left or right.
FacingEdge facing(Vec2 a, Vec2 b, double rise) {
  if (std::abs(b.y - a.y) >= rise)
    return b.y > a.y ? FacingEdge{EdgeSide::right, a, b} : FacingEdge{EdgeSide::left, b, a};
  return b.x > a.x ? FacingEdge{EdgeSide::bottom, a, b} : FacingEdge{EdgeSide::top, b, a};
}

// The ends of a stick are what crosses it, however slanted.
std::vector<FacingEdge> edges_of(const Polygon& outline, bool stick) {
  const Box2 box = box_of(outline);
  std::vector<FacingEdge> edges;
  for (size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i], b = outline[(i + 1) % outline.size()];
    edges.push_back(facing(a, b, stick ? (box.high.y - box.low.y) / 2 : std::abs(b.x - a.x)));
  }
  return edges;
}

bool one_a_side(const std::vector<FacingEdge>& edges) {
  std::array<int, 4> count{};
  for (const FacingEdge& edge : edges) ++count[static_cast<size_t>(edge.side)];
  return std::all_of(count.begin(), count.end(), [](int n) { return n < 2; });
}

// Cut to the room in the shop: told as a taper or a scribe.
bool told_apart(const CutInput& input, const CutPiece& cut, const NeededPiece& needed,
                EdgeSide side) {
  return std::any_of(
      input.design.contacts.begin(), input.design.contacts.end(), [&](const Contact& contact) {
        return is_forecut(contact) &&
               (contact.part == cut.names.front() || contact.part == needed.drawn->name) &&
               side_meant(needed.drawn->outline, contact.edge) == side;
      });
}

CutSlant slant_of(const FacingEdge& edge) {
  const Vec2 run = edge.run();
  const bool second = edge.side == EdgeSide::right || edge.side == EdgeSide::top;
  const double out = upright(edge.side) ? run.x : run.y;  // its last end against its first
  return {edge.side, edge.off(), second ? out < 0 : out > 0,
          in_degrees({std::atan2(edge.off(), std::abs(upright(edge.side) ? run.y : run.x))})};
}

}  // namespace

void add_slants(CutPiece& cut, const CutInput& input, const NeededPiece& needed,
                const Polygon& blank) {
  const Polygon outline = simplified(blank, kInLine);
  const std::vector<FacingEdge> edges = edges_of(outline, cut.stick);
  std::vector<FacingEdge> slanted;
  for (const FacingEdge& edge : edges)
    if (edge.off() > kSlant && !told_apart(input, cut, needed, edge.side)) slanted.push_back(edge);
  if (outline.size() <= 4 && slanted.empty()) return;
  for (const Vec2 p : outline) cut.contour.push_back(p - cut.corner);
  if (!one_a_side(edges)) return;
  for (const FacingEdge& edge : edges) cut.sides[static_cast<size_t>(edge.side)] = norm(edge.run());
  for (const FacingEdge& edge : slanted) cut.slants.push_back(slant_of(edge));
}

}  // namespace nook

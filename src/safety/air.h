// The air that shadows leave in a plane: how far it is to the nearest of them.
#pragma once

#include <vector>

#include "safety/bins.h"
#include "safety/sight.h"
#include "solid/polygon.h"

namespace nook::safe {

/// The nearest spot of a shadow; distance 0 inside one.
struct Touch {
  double distance = 0;
  Vec2 at;
  Owner owner;
  Vec2 normal;  // out of the edge it lies on; at a corner, of the edge that faces p more
};

/// Outlines run anticlockwise and holes clockwise here: the air is on the right of every edge.
class Air {
 public:
  explicit Air(std::vector<Shadow> shadows);

  const std::vector<Shadow>& shadows() const { return shadows_; }
  /// Infinitely far where there are no shadows.
  Touch nearest(Vec2 p) const;
  /// The same where it is within `reach` of p, sooner; else infinitely far.
  Touch nearest(Vec2 p, double reach) const;
  /// The nearest spot of each owner within `reach` of p, nearest first.
  std::vector<Touch> within(Vec2 p, double reach) const;
  /// The nearest spot of every edge within `reach` of p.
  std::vector<Vec2> rim(Vec2 p, double reach) const;
  /// Only the shadows within `reach` of p: the same distances near there, sooner.
  Air near(Vec2 p, double reach) const;

 private:
  struct Edge {
    Vec2 a, d;
    double inverse;  // of the squared length; 0 where a and b are one point
    Vec2 nearest(Vec2 p) const;
  };
  struct Run {
    int from, to;  // edges
    Box2 box;
  };
  struct Rings {
    std::vector<Edge> edges;  // of outline and holes
    std::vector<Run> runs;    // a few edges in a row
    Box2 box;
  };
  static std::vector<Run> runs_of(const std::vector<Edge>& edges);
  struct Best;
  static void look(const Rings& rings, Vec2 p, Best& best);
  static void look(const Edge& edge, Vec2 p, Best& best);
  Touch touch(const Best& best, Vec2 p) const;
  Touch nearest_of(const std::vector<int>& which, Vec2 p, double reach) const;

  std::vector<Shadow> shadows_;
  std::vector<Rings> rings_;  // of each shadow
  Bins bins_;
};

}  // namespace nook::safe

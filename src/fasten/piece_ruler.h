// Measuring on the bench: from a piece's square end and from its upper edge, as it hangs on the
// wall.
#pragma once

#include <string>

#include "fasten/face_on_wall.h"

namespace nook {

/// Places on a face counted from the end nearest to a room corner and from the upper edge.
class PieceRuler {
 public:
  PieceRuler(const Piece& piece, const FaceOnWall& face);

  /// The point of the face `from_end` and `from_edge` away, piece frame u, v.
  Vec2 at(double from_end, double from_edge) const;
  double from_end(Vec2 uv) const;
  double from_edge(Vec2 uv) const;
  /// In the piece frame: "left", "right", "top", "bottom".
  const std::string& end() const { return end_; }
  const std::string& edge() const { return edge_; }
  /// Extents of the outline along the wall and up it, mm.
  double length() const { return length_.to - length_.from; }
  double height() const { return height_.to - height_.from; }

 private:
  struct Range {
    double from = 0, to = 0;
  };
  bool level_;
  Range length_, height_;      // of the level and the upright direction
  bool end_high_, edge_high_;  // counted from the far side of the range
  std::string end_, edge_;
};

}  // namespace nook

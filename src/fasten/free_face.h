// Where a piece's face is free to take a screw: its wood less joints, pockets, edges and ends.
#pragma once

#include "fasten/section.h"
#include "fasten/spacing.h"

namespace nook {

/// Piece frame u, v.
class FreeFace {
 public:
  /// `blocked` is taken out of the piece's outline and cutouts by exact Booleans.
  FreeFace(const Piece& piece, const Design& design, const Regions& blocked,
           const Distances& distances);

  /// The same for screws that keep other distances.
  FreeFace with(const Distances& distances) const;

  /// Whether a screw may stand at `uv`.
  bool free(Vec2 uv) const;
  /// Distance along the grain to the nearest end, mm; infinite where the piece has no grain to
  /// split.
  double end_distance(Vec2 uv) const;
  const Regions& wood() const { return wood_; }

 private:
  Regions wood_;
  Distances distances_;
  bool has_grain_ = false;
  Vec2 grain_{1, 0};
};

}  // namespace nook

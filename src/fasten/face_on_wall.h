// A piece's face lying on a wall: how a point of the face reads on the wall, and what is between.
#pragma once

#include <optional>
#include <string>

#include "design/piece.h"
#include "fasten/wall_frame.h"

namespace nook {

/// Frame: face coordinates are the piece's u, v; wall coordinates (a, z) as in WallFrame.
class FaceOnWall {
 public:
  FaceOnWall(const Frame& frame, double w, Vec3 into, const WallFrame& wall);

  Vec2 wall_from_face(Vec2 uv) const;
  Vec2 face_from_wall(Vec2 az) const;
  /// Air between the face and the wallboard, mm; 0 where they touch.
  double shim(Vec2 uv) const;
  /// Base-line distance of the screw's axis `depth` beyond the face.
  double axis(Vec2 uv, double depth) const;
  /// Whether u runs along the wall (a ledger), else v does (an upright).
  bool level() const { return level_; }
  /// +1 where the face's level direction runs with the base line.
  int along_sign() const { return along_sign_; }
  /// +1 where the face's upright direction runs up.
  int up_sign() const { return up_sign_; }
  bool is_back() const { return w_ == 0; }
  const WallFrame& wall() const { return wall_; }

 private:
  Frame frame_;
  double w_;
  Vec3 into_;
  WallFrame wall_;
  Vec2 origin_, du_, dv_;  // (a, z) of the face's corner, and of its two directions
  bool level_ = true;
  int along_sign_ = 1, up_sign_ = 1;
};

/// The face of `piece` that lies on the wall; none where no face is within 30 degrees of it or the
/// one asked for is turned away.
std::optional<FaceOnWall> face_on(const Piece& piece, const Frame& frame,
                                  std::optional<PieceFace> asked, const WallFrame& wall);

}  // namespace nook

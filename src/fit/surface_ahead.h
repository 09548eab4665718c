// What the feelers of one piece meet of one surface; what they share is worked out once.
#pragma once

#include <optional>

#include "fit/ray.h"

namespace nook {

/// A wall, floor or ceiling of one room as feelers of a piece that stands at `frame` see it.
/// Quickest where feelers that look the same way come one after the other. View and fields must
/// outlive it.
class SurfaceAhead {
 public:
  SurfaceAhead(const SiteView& view, const SurfaceField& fields, Surface surface,
               const Frame& frame);

  /// The surface itself along the ray. Requires: a feeler with a spot.
  Hit surface(const Feeler& feeler) {
    turn_to(feeler);
    return surface_from(start_of(feeler));
  }
  /// The first of the blocks that it is notched for; nothing if it meets none within kReach.
  std::optional<Hit> notched(const Feeler& feeler);
  /// Whichever comes first; nothing beyond kReach.
  std::optional<Hit> first(const Feeler& feeler);

 private:
  // One coordinate q of the room along the ray: q(p) = g . p + const.
  struct Along {
    double start = 0;  // q at the ray's start
    Vec3 g;
  };
  // The stretch of the ray within low <= q <= high and which bound it comes in by.
  struct Slab {
    double from, to;
    double bound;
    Along q;
  };
  struct Start {
    Vec3 at;
    double along = 0;  // the wall
    double out = 0;    // of the surface
  };
  void turn_to(const Feeler& feeler);
  Start start_of(const Feeler& feeler) const;
  Hit surface_from(const Start& start) const;
  std::optional<Hit> block_from(const Start& start, const std::vector<int>& blocks,
                                double behind) const;
  std::optional<Hit> one_block(const Start& start, const BlockHere& here, double floor,
                               double behind) const;
  Slab slab(const Along& q, double low, double high) const;

  const SiteView& view_;
  const SurfaceField& fields_;
  Surface surface_;
  Frame frame_;
  const WallShape* wall_ = nullptr;
  const LevelSurface* level_ = nullptr;
  Vec3 g_;          // of the distance out of the surface
  Vec3 asked_way_;  // of the last feeler, in the piece's frame
  Vec3 way_;        // and in the room
  double rate_ = 0;
  Vec3 slope_;
};

/// The gap along a ray with the field of one spot, for finding the spot itself.
double rough_gap(const RoomShape& room, Surface surface, Vec2 spot, const Ray& ray);

}  // namespace nook

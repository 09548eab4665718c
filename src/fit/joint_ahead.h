// What the feelers of one joint meet where its piece stands.
#pragma once

#include "fit/joint.h"
#include "fit/surface_ahead.h"

namespace nook {

/// A joint in one room, its piece at `frame` and what it may meet at `parts`. Whatever it is given
/// must outlive it.
class JointAhead {
 public:
  JointAhead(const SiteView& view, const SurfaceField& fields, const Joint& joint,
             const Frame& frame, const std::vector<Standing>& parts)
      : view_(view),
        joint_(joint),
        frame_(frame),
        parts_(parts),
        surface_(view, fields, joint.meets, frame) {}

  /// Nothing where the feeler meets nothing near.
  std::optional<Hit> hit(int feeler);

 private:
  const SiteView& view_;
  const Joint& joint_;
  const Frame& frame_;
  const std::vector<Standing>& parts_;
  SurfaceAhead surface_;
};

}  // namespace nook

// What building a joint needs; shared by edges and faces.
#pragma once

#include "fit/joint.h"

namespace nook {

struct JointBuilder {
  const Scene& scene;
  Site& site;
  const SiteView& view;              // of the adjusted room
  const std::vector<Frame>& frames;  // of all pieces
  const Frame& frame;                // of the joint's own piece
};

/// Mm inside the end of a block where it is looked at too: it is still met there in a room where it
/// ends a little lower. Chosen.
inline constexpr double kInsideBlock = 4;

constexpr Vec3 at_face(Vec2 uv, double w) {
  return {uv.x, uv.y, w};
}

void build_edge(const JointBuilder& builder, Joint& joint);
void build_face(const JointBuilder& builder, Joint& joint);

}  // namespace nook

// A surface with its blocks, or the nearest part; in a draw the face of it that was met before.
#include "fit/joint_ahead.h"

namespace nook {

std::optional<Hit> JointAhead::hit(int feeler) {
  const Feeler& f = joint_.feelers[feeler];
  if (joint_.meets.kind != Surface::Kind::part)
    return f.spot < 0 ? std::nullopt : surface_.first(f);
  const Ray ray = ray_of(f, frame_);
  return view_.quick() ? face_hit(parts_, f.face, ray) : part_hit(parts_, ray);
}

}  // namespace nook

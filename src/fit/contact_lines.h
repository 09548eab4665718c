// The gaps of a contact as lines and fields, each with how surely it is known.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// One joint in all rooms.
struct JointTrials {
  const Trials& trials;
  const Joint& joint;
  int index;

  JointTrials(const Trials& all, int joint_index)
      : trials(all), joint(all.layout.joints[joint_index]), index(joint_index) {}
  const JointGaps& gaps(int room) const { return trials.gaps[room][index]; }
  ShowFace show() const { return trials.layout.scene.pieces[joint.piece].drawn->show; }
  /// In the draws without `cut` and `wood` where the contact is not made by cutting.
  JointState state(int room) const;
};

/// Fills `line`, `front`, `back` (sorted), `field` and `bevel_mm`; of a face the line is its worst
/// row.
void fill_lines(const JointTrials& trials, ContactFit& found);

}  // namespace nook

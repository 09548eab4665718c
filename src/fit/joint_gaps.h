// The gaps of one joint in one room, and what its way of fitting leaves of them.
#pragma once

#include <vector>

#include "fit/place.h"
#include "fit/straight_cut.h"

namespace nook {

/// Gaps by feeler (back, front, back, front, ...); not a number where nothing was asked or met.
using JointGaps = std::vector<double>;

/// In a quick view only coarse spots are asked.
JointGaps joint_gaps(const Layout& layout, const SiteView& view, int joint,
                     const std::vector<Frame>& frames);

/// The worse of the faces that show, at one spot; not a number where neither was met.
double shown_gap(const JointGaps& gaps, const Joint& joint, ShowFace show, int spot);

/// A joint's gaps in short.
struct JointState {
  bool met = false;
  double least = 0, most = 0;  // over the faces that show
  double deepest = 0;          // least over all faces
  StraightCut cut;             // of the shown gaps over t
  double wood = 0;             // how far the piece stands off its drawn place
};
JointState state_of(const Layout& layout, const Joint& joint, const JointGaps& gaps);
/// The same without `cut`.
JointState brief_state_of(const Layout& layout, const Joint& joint, const JointGaps& gaps);

/// How far the piece stands away from the surface against where it was drawn, turned about the
/// corner as it now is, least over the edge, and what it overlaps: wood that may be cut.
double wood_of(const Layout& layout, const Joint& joint, const Placing& placing, double deepest);

/// The widest gap that a contact accepts, what is usual if it does not say: 1/8 in, caulk 1/4,
/// filler 1/16 beside it, shim 1/2, trim its width less 1/4, at the floor 3/8 (common practice, no
/// source; chosen where the trade differs).
double allowed_gap(const Contact& how);

/// What a contact by = "clear" may lack, mm: 1/64 in, half of the finest step that is printed.
/// Chosen.
inline constexpr double kClearTolerance = kMillimetresPerInch / 64;

/// What is left when the contact is made: the least and the greatest gap.
/// `room_to_move`: how far the piece may come closer (scribe, taper: not more than the wood).
struct Left {
  double least = 0, most = 0;
};
Left left_by(const Contact& how, const JointState& state, double room_to_move);

}  // namespace nook

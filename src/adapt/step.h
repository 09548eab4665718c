// Work on a design, told relative to what is there: it can be done again, and in another size.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "adapt/revision.h"

namespace nook {

/// All parts of a group moved by `mm` along `way` (unit, nominal room frame).
struct GroupMoved {
  std::string group;
  Vec3 way;
  double mm = 0;
};
/// One part moved, nominal room frame.
struct PartMoved {
  int part = 0;
  Vec3 by;
};
/// A part's run of edges set out by `ends` at its two ends, in where negative. `side` in words;
/// `end`: it is one of lumber, which has ends and no left and right sides.
struct RunSetOut {
  int part = 0;
  EdgeRun run;
  Vec2 ends;
  std::string side;
  bool end = false;
};
/// A contact that meets in another way.
struct ContactRefitted {
  int contact = 0;
  Fitting by = Fitting::butt;
  bool notch = false;
};
/// An upright part longer at its foot.
struct FootLengthened {
  int part = 0;
  double mm = 0;
};
/// The copies of a repeated part `mm` apart, straight up.
struct CopiesRespaced {
  int part = 0;
  double mm = 0;
};
using Step =
    std::variant<GroupMoved, PartMoved, RunSetOut, ContactRefitted, FootLengthened, CopiesRespaced>;

/// What the steps set in the text. Requires: no two of them change the same part's shape or place.
std::vector<Edit> edits_of(const Design& design, const std::vector<Step>& steps);
/// The draft with the steps done; or why it is no sound design then.
tl::expected<Revision, std::string> redrawn(const Revision& draft, const std::vector<Step>& steps);

/// The size of a move or a straight cut, mm; 0 for what is no less work where it is smaller: a
/// taper follows what it meets.
double size_of(const Step& step);
/// A sized step brought nearer to nothing by `mm`, never past it; another one is left as it is.
Step lessened(const Step& step, double mm);

}  // namespace nook

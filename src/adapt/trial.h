// A design under trial: fitted in the adjusted room alone, or in every draw.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "adapt/adapt.h"
#include "adapt/candidate.h"
#include "adapt/flaw.h"

namespace nook {

/// A design as it fits in all draws.
struct Trial {
  Revision draft;
  std::vector<Flaw> findings;  // all of them
  std::vector<Flaw> flaws;     // those that are not `fits`, worst first
  FitAnswer answer;            // points into `draft`
};

/// The first piece that stands further from where it stood in `before` than any change may set it;
/// null: none. The wishes of a group may let it go in somewhere else altogether.
const Piece* strayed(const FitAnswer& before, const FitAnswer& next);

/// Whether no piece strayed and every finding of `next` is as good as in `wanted`: its verdict, its
/// chance to 1 in 50, and where it does not fit, by how much to 1/64 in (both chosen). The joint
/// verdict too.
bool as_good(const Trial& next, const Trial& wanted);

/// Fits designs for one room and compares them.
class Bench {
 public:
  explicit Bench(const AdaptInput& input) : input_(input) {}

  /// The findings in the adjusted room alone. What was fitted once is not fitted again.
  const std::vector<Flaw>& roughly(const Revision& draft) const;
  Trial fully(Revision draft) const;
  Workbench workbench(const Trial& trial) const;

 private:
  Rounding rounding(const Revision& draft) const;
  std::vector<Flaw> all_findings(const Revision& draft, const FitAnswer& answer) const;
  FitAnswer fit_of(const Revision& draft, const std::vector<RoomShape>& draws) const;

  const AdaptInput& input_;
  mutable std::map<std::string, std::vector<Flaw>> rough_;  // by the design's text
  mutable int tried_ = 0;
};

}  // namespace nook

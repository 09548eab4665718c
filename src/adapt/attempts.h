// Candidates tried against one flaw of the design as it is now, and what stands against them.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "adapt/progress.h"

namespace nook {

/// What came of a candidate against a flaw.
enum class Outcome { no_help, lessens, settles, spoils };

class Attempts {
 public:
  Attempts(const AdaptInput& input, Progress& progress, const Bench& bench)
      : sure_(input.sure), progress_(progress), bench_(bench) {}

  /// A first look in the adjusted room; a flaw that is none there cannot be looked at.
  Outcome looked(const Flaw& flaw, const Candidate& candidate);
  /// A candidate in every draw; what settles the flaw, or lessens it most, is remembered.
  Outcome tried(const Flaw& flaw, const Candidate& candidate);
  /// Whether the last one tried made its flaw likelier to hold.
  bool better() const { return better_; }
  /// Whether what was tried since the last change settles its flaw.
  bool settles() const { return settling_.has_value(); }

  /// Whether the work, in its least, a middle and its largest size, changes the finding at all in
  /// the adjusted room.
  bool touches(const Flaw& flaw, const Ladder& ladder);
  /// Whether a flaw is gone in the adjusted room alone with nothing else spoiled there.
  bool gone_roughly(const Flaw& flaw, const Candidate& candidate);

  /// Makes the change that settles the last flaw; the one that lessens one most, where that is at
  /// least so likely to hold then. False where there is none.
  bool keep_settling() { return kept(settling_); }
  bool keep_lessening(double likely);
  /// Makes a change after which everything holds at once, with each finding as good as it is.
  bool keep_joining(const Flaw& finding, const Candidate& candidate);

  /// Forgets what was tried: against another design it may come out otherwise.
  void forget();
  /// What stands against a flaw that does not fit.
  Contradiction against(const Flaw& flaw) const;

 private:
  struct Kept {
    Trial trial;
    Candidate candidate;
    double chance = 1;  // of the flaw it was tried against
  };

  const Trial& now() const { return progress_.now; }
  Outcome outcome(const Flaw& flaw, const std::vector<Flaw>& before, const std::vector<Flaw>& after,
                  const Candidate& candidate);
  Outcome judged(const Flaw& flaw, const Trial& next, const Candidate& candidate);
  std::optional<Revision> drafted(const Flaw& flaw, const Candidate& candidate);
  bool kept(std::optional<Kept>& best);
  void set_against(const Flaw& flaw, Contradiction next);

  double sure_;
  Progress& progress_;
  const Bench& bench_;
  std::map<std::string, Contradiction> against_;  // by the flaw's key
  std::optional<Kept> settling_, lessening_;
  bool better_ = false;
};

}  // namespace nook

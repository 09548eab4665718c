// How far a search has come: the changes made so far, and the design that they make.
#pragma once

#include <optional>
#include <vector>

#include "adapt/candidate.h"
#include "adapt/trial.h"

namespace nook {

struct Progress {
  Revision first;               // as drawn
  std::vector<Candidate> made;  // one after the other, from `first` to `now`
  Trial now;
};

/// Candidates done one after the other; nothing where the design is no sound one on the way.
std::optional<Revision> redone(const Revision& first, const std::vector<Candidate>& made);

/// One more candidate made, and what it led to. It becomes one with an earlier one that did the
/// same work.
void make(Progress& progress, Candidate candidate, Trial next);

/// Takes back what is not needed: each change tried without, then smaller, mark by mark; `now` is
/// as good afterwards in every finding. True where something was taken back.
bool ease(const Bench& bench, Progress& progress);

}  // namespace nook

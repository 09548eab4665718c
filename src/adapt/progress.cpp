// Changes are told relative to what is there, so that they can be done anew from the first design.
#include "adapt/progress.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

// One step in place of two that do the same work; nothing where they do not.
std::optional<Step> joined(const Step& a, const Step& b) {
  const auto *moved = std::get_if<GroupMoved>(&a), *again = std::get_if<GroupMoved>(&b);
  if (moved && again && moved->group == again->group && moved->way.x == again->way.x &&
      moved->way.y == again->way.y && moved->way.z == again->way.z)
    return GroupMoved{moved->group, moved->way, moved->mm + again->mm};
  const auto *cut = std::get_if<RunSetOut>(&a), *more = std::get_if<RunSetOut>(&b);
  if (cut && more && cut->part == more->part && cut->run.first == more->run.first &&
      cut->run.last == more->run.last && cut->side == more->side)
    return RunSetOut{cut->part, cut->run, cut->ends + more->ends, cut->side, cut->end};
  return std::nullopt;
}

bool joins(Candidate& made, const Candidate& next) {
  if (made.kind != next.kind || made.steps.size() != 1 || next.steps.size() != 1) return false;
  const auto both = joined(made.steps.front(), next.steps.front());
  if (both) made.steps.front() = *both;
  return both.has_value();
}

}  // namespace

std::optional<Revision> redone(const Revision& first, const std::vector<Candidate>& made) {
  Revision draft = first;
  for (const Candidate& candidate : made) {
    auto next = redrawn(draft, candidate.steps);
    if (!next) return std::nullopt;
    draft = std::move(*next);
  }
  return draft;
}

void make(Progress& progress, Candidate candidate, Trial next) {
  progress.now = std::move(next);
  for (std::size_t k = 0; k < progress.made.size(); ++k) {
    std::vector<Candidate> joint = progress.made;
    if (!joins(joint[k], candidate)) continue;
    const auto draft = redone(progress.first, joint);
    if (!draft || draft->text != progress.now.draft.text) continue;
    progress.made = std::move(joint);
    return;
  }
  progress.made.push_back(std::move(candidate));
}

}  // namespace nook

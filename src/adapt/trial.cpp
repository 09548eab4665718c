// Two fits of one design: a cheap one to turn candidates away by, and the whole one.
#include "adapt/trial.h"

#include <algorithm>
#include <utility>

#include "adapt/rungs.h"
#include "fit/fit.h"

namespace nook {

Rounding Bench::rounding(const Revision& draft) const {
  return usual_rounding(draft.design->units);
}

std::vector<Flaw> Bench::all_findings(const Revision& draft, const FitAnswer& answer) const {
  std::vector<Flaw> findings = findings_of(answer, input_.survey.said());
  for (Flaw& rungs : rung_findings(*draft.design, answer, input_.survey.said()))
    findings.push_back(std::move(rungs));
  return findings;
}

FitAnswer Bench::fit_of(const Revision& draft, const std::vector<RoomShape>& draws) const {
  if (input_.on_trial) input_.on_trial(++tried_);
  return fit(
      {input_.survey, *draft.design, input_.room, draws, input_.sure, input_.complete, false});
}

const std::vector<Flaw>& Bench::roughly(const Revision& draft) const {
  const auto [at, fresh] = rough_.try_emplace(draft.text);
  if (fresh) at->second = all_findings(draft, fit_of(draft, {}));
  return at->second;
}

Trial Bench::fully(Revision draft) const {
  Trial trial{std::move(draft), {}, {}, {}};
  trial.answer = fit_of(trial.draft, input_.draws);
  trial.findings = all_findings(trial.draft, trial.answer);
  trial.flaws = flaws_among(trial.findings);
  return trial;
}

Workbench Bench::workbench(const Trial& trial) const {
  return {input_.survey, *trial.draft.design, trial.answer, rounding(trial.draft)};
}

const Piece* strayed(const FitAnswer& before, const FitAnswer& next) {
  constexpr double kStray = 2 * kLargestChange;  // its own change, and what that lets it do. Chosen
  for (std::size_t p = 0; p < std::min(before.frames.size(), next.frames.size()); ++p)
    if (norm(next.frames[p].at - before.frames[p].at) > kStray) return &next.pieces[p];
  return nullptr;
}

bool as_good(const Trial& next, const Trial& wanted) {
  if (next.answer.verdict > wanted.answer.verdict) return false;
  if (strayed(wanted.answer, next.answer)) return false;
  return std::all_of(next.flaws.begin(), next.flaws.end(), [&](const Flaw& flaw) {
    const Flaw* old = flaw_named(wanted.flaws, flaw.key);
    return old && flaw.verdict <= old->verdict && flaw.chance >= old->chance - kSameChance &&
           (flaw.verdict != Verdict::does_not_fit || flaw.over_mm <= old->over_mm + kMarginal);
  });
}

}  // namespace nook

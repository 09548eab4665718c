// Two fits of one design: a cheap one to turn candidates away by, and the whole one.
#include "adapt/trial.h"

#include <utility>

#include "adapt/rungs.h"
#include "fit/fit.h"

namespace nook {

Rounding Bench::rounding(const Draft& draft) const {
  return usual_rounding(draft.design->units);
}

std::vector<Flaw> Bench::all_findings(const Draft& draft, const FitAnswer& answer) const {
  std::vector<Flaw> findings = findings_of(answer, rounding(draft));
  for (Flaw& rungs : rung_findings(*draft.design, answer, rounding(draft)))
    findings.push_back(std::move(rungs));
  return findings;
}

FitAnswer Bench::fit_of(const Draft& draft, const std::vector<RoomShape>& draws) const {
  return fit({input_.survey, *draft.design, input_.room, draws, input_.sure, input_.complete});
}

std::vector<Flaw> Bench::roughly(const Draft& draft) const {
  return all_findings(draft, fit_of(draft, {}));
}

Trial Bench::fully(Draft draft) const {
  Trial trial{std::move(draft), {}, {}, {}};
  trial.answer = fit_of(trial.draft, input_.draws);
  trial.findings = all_findings(trial.draft, trial.answer);
  trial.flaws = flaws_among(trial.findings);
  return trial;
}

Workbench Bench::workbench(const Trial& trial) const {
  return {input_.survey, *trial.draft.design, trial.answer, rounding(trial.draft)};
}

}  // namespace nook

// A search by trying: each candidate is written into the text, read, and fitted again.
#include "adapt/adapt.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "adapt/attempts.h"
#include "adapt/rungs.h"
#include "adapt/wording.h"
#include "base/invariant.h"
#include "job/job.h"

namespace nook {
namespace {

// Each change takes a flaw away or makes it a lesser one, so the search ends; this many rounds are
// more than any design has flaws to take away (chosen).
constexpr int kMostRounds = 200;
// A finding at least this likely to hold is not cut for: one more reading is less work (chosen).
constexpr double kLikely = 0.5;
// Of findings that fit each by itself, so many are made likelier, in so many sizes (chosen).
constexpr std::size_t kDoubtful = 3, kFewSteps = 4;

bool is_cutting(Work work) {
  return work >= Work::taper;
}

std::vector<Flaw> least_likely(std::vector<Flaw> findings) {
  std::erase_if(findings, [](const Flaw& finding) { return finding.chance >= 1; });
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Flaw& a, const Flaw& b) { return a.chance < b.chance; });
  if (findings.size() > kDoubtful) findings.resize(kDoubtful);
  return findings;
}

class Search {
 public:
  explicit Search(const AdaptInput& input)
      : input_(input), bench_(input), attempts_(input, progress_, bench_) {}

  AdaptAnswer run() {
    auto design = parse_design(input_.text, "design.toml");
    require(design.has_value(), "the design to adapt is sound");
    progress_.first = {input_.text, std::make_shared<const Design>(std::move(*design))};
    progress_.now = bench_.fully(progress_.first);
    for (int round = 0; input_.complete && round < kMostRounds; ++round)
      if (!sweep() && !found_any() && !raised() && !ease(bench_, progress_)) break;
    return answer();
  }

 private:
  const Trial& now() const { return progress_.now; }

  // The first step from the likely one on that the adjusted room does not turn away, or where that
  // one spoils something, the next smaller one; -1: none.
  int first_worth(const Flaw& flaw, const Ladder& ladder) {
    bool spoiled = false;
    const auto worth = [&](int i) {
      const Outcome seen = attempts_.looked(flaw, ladder.steps[i]);
      if (seen == Outcome::spoils) spoiled = true;
      return seen == Outcome::settles || seen == Outcome::lessens;
    };
    int low = ladder.likely, high = static_cast<int>(ladder.steps.size()) - 1;
    if (worth(low)) return low;
    if (spoiled) {
      while (low > 0 && !worth(--low)) {
      }
      return worth(low) ? low : -1;
    }
    if (low == high || !worth(high)) return -1;
    while (high - low > 1) (worth((low + high) / 2) ? high : low) = (low + high) / 2;
    return high;
  }

  // The least size that settles the flaw: up from the first one worth it, then down again; down at
  // once where that one spoils something.
  bool climbed(const Flaw& flaw, const Ladder& ladder) {
    if (ladder.steps.empty()) return false;
    const int last = static_cast<int>(ladder.steps.size()) - 1;
    int at = first_worth(flaw, ladder), failed = -1;
    if (at < 0) return false;
    Outcome came = attempts_.tried(flaw, ladder.steps[at]);
    while (came == Outcome::spoils && attempts_.better() && at > 0)
      came = attempts_.tried(flaw, ladder.steps[--at]);
    for (int stride = 1; came != Outcome::settles; stride *= 2) {
      if (came == Outcome::spoils || at == last || !attempts_.better()) return false;
      failed = at;
      at = std::min(last, at + stride);
      came = attempts_.tried(flaw, ladder.steps[at]);
    }
    while (at - 1 > failed && at > 0 &&
           attempts_.tried(flaw, ladder.steps[at - 1]) == Outcome::settles)
      --at;
    return attempts_.settles();
  }

  // One step after the other, the least first.
  bool found_among(const Flaw& flaw, const Ladder& ladder) {
    if (!attempts_.touches(flaw, ladder)) return false;
    return std::any_of(ladder.steps.begin(), ladder.steps.end(), [&](const Candidate& step) {
      const Outcome seen = attempts_.looked(flaw, step);
      const bool worth = seen == Outcome::settles || seen == Outcome::lessens;
      return (worth || attempts_.gone_roughly(flaw, step)) &&
             attempts_.tried(flaw, step) == Outcome::settles;
    });
  }

  // Tries one kind of work against a flaw.
  bool worked(const Flaw& flaw, Work work) {
    const auto ladders = candidates(bench_.workbench(now()), flaw, work);
    return std::any_of(ladders.begin(), ladders.end(), [&](const Ladder& ladder) {
      return work == Work::any ? found_among(flaw, ladder) : climbed(flaw, ladder);
    });
  }

  // One kind of work against all flaws. What is made likely to hold is settled as far as wood goes.
  bool work_on_all(Work work) {
    bool changed = false;
    for (const Flaw& old : std::vector<Flaw>(now().flaws)) {
      const Flaw* found = flaw_named(now().flaws, old.key);
      if (!found || (is_cutting(work) && found->chance >= kLikely)) continue;
      const Flaw flaw = *found;
      if ((worked(flaw, work) && attempts_.keep_settling()) || attempts_.keep_lessening(kLikely))
        changed = true;
    }
    return changed;
  }

  // The cheapest work that helps; after it the cheapest may help again. True where something
  // changed.
  bool sweep() {
    attempts_.forget();
    for (const Work work : kWorks)
      if (work_on_all(work)) return true;
    return attempts_.keep_lessening(0);
  }

  // A wish is said to contradict others only after all that may be done to its pieces was tried.
  bool found_any() {
    for (const Flaw& flaw : std::vector<Flaw>(now().flaws))
      if (flaw.verdict == Verdict::does_not_fit &&
          ((worked(flaw, Work::any) && attempts_.keep_settling()) || attempts_.keep_lessening(0)))
        return true;
    return false;
  }

  // Every finding fits, but not all at once surely enough: little work on the least likely ones.
  bool raised() {
    if (!now().flaws.empty() || now().answer.verdict == Verdict::fits) return false;
    const std::vector<Flaw> doubtful = least_likely(now().findings);
    for (const Work work : {Work::move, Work::trim, Work::cover})
      for (Flaw finding : doubtful) {
        finding.text += fmt::format(" (with all else in {:.0f} of 100 rooms like this one)",
                                    std::floor(100 * now().answer.chance));
        for (const Ladder& ladder : candidates(bench_.workbench(now()), finding, work))
          for (std::size_t i = 0; i < std::min(kFewSteps, ladder.steps.size()); ++i)
            if (attempts_.keep_joining(finding, ladder.steps[i])) return true;
      }
    return false;
  }

  AdaptAnswer answer() {
    AdaptAnswer done;
    Revision draft = progress_.first;
    for (const Candidate& made : progress_.made) {
      done.changes.push_back(told(made, *draft.design, input_.survey.said()));
      draft = *redrawn(draft, made.steps);
    }
    done.draft = now().draft;
    for (const Flaw& flaw : now().flaws) {
      if (flaw.verdict == Verdict::cannot_tell) done.open.push_back(flaw.text);
      if (flaw.verdict == Verdict::cannot_tell && flaw.kind == Flaw::Kind::rungs)
        done.reading = std::string(kSquashTest);
      if (flaw.verdict == Verdict::does_not_fit)
        done.contradictions.push_back(attempts_.against(flaw));
    }
    done.fit = std::move(progress_.now.answer);
    return done;
  }

  const AdaptInput& input_;
  Bench bench_;
  Progress progress_;
  Attempts attempts_;
};

}  // namespace

AdaptAnswer adapt(const AdaptInput& input) {
  return Search(input).run();
}

}  // namespace nook

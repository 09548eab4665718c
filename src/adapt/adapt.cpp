// A search by trying: each candidate is written into the text, read, and fitted again.
#include "adapt/adapt.h"

#include <map>
#include <optional>
#include <utility>

#include "adapt/candidate.h"
#include "adapt/flaw.h"
#include "base/invariant.h"
#include "fit/fit.h"
#include "job/job.h"

namespace nook {
namespace {

// Each change takes a flaw away or makes it a lesser one, so the search ends; this many are more
// than any design has flaws to take away (chosen).
constexpr int kMostChanges = 200;

// A design as it fits: in the adjusted room alone, and in all draws.
struct Fitted {
  Draft draft;
  std::vector<Flaw> rough;
  std::vector<Flaw> flaws;
  FitAnswer answer;
};

// What came of a candidate against a flaw.
enum class Outcome { no_help, lessens, settles, spoils };

class Search {
 public:
  explicit Search(const AdaptInput& input) : input_(input) {}

  AdaptAnswer run() {
    auto design = parse_design(input_.text, "design.toml");
    require(design.has_value(), "the design to adapt is sound");
    now_ = roughly({input_.text, std::make_shared<const Design>(std::move(*design))});
    fully(now_);
    while (input_.complete && static_cast<int>(changes_.size()) < kMostChanges && change_once()) {
    }
    return answer();
  }

 private:
  Rounding rounding(const Draft& draft) const { return usual_rounding(draft.design->units); }

  FitAnswer fit_of(const Draft& draft, const std::vector<RoomShape>& draws) const {
    return fit({input_.survey, *draft.design, input_.room, draws, input_.sure, input_.complete});
  }

  Fitted roughly(Draft draft) const {
    Fitted fitted{std::move(draft), {}, {}, {}};
    fitted.rough = flaws_of(fit_of(fitted.draft, {}), rounding(fitted.draft));
    return fitted;
  }

  void fully(Fitted& fitted) const {
    fitted.answer = fit_of(fitted.draft, input_.draws);
    fitted.flaws = flaws_of(fitted.answer, rounding(fitted.draft));
  }

  // Whether a flaw is gone or lesser, with nothing else spoiled.
  Outcome outcome(const Flaw& flaw, const std::vector<Flaw>& before,
                  const std::vector<Flaw>& after) {
    const Flaw* left = flaw_named(after, flaw.key);
    if (left && left->verdict >= flaw.verdict) return Outcome::no_help;
    const Flaw* other = worsened(before, after);
    if (!other) return left ? Outcome::lessens : Outcome::settles;
    if (!against_) against_ = contradiction(flaw, other->text, other->over_mm);
    return Outcome::spoils;
  }

  Outcome tried(const Flaw& flaw, const Candidate& candidate) {
    auto draft = redrawn(now_.draft, candidate.edits);
    if (!draft) {
      if (!against_) against_ = Contradiction{flaw.text, draft.error(), 0};
      return Outcome::spoils;
    }
    Fitted next = roughly(std::move(*draft));
    const Outcome rough = outcome(flaw, now_.rough, next.rough);
    if (rough == Outcome::spoils || rough == Outcome::no_help) return rough;
    fully(next);
    Outcome full = outcome(flaw, now_.flaws, next.flaws);
    if (full != Outcome::settles && full != Outcome::lessens) return full;
    if (rank_of(next.flaws) >= rank_of(now_.flaws)) return Outcome::no_help;
    if (full == Outcome::lessens && flaw.verdict != Verdict::does_not_fit) return Outcome::no_help;
    auto& kept = full == Outcome::settles ? settling_ : lessening_;
    if (full == Outcome::settles || !kept) kept = {std::move(next), candidate.change};
    return full;
  }

  // The least size that settles the flaw: too small does not help, too large spoils something.
  bool climbed(const Flaw& flaw, const Ladder& ladder) {
    if (ladder.empty() || stops(tried(flaw, ladder.front())) || ladder.size() == 1)
      return settling_.has_value();
    std::size_t low = 0, high = ladder.size() - 1;  // low does not help, high is more than enough
    if (!stops(tried(flaw, ladder[high]))) return false;
    while (high - low > 1) {
      const std::size_t middle = (low + high) / 2;
      (stops(tried(flaw, ladder[middle])) ? high : low) = middle;
    }
    return settling_.has_value();
  }
  static bool stops(Outcome outcome) {
    return outcome == Outcome::settles || outcome == Outcome::spoils;
  }

  bool improve(const Flaw& flaw) {
    against_.reset(), settling_.reset(), lessening_.reset();
    const auto list =
        candidates({input_.survey, *now_.draft.design, now_.answer, rounding(now_.draft)}, flaw);
    for (const Ladder& ladder : list)
      if (climbed(flaw, ladder)) break;
    auto& best = settling_ ? settling_ : lessening_;
    if (!best) return false;
    now_ = std::move(best->first);
    changes_.push_back(std::move(best->second));
    return true;
  }

  // One walk over the flaws, worst first; each is looked up again, as others may have gone with it.
  bool change_once() {
    const std::size_t before = changes_.size();
    for (const Flaw& old : std::vector<Flaw>(now_.flaws)) {
      const Flaw* found = flaw_named(now_.flaws, old.key);
      const auto failed = failed_at_.find(old.key);
      if (!found || (failed != failed_at_.end() && failed->second == changes_.size())) continue;
      const Flaw flaw = *found;
      if (improve(flaw)) continue;
      failed_at_[flaw.key] = changes_.size();
      stuck_[flaw.key] = against_ ? *against_ : alone(flaw);
    }
    return changes_.size() > before;
  }

  static Contradiction contradiction(const Flaw& flaw, const std::string& against, double by_mm) {
    return {flaw.text, against, by_mm < kNoMeeting ? by_mm : 0};  // 0: not to be measured
  }

  static Contradiction alone(const Flaw& flaw) {
    return contradiction(flaw, "no move, cut or cover that may be made here closes it",
                         flaw.over_mm);
  }

  AdaptAnswer answer() {
    AdaptAnswer done{std::move(now_.draft), std::move(changes_), {}, {}, {}};
    for (const Flaw& flaw : now_.flaws) {
      if (flaw.verdict == Verdict::cannot_tell) done.open.push_back(flaw.text);
      if (flaw.verdict != Verdict::does_not_fit) continue;
      const auto stuck = stuck_.find(flaw.key);
      done.contradictions.push_back(stuck == stuck_.end() ? alone(flaw) : stuck->second);
    }
    done.fit = std::move(now_.answer);
    return done;
  }

  using Kept = std::optional<std::pair<Fitted, Change>>;

  const AdaptInput& input_;
  Fitted now_;
  std::vector<Change> changes_;
  std::map<std::string, Contradiction> stuck_;    // by flaw
  std::map<std::string, std::size_t> failed_at_;  // after how many changes a flaw was left as it is
  std::optional<Contradiction> against_;  // the first thing that stands against the flaw at hand
  Kept settling_, lessening_;             // what the flaw at hand was answered with
};

}  // namespace

AdaptAnswer adapt(const AdaptInput& input) {
  return Search(input).run();
}

}  // namespace nook

// A search by trying: each candidate is written into the text, read, and fitted again.
#include "adapt/adapt.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "adapt/progress.h"
#include "adapt/wording.h"
#include "base/invariant.h"
#include "job/job.h"

namespace nook {
namespace {

// Each change takes a flaw away or makes it a lesser one, so the search ends; this many are more
// than any design has flaws to take away (chosen).
constexpr int kMostChanges = 200;
constexpr double kSame = 1e-6;  // mm; far below what a reading says
// A finding at least this likely to hold is not cut for: one more reading is less work (chosen).
constexpr double kLikely = 0.5;

bool is_cutting(Work work) {
  return work >= Work::taper;
}

class Search {
 public:
  explicit Search(const AdaptInput& input) : input_(input), bench_(input) {}

  AdaptAnswer run() {
    auto design = parse_design(input_.text, "design.toml");
    require(design.has_value(), "the design to adapt is sound");
    progress_.first = {input_.text, std::make_shared<const Design>(std::move(*design))};
    progress_.now = bench_.fully(progress_.first);
    if (input_.complete)
      while (kept_ < kMostChanges && (sweep() || found_any() || eased())) {
      }
    return answer();
  }

 private:
  struct Kept {
    Trial trial;
    Candidate candidate;
    double chance = 1;  // of the flaw it was tried against
  };

  const Trial& now() const { return progress_.now; }

  // Whether a flaw is gone or lesser, with nothing else spoiled.
  Outcome outcome(const Flaw& flaw, const std::vector<Flaw>& before, const std::vector<Flaw>& after,
                  const Candidate& candidate) {
    const Flaw* left = flaw_named(after, flaw.key);
    if (left && left->verdict >= flaw.verdict) return Outcome::no_help;
    const Flaw* other = worsened(before, after);
    if (!other) return left ? Outcome::lessens : Outcome::settles;
    set_against(flaw, {flaw.text, other->text, std::min(other->over_mm, kNoMeeting), candidate.kind,
                       candidate.part});
    return Outcome::spoils;
  }

  // The design that a candidate makes; nothing where it is no sound one.
  std::optional<Draft> drafted(const Flaw& flaw, const Candidate& candidate) {
    auto draft = redrawn(now().draft, edits_of(*now().draft.design, candidate.steps));
    if (draft) return std::move(*draft);
    set_against(flaw, {flaw.text, draft.error(), kNoMeeting, candidate.kind, candidate.part});
    return std::nullopt;
  }

  // A first look in the adjusted room; a flaw that is none there cannot be looked at.
  Outcome looked(const Flaw& flaw, const Candidate& candidate) {
    const auto draft = drafted(flaw, candidate);
    if (!draft) return Outcome::spoils;
    const auto before = flaws_among(foretold(now().findings, now().findings, input_.sure));
    const auto after = flaws_among(foretold(bench_.roughly(*draft), now().findings, input_.sure));
    if (const Flaw* seen = flaw_named(before, flaw.key))
      return outcome(*seen, before, after, candidate);
    return worsened(before, after) ? outcome(flaw, before, after, candidate) : Outcome::settles;
  }

  // A candidate in every draw.
  Outcome tried(const Flaw& flaw, const Candidate& candidate) {
    auto draft = drafted(flaw, candidate);
    if (!draft) return Outcome::spoils;
    Trial next = bench_.fully(std::move(*draft));
    const Outcome full = judged(flaw, next, candidate);
    const Flaw* left = flaw_named(next.flaws, flaw.key);
    const double chance = left ? left->chance : 1;
    better_ = chance > flaw.chance + kSameChance;
    if (full == Outcome::settles) settling_ = Kept{std::move(next), candidate, chance};
    if (full == Outcome::lessens && (!lessening_ || chance > lessening_->chance + kSameChance))
      lessening_ = Kept{std::move(next), candidate, chance};
    return full;
  }

  Outcome judged(const Flaw& flaw, const Trial& next, const Candidate& candidate) {
    const Outcome full = outcome(flaw, now().flaws, next.flaws, candidate);
    if (full != Outcome::settles && full != Outcome::lessens) return full;
    if (rank_of(next.flaws) >= rank_of(now().flaws)) return Outcome::no_help;
    if (!cuts_in_something(next, candidate)) return Outcome::no_help;
    return full;
  }

  // A notch that goes around nothing is none.
  static bool cuts_in_something(const Trial& next, const Candidate& candidate) {
    const auto* refitted = std::get_if<ContactRefitted>(&candidate.steps.front());
    if (!refitted || !refitted->notch) return true;
    return std::any_of(next.answer.notches.begin(), next.answer.notches.end(),
                       [&](const NotchFit& n) { return n.part == candidate.part; });
  }

  // The first step from the likely one on that the adjusted room does not turn away, or where that
  // one spoils something, the next smaller one; -1: none.
  int first_worth(const Flaw& flaw, const Ladder& ladder) {
    bool spoiled = false;
    const auto worth = [&](int i) {
      const Outcome seen = looked(flaw, ladder.steps[i]);
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
    Outcome came = tried(flaw, ladder.steps[at]);
    while (came == Outcome::spoils && better_ && at > 0) came = tried(flaw, ladder.steps[--at]);
    for (int stride = 1; came != Outcome::settles; stride *= 2) {
      if (came == Outcome::spoils || at == last || !better_) return false;
      failed = at;
      at = std::min(last, at + stride);
      came = tried(flaw, ladder.steps[at]);
    }
    while (at - 1 > failed && at > 0 && tried(flaw, ladder.steps[at - 1]) == Outcome::settles) --at;
    return settling_.has_value();
  }

  // Whether the work, in its least, a middle and its largest size, changes the finding at all in
  // the adjusted room.
  bool touches(const Flaw& flaw, const Ladder& ladder) {
    const Flaw* before = flaw_named(bench_.roughly(now().draft), flaw.key);
    const std::size_t last = ladder.steps.size() - 1;
    for (const std::size_t i : {std::size_t{0}, last / 2, last}) {
      const auto draft = drafted(flaw, ladder.steps[i]);
      if (!draft) continue;
      const Flaw* after = flaw_named(bench_.roughly(*draft), flaw.key);
      if (!before || !after || std::abs(after->spare_mm - before->spare_mm) > kSame) return true;
    }
    return false;
  }

  // Whether a flaw is gone in the adjusted room alone with nothing else spoiled there.
  bool gone_roughly(const Flaw& flaw, const Candidate& candidate) {
    const auto draft = drafted(flaw, candidate);
    if (!draft) return false;
    const auto after = flaws_among(bench_.roughly(*draft));
    return !flaw_named(after, flaw.key) &&
           !worsened(flaws_among(bench_.roughly(now().draft)), after);
  }

  // One step after the other, the least first.
  bool found_among(const Flaw& flaw, const Ladder& ladder) {
    if (!touches(flaw, ladder)) return false;
    return std::any_of(ladder.steps.begin(), ladder.steps.end(), [&](const Candidate& step) {
      const Outcome seen = looked(flaw, step);
      const bool worth = seen == Outcome::settles || seen == Outcome::lessens;
      return (worth || gone_roughly(flaw, step)) && tried(flaw, step) == Outcome::settles;
    });
  }

  // Tries one kind of work against a flaw.
  bool worked(const Flaw& flaw, Work work) {
    const auto ladders = candidates(bench_.workbench(now()), flaw, work);
    return std::any_of(ladders.begin(), ladders.end(), [&](const Ladder& ladder) {
      return work == Work::any ? found_among(flaw, ladder) : climbed(flaw, ladder);
    });
  }

  bool kept(std::optional<Kept>& best) {
    if (!best) return false;
    make(progress_, std::move(best->candidate), std::move(best->trial));
    ++kept_;
    settling_.reset(), lessening_.reset();
    against_.clear(), failed_.clear();
    return true;
  }

  // One kind of work against all flaws. What is made likely to hold is settled as far as wood goes.
  bool work_on_all(Work work) {
    const int before = kept_;
    for (const Flaw& old : std::vector<Flaw>(now().flaws)) {
      const Flaw* found = flaw_named(now().flaws, old.key);
      if (!found || (is_cutting(work) && found->chance >= kLikely)) continue;
      const Flaw flaw = *found;
      if (failed_.count({flaw.key, work}) || (worked(flaw, work) && kept(settling_))) continue;
      if (lessening_ && lessening_->chance >= kLikely && kept(lessening_)) continue;
      failed_.insert({flaw.key, work});
    }
    return kept_ > before;
  }

  // The cheapest work that helps; after it the cheapest may help again. True where something
  // changed.
  bool sweep() {
    settling_.reset(), lessening_.reset();
    for (const Work work : kWorks)
      if (work_on_all(work)) return true;
    return kept(lessening_);
  }

  // A wish is said to contradict others only after all that may be done to its pieces was tried.
  bool found_any() {
    settling_.reset(), lessening_.reset();
    for (const Flaw& flaw : std::vector<Flaw>(now().flaws))
      if (flaw.verdict == Verdict::does_not_fit &&
          ((worked(flaw, Work::any) && kept(settling_)) || kept(lessening_)))
        return true;
    return false;
  }

  bool eased() {
    if (!ease(bench_, progress_)) return false;
    against_.clear(), failed_.clear();
    return true;
  }

  // Of all that stands against a flaw the one that is missed by least.
  void set_against(const Flaw& flaw, Contradiction next) {
    const auto [at, fresh] = against_.emplace(flaw.key, next);
    if (!fresh && next.by_mm < at->second.by_mm) at->second = std::move(next);
  }

  Contradiction against(const Flaw& flaw) const {
    const auto found = against_.find(flaw.key);
    Contradiction told = found == against_.end()
                             ? Contradiction{flaw.text, "", flaw.over_mm, "", ""}
                             : found->second;
    told.wish = flaw.text;
    if (told.by_mm >= kNoMeeting) told.by_mm = 0;  // not to be measured
    return told;
  }

  AdaptAnswer answer() {
    AdaptAnswer done;
    Draft draft = progress_.first;
    for (const Candidate& made : progress_.made) {
      done.changes.push_back(told(made, *draft.design, input_.survey.said()));
      draft = *redrawn(draft, edits_of(*draft.design, made.steps));
    }
    done.draft = now().draft;
    for (const Flaw& flaw : now().flaws) {
      if (flaw.verdict == Verdict::cannot_tell) done.open.push_back(flaw.text);
      if (flaw.verdict == Verdict::does_not_fit) done.contradictions.push_back(against(flaw));
    }
    done.fit = std::move(progress_.now.answer);
    return done;
  }

  const AdaptInput& input_;
  Bench bench_;
  Progress progress_;
  int kept_ = 0;
  // Since the last change: what stands against each flaw, and the work that did not settle it.
  std::map<std::string, Contradiction> against_;
  std::set<std::pair<std::string, Work>> failed_;
  std::optional<Kept> settling_, lessening_;  // what the flaw at hand was answered with
  bool better_ = false;                       // the last trial made the flaw likelier to hold
};

}  // namespace

AdaptAnswer adapt(const AdaptInput& input) {
  return Search(input).run();
}

}  // namespace nook

// A search by trying: each candidate is written into the text, read, and fitted again.
#include "adapt/adapt.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "adapt/trial.h"
#include "base/invariant.h"
#include "job/job.h"

namespace nook {
namespace {

// Each change takes a flaw away or makes it a lesser one, so the search ends; this many are more
// than any design has flaws to take away (chosen).
constexpr int kMostChanges = 200;
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
    now_ = bench_.fully({input_.text, std::make_shared<const Design>(std::move(*design))});
    while (input_.complete && static_cast<int>(changes_.size()) < kMostChanges && sweep()) {
    }
    return answer();
  }

 private:
  struct Kept {
    Trial trial;
    Change change;
    double chance = 1;  // of the flaw it was tried against
  };

  // Whether a flaw is gone or lesser, with nothing else spoiled.
  Outcome outcome(const Flaw& flaw, const std::vector<Flaw>& before, const std::vector<Flaw>& after,
                  const Candidate& candidate) {
    const Flaw* left = flaw_named(after, flaw.key);
    if (left && left->verdict >= flaw.verdict) return Outcome::no_help;
    const Flaw* other = worsened(before, after);
    if (!other) return left ? Outcome::lessens : Outcome::settles;
    set_against(flaw, {flaw.text, other->text, std::min(other->over_mm, kNoMeeting),
                       candidate.change.kind, candidate.change.part});
    return Outcome::spoils;
  }

  // The design that a candidate makes; nothing where it is no sound one.
  std::optional<Draft> drafted(const Flaw& flaw, const Candidate& candidate) {
    auto draft = redrawn(now_.draft, candidate.edits);
    if (draft) return std::move(*draft);
    set_against(
        flaw, {flaw.text, draft.error(), kNoMeeting, candidate.change.kind, candidate.change.part});
    return std::nullopt;
  }

  // A first look in the adjusted room; a flaw that is none there cannot be looked at.
  Outcome looked(const Flaw& flaw, const Candidate& candidate) {
    const auto draft = drafted(flaw, candidate);
    if (!draft) return Outcome::spoils;
    const auto before = flaws_among(foretold(now_.findings, now_.findings, input_.sure));
    const auto after = flaws_among(foretold(bench_.roughly(*draft), now_.findings, input_.sure));
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
    if (full == Outcome::settles) settling_ = Kept{std::move(next), candidate.change, chance};
    if (full == Outcome::lessens && (!lessening_ || chance > lessening_->chance + kSameChance))
      lessening_ = Kept{std::move(next), candidate.change, chance};
    return full;
  }

  Outcome judged(const Flaw& flaw, const Trial& next, const Candidate& candidate) {
    const Outcome full = outcome(flaw, now_.flaws, next.flaws, candidate);
    if (full != Outcome::settles && full != Outcome::lessens) return full;
    if (rank_of(next.flaws) >= rank_of(now_.flaws)) return Outcome::no_help;
    if (!cuts_in_something(next, candidate)) return Outcome::no_help;
    return full;
  }

  // A notch that goes around nothing is none.
  static bool cuts_in_something(const Trial& next, const Candidate& candidate) {
    if (candidate.change.after.find("notch") == std::string::npos) return true;
    return std::any_of(next.answer.notches.begin(), next.answer.notches.end(),
                       [&](const NotchFit& n) { return n.part == candidate.change.part; });
  }

  // The first step from the likely one on that the adjusted room does not turn away; -1: none.
  int first_worth(const Flaw& flaw, const Ladder& ladder) {
    const auto worth = [&](int i) {
      const Outcome seen = looked(flaw, ladder.steps[i]);
      if (seen == Outcome::spoils) spoiled_ = true;
      return seen == Outcome::settles || seen == Outcome::lessens;
    };
    int low = ladder.likely, high = static_cast<int>(ladder.steps.size()) - 1;
    spoiled_ = false;
    if (worth(low)) return low;
    if (spoiled_) return low > 0 && worth(0) ? 0 : -1;
    if (low == high || !worth(high)) return -1;
    while (high - low > 1) (worth((low + high) / 2) ? high : low) = (low + high) / 2;
    return high;
  }

  // The least size that settles the flaw: up from the first one worth it, then down again.
  bool climbed(const Flaw& flaw, const Ladder& ladder) {
    if (ladder.steps.empty()) return false;
    const int last = static_cast<int>(ladder.steps.size()) - 1;
    const auto settles = [&](int i) { return tried(flaw, ladder.steps[i]) == Outcome::settles; };
    int at = first_worth(flaw, ladder), failed = -1;
    for (int stride = 1; at >= 0 && !settles(at); stride *= 2) {
      if (at == last || !better_) return false;
      failed = at;
      at = std::min(last, at + stride);
    }
    while (at - 1 > failed && at > 0 && settles(at - 1)) --at;
    return settling_.has_value();
  }

  // Tries one kind of work against a flaw.
  bool worked(const Flaw& flaw, Work work) {
    for (const Ladder& ladder : candidates(bench_.workbench(now_), flaw, work))
      if (climbed(flaw, ladder)) return true;
    return false;
  }

  bool kept(std::optional<Kept>& best) {
    if (!best) return false;
    now_ = std::move(best->trial);
    changes_.push_back(std::move(best->change));
    settling_.reset(), lessening_.reset();
    against_.clear(), failed_.clear();
    return true;
  }

  // All flaws with the cheapest work before any with dearer work; what makes a flaw likely to hold
  // is done before dearer work too. True where something changed.
  bool sweep() {
    settling_.reset(), lessening_.reset();
    const std::size_t before = changes_.size();
    for (const Work work : kWorks)
      for (const Flaw& old : std::vector<Flaw>(now_.flaws)) {
        const Flaw* found = flaw_named(now_.flaws, old.key);
        if (!found || (is_cutting(work) && found->chance >= kLikely)) continue;
        const Flaw flaw = *found;
        if (failed_.count({flaw.key, work}) || (worked(flaw, work) && kept(settling_))) continue;
        if (lessening_ && lessening_->chance >= kLikely && kept(lessening_)) continue;
        failed_.insert({flaw.key, work});
      }
    return kept(lessening_) || changes_.size() > before;
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
    AdaptAnswer done{std::move(now_.draft), std::move(changes_), {}, {}, {}};
    for (const Flaw& flaw : now_.flaws) {
      if (flaw.verdict == Verdict::cannot_tell) done.open.push_back(flaw.text);
      if (flaw.verdict == Verdict::does_not_fit) done.contradictions.push_back(against(flaw));
    }
    done.fit = std::move(now_.answer);
    return done;
  }

  const AdaptInput& input_;
  Bench bench_;
  Trial now_;
  std::vector<Change> changes_;
  // Since the last change: what stands against each flaw, and the work that did not settle it.
  std::map<std::string, Contradiction> against_;
  std::set<std::pair<std::string, Work>> failed_;
  std::optional<Kept> settling_, lessening_;  // what the flaw at hand was answered with
  bool better_ = false, spoiled_ = false;     // of the last trial, of the last look
};

}  // namespace

AdaptAnswer adapt(const AdaptInput& input) {
  return Search(input).run();
}

}  // namespace nook

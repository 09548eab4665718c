// Each candidate is looked at in the adjusted room, then fitted in every draw.
#include "adapt/attempts.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "design/fitting.h"

namespace nook {
namespace {

constexpr double kSame = 1e-6;  // mm; far below what a reading says

// A notch that goes around nothing is none.
bool cuts_in_something(const Trial& next, const Candidate& candidate) {
  const auto* refitted = std::get_if<ContactRefitted>(&candidate.steps.front());
  if (!refitted || !refitted->notch) return true;
  return std::any_of(next.answer.notches.begin(), next.answer.notches.end(),
                     [&](const NotchFit& n) { return n.part == candidate.part; });
}

// A side of a symmetric part that is cut to what it meets, or notched, is not like the other one
// any more.
bool cuts_one_side(const Design& design, const Candidate& candidate) {
  const std::vector<Piece> pieces = pieces_of(design);
  return std::any_of(candidate.steps.begin(), candidate.steps.end(), [&](const Step& step) {
    const auto* refitted = std::get_if<ContactRefitted>(&step);
    if (!refitted) return false;
    const Contact& contact = design.contacts[refitted->contact];
    const bool cut = is_cut_to_fit(refitted->by);
    const bool newly = (cut && contact.by != refitted->by) || (refitted->notch && !contact.notch);
    const EdgeSide* side = std::get_if<EdgeSide>(&contact.edge);
    const bool level = side && (*side == EdgeSide::bottom || *side == EdgeSide::top);
    return newly && !level && std::any_of(pieces.begin(), pieces.end(), [&](const Piece& piece) {
             return piece.drawn->symmetric && is_named(piece, contact.part);
           });
  });
}

// The chance that all hold at once, if they were independent.
double all_hold(const std::vector<Flaw>& findings) {
  double chance = 1;
  for (const Flaw& finding : findings) chance *= finding.chance;
  return chance;
}

}  // namespace

// Whether a flaw is gone or lesser, with nothing else spoiled.
Outcome Attempts::outcome(const Flaw& flaw, const std::vector<Flaw>& before,
                          const std::vector<Flaw>& after, const Candidate& candidate) {
  const Flaw* left = flaw_named(after, flaw.key);
  if (left && left->verdict >= flaw.verdict) return Outcome::no_help;
  const Flaw* other = worsened(before, after);
  if (!other) return left ? Outcome::lessens : Outcome::settles;
  set_against(flaw, {flaw.text, other->text, std::min(other->over_mm, kNoMeeting), candidate.kind,
                     candidate.part});
  return Outcome::spoils;
}

// The design that a candidate makes; nothing where it is no sound one.
std::optional<Revision> Attempts::drafted(const Flaw& flaw, const Candidate& candidate) {
  const Design& design = *now().draft.design;
  auto draft = cuts_one_side(design, candidate)
                   ? tl::unexpected(candidate.part + " would not be alike on both sides any more")
                   : redrawn(now().draft, candidate.steps);
  if (draft) return std::move(*draft);
  set_against(flaw, {flaw.text, draft.error(), kNoMeeting, candidate.kind, candidate.part});
  return std::nullopt;
}

// A first look in the adjusted room; a flaw that is none there cannot be looked at.
Outcome Attempts::looked(const Flaw& flaw, const Candidate& candidate) {
  const auto draft = drafted(flaw, candidate);
  if (!draft) return Outcome::spoils;
  const auto before = flaws_among(foretold(now().findings, now().findings, sure_));
  const auto after = flaws_among(foretold(bench_.roughly(*draft), now().findings, sure_));
  if (const Flaw* seen = flaw_named(before, flaw.key))
    return outcome(*seen, before, after, candidate);
  return worsened(before, after) ? outcome(flaw, before, after, candidate) : Outcome::settles;
}

// A candidate in every draw.
Outcome Attempts::tried(const Flaw& flaw, const Candidate& candidate) {
  auto draft = drafted(flaw, candidate);
  if (!draft) return Outcome::spoils;
  Trial next = bench_.fully(std::move(*draft));
  const Outcome full = judged(flaw, next, candidate);
  const Flaw* left = flaw_named(next.flaws, flaw.key);
  const double chance = left ? left->chance : 1;
  better_ = chance > flaw.chance + kSameChance;
  if (full == Outcome::settles)
    settling_ = Kept{std::move(next), candidate, chance};
  else if (full == Outcome::lessens && (!lessening_ || chance > lessening_->chance + kSameChance))
    lessening_ = Kept{std::move(next), candidate, chance};
  return full;
}

Outcome Attempts::judged(const Flaw& flaw, const Trial& next, const Candidate& candidate) {
  const Outcome full = outcome(flaw, now().flaws, next.flaws, candidate);
  if (full != Outcome::settles && full != Outcome::lessens) return full;
  if (const Piece* piece = strayed(now().answer, next.answer)) {
    set_against(flaw, {flaw.text, piece->name + " would go in far from where it is drawn",
                       kNoMeeting, candidate.kind, candidate.part});
    return Outcome::spoils;
  }
  if (rank_of(next.flaws) >= rank_of(now().flaws)) return Outcome::no_help;
  if (!cuts_in_something(next, candidate)) return Outcome::no_help;
  return full;
}

// Whether the work, in its least, a middle and its largest size, changes the finding at all in
// the adjusted room.
bool Attempts::touches(const Flaw& flaw, const Ladder& ladder) {
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
bool Attempts::gone_roughly(const Flaw& flaw, const Candidate& candidate) {
  const auto draft = drafted(flaw, candidate);
  if (!draft) return false;
  const auto after = flaws_among(bench_.roughly(*draft));
  return !flaw_named(after, flaw.key) && !worsened(flaws_among(bench_.roughly(now().draft)), after);
}

bool Attempts::kept(std::optional<Kept>& best) {
  if (!best) return false;
  make(progress_, std::move(best->candidate), std::move(best->trial));
  forget();
  return true;
}

bool Attempts::keep_lessening(double likely) {
  return lessening_ && lessening_->chance >= likely && kept(lessening_);
}

bool Attempts::keep_joining(const Flaw& finding, const Candidate& candidate) {
  const auto draft = drafted(finding, candidate);
  if (!draft) return false;
  const auto before = foretold(now().findings, now().findings, sure_);
  const auto after = foretold(bench_.roughly(*draft), now().findings, sure_);
  if (all_hold(after) <= all_hold(before)) return false;
  Trial next = bench_.fully(*draft);
  if (next.answer.verdict != Verdict::fits || !as_good(next, now())) return false;
  make(progress_, candidate, std::move(next));
  forget();
  return true;
}

void Attempts::forget() {
  settling_.reset(), lessening_.reset();
  against_.clear();
}

// Of all that stands against a flaw the one that is missed by least.
void Attempts::set_against(const Flaw& flaw, Contradiction next) {
  const auto [at, fresh] = against_.emplace(flaw.key, next);
  if (!fresh && next.by_mm < at->second.by_mm) at->second = std::move(next);
}

Contradiction Attempts::against(const Flaw& flaw) const {
  const auto found = against_.find(flaw.key);
  Contradiction told =
      found == against_.end() ? Contradiction{flaw.text, "", flaw.over_mm, "", ""} : found->second;
  told.wish = flaw.text;
  if (told.by_mm >= kNoMeeting) told.by_mm = 0;  // not to be measured
  return told;
}

}  // namespace nook

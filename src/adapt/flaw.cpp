// Contacts, clashes, clearances and covers brought to one measure.
#include "adapt/flaw.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/measured.h"
#include "base/normal.h"
#include "design/fitting.h"
#include "fit/touching.h"

namespace nook {
namespace {

struct Writer {
  const FitAnswer& answer;
  Rounding rounding;
  std::vector<Flaw> findings;

  std::string length(double mm) const { return with_unit(millimetres(mm), rounding); }
  std::string give(double sd) const {
    return sd > 0 ? ", give or take " + give_or_take(millimetres(kTwoSided95 * sd), rounding) : "";
  }
};

std::string key_of(const char* kind, const std::string& a, const std::string& b, int n) {
  return fmt::format("{}|{}|{}|{}", kind, a, b, n);
}

std::string edge_words(const Contact& how) {
  return std::holds_alternative<EdgeSide>(how.edge) ? how.edge_given + " edge" : how.edge_given;
}

bool is_cut(const Contact& how) {
  return is_cut_to_fit(how.by) || how.by == Fitting::filler;
}

// How far a contact is from being missed.
double spare_of(const ContactFit& contact) {
  const Contact& how = *contact.how;
  if (!contact.meets_anything) return -kNoMeeting;
  if (how.by == Fitting::clear) return contact.gap.least - contact.allow;
  if (is_cut(how)) return contact.allow - contact.after.most;
  const double open = contact.allow - contact.gap.most;
  return contact.gap.least < -kTouching ? std::min(contact.gap.least, open) : open;
}

std::string contact_words(const Writer& w, const ContactFit& c) {
  const std::string where = fmt::format("{}, {} at the {}", c.part, edge_words(*c.how), c.meets);
  if (!c.meets_anything) return where + ": it cannot meet it";
  const double least = std::max(0.0, c.gap.least), most = std::max(0.0, c.gap.most);
  std::string gap = "gap " + w.length(most);
  if (most - least > w.rounding.step.mm / 2)
    gap = fmt::format("gap {} to {}", w.length(least), w.length(most));
  if (c.gap.least < -kTouching)
    gap = "overlap " + w.length(-c.gap.least) +
          (most > w.rounding.step.mm / 2 ? ", open " + w.length(most) : "");
  return fmt::format("{}: {}{}, {} is {}", where, gap, w.give(c.gap_sd), w.length(c.allow),
                     c.how->by == Fitting::clear ? "the least" : "accepted");
}

void add_contacts(Writer& w) {
  for (int i = 0; i < static_cast<int>(w.answer.contacts.size()); ++i) {
    const ContactFit& c = w.answer.contacts[i];
    const double spare = spare_of(c);
    w.findings.push_back({Flaw::Kind::contact, i, key_of("contact", c.part, c.meets, c.contact),
                          contact_words(w, c), c.verdict, std::max(0.0, -spare), c.chance, c.gap_sd,
                          spare});
  }
}

// A depth that prints as nothing is none yet.
std::string overlap_words(const Writer& w, const ClashFit& c) {
  const double step = w.rounding.step.mm / 2;
  if (c.depth_mm >= step) return "overlap by " + w.length(c.depth_mm) + w.give(c.sd_mm);
  return c.most_mm >= step ? "touch, and may overlap by up to " + w.length(c.most_mm)
                           : "touch, and may bind";
}

void add_clashes(Writer& w) {
  for (int i = 0; i < static_cast<int>(w.answer.clashes.size()); ++i) {
    const ClashFit& c = w.answer.clashes[i];
    const std::string words = fmt::format("{} and the {} {}", c.part, c.with, overlap_words(w, c));
    w.findings.push_back({Flaw::Kind::clash, i, key_of("clash", c.part, c.with, 0), words,
                          c.verdict, c.depth_mm, c.chance, c.sd_mm, kTouching - c.depth_mm});
  }
}

void add_clearances(Writer& w) {
  for (int i = 0; i < static_cast<int>(w.answer.clearances.size()); ++i) {
    const ClearanceFit& c = w.answer.clearances[i];
    const double spare = c.least_mm - c.needed_mm;
    const bool into = c.least_mm < 0;
    const std::string words =
        fmt::format("{}: {} {} the {}{}, {} is the least", c.part, w.length(std::abs(c.least_mm)),
                    into ? "into" : "from", c.from, w.give(c.sd_mm), w.length(c.needed_mm));
    w.findings.push_back({Flaw::Kind::clearance, i, key_of("clearance", c.part, c.from, 0), words,
                          c.verdict, std::max(0.0, -spare), c.chance, c.sd_mm,
                          c.needed_mm > 0 ? spare + kTouching : kNoMeeting});
  }
}

void add_covers(Writer& w) {
  for (int i = 0; i < static_cast<int>(w.answer.covered.size()); ++i) {
    const CoveredFit& c = w.answer.covered[i];
    const double spare = c.margin_mm - c.needed_mm;
    const std::string words =
        fmt::format("{} behind the {}: {} by {}{}, {} is wanted", c.part, c.behind,
                    c.margin_mm < 0 ? "its edge shows" : "covered", w.length(std::abs(c.margin_mm)),
                    w.give(c.sd_mm), w.length(c.needed_mm));
    w.findings.push_back({Flaw::Kind::covered, i, key_of("covered", c.part, c.behind, c.covered),
                          words, c.verdict, std::max(0.0, -spare), c.chance, c.sd_mm, spare});
  }
}

// Where it was left is judged by the other findings; here only that it is not at rest.
void add_groups(Writer& w) {
  for (int i = 0; i < static_cast<int>(w.answer.groups.size()); ++i) {
    const GroupFit& g = w.answer.groups[i];
    if (g.still_moves_mm <= 0) continue;
    const std::string words =
        fmt::format("{}: where it comes to rest cannot be told, it slides on by {}", g.name,
                    w.length(g.still_moves_mm));
    w.findings.push_back({Flaw::Kind::rest, i, key_of("rest", g.name, "", 0), words,
                          Verdict::cannot_tell, 0, 0, 0, 0});
  }
}

}  // namespace

std::vector<Flaw> findings_of(const FitAnswer& answer, Rounding rounding) {
  Writer w{answer, rounding, {}};
  add_contacts(w);
  add_clashes(w);
  add_clearances(w);
  add_covers(w);
  add_groups(w);
  return std::move(w.findings);
}

std::vector<Flaw> flaws_among(std::vector<Flaw> findings) {
  std::erase_if(findings, [](const Flaw& flaw) { return flaw.verdict == Verdict::fits; });
  std::stable_sort(findings.begin(), findings.end(), [](const Flaw& a, const Flaw& b) {
    if (a.verdict != b.verdict) return a.verdict > b.verdict;
    return a.over_mm != b.over_mm ? a.over_mm > b.over_mm : a.chance < b.chance;
  });
  return findings;
}

const Flaw* flaw_named(const std::vector<Flaw>& flaws, const std::string& key) {
  const auto found =
      std::find_if(flaws.begin(), flaws.end(), [&](const Flaw& flaw) { return flaw.key == key; });
  return found == flaws.end() ? nullptr : &*found;
}

const Flaw* worsened(const std::vector<Flaw>& before, const std::vector<Flaw>& after) {
  for (const Flaw& flaw : after) {
    const Flaw* old = flaw_named(before, flaw.key);
    const bool unlike = flaw.chance < (old ? old->chance : 1) - kSameChance;
    if (flaw.verdict > (old ? old->verdict : Verdict::fits) && unlike) return &flaw;
    if (flaw.over_mm > (old ? old->over_mm : 0) + kMarginal) return &flaw;
  }
  return nullptr;
}

Rank rank_of(const std::vector<Flaw>& flaws) {
  Rank rank{};
  for (const Flaw& flaw : flaws) {
    const bool sure = flaw.verdict == Verdict::does_not_fit;
    rank[0] += sure && flaw.over_mm >= kMarginal;
    rank[1] += sure;
    rank[2] += 1;
  }
  return rank;
}

std::vector<Flaw> foretold(std::vector<Flaw> findings, const std::vector<Flaw>& known,
                           double sure) {
  for (Flaw& finding : findings) {
    if (finding.kind == Flaw::Kind::rungs || finding.kind == Flaw::Kind::rest) continue;
    const Flaw* same = flaw_named(known, finding.key);
    finding.chance = normal_below(finding.spare_mm, same ? same->sd_mm : 0);
    finding.verdict = verdict_of(finding.chance, sure);
  }
  return findings;
}

}  // namespace nook

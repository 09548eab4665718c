// Contacts, clashes, clearances and covers brought to one measure.
#include "adapt/flaw.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/measured.h"

namespace nook {
namespace {

std::string key_of(const char* kind, const std::string& a, const std::string& b, int n) {
  return fmt::format("{}|{}|{}|{}", kind, a, b, n);
}

std::string edge_words(const Contact& how) {
  return std::holds_alternative<EdgeSide>(how.edge) ? how.edge_given + " edge" : how.edge_given;
}

double missed_by(const ContactFit& contact) {
  if (!contact.meets_anything) return kNoMeeting;
  if (contact.how->by == Fitting::clear) return std::max(0.0, contact.allow - contact.gap.least);
  return std::max({0.0, contact.gap.most - contact.allow, -contact.gap.least});
}

std::string give(double sd, Rounding r) {
  return sd > 0 ? ", give or take " + give_or_take(millimetres(kTwoSided95 * sd), r) : "";
}

std::string contact_words(const ContactFit& contact, Rounding r) {
  const std::string where =
      fmt::format("{}, {} at the {}", contact.part, edge_words(*contact.how), contact.meets);
  if (!contact.meets_anything) return where + ": it cannot meet it";
  const auto length = [&](double mm) { return with_unit(millimetres(mm), r); };
  std::string gap = "gap " + length(std::max(0.0, contact.gap.most));
  if (contact.gap.most - contact.gap.least > r.step.mm / 2)
    gap = fmt::format("gap {} to {}", length(std::max(0.0, contact.gap.least)),
                      length(std::max(0.0, contact.gap.most)));
  if (contact.gap.least < -0.1) gap = "overlap " + length(-contact.gap.least);
  return fmt::format("{}: {}{}, {} is {}", where, gap, give(contact.gap_sd, r),
                     length(contact.allow),
                     contact.how->by == Fitting::clear ? "the least" : "accepted");
}

void add_contacts(const FitAnswer& answer, Rounding r, std::vector<Flaw>& flaws) {
  for (int i = 0; i < static_cast<int>(answer.contacts.size()); ++i) {
    const ContactFit& c = answer.contacts[i];
    flaws.push_back({Flaw::Kind::contact, i, key_of("contact", c.part, c.meets, c.contact),
                     contact_words(c, r), c.verdict, missed_by(c)});
  }
}

void add_clashes(const FitAnswer& answer, Rounding r, std::vector<Flaw>& flaws) {
  for (int i = 0; i < static_cast<int>(answer.clashes.size()); ++i) {
    const ClashFit& c = answer.clashes[i];
    flaws.push_back({Flaw::Kind::clash, i, key_of("clash", c.part, c.with, 0),
                     fmt::format("{} and the {} overlap by {}{}", c.part, c.with,
                                 with_unit(millimetres(c.depth_mm), r), give(c.sd_mm, r)),
                     c.verdict, c.depth_mm});
  }
}

void add_clearances(const FitAnswer& answer, Rounding r, std::vector<Flaw>& flaws) {
  for (int i = 0; i < static_cast<int>(answer.clearances.size()); ++i) {
    const ClearanceFit& c = answer.clearances[i];
    flaws.push_back({Flaw::Kind::clearance, i, key_of("clearance", c.part, c.from, 0),
                     fmt::format("{}: {} from the {}, {} is the least", c.part,
                                 with_unit(millimetres(c.least_mm), r), c.from,
                                 with_unit(millimetres(c.needed_mm), r)),
                     c.verdict, std::max(0.0, c.needed_mm - c.least_mm)});
  }
}

void add_covers(const FitAnswer& answer, Rounding r, std::vector<Flaw>& flaws) {
  for (int i = 0; i < static_cast<int>(answer.covered.size()); ++i) {
    const CoveredFit& c = answer.covered[i];
    flaws.push_back({Flaw::Kind::covered, i, key_of("covered", c.part, c.behind, c.covered),
                     fmt::format("{} behind the {}: covered by {}, wanted {}", c.part, c.behind,
                                 with_unit(millimetres(c.margin_mm), r),
                                 with_unit(millimetres(c.needed_mm), r)),
                     c.verdict, std::max(0.0, c.needed_mm - c.margin_mm)});
  }
}

}  // namespace

std::vector<Flaw> flaws_of(const FitAnswer& answer, Rounding rounding) {
  std::vector<Flaw> flaws;
  add_contacts(answer, rounding, flaws);
  add_clashes(answer, rounding, flaws);
  add_clearances(answer, rounding, flaws);
  add_covers(answer, rounding, flaws);
  std::erase_if(flaws, [](const Flaw& flaw) { return flaw.verdict == Verdict::fits; });
  std::stable_sort(flaws.begin(), flaws.end(), [](const Flaw& a, const Flaw& b) {
    return a.verdict != b.verdict ? a.verdict > b.verdict : a.over_mm > b.over_mm;
  });
  return flaws;
}

const Flaw* flaw_named(const std::vector<Flaw>& flaws, const std::string& key) {
  const auto found =
      std::find_if(flaws.begin(), flaws.end(), [&](const Flaw& flaw) { return flaw.key == key; });
  return found == flaws.end() ? nullptr : &*found;
}

const Flaw* worsened(const std::vector<Flaw>& before, const std::vector<Flaw>& after) {
  for (const Flaw& flaw : after) {
    const Flaw* old = flaw_named(before, flaw.key);
    const bool marginal = flaw.over_mm < kMarginal;
    if (flaw.verdict > (old ? old->verdict : Verdict::fits) && !marginal) return &flaw;
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

}  // namespace nook

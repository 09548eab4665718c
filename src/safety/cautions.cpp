// Severity and verdict of each finding.
#include "safety/cautions.h"

#include <algorithm>

#include "base/normal.h"

namespace nook::safe {
namespace {

constexpr double kExact = 1e-3;  // mm: what is known exactly keeps its limit to within this; chosen

// Each document once, by what of it is known least.
std::string cited(const Found& found) {
  std::vector<Limit> cited_limits;
  for (Of which : found.limits) {
    const Limit& l = limit(which);
    const auto same = [&](const Limit& other) { return other.source == l.source; };
    const auto known = std::find_if(cited_limits.begin(), cited_limits.end(), same);
    if (known == cited_limits.end())
      cited_limits.push_back(l);
    else if (l.known > known->known)
      *known = l;
  }
  std::string text;
  for (const Limit& l : cited_limits) text += (text.empty() ? "" : "; ") + cited(l);
  if (!found.source.empty()) text += (text.empty() ? "" : "; ") + found.source;
  return text;
}

}  // namespace

double chance_at_most(Measured quantity, double value) {
  const double under = value - quantity.value;
  return normal_below(quantity.sd > 0 ? under : under + kExact, quantity.sd);
}

double chance_at_least(Measured quantity, double value) {
  return chance_at_most({-quantity.value, quantity.sd}, -value);
}

void Cautions::judge(double chance_well, const Found& found, Severity worst) {
  const Verdict verdict = verdict_of(chance_well, sure_);
  if (verdict == Verdict::fits) return;
  if (verdict == Verdict::does_not_fit) return say(found, worst);
  Found open = found;
  open.text.pattern += " Cannot tell: the limit lies within the give or take.";
  keep(open, Severity::caution, false);
  if (worst == Severity::danger) verdict_ = worse(verdict_, Verdict::cannot_tell);
}

void Cautions::judge(double chance_well, const Found& found) {
  judge(chance_well, found, caution_kind(found.id).worst);
}

void Cautions::say(const Found& found, Severity severity) {
  keep(found, severity, true);
  if (severity == Severity::danger) verdict_ = Verdict::does_not_fit;
}

void Cautions::say(const Found& found) {
  say(found, caution_kind(found.id).worst);
}

void Cautions::want(const Found& found) {
  keep(found, Severity::caution, false);
  verdict_ = worse(verdict_, Verdict::cannot_tell);
}

void Cautions::keep(const Found& found, Severity severity, bool decided) {
  const CautionKind& kind = caution_kind(found.id);
  cautions_.push_back({std::string(kind.id), severity, found.text, found.where, cited(found),
                       found.value, decided});
}

std::vector<Caution> Cautions::sorted() const {
  std::vector<Caution> sorted = cautions_;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Caution& a, const Caution& b) { return a.severity > b.severity; });
  return sorted;
}

}  // namespace nook::safe

// Every stud found proposes a pattern; the evidence of each is summed stud by stud, outwards.
#include "fasten/stud_pattern.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nook {
namespace {

constexpr double kJitter = 3;          // mm, of a stud about its place. Chosen
constexpr double kSpacingSd = 1;       // mm a bay, of the true spacing about the nominal. Chosen
constexpr double kLeastSpacing = 100;  // mm; below it no pattern is looked for. Chosen
// How likely a place between studs found was passed over in the search. Chosen
constexpr double kPassedOver = .5;
// 16 and 24 in (IRC R602.3(5)), 19.2 and 12 in, 400 and 600 mm: common practice, no source.
constexpr double kUsual[] = {406.4, 609.6, 487.68, 304.8, 400, 600};

struct Proposal {
  StudPattern pattern;
  double evidence = 0;
};

double density(double off, double variance) {
  return std::exp(-off * off / (2 * variance)) / std::sqrt(2 * std::numbers::pi * variance);
}

// One more stud of the pattern: a Kalman step on (phase, spacing).
void take(StudPattern& p, int n, double off, double total) {
  const double hp = p.var_phase + n * p.cov, hs = p.cov + n * p.var_spacing;
  p.phase += hp / total * off;
  p.spacing += hs / total * off;
  p.var_phase -= hp * hp / total;
  p.cov -= hp * hs / total;
  p.var_spacing -= hs * hs / total;
}

// Places between the first and the last stud of the pattern where none was found.
int empty_places(const StudPattern& p) {
  int first = 0, last = 0, count = 0;
  for (const auto& n : p.number)
    if (n) {
      first = count == 0 ? *n : std::min(first, *n);
      last = count == 0 ? *n : std::max(last, *n);
      ++count;
    }
  return count == 0 ? 0 : last - first + 1 - count;
}

// The pattern in which stud `anchor` stands at its place and the others join where likelier in it.
Proposal propose(const std::vector<Measured>& found, std::size_t anchor, double nominal) {
  const auto variance = [&](std::size_t i) {
    return found[i].sd * found[i].sd + kJitter * kJitter;
  };
  std::vector<std::size_t> order(found.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::abs(found[a].value - found[anchor].value) <
           std::abs(found[b].value - found[anchor].value);
  });
  StudPattern p{nominal, found[anchor].value, kSpacingSd * kSpacingSd, 0, variance(anchor), 0, {}};
  p.number.resize(found.size());
  double evidence = 1;
  for (std::size_t i : order) {
    const double stray = (1 - kUnbroken) / nominal;
    if (i == anchor) {
      p.number[i] = 0;
      evidence *= kUnbroken / nominal;
      continue;
    }
    const int n = static_cast<int>(std::lround((found[i].value - p.phase) / p.spacing));
    const double off = found[i].value - p.centre(n), bays = n;
    const double total = variance(i) + p.var_phase + 2 * bays * p.cov + bays * bays * p.var_spacing;
    const double within = kUnbroken * density(off, total);
    const bool taken = std::find(p.number.begin(), p.number.end(), n) != p.number.end();
    if (taken || within < stray) {
      evidence *= stray;
      continue;
    }
    p.number[i] = n;
    evidence *= within;
    take(p, n, off, total);
  }
  evidence *= std::pow(kPassedOver, empty_places(p));
  return {std::move(p), evidence};
}

bool same_studs(const StudPattern& a, const StudPattern& b) {
  for (std::size_t i = 0; i < a.number.size(); ++i)
    if (a.number[i].has_value() != b.number[i].has_value()) return false;
  return true;
}

void add_distinct(std::vector<Proposal>& all, Proposal next, std::size_t from) {
  for (std::size_t i = from; i < all.size(); ++i)
    if (same_studs(all[i].pattern, next.pattern)) return;
  all.push_back(std::move(next));
}

}  // namespace

double StudPattern::sd(int n) const {
  const double bays = n;
  return std::sqrt(kJitter * kJitter + var_phase + 2 * bays * cov + bays * bays * var_spacing);
}

std::optional<StudPattern> pattern_of(const std::vector<Measured>& found,
                                      std::optional<double> nominal) {
  if (found.empty() || (nominal && *nominal < kLeastSpacing)) return std::nullopt;
  std::vector<double> spacings(std::begin(kUsual), std::end(kUsual));
  if (nominal) spacings = {*nominal};
  std::vector<Proposal> all;
  double total = 0;
  for (double spacing : spacings) {
    const std::size_t from = all.size();
    for (std::size_t i = 0; i < found.size(); ++i)
      add_distinct(all, propose(found, i, spacing), from);
    total += std::pow((1 - kUnbroken) / spacing, static_cast<double>(found.size()));
  }
  for (const Proposal& p : all) total += p.evidence;
  auto best = std::max_element(all.begin(), all.end(), [](const Proposal& a, const Proposal& b) {
    return a.evidence < b.evidence;
  });
  if (total > 0) best->pattern.certainty = best->evidence / total;
  return best->pattern;
}

}  // namespace nook

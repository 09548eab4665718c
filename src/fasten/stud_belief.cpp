// Bayes' rule on sums of Gaussians: each look multiplies the guesses by what it may have meant.
#include "fasten/stud_belief.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "base/invariant.h"
#include "base/normal.h"

namespace nook {
namespace {

// Chosen: what one look is worth. Nail: sd; finder and magnet: scale of a Student t with 4 degrees.
constexpr double kNail = 1, kFinderEdge = 2, kCentre = 3;
// How often a stud is single, doubled, tripled (chosen; doubled beside openings and at corners).
constexpr double kPlies[] = {.90, .08, .02};
constexpr double kVague = 200;      // mm, prior sd of the place beside the looks. Chosen
constexpr std::size_t kMost = 200;  // guesses kept
constexpr double kLeast = 1e-10;    // weight dropped

struct Kernel {
  double weight, variance;
  bool slip;
};

// Student t with 4 degrees of freedom and scale 1 as Gaussians of precision p ~ Gamma(2, 2),
// evenly spaced in log p. Its distribution function is right to 1e-3 of its tail up to 12 scales.
std::vector<Kernel> student_kernels(double scale) {
  constexpr int kNodes = 16;
  constexpr double kFrom = -6.4, kTo = 2.2;
  std::vector<Kernel> kernels;
  double total = 0;
  for (int i = 0; i < kNodes; ++i) {
    const double p = std::exp(kFrom + (kTo - kFrom) * i / (kNodes - 1));
    const double weight = 4 * p * p * std::exp(-2 * p);
    kernels.push_back({weight, scale * scale / p, false});
    total += weight;
  }
  for (Kernel& k : kernels) k.weight *= (1 - kSlipShare) / total;
  return kernels;
}

std::vector<Kernel> meanings_of(const StudLook& sight) {
  const double usual = sight_sd(sight.by, sight.side != 0);
  const double sd = sight.sd.value_or(usual);
  std::vector<Kernel> kernels;
  if (sight.by == FoundBy::nail)
    kernels = {{1 - kSlipShare, sd * sd, false}};
  else
    kernels = student_kernels(sd / std::numbers::sqrt2);  // sd = scale sqrt(4 / (4 - 2))
  kernels.push_back({kSlipShare, kSlipSd * kSlipSd, true});
  return kernels;
}

// One Kalman step: `guess` after a look at centre + side x half block + lean x (z - z0).
StudGuess after(const StudGuess& guess, double seen, double dz, const Kernel& kernel) {
  const double hc = guess.var_centre + dz * guess.cov, hl = guess.cov + dz * guess.var_lean;
  const double spread = hc + dz * hl + kernel.variance;
  const double off = seen - guess.centre - dz * guess.lean;
  StudGuess next = guess;
  next.weight *= kernel.weight * std::exp(-off * off / (2 * spread)) / std::sqrt(spread);
  next.slips = guess.slips << 1 | (kernel.slip ? 1u : 0u);
  next.centre += hc / spread * off;
  next.lean += hl / spread * off;
  next.var_centre -= hc * hc / spread;
  next.cov -= hc * hl / spread;
  next.var_lean -= hl * hl / spread;
  return next;
}

double total_weight(const std::vector<StudGuess>& guesses) {
  double total = 0;
  for (const StudGuess& g : guesses) total += g.weight;
  return total;
}

void keep_likely(std::vector<StudGuess>& guesses) {
  const double least = kLeast * total_weight(guesses);
  std::erase_if(guesses, [&](const StudGuess& g) { return g.weight < least; });
  std::stable_sort(guesses.begin(), guesses.end(),
                   [](const StudGuess& a, const StudGuess& b) { return a.weight > b.weight; });
  if (guesses.size() > kMost) guesses.resize(kMost);
  const double total = total_weight(guesses);
  for (StudGuess& g : guesses) g.weight /= total;
}

std::vector<StudGuess> seen(const std::vector<StudGuess>& guesses, const StudLook& sight,
                            double width, double z) {
  std::vector<StudGuess> next;
  const auto kernels = meanings_of(sight);
  for (const StudGuess& guess : guesses)
    for (const Kernel& kernel : kernels)
      next.push_back(
          after(guess, sight.at - sight.side * guess.plies * width / 2, sight.z - z, kernel));
  keep_likely(next);
  return next;
}

double variance_at(const StudGuess& g, double dz) {
  return std::max(0.0, g.var_centre + 2 * dz * g.cov + dz * dz * g.var_lean);
}

// Which looks the likeliest guesses with `plies` take for slips.
unsigned likeliest_slips(const std::vector<StudGuess>& guesses, int plies) {
  std::map<unsigned, double> weights;
  for (const StudGuess& g : guesses)
    if (g.plies == plies) weights[g.slips] += g.weight;
  return std::max_element(weights.begin(), weights.end(),
                          [](const auto& a, const auto& b) { return a.second < b.second; })
      ->first;
}

// Moments of the guesses with `plies` that take the same looks for slips.
StudGuess moments(const std::vector<StudGuess>& guesses, int plies) {
  const unsigned slips = likeliest_slips(guesses, plies);
  StudGuess m;
  m.plies = plies;
  const auto each = [&](auto&& add) {
    for (const StudGuess& g : guesses)
      if (g.plies == plies && g.slips == slips) add(g);
  };
  each([&](const StudGuess& g) { m.weight += g.weight; });
  each([&](const StudGuess& g) {
    m.centre += g.weight / m.weight * g.centre;
    m.lean += g.weight / m.weight * g.lean;
  });
  each([&](const StudGuess& g) {
    const double w = g.weight / m.weight, dc = g.centre - m.centre, dl = g.lean - m.lean;
    m.var_centre += w * (g.var_centre + dc * dc);
    m.cov += w * (g.cov + dc * dl);
    m.var_lean += w * (g.var_lean + dl * dl);
  });
  return m;
}

}  // namespace

double sight_sd(FoundBy by, bool edge) {
  if (by == FoundBy::nail) return kNail;
  return (edge && by == FoundBy::finder ? kFinderEdge : kCentre) * std::numbers::sqrt2;
}

StudBelief::StudBelief(double width, double z, std::vector<StudGuess> guesses)
    : width_(width), z_(z), guesses_(std::move(guesses)) {
  require(!guesses_.empty(), "a stud is believed to be somewhere");
  double share[4] = {};
  for (const StudGuess& g : guesses_) share[g.plies] += g.weight;
  plies_ = static_cast<int>(std::max_element(share, share + 4) - share);
  core_ = moments(guesses_, plies_);
}

double StudBelief::centre(double z) const {
  return core_.centre + (z - z_) * core_.lean;
}

double StudBelief::sd(double z) const {
  return std::sqrt(variance_at(core_, z - z_));
}

double StudBelief::lean() const {
  return core_.lean;
}

double StudBelief::ply(double a, double z) const {
  const double first = centre(z) - (plies_ - 1) * width_ / 2;
  const double index = std::clamp(std::round((a - first) / width_), 0.0, plies_ - 1.0);
  return first + index * width_;
}

double StudBelief::chance(const Strike& strike, double edge, double spread) const {
  const double reach = width_ / 2 - edge;
  const double low = std::max(strike.enter, strike.tip) - reach;
  const double high = std::min(strike.enter, strike.tip) + reach;
  if (low >= high) return 0;
  double total = 0;
  for (const StudGuess& g : guesses_) {
    const double sd = std::hypot(std::sqrt(variance_at(g, strike.z - z_)), spread);
    for (int ply = 0; ply < g.plies; ++ply) {
      const double middle =
          g.centre + (strike.z - z_) * g.lean + (ply - (g.plies - 1) / 2.0) * width_;
      total += g.weight * (normal_below(high - middle, sd) - normal_below(low - middle, sd));
    }
  }
  return std::min(total, 1.0);
}

StudBelief believe(std::vector<StudLook> sights, double width, double lean_sd) {
  require(!sights.empty(), "a stud is found by a look");
  std::sort(sights.begin(), sights.end(), [](const StudLook& a, const StudLook& b) {
    return a.z != b.z ? a.z < b.z : a.at != b.at ? a.at < b.at : a.side < b.side;
  });
  double at = 0, z = 0;
  for (const StudLook& s : sights) {
    at += s.at / sights.size();
    z += s.z / sights.size();
  }
  std::vector<StudGuess> guesses;
  for (int plies = 1; plies <= 3; ++plies)
    guesses.push_back({kPlies[plies - 1], plies, 0, at, 0, kVague * kVague, 0, lean_sd * lean_sd});
  for (const StudLook& sight : sights) guesses = seen(guesses, sight, width, z);
  return StudBelief(width, z, std::move(guesses));
}

}  // namespace nook

// The global test, then each reading set against the others.
#include "shop/cut_disagreement.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

// A shape that nobody cuts, whatever agrees with it.
bool misshapen(const Polygon& outline, const CornerVector& off) {
  constexpr double kNever = 152.4;  // mm, 6 in. Chosen
  const auto all = kept(outline);
  return std::any_of(all.begin(), all.end(),
                     [&](const Kept& one) { return std::abs(strays(one.row, off)) > kNever; });
}

// The value that chi-squared of `dof` passes once in 1000 (Wilson and Hilferty 1931); of a share of
// a degree too, which the quantiles of the survey do not have.
double chi_limit(double dof) {
  constexpr double kNormal = 3.0902;  // the normal quantile of .999
  const double share = 2 / (9 * dof);
  return dof * std::pow(1 - share + kNormal * std::sqrt(share), 3);
}

struct Chi {
  double value = 0, dof = 0;
  // The global test.
  bool agrees() const { return dof < 0.5 || value <= chi_limit(dof); }
};
Chi chi_of(const std::vector<Taped>& readings, const Polygon& outline, const Solved& at) {
  const Polygon cut = with_corners(outline, at.off);
  Chi chi;
  for (const Taped& reading : readings) {
    const double v = (reading.from(cut) - reading.value) / reading.sd;
    chi.value += v * v;
    chi.dof +=
        1 - at.equations.variance(slope(reading.from, outline, at.off)) / (reading.sd * reading.sd);
  }
  return chi;
}

// Readings set against the others: how ill those agree among themselves and with a shape that saws
// cut, and what they say.
struct Apart {
  double ill = 1e300;
  std::optional<CutDisagreement> first;
};
template <class Others>
Apart set_apart(const std::vector<Taped>& readings, const Polygon& outline, Others other) {
  std::vector<Taped> others;
  const Taped* first = nullptr;
  for (const Taped& reading : readings)
    if (other(reading))
      others.push_back(reading);
    else if (!first)
      first = &reading;
  if (!first || others.empty()) return {};
  const Solved at = solved(others, outline);
  const double says = first->from(with_corners(outline, at.off));
  return {chi_of(others, outline, at).value + unlikely(outline, at.off),
          CutDisagreement{first->of, first->index, first->value, says}};
}

}  // namespace

std::optional<CutDisagreement> disagreement(const std::vector<Taped>& readings,
                                            const Polygon& outline, const Solved& all) {
  if (chi_of(readings, outline, all).agrees() && !misshapen(outline, all.off)) return std::nullopt;
  Apart best;
  for (const Taped& one : readings) {
    Apart next = set_apart(readings, outline, [&](const Taped& r) { return &r != &one; });
    if (next.ill < best.ill) best = std::move(next);
  }
  Apart near = set_apart(readings, outline, [&](const Taped& reading) {
    return std::abs(reading.value - reading.from(outline)) < kFarOff;
  });
  const bool alone = best.ill <= chi_limit(1) || near.ill > best.ill;
  return alone ? best.first : near.first;
}

}  // namespace nook

// The least move that obeys half-planes: one strictly convex program of a few unknowns.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace nook {

/// At most three directions of movement, one bound that is made small, and a price for moving.
inline constexpr int kUnknowns = 5;
using Unknowns = std::array<double, kUnknowns>;

/// slope . y >= least
struct HalfPlane {
  Unknowns slope{};
  double least = 0;
  std::int64_t key = 0;  // what it is about, to be known again in another program; 0 = nothing
};

/// Which half-planes stopped the move in a program much like this one: where to look first.
struct Stops {
  int count = 0;
  std::array<std::int64_t, kUnknowns> keys{};
};

/// The y nearest to `wish` with every half-plane kept (to 1e-7 of a unit slope); nothing if none
/// can be. With wish = (0, 0, 0, -1e7, 0) it is the smallest y[3], and of those the least others
/// (Mangasarian and Meyer 1979). Dual active sets (Goldfarb and Idnani 1983); unique, so that a
/// mirrored problem has the mirrored answer. `stops`, if given, is where it looks first and becomes
/// what stopped it; it changes the way to the answer, not the answer.
std::optional<Unknowns> nearest_allowed(const Unknowns& wish, const std::vector<HalfPlane>& planes,
                                        Stops* stops = nullptr);

}  // namespace nook

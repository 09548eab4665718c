// One quantity in the adjusted room and in every draw.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/verdict.h"

namespace nook {

struct Tally {
  double adjusted = 0;
  std::vector<double> drawn;

  void add(int room, double value) {
    if (room == 0)
      adjusted = value;
    else
      drawn.push_back(value);
  }
  /// How far 68.3 % of the draws keep from the adjusted value: of a normal distribution about it
  /// the standard deviation. Where the draws lie to one side, as the widest gap along a rough wall
  /// does beside that of its smoothed surface, the give or take covers it. A few draws in which the
  /// piece jams elsewhere do not widen it; verdicts count them. 0 without draws.
  double sd() const {
    if (drawn.size() < 2) return 0;
    std::vector<double> away;
    away.reserve(drawn.size());
    for (const double value : drawn) away.push_back(std::abs(value - adjusted));
    return at_share(kOneSigma, away);
  }
  /// The value that a share `sure` of the draws does not exceed; the adjusted one without draws.
  double quantile(double sure) const {
    if (drawn.empty()) return adjusted;
    std::vector<double> sorted = drawn;
    std::sort(sorted.begin(), sorted.end());
    const double place = std::ceil(sure * static_cast<double>(sorted.size())) - 1;
    return sorted[static_cast<std::size_t>(std::clamp(place, 0.0, sorted.size() - 1.0))];
  }

 private:
  static constexpr double kOneSigma = 0.6826894921370859;  // of a normal distribution, two-sided

  // The drawn value at a share of the sorted draws, between two of them in proportion. `order` has
  // the draws in any order and is sorted a little further.
  static double at_share(double share, std::vector<double>& order) {
    const double place = share * static_cast<double>(order.size() - 1);
    const auto below = order.begin() + static_cast<std::ptrdiff_t>(place);
    std::nth_element(order.begin(), below, order.end());
    const double above =
        below + 1 == order.end() ? *below : *std::min_element(below + 1, order.end());
    return *below + (place - std::floor(place)) * (above - *below);
  }
};

/// Whether something holds, room by room.
class Holds {
 public:
  explicit Holds(int rooms) : in_(rooms, 1) {}
  void set(int room, bool holds) { in_[room] = in_[room] && holds; }
  void both(const Holds& other) {
    for (std::size_t r = 0; r < in_.size(); ++r) in_[r] = in_[r] && other.in_[r];
  }
  /// Share of the draws in which it holds; without draws that of the adjusted room.
  double chance() const {
    if (in_.size() == 1) return in_[0];
    return static_cast<double>(std::count(in_.begin() + 1, in_.end(), 1)) /
           static_cast<double>(in_.size() - 1);
  }
  /// By that share; never `fits` where it does not hold in the adjusted room: a group that comes to
  /// rest elsewhere there than in the draws is not known to fit.
  Verdict verdict(double sure) const {
    const Verdict drawn = verdict_of(chance(), sure);
    return drawn == Verdict::fits && !in_[0] ? Verdict::cannot_tell : drawn;
  }

 private:
  std::vector<char> in_;
};

}  // namespace nook

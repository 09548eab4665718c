// One quantity in the adjusted room and in every draw.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

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
  /// Sample standard deviation over the draws; 0 without draws.
  double sd() const {
    if (drawn.size() < 2) return 0;
    double mean = 0, sum = 0;
    for (double x : drawn) mean += x / static_cast<double>(drawn.size());
    for (double x : drawn) sum += (x - mean) * (x - mean);
    return std::sqrt(sum / static_cast<double>(drawn.size() - 1));
  }
  /// The value that a share `sure` of the draws does not exceed; the adjusted one without draws.
  double quantile(double sure) const {
    if (drawn.empty()) return adjusted;
    std::vector<double> sorted = drawn;
    std::sort(sorted.begin(), sorted.end());
    const double place = std::ceil(sure * static_cast<double>(sorted.size())) - 1;
    return sorted[static_cast<std::size_t>(std::clamp(place, 0.0, sorted.size() - 1.0))];
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

 private:
  std::vector<char> in_;
};

}  // namespace nook

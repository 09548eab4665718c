// Each box stands in every bin that it touches.
#include "safety/bins.h"

#include <algorithm>
#include <cmath>

namespace nook::safe {
namespace {

constexpr double kBin = 150;    // mm; chosen, somewhat more than the radius of a head
constexpr int kMostBins = 200;  // each way; what lies outside goes into the last ones

}  // namespace

Bins::Bins(const std::vector<Box2>& boxes) {
  if (boxes.empty()) return;
  all_ = boxes.front();
  for (const Box2& box : boxes) {
    all_.low = {std::min(all_.low.x, box.low.x), std::min(all_.low.y, box.low.y)};
    all_.high = {std::max(all_.high.x, box.high.x), std::max(all_.high.y, box.high.y)};
  }
  columns_ = std::min(kMostBins, 1 + static_cast<int>((all_.high.x - all_.low.x) / kBin));
  rows_ = std::min(kMostBins, 1 + static_cast<int>((all_.high.y - all_.low.y) / kBin));
  bins_.resize(static_cast<std::size_t>(columns_) * rows_);
  for (int k = 0; k < static_cast<int>(boxes.size()); ++k)
    for (int r = row(boxes[k].low.y); r <= row(boxes[k].high.y); ++r)
      for (int c = column(boxes[k].low.x); c <= column(boxes[k].high.x); ++c)
        bins_[r * columns_ + c].push_back(k);
}

int Bins::column(double x) const {
  return static_cast<int>(std::clamp((x - all_.low.x) / kBin, 0.0, columns_ - 1.0));
}

int Bins::row(double y) const {
  return static_cast<int>(std::clamp((y - all_.low.y) / kBin, 0.0, rows_ - 1.0));
}

std::vector<int> Bins::near(Vec2 p, double reach) const {
  if (bins_.empty()) return {};
  const int left = column(p.x - reach), right = column(p.x + reach);
  const int low = row(p.y - reach), high = row(p.y + reach);
  std::vector<int> found;
  for (int r = low; r <= high; ++r)
    for (int c = left; c <= right; ++c) {
      const std::vector<int>& bin = bins_[r * columns_ + c];
      found.insert(found.end(), bin.begin(), bin.end());
    }
  if (low == high && left == right) return found;
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  return found;
}

double Bins::farthest(Vec2 p) const {
  return std::max(norm(p - all_.low), norm(p - all_.high)) + norm(all_.high - all_.low);
}

}  // namespace nook::safe

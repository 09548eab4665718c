// Laplacian eigenfunctions of a rectangle, weighted by the spectral density of the squared
// exponential.
#include "room/field.h"

#include <algorithm>
#include <array>
#include <numbers>

#include "base/invariant.h"

namespace nook {
namespace {

constexpr double kMargin =
    2.5;  // reaches beyond the surface; images there weigh exp(-12.5). Chosen
constexpr double kHighest = 4.6;  // reach x wave number kept; the rest holds 4e-6 of sd^2. Chosen
constexpr double kPi = std::numbers::pi;

// Spectral density of sd 1 mm in one dimension (Rasmussen and Williams 2006, eq. 4.9).
double density(double wave, double reach) {
  return std::sqrt(2 * kPi) * reach * std::exp(-reach * reach * wave * wave / 2);
}

// sin(k t) for k = 1 .. out.size(), by the Chebyshev recurrence; error under 1e-13 for 100 terms.
void fill_sines(double t, double scale, std::vector<double>& out) {
  const double twice = 2 * std::cos(t);
  double before = 0, now = scale * std::sin(t);
  for (double& s : out) {
    s = now;
    now = twice * now - before;
    before = s;
  }
}

// Four sums side by side: one after the other each would wait for the last.
double product(const double* a, const double* b, std::size_t n) {
  double sum[4] = {0, 0, 0, 0};
  std::size_t i = 0;
  for (; i + 4 <= n; i += 4)
    for (std::size_t k = 0; k < 4; ++k) sum[k] += a[i + k] * b[i + k];
  for (; i < n; ++i) sum[0] += a[i] * b[i];
  return (sum[0] + sum[1]) + (sum[2] + sum[3]);
}

// The sines at the heights asked last: a row of a wall is asked at one height, two walls in turn.
class RecentSines {
 public:
  const std::vector<double>& at(double t, double scale, int count) {
    for (Row& row : rows_)
      if (row.t == t && row.scale == scale && static_cast<int>(row.sines.size()) == count)
        return row.sines;
    next_ = (next_ + 1) % rows_.size();
    Row& row = rows_[next_];
    row.t = t;
    row.scale = scale;
    row.sines.resize(count);
    fill_sines(t, scale, row.sines);
    return row.sines;
  }

 private:
  struct Row {
    double t = 0, scale = 0;
    std::vector<double> sines;
  };
  std::array<Row, 4> rows_;
  std::size_t next_ = 0;
};

}  // namespace

FieldBasis::FieldBasis(Vec2 low, Vec2 high, double reach) : reach_(reach) {
  require(reach >= 200, "a field's reach is at least 200 mm");
  require(low.x < high.x && low.y < high.y, "a field's rectangle is not empty");
  const double margin = kMargin * reach;
  inside_low_ = low;
  inside_high_ = high;
  low_ = low - Vec2{margin, margin};
  span_ = high - low + Vec2{2 * margin, 2 * margin};
  count_x_ = static_cast<int>(kHighest / reach * span_.x / kPi);
  count_y_ = static_cast<int>(kHighest / reach * span_.y / kPi);
  for (int i = 1; i <= count_x_; ++i)
    for (int j = 1; j <= count_y_; ++j) {
      const double wave_x = kPi * i / span_.x, wave_y = kPi * j / span_.y;
      if (reach * std::hypot(wave_x, wave_y) > kHighest) continue;
      modes_.push_back({i - 1, j - 1});
      prior_sd_.push_back(std::sqrt(density(wave_x, reach) * density(wave_y, reach)));
    }
}

// Modes with the same x follow one another, y from 0 on: act(x, the first of them, how many).
template <class Act>
void FieldBasis::each_x(Act act) const {
  const std::size_t n = modes_.size();
  for (std::size_t k = 0; k < n;) {
    const std::size_t first = k;
    while (k < n && modes_[k].x == modes_[first].x) ++k;
    act(modes_[first].x, first, k - first);
  }
}

void FieldBasis::sines(Vec2 at, std::vector<double>& x, std::vector<double>& y) const {
  at.x = std::clamp(at.x, inside_low_.x, inside_high_.x);
  at.y = std::clamp(at.y, inside_low_.y, inside_high_.y);
  x.resize(count_x_);
  y.resize(count_y_);
  fill_sines(kPi * (at.x - low_.x) / span_.x, std::sqrt(2 / span_.x), x);
  fill_sines(kPi * (at.y - low_.y) / span_.y, std::sqrt(2 / span_.y), y);
}

std::vector<double> FieldBasis::values(Vec2 at) const {
  std::vector<double> x, y, out;
  sines(at, x, y);
  out.reserve(modes_.size());
  for (const Mode& m : modes_) out.push_back(x[m.x] * y[m.y]);
  return out;
}

double FieldBasis::sum(const std::vector<double>& weights, Vec2 at) const {
  thread_local std::vector<double> x;
  thread_local RecentSines recent;
  at.x = std::clamp(at.x, inside_low_.x, inside_high_.x);
  at.y = std::clamp(at.y, inside_low_.y, inside_high_.y);
  x.resize(count_x_);
  fill_sines(kPi * (at.x - low_.x) / span_.x, std::sqrt(2 / span_.x), x);
  const std::vector<double>& y =
      recent.at(kPi * (at.y - low_.y) / span_.y, std::sqrt(2 / span_.y), count_y_);
  double total = 0;
  each_x([&](int mode, std::size_t first, std::size_t count) {
    total += x[mode] * product(weights.data() + first, y.data(), count);
  });
  return total;
}

std::vector<double> FieldBasis::row(const std::vector<double>& weights, double y) const {
  std::vector<double> sines(count_y_), row(count_x_);
  y = std::clamp(y, inside_low_.y, inside_high_.y);
  fill_sines(kPi * (y - low_.y) / span_.y, std::sqrt(2 / span_.y), sines);
  each_x([&](int mode, std::size_t first, std::size_t count) {
    row[mode] = product(weights.data() + first, sines.data(), count);
  });
  return row;
}

double FieldBasis::row_sum(const std::vector<double>& row, double x) const {
  x = std::clamp(x, inside_low_.x, inside_high_.x);
  const double t = kPi * (x - low_.x) / span_.x, twice = 2 * std::cos(t);
  double before = 0, now = std::sqrt(2 / span_.x) * std::sin(t), total = 0;
  for (const double weight : row) {
    total += weight * now;
    const double next = twice * now - before;
    before = now;
    now = next;
  }
  return total;
}

}  // namespace nook

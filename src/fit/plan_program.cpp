// Lexicographic minimization: each stage's best value becomes a bound of the next.
#include "fit/plan_program.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "fit/touching.h"

namespace nook {
namespace {

constexpr double kDownward = 1e7;  // weight of a stage against the move, see nearest_allowed
// A move that takes away less of the overlap than this share of itself is not made: a piece that
// jams between two faces is not slid out along them. Chosen.
constexpr double kWedge = 0.05;
constexpr double kSlack = 1e-6;  // mm given to later stages; a thousandth of what is printed

double gap_at(const PlanGap& g, const Moves& x) {
  return g.at + g.slope[0] * x[0] + g.slope[1] * x[1] + g.slope[2] * x[2] - g.wanted;
}

constexpr double kSame = 1e-4;  // mm; overlaps this equal are settled together

// What a half-plane is about: a gap and what is asked of it, or a sign of the price.
enum class Asked : std::int64_t { price = 1, overlap, kept, closed, settled };
std::int64_t key_of(const PlanGap& g, Asked asked) {
  return (static_cast<std::int64_t>(g.body) << 32 | g.spot) << 3 | static_cast<std::int64_t>(asked);
}
std::int64_t price_key(int signs) {
  return static_cast<std::int64_t>(signs) << 3 | static_cast<std::int64_t>(Asked::price);
}

// gap - wanted >= least - bound + price
HalfPlane at_least(const PlanGap& g, double least, double bound, double price) {
  return {{g.slope[0], g.slope[1], g.slope[2], bound, -price},
          least + g.wanted - g.at,
          key_of(g, bound > 0 ? Asked::overlap : Asked::kept)};
}

// gap - wanted <= most + bound
HalfPlane at_most(const PlanGap& g, double most, double bound) {
  return {{-g.slope[0], -g.slope[1], -g.slope[2], bound, 0},
          g.at - g.wanted - most,
          key_of(g, bound > 0 ? Asked::closed : Asked::settled)};
}

using Gaps = std::vector<const PlanGap*>;

class Program {
 public:
  Program(const std::vector<PlanGap>& gaps, const Moves& from, StopsOnTheWay& stops)
      : gaps_(gaps), stops_(stops), planes_(kept_planes()) {
    planes_.clear();
    price_from(from);
  }

  // bound >= price >= kWedge x (the three moves from `from` on, together).
  void price_from(const Moves& from) {
    price_[0] = {{0, 0, 0, 1, -1}, 0, price_key(8)};
    for (int signs = 0; signs < 8; ++signs) {
      HalfPlane& plane = price_[1 + signs] = {{0, 0, 0, 0, 1}, 0, price_key(signs)};
      for (int k = 0; k < 3; ++k) {
        plane.slope[k] = (signs >> k) % 2 == 0 ? kWedge : -kWedge;
        plane.least += plane.slope[k] * from[k];
      }
    }
  }

  // Those that overlap most first; what they must is granted to them alone, not to the others.
  // The greatest overlap that is left.
  template <class Which>
  double least_overlap(Which which) {
    Gaps open;
    for (const PlanGap& g : gaps_)
      if (which(g)) open.push_back(&g);
    double greatest = 0;
    while (!open.empty()) {
      const std::size_t settled = planes_.size();
      planes_.insert(planes_.end(), price_.begin(), price_.end());
      for (const PlanGap* g : open) planes_.push_back(at_least(*g, 0, 1, 1));
      if (!solve(settled)) break;
      const double overlap = overlap_of(open);
      greatest = std::max(greatest, overlap);
      grant(overlap, open);
    }
    return greatest;
  }

  template <class Which>
  void least_gap(Which which) {
    const std::size_t settled = planes_.size();
    for (const PlanGap& g : gaps_)
      if (which(g)) planes_.push_back(at_most(g, 0, 1));
    if (planes_.size() == settled || !solve(settled)) return;
    double most = -1e300;
    for (const PlanGap& g : gaps_)
      if (which(g)) most = std::max(most, gap_at(g, x_));
    for (const PlanGap& g : gaps_)
      if (which(g)) planes_.push_back(at_most(g, most + kSlack, 0));
  }

  void least_stray(double turn) {
    const std::size_t settled = planes_.size();
    planes_.push_back({{0, 0, 1, 1, 0}, turn, 0});
    planes_.push_back({{0, 0, -1, 1, 0}, -turn, 0});
    if (!solve(settled)) return;
    const double stray = std::abs(x_[2] - turn) + kSlack;
    planes_.push_back({{0, 0, 1, 0, 0}, turn - stray, 0});
    planes_.push_back({{0, 0, -1, 0, 0}, -turn - stray, 0});
  }

  Moves least_move() {
    if (const auto y = nearest_allowed({}, planes_, next_stops())) x_ = {(*y)[0], (*y)[1], (*y)[2]};
    return x_;
  }

 private:
  // One list for all programs of a thread, for its memory: they are solved one after the other.
  static std::vector<HalfPlane>& kept_planes() {
    thread_local std::vector<HalfPlane> planes;
    return planes;
  }

  Stops* next_stops() {
    if (step_ == stops_.size()) stops_.emplace_back();
    return &stops_[step_++];
  }

  double overlap_of(const Gaps& gaps) const {
    double overlap = 0;
    for (const PlanGap* g : gaps) overlap = std::max(overlap, -gap_at(*g, x_));
    return overlap;
  }

  // Settles every body that is overlapped this much; all of them where nothing is.
  void grant(double overlap, Gaps& open) {
    const double least = -std::max(overlap, 0.0) - kSlack;
    if (overlap < kSlack) {
      for (const PlanGap* g : open) planes_.push_back(at_least(*g, least, 0, 0));
      return open.clear();
    }
    std::vector<int> settled;
    for (const PlanGap* g : open)
      if (-gap_at(*g, x_) > overlap - kSame) settled.push_back(g->body);
    std::erase_if(open, [&](const PlanGap* g) {
      const bool now = std::find(settled.begin(), settled.end(), g->body) != settled.end();
      if (now) planes_.push_back(at_least(*g, least, 0, 0));
      return now;
    });
  }

  // The bound as small as may be under all planes; those from `settled` on are dropped again. What
  // the bound then is, is read off the moves themselves, so that the later stages can always be
  // met.
  bool solve(std::size_t settled) {
    const auto y = nearest_allowed({0, 0, 0, -kDownward, 0}, planes_, next_stops());
    if (y) x_ = {(*y)[0], (*y)[1], (*y)[2]};
    planes_.resize(settled);
    return y.has_value();
  }

  const std::vector<PlanGap>& gaps_;
  StopsOnTheWay& stops_;
  std::size_t step_ = 0;
  std::array<HalfPlane, 9> price_;  // the bound of an overlap pays for the moves too
  std::vector<HalfPlane>& planes_;
  Moves x_{};
};

}  // namespace

namespace {

// The overlaps settled; how deep the deepest is of what may not be cut.
double settle_overlap(Program& program) {
  const double depth = program.least_overlap([](const PlanGap& g) { return !g.cut; });
  program.least_overlap([](const PlanGap& g) { return g.cut; });
  return depth;
}

// Home against the tight targets alone.
Moves tight_first(const std::vector<PlanGap>& gaps, const Wishes& wishes) {
  StopsOnTheWay unknown;
  Program program(gaps, {}, unknown);
  const auto tight = [&](const PlanGap& g) {
    return std::find(wishes.tight.begin(), wishes.tight.end(), g.target) != wishes.tight.end();
  };
  program.least_overlap(tight);
  for (int target : wishes.tight)
    program.least_gap([&](const PlanGap& g) { return g.target == target; });
  return program.least_move();
}

}  // namespace

Moves pushed_home(const std::vector<PlanGap>& gaps, const Wishes& wishes, StopsOnTheWay& stops) {
  std::optional<Program> program(std::in_place, gaps, Moves{}, stops);
  // What does not go in anyway is not slid off its tight targets to overlap a little less.
  if (settle_overlap(*program) > kTouching && !wishes.tight.empty()) {
    program.emplace(gaps, tight_first(gaps, wishes), stops);
    settle_overlap(*program);
  }
  for (int target : wishes.tight)
    program->least_gap([&](const PlanGap& g) { return g.target == target; });
  if (wishes.parallel) program->least_stray(wishes.parallel_at);
  // One target that is tight already has its greatest gap made small.
  const bool done = wishes.tight.size() == 1 && std::all_of(gaps.begin(), gaps.end(), [&](auto& g) {
                      return g.target < 0 || g.target == wishes.tight[0];
                    });
  if (!done) program->least_gap([](const PlanGap& g) { return g.target >= 0; });
  return program->least_move();
}

}  // namespace nook

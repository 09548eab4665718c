// Lexicographic minimization: each stage's best value becomes a bound of the next.
#include "fit/plan_program.h"

#include <algorithm>
#include <cmath>

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

// gap - wanted >= least - bound
HalfPlane at_least(const PlanGap& g, double least, double bound) {
  return {{g.slope[0], g.slope[1], g.slope[2], bound}, least + g.wanted - g.at};
}

// gap - wanted <= most + bound
HalfPlane at_most(const PlanGap& g, double most, double bound) {
  return {{-g.slope[0], -g.slope[1], -g.slope[2], bound}, g.at - g.wanted - most};
}

class Program {
 public:
  explicit Program(const std::vector<PlanGap>& gaps) : gaps_(gaps) {
    for (const PlanGap& g : gaps)
      for (int k = 0; k < 3; ++k) free_[k] = free_[k] || g.slope[k] != 0;
  }

  // Those that overlap most first; what they must is granted to them alone, not to the others.
  template <class Which>
  void least_overlap(Which which) {
    std::vector<const PlanGap*> open;
    for (const PlanGap& g : gaps_)
      if (which(g)) open.push_back(&g);
    while (!open.empty()) {
      std::vector<HalfPlane> stage;
      add_priced({{0, 0, 0, 1}, 0}, stage);
      for (const PlanGap* g : open) add_priced(at_least(*g, 0, 1), stage);
      if (!solve(stage)) return;
      double overlap = 0;
      for (const PlanGap* g : open) overlap = std::max(overlap, -gap_at(*g, x_));
      grant(overlap, open);
    }
  }

  template <class Which>
  void least_gap(Which which) {
    std::vector<HalfPlane> stage;
    for (const PlanGap& g : gaps_)
      if (which(g)) stage.push_back(at_most(g, 0, 1));
    if (stage.empty() || !solve(stage)) return;
    double most = -1e300;
    for (const PlanGap& g : gaps_)
      if (which(g)) most = std::max(most, gap_at(g, x_));
    for (const PlanGap& g : gaps_)
      if (which(g)) planes_.push_back(at_most(g, most + kSlack, 0));
  }

  void least_stray(double turn) {
    if (!solve({{{0, 0, 1, 1}, turn}, {{0, 0, -1, 1}, -turn}})) return;
    const double stray = std::abs(x_[2] - turn) + kSlack;
    planes_.push_back({{0, 0, 1, 0}, turn - stray});
    planes_.push_back({{0, 0, -1, 0}, -turn - stray});
  }

  Moves least_move() {
    if (const auto y = nearest_allowed({}, planes_)) x_ = {(*y)[0], (*y)[1], (*y)[2]};
    return x_;
  }

 private:
  // The bound pays for the widest of the moves too: once for each way of each move that is free.
  void add_priced(const HalfPlane& plane, std::vector<HalfPlane>& stage) const {
    bool priced = false;
    for (int k = 0; k < 3; ++k) {
      if (!free_[k]) continue;
      priced = true;
      for (double way : {kWedge, -kWedge}) {
        stage.push_back(plane);
        stage.back().slope[k] += way;
      }
    }
    if (!priced) stage.push_back(plane);
  }

  // Settles every gap that overlaps this much; all of them where nothing does.
  void grant(double overlap, std::vector<const PlanGap*>& open) {
    const bool none = overlap < kSlack;
    std::erase_if(open, [&](const PlanGap* g) {
      const bool settled = none || -gap_at(*g, x_) > overlap - kSame;
      if (settled) planes_.push_back(at_least(*g, -std::max(overlap, 0.0) - kSlack, 0));
      return settled;
    });
  }

  // The bound as small as may be; what it then is, is read off the moves themselves, so that the
  // later stages can always be met.
  bool solve(const std::vector<HalfPlane>& stage) {
    std::vector<HalfPlane> all = planes_;
    all.insert(all.end(), stage.begin(), stage.end());
    const auto y = nearest_allowed({0, 0, 0, -kDownward}, all);
    if (y) x_ = {(*y)[0], (*y)[1], (*y)[2]};
    return y.has_value();
  }

  const std::vector<PlanGap>& gaps_;
  std::vector<HalfPlane> planes_;
  Moves x_{};
  bool free_[3] = {false, false, false};
};

}  // namespace

Moves pushed_home(const std::vector<PlanGap>& gaps, const Wishes& wishes) {
  Program program(gaps);
  program.least_overlap([](const PlanGap& g) { return !g.cut; });
  program.least_overlap([](const PlanGap& g) { return g.cut; });
  for (int target : wishes.tight)
    program.least_gap([&](const PlanGap& g) { return g.target == target; });
  if (wishes.parallel) program.least_stray(wishes.parallel_at);
  program.least_gap([](const PlanGap& g) { return g.target >= 0; });
  return program.least_move();
}

}  // namespace nook

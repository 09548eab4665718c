// Lexicographic minimization: each stage's best value becomes a bound of the next.
#include "fit/plan_program.h"

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kDownward = 1e7;  // weight of a stage against the move, see nearest_allowed
constexpr double kSlack = 1e-6;    // mm given to later stages; a thousandth of what is printed
constexpr int kBound = 3;          // index of the unknown that is made small

class Program {
 public:
  explicit Program(const std::vector<PlanGap>& gaps) : gaps_(gaps) {}

  template <class Which>
  void least_overlap(Which which) {
    std::vector<HalfPlane> stage{{{0, 0, 0, 1}, 0}};
    for (const PlanGap& g : gaps_)
      if (which(g)) stage.push_back(keep(g, 1));
    const double overlap = std::max(0.0, least(stage));
    for (const PlanGap& g : gaps_)
      if (which(g)) {
        HalfPlane plane = keep(g, 0);
        plane.least -= overlap + kSlack;
        planes_.push_back(plane);
      }
  }

  template <class Which>
  void least_gap(Which which) {
    std::vector<HalfPlane> stage;
    for (const PlanGap& g : gaps_)
      if (which(g)) stage.push_back(close(g, 1));
    if (stage.empty()) return;
    const double most = least(stage);
    for (const PlanGap& g : gaps_)
      if (which(g)) {
        HalfPlane plane = close(g, 0);
        plane.least -= most + kSlack;
        planes_.push_back(plane);
      }
  }

  void least_stray(double turn) {
    const double stray = least({{{0, 0, 1, 1}, turn}, {{0, 0, -1, 1}, -turn}});
    planes_.push_back({{0, 0, 1, 0}, turn - stray - kSlack});
    planes_.push_back({{0, 0, -1, 0}, -turn - stray - kSlack});
  }

  Moves least_move() {
    const auto y = nearest_allowed({}, planes_);
    return y ? Moves{(*y)[0], (*y)[1], (*y)[2]} : Moves{};
  }

 private:
  // gap - wanted >= -bound
  static HalfPlane keep(const PlanGap& g, double bound) {
    return {{g.slope[0], g.slope[1], g.slope[2], bound}, g.wanted - g.at};
  }
  // gap - wanted <= bound
  static HalfPlane close(const PlanGap& g, double bound) {
    return {{-g.slope[0], -g.slope[1], -g.slope[2], bound}, g.at - g.wanted};
  }

  double least(const std::vector<HalfPlane>& stage) const {
    std::vector<HalfPlane> all = planes_;
    all.insert(all.end(), stage.begin(), stage.end());
    const auto y = nearest_allowed({0, 0, 0, -kDownward}, all);
    return y ? (*y)[kBound] : 0;
  }

  const std::vector<PlanGap>& gaps_;
  std::vector<HalfPlane> planes_;
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

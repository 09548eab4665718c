// Each change tried without and smaller: what was needed when it was made need not be in the end.
#include <algorithm>

#include "adapt/progress.h"

namespace nook {
namespace {

class Easing {
 public:
  Easing(const Bench& bench, Progress& progress)
      : bench_(bench), progress_(progress), wanted_(progress.now) {
    rough_ = flaws_among(bench.roughly(progress.now.draft));
  }

  bool run() {
    bool eased = false;
    for (int k = static_cast<int>(progress_.made.size()) - 1; k >= 0; --k)
      eased = without(k) || smaller(k) || eased;
    return eased;
  }

 private:
  bool without(int k) {
    std::vector<Candidate> made = progress_.made;
    made.erase(made.begin() + k);
    return taken(std::move(made));
  }

  // By half of it first, at last by single marks.
  bool smaller(int k) {
    const double step = bench_.workbench(progress_.now).rounding.step.mm;
    bool eased = false;
    for (int marks = 32; marks >= 1; marks /= 2)
      while (lessened_by(k, marks * step)) eased = true;
    return eased;
  }

  double size_at(int k) const { return size_of(progress_.made[k].steps.front()); }

  bool lessened_by(int k, double mm) {
    std::vector<Candidate> made = progress_.made;
    if (size_at(k) <= mm) return false;
    made[k].steps.front() = lessened(made[k].steps.front(), mm);
    return taken(std::move(made));
  }

  bool taken(std::vector<Candidate> made) {
    auto draft = redone(progress_.first, made);
    if (!draft || spoils_roughly(*draft)) return false;
    Trial next = bench_.fully(std::move(*draft));
    if (!as_good(next, wanted_)) return false;
    progress_.now = std::move(next);
    progress_.made = std::move(made);
    return true;
  }

  // What is missed in the adjusted room by far more than it was cannot be as good.
  bool spoils_roughly(const Revision& draft) const {
    const auto after = flaws_among(bench_.roughly(draft));
    return std::any_of(after.begin(), after.end(), [&](const Flaw& flaw) {
      const Flaw *old = flaw_named(rough_, flaw.key),
                 *known = flaw_named(wanted_.findings, flaw.key);
      return flaw.over_mm > (old ? old->over_mm : 0) + kMarginal + 2 * (known ? known->sd_mm : 0);
    });
  }

  const Bench& bench_;
  Progress& progress_;
  const Trial wanted_;
  std::vector<Flaw> rough_;  // flaws in the adjusted room alone
};

}  // namespace

bool ease(const Bench& bench, Progress& progress) {
  return Easing(bench, progress).run();
}

}  // namespace nook

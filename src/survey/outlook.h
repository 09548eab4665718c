// What further readings would change before they are taken: covariances of what is undecided and of
// readings that can be taken.
#pragma once

#include <vector>

#include "survey/report.h"
#include "survey/solution.h"

namespace nook {

/// A reading that a person can take, or a run of them in one go: what they say of the room, each
/// with its own error of variance `noise`, mm^2.
struct Takable {
  NextReading reading;
  std::vector<Functional> of;
  double noise = 0;
  double minutes = 0;
  int numbers = 1;  // that are read
};

/// What nothing says yet has a wide prior here, so that it too has a variance. Readings taken are
/// marked off; quantities are divided by their tolerance.
class Outlook {
 public:
  /// `wanted` are functionals over their tolerance. What neither readings nor wide priors determine
  /// is left out.
  Outlook(const RoomModel& model, const Solution& solution, std::vector<Functional> wanted,
          std::vector<Takable> takable);

  const std::vector<Takable>& takable() const { return takable_; }
  /// Sum of the variances of what is wanted.
  double open() const;
  /// The largest of them.
  double worst() const;
  /// How much of open() a reading would take away.
  double drop(int reading) const;
  /// Sum of what the variances are over 1.
  double excess() const;
  /// How much of excess() a reading would take away.
  double relief(int reading) const;
  /// The reading not taken yet that takes away most of open(), a minute; -1 where none takes any.
  int best() const;
  /// The same for excess(), among all: one may be taken again.
  int most_relief() const;
  void take(int reading);
  /// The least redundancy that a number of a reading taken just now would have.
  double redundancy(int reading) const;

 private:
  int best_by(double (Outlook::*worth)(int) const, bool once) const;
  std::vector<double> drops(int reading) const;
  struct Gain;
  Gain gain(int reading, int rows) const;

  std::vector<Takable> takable_;
  std::vector<bool> taken_;
  std::vector<int> first_;  // column of each reading's first number
  int wanted_ = 0;
  Dense covariance_;  // wanted first
};

}  // namespace nook

// Collects cautions: compares what was measured with a limit and keeps what is worth saying.
#pragma once

#include <string>
#include <vector>

#include "base/verdict.h"
#include "safety/caution.h"
#include "safety/limit.h"

namespace nook::safe {

/// The chance that a quantity is at most, or at least, a value; known exactly, it is 1 or 0, and
/// the value itself keeps both.
double chance_at_most(Measured quantity, double value);
double chance_at_least(Measured quantity, double value);

/// What one check found.
struct Found {
  std::string_view id;
  std::string where;
  Words text;
  std::vector<Of> limits;  // cited as its source, in this order
  std::string source;      // where no limit says it
  std::optional<Measured> value;
};

class Cautions {
 public:
  explicit Cautions(double sure) : sure_(sure) {}

  double sure() const { return sure_; }
  /// `chance_well`: that the limit is kept. Kept surely: nothing is said. `worst` is what it is
  /// where it is surely passed; in between it is a caution that cannot be told.
  void judge(double chance_well, const Found& found, Severity worst);
  void judge(double chance_well, const Found& found);
  /// Says it in any case.
  void say(const Found& found, Severity severity);
  void say(const Found& found);
  /// Says that something is wanting without which nothing is sure.
  void want(const Found& found);

  Verdict verdict() const { return verdict_; }
  /// Worst first; equal ones in the order they were found.
  std::vector<Caution> sorted() const;

 private:
  void keep(const Found& found, Severity severity, bool decided);

  double sure_;
  Verdict verdict_ = Verdict::fits;
  std::vector<Caution> cautions_;
};

}  // namespace nook::safe

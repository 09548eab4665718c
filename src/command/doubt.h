// A reading held against what the others foretell, before it is accepted.
#pragma once

#include <optional>

#include "base/measured.h"
#include "room/survey.h"

namespace nook {

/// A reading that disagrees with the others: what it says, and what they say it should.
struct Doubt {
  double said_mm = 0;
  Measured expected_mm;
};

/// The worst disagreement among the readings that `after` has and `before` has not; none where all
/// agree or nothing foretells them.
std::optional<Doubt> doubt(const Survey& before, const Survey& after);

}  // namespace nook

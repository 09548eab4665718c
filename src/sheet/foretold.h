// A straight tape between two marks, foretold, in words and as JSON.
#pragma once

#include <optional>
#include <string>

#include "base/measured.h"
#include "sheet/answer.h"

namespace nook {

/// What a tape between two marks should come to. `value` is missing where the readings do not say.
struct Foretold {
  std::string ends[2];             // names: of a wall where `along` is given, else of a mark
  std::optional<Length> along[2];  // from the corner that the two walls share
  std::optional<Length> height;    // of both marks above the floor
  std::optional<Measured> value;   // mm, at exact marks
  double tape_sd = 0;              // mm, of a tape between marks laid off by hand
  std::string why_not;             // what is missing
};

/// "from 47" along the left wall to 36" along the right wall, both 30" up".
std::string marks_of(const Foretold& foretold, const Rounding& rounding);

/// The lines that answer `--expect`.
std::string foretold_text(const Foretold& foretold, const Style& style);

/// {value_mm, sd_mm, tape_sd_mm}, or nulls and {missing}.
Json foretold_json(const Foretold& foretold);

}  // namespace nook

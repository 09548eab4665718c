// Sentences with lengths in them, so that one caution can be said in inches or in millimeters.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "base/measured.h"
#include "base/notation.h"
#include "safety/limit.h"

namespace nook {

struct Load {
  double newtons = 0;
};
/// What stands at one {} of a sentence: a length of this room (mm), a load, a published limit,
/// text.
using Said = std::variant<Measured, Load, Of, std::string>;

/// A sentence; each {} stands for the next thing said.
struct Words {
  std::string pattern;
  std::vector<Said> said;
};

/// The sentence with its lengths rounded; a length that depends on the room carries its
/// plus-or-minus: `41 3/8" (give or take 1/16")`.
std::string spoken(const Words& words, Rounding rounding);

/// "a", "a and b", "a, b and c".
std::string joined(const std::vector<std::string>& names);

}  // namespace nook

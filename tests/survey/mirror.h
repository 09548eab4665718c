// The mirror image of a survey, and its readings in another order or unit.
#pragma once

#include <random>

#include "room/survey.h"

namespace nook::test {

/// The same room seen in a mirror: walls from right to left, names and ids kept.
Survey mirrored(const Survey& survey);

/// Entries of every list in another order, ids kept.
Survey shuffled(const Survey& survey, std::mt19937_64& random);

}  // namespace nook::test

// A sample's room made another one: other angles, leans and widths, measured again with a tape's
// errors.
#pragma once

#include <cstdint>
#include <random>
#include <string>

#include "adapted.h"

namespace nook::test {

using Random = std::mt19937_64;

/// Even and normal numbers, the same on every machine.
double even(Random& random, double low, double high);
double gaussian(Random& random, double sd);

/// The room of `rooms/NAME` with its readings as another room of that kind would give them: each
/// corner turned by N(0, 1 degree), each wall leaning N(0, 2 mm/m) more, a back wall between two
/// others N(0, 4 mm) longer, the floor N(0, 1.5 mm) up or down at each spot; read with N(0, 0.4 mm)
/// to the tape's marks. Seed 0: the room as it is.
MeasuredRoom varied_room(const std::string& name, std::uint64_t seed, int draws);

}  // namespace nook::test

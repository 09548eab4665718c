// Slopes, loads, densities, angles and plain numbers as typed; each refuses what is not its own.
#pragma once

#include <string_view>
#include <tl/expected.hpp>

#include "base/length.h"
#include "base/notation.h"

namespace nook {

/// `0.5 mm/m`, `1/16 in/ft`: rise over run, a pure number. The unit must be there.
tl::expected<double, NotationFault> read_slope(std::string_view text);
/// `180 lb`, `80 kg`, `350 N`: newtons. The unit must be there.
tl::expected<double, NotationFault> read_load(std::string_view text);
/// `36 lb/ft3`, `600 kg/m3`: kilograms per cubic meter. The unit must be there.
tl::expected<double, NotationFault> read_density(std::string_view text);
/// `91.3`, `91 1/2`: degrees, bare, within a full turn either way.
tl::expected<Angle, NotationFault> read_angle(std::string_view text);

}  // namespace nook

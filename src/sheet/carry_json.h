// The way in as a JSON answer.
#pragma once

#include <string>

#include "sheet/answer.h"
#include "shop/carry.h"

namespace nook {

/// The answer `carry`; millimeters, not rounded; null where nothing is known. `how` is in words, in
/// the job's units.
Json carry_json(const CarryAnswer& carry, const std::string& job);
/// The same as text, for those who do not see the library.
std::string carry_json_text(const CarryAnswer& carry, const std::string& job);

}  // namespace nook

// The cutting list as a JSON answer.
#pragma once

#include <string>

#include "sheet/answer.h"
#include "shop/cut.h"

namespace nook {

/// The answer `cut`; millimeters, not rounded; outlines in the piece frame.
Json cut_json(const CutAnswer& cut, const std::string& job);
/// The same as text, for those who do not see the library.
std::string cut_json_text(const CutAnswer& cut, const std::string& job);

}  // namespace nook

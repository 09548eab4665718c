// The changes of a design as a JSON answer.
#pragma once

#include <string>

#include "adapt/adapt.h"
#include "sheet/answer.h"

namespace nook {

/// The answer `adapt` as text; `reading` names what settles what is open, where anything does.
std::string adapt_json_text(const AdaptAnswer& adapted, const std::string& job,
                            const std::string& reading);

}  // namespace nook

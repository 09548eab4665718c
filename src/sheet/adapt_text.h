// The changes of a design in the words of the trade.
#pragma once

#include <string>

#include "adapt/adapt.h"
#include "sheet/answer.h"

namespace nook {

/// The page that `nookfit adapt` prints: verdict of the new job, each change with its reason, what
/// contradicts what, what is open. `folder` is where the new job went; `reading` names what settles
/// what is open, where anything does. 80 columns.
std::string adapt_text(const AdaptAnswer& adapted, const std::string& folder,
                       const std::string& reading, const Style& style);

}  // namespace nook

// What each reading is called on a page, in the words of the trade.
#pragma once

#include <map>
#include <string>

#include "room/survey.h"

namespace nook {

/// Of every reading by its id: `left/right corner, diagonal 36" to 48", taken again (line 41)`.
/// Lengths in the survey's own units.
std::map<std::string, std::string> reading_names(const Survey& survey);

}  // namespace nook

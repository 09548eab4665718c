// Sheets as one HTML file each.
#pragma once

#include <string>

#include "sheet/sheet.h"

namespace nook {

/// The whole file: needs no network and no script; phone, desktop, paper, dark and light; headings,
/// table heads and titled pictures for a screen reader.
std::string html(const Sheet& sheet);

}  // namespace nook

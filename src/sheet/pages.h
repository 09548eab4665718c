// Sheets laid out on paper, page by page.
#pragma once

#include <vector>

#include "sheet/sheet.h"

namespace nook {

/// The pages of a sheet as drawings in paper mm, in order; a section marked `one_page` gets exactly
/// one. Words break at the margin, tables between rows with their heads repeated, pictures never.
std::vector<Drawing> pages_of(const Sheet& sheet);

}  // namespace nook

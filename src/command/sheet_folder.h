// Files of sheets put into a folder.
#pragma once

#include <string>
#include <vector>

#include "sheet/sheet_set.h"

namespace nook {

/// Makes the folder where it is missing and writes each file whole. Throws std::system_error.
void put_into(const std::string& folder, const std::vector<SheetFile>& files);

}  // namespace nook

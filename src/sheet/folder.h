// The folder that sheets go into.
#pragma once

#include <string>

namespace nook {

/// Makes the folder and those above it where they are missing. Throws std::system_error.
void make_folder(const std::string& path);

}  // namespace nook

// What the program and the libraries in it are.
#pragma once

#include <string>

namespace nook {

/// The program's version on the first line, then each library it was built with.
std::string version_text();

}  // namespace nook

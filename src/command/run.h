// From the words of the command line to the exit status.
#pragma once

#include <string>
#include <vector>

#include "command/request.h"

namespace nook {

/// Carries out a whole command line, the program's own name left out.
ExitStatus run(const std::vector<std::string>& words);

}  // namespace nook

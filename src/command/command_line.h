// Reads a command line by the table of commands.
#pragma once

#include "command/request.h"

namespace nook {

/// What `words` ask of `command`; `words` are what stands after its name. Throws UsageFault.
Request asked(const Command& command, const std::vector<std::string>& words);

/// A word that names no command: the fault, with the nearest command.
UsageFault unknown_command(const std::string& word);

}  // namespace nook

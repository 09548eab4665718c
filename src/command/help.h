// Help texts, from the table of commands.
#pragma once

#include <string>

#include "command/request.h"

namespace nook {

/// What the program is for, an example, its commands.
std::string short_help();

/// The short help with the common options and the exit statuses.
std::string long_help();

/// Examples first, then what the command does and takes.
std::string help_of(const Command& command);

}  // namespace nook

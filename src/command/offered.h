// What the three shells' completions have in common.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "command/table.h"

namespace nook {

/// Every command, `help` last.
std::vector<Command> offered_commands();
/// Their names with blanks between.
std::string offered_names();

/// Whether an option wants a folder.
bool is_folder(const Option& option);

std::string joined(const std::vector<std::string_view>& words);
/// `text` with a backslash before each character of `signs`.
std::string escaped(std::string_view text, std::string_view signs);

}  // namespace nook

// The manual page, from the table of commands.
#pragma once

#include <string>

namespace nook {

/// The page for `man nookfit`, in the macros of man(7).
std::string man_page();

}  // namespace nook

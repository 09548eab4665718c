// What a shell offers while a command line is typed, from the table of commands.
#pragma once

#include <string>

namespace nook {

/// A script for bash, to be sourced.
std::string bash_completion();
/// A function for zsh, to stand in its fpath as `_nookfit`.
std::string zsh_completion();
/// A script for fish.
std::string fish_completion();

}  // namespace nook

// What fish offers while a command line is typed.
#include "command/completions.h"

#include <fmt/format.h>

#include "command/offered.h"

namespace nook {
namespace {

std::string fish_row(const Command& command, const Option& option) {
  const bool is_short = option.name.rfind("--", 0) != 0;
  std::string row =
      fmt::format("complete -c nookfit -n '__fish_seen_subcommand_from {}' -{} {}", command.name,
                  is_short ? "s" : "l", option.name.substr(is_short ? 1 : 2));
  if (!option.choices.empty()) row += fmt::format(" -x -a '{}'", joined(option.choices));
  if (is_folder(option)) row += " -x -a '(__fish_complete_directories)'";
  if (!option.value.empty() && option.choices.empty() && !is_folder(option)) row += " -x";
  return row + fmt::format(" -d '{}'\n", escaped(option.help, "'\\"));
}

}  // namespace

std::string fish_completion() {
  std::string text =
      "# Completes nookfit's command lines in fish; printed by 'nookfit help --as fish'.\n"
      "complete -c nookfit -f\n";
  for (const Command& command : offered_commands()) {
    text += fmt::format("complete -c nookfit -n __fish_use_subcommand -a {} -d '{}'\n",
                        command.name, escaped(command.summary, "'\\"));
  }
  for (const Command& command : offered_commands()) {
    const std::string operands =
        operand(command) == "JOB" ? "(__fish_complete_directories)" : offered_names();
    text += fmt::format("complete -c nookfit -n '__fish_seen_subcommand_from {}' -a '{}'\n",
                        command.name, operands);
    for (const Option& option : options_of(command)) text += fish_row(command, option);
  }
  return text;
}

}  // namespace nook

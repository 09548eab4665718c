// Help texts, from the table of commands.
#include "command/help.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/table.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

std::string statuses() {
  std::string text = "Exit status:\n";
  for (const Status& row : exit_statuses()) {
    text += fmt::format("  {}  {}\n", row.number, row.meaning);
  }
  return text;
}

std::string term(const Option& option) {
  return option.value.empty() ? std::string(option.name)
                              : fmt::format("{} {}", option.name, option.value);
}

std::string listing(const std::vector<Option>& options) {
  std::string text;
  for (const Option& option : options) {
    text += wrapped(option.help, kPageWidth, fmt::format("  {:<16} ", term(option)));
  }
  return text;
}

}  // namespace

std::string short_help() {
  std::string text = fmt::format("{}\n\n  nookfit check rooms/lookout\n\nCommands:\n", kPurpose);
  for (const Command& row : commands()) {
    text += wrapped(row.summary, kPageWidth, fmt::format("  {:<7} ", row.name));
  }
  return text + fmt::format("  {:<7} {}\n\n", help_command().name, help_command().summary) +
         wrapped(kJobIs, kPageWidth, "");
}

std::string long_help() {
  return short_help() + "\nOptions of every command:\n" + listing(common_options()) + "\n" +
         statuses() +
         "\n'nookfit help --as man' (bash, zsh, fish) prints the man page or what a shell\n"
         "completes, 'nookfit --version' what the program is made of.\n";
}

std::string help_of(const Command& command) {
  std::string text =
      wrapped(fmt::format("nookfit {}: {}", command.name, command.summary), kPageWidth, "");
  text += "\nExamples:\n";
  for (const std::string_view example : command.examples) text += fmt::format("  {}\n", example);
  text += fmt::format("\nUsage: nookfit {} [{}] [OPTIONS]\n\n", command.name, operand(command));
  text += wrapped(command.about, kPageWidth, "") + "\nOptions:\n";
  return text + listing(options_of(command)) + "\n" + statuses();
}

}  // namespace nook

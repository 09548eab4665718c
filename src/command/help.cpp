// Help texts, from the table of commands.
#include "command/help.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/table.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr std::string_view kStatuses =
    "Exit status:\n"
    "  0  all is well and sure\n"
    "  1  something does not fit, misses, is suspect, or cannot be told yet\n"
    "  2  bad input or usage\n"
    "  3  a fault of the program or the machine\n";

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
  std::string text =
      "nookfit checks how shop-made pieces fit into a measured room corner.\n\n"
      "  nookfit check rooms/lookout\n\n"
      "Commands:\n";
  for (const Command& row : commands()) {
    text += wrapped(row.summary, kPageWidth, fmt::format("  {:<7} ", row.name));
  }
  return text + "  help    what a command does and takes: nookfit help check\n\n" +
         wrapped(
             "A job is a folder with what was measured (room.toml), what is to be built "
             "(design.toml) and the pieces as cut (pieces.toml). Left out, it is the folder you "
             "are in.",
             kPageWidth, "");
}

std::string long_help() {
  return short_help() + "\nOptions of every command:\n" + listing(common_options()) + "\n" +
         std::string(kStatuses);
}

std::string help_of(const Command& command) {
  std::string text =
      wrapped(fmt::format("nookfit {}: {}", command.name, command.summary), kPageWidth, "");
  text += "\nExamples:\n";
  for (const std::string_view example : command.examples) text += fmt::format("  {}\n", example);
  text += fmt::format("\nUsage: nookfit {} [JOB] [OPTIONS]\n\n", command.name);
  text += wrapped(command.about, kPageWidth, "") + "\nOptions:\n";
  std::vector<Option> all = command.options;
  all.insert(all.end(), common_options().begin(), common_options().end());
  return text + listing(all) + "\n" + std::string(kStatuses);
}

}  // namespace nook

// What the three shells' completions have in common.
#include "command/offered.h"

#include <fmt/format.h>

namespace nook {

std::vector<Command> offered_commands() {
  std::vector<Command> all = commands();
  all.push_back(help_command());
  return all;
}

std::string offered_names() {
  std::vector<std::string_view> names;
  for (const Command& row : commands()) names.push_back(row.name);
  names.push_back(help_command().name);
  return joined(names);
}

bool is_folder(const Option& option) {
  return option.value == "FOLDER" || option.value == "NEWJOB";
}

std::string joined(const std::vector<std::string_view>& words) {
  return fmt::format("{}", fmt::join(words, " "));
}

std::string escaped(std::string_view text, std::string_view signs) {
  std::string safe;
  for (const char c : text) {
    if (signs.find(c) != std::string_view::npos) safe += '\\';
    safe += c;
  }
  return safe;
}

}  // namespace nook

// What zsh offers while a command line is typed.
#include "command/completions.h"

#include <fmt/format.h>

#include "command/offered.h"

namespace nook {
namespace {

// Within single quotes of bash and zsh.
std::string quoted(std::string_view text) {
  std::string safe;
  for (const char c : text) safe += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return safe;
}

std::string zsh_option(const Option& option) {
  std::string spec = fmt::format("{}[{}]", option.name, escaped(option.help, "[]:\\"));
  if (option.name == "--help") spec = "(- *)" + spec;
  if (!option.value.empty()) spec += fmt::format(":{}:", option.value);
  if (!option.choices.empty()) spec += fmt::format("({})", joined(option.choices));
  if (is_folder(option)) spec += "_directories";
  return fmt::format("        '{}' \\\n", quoted(spec));
}

}  // namespace

std::string zsh_completion() {
  std::string list, cases;
  for (const Command& command : offered_commands()) {
    list += fmt::format("    '{}:{}'\n", command.name, quoted(escaped(command.summary, ":\\")));
    cases += fmt::format("    {})\n      _arguments \\\n", command.name);
    for (const Option& option : options_of(command)) cases += zsh_option(option);
    cases += operand(command) == "JOB" ? "        ':JOB:_directories' ;;\n"
                                       : "        ':COMMAND:(" + offered_names() + ")' ;;\n";
  }
  return "#compdef nookfit\n"
         "# Completes nookfit's command lines in zsh; printed by 'nookfit help --as zsh'.\n"
         "_nookfit() {\n  local -a commands=(\n" +
         list +
         "  )\n"
         "  if ((CURRENT == 2)); then\n    _describe command commands\n    return\n  fi\n"
         "  shift words\n  ((CURRENT--))\n"
         "  case $words[1] in\n" +
         cases + "  esac\n}\n_nookfit \"$@\"\n";
}

}  // namespace nook

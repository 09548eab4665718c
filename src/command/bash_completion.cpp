// What bash offers while a command line is typed.
#include "command/completions.h"

#include <fmt/format.h>

#include <set>

#include "command/offered.h"

namespace nook {
namespace {

std::string bash_value(const Option& option) {
  std::string offer;
  if (!option.choices.empty()) offer = fmt::format("_nookfit_words '{}'; ", joined(option.choices));
  if (is_folder(option)) offer = "_nookfit_folders; ";
  return fmt::format("    {}) {}return ;;\n", option.name, offer);
}

// An option means the same in each command that takes it.
std::string bash_values() {
  std::string cases;
  std::set<std::string_view> seen;
  for (const Command& command : offered_commands()) {
    for (const Option& option : options_of(command)) {
      if (!option.value.empty() && seen.insert(option.name).second) cases += bash_value(option);
    }
  }
  return cases;
}

std::string bash_options() {
  std::string cases;
  for (const Command& command : offered_commands()) {
    std::vector<std::string_view> names;
    for (const Option& option : options_of(command)) names.push_back(option.name);
    cases += fmt::format("      {}) _nookfit_words '{}' ;;\n", command.name, joined(names));
  }
  return cases;
}

}  // namespace

std::string bash_completion() {
  return "# Completes nookfit's command lines in bash; printed by 'nookfit help --as bash'.\n"
         "_nookfit_words() { mapfile -t COMPREPLY < <(compgen -W \"$1\" -- \"$word\"); }\n"
         "_nookfit_folders() {\n"
         "  compopt -o filenames 2>/dev/null\n"
         "  mapfile -t COMPREPLY < <(compgen -d -- \"$word\")\n"
         "}\n"
         "_nookfit() {\n"
         "  local word=${COMP_WORDS[COMP_CWORD]}\n"
         "  COMPREPLY=()\n"
         "  if ((COMP_CWORD == 1)); then\n"
         "    _nookfit_words '" +
         offered_names() +
         "'\n    return\n  fi\n"
         "  case ${COMP_WORDS[COMP_CWORD - 1]} in\n" +
         bash_values() +
         "  esac\n"
         "  if [[ $word == -* ]]; then\n"
         "    case ${COMP_WORDS[1]} in\n" +
         bash_options() +
         "    esac\n"
         "  elif [[ ${COMP_WORDS[1]} == help ]]; then\n"
         "    _nookfit_words '" +
         offered_names() +
         "'\n  else\n    _nookfit_folders\n  fi\n}\n"
         "complete -F _nookfit nookfit\n";
}

}  // namespace nook

// From the words of the command line to the exit status.
#include "command/run.h"

#include <algorithm>

#include "command/command_line.h"
#include "command/help.h"
#include "command/output.h"
#include "command/table.h"
#include "sheet/answer.h"

namespace nook {
namespace {

const Command& wanted(const std::string& word) {
  const Command* command = command_named(word);
  if (!command) throw unknown_command(word);
  return *command;
}

ExitStatus helped(const std::vector<std::string>& words) {
  print(words.size() < 2 ? long_help() : help_of(wanted(words[1])));
  return ExitStatus::well;
}

ExitStatus carried_out(const std::vector<std::string>& words) {
  const std::string first = words.empty() ? "" : words.front();
  if (words.empty()) return print(short_help()), ExitStatus::well;
  if (first == "-h" || first == "--help" || first == "help") return helped(words);
  if (first == "--version") return print("nookfit " NOOKFIT_VERSION "\n"), ExitStatus::well;
  const Command& command = wanted(first);
  const Request request = asked(command, {words.begin() + 1, words.end()});
  if (request.has("--help")) return print(help_of(command)), ExitStatus::well;
  return command.run(request);
}

ExitStatus misused(const std::vector<std::string>& words, const UsageFault& fault) {
  const Diagnostic said{"nookfit", {}, fault.what(), fault.code, fault.help};
  complain(message(said, ""));
  if (std::find(words.begin(), words.end(), "--json") != words.end()) {
    print(bad_input(command_named(words.front()) ? words.front() : "", ".", {said}));
  }
  return ExitStatus::bad_input;
}

}  // namespace

ExitStatus run(const std::vector<std::string>& words) {
  try {
    return carried_out(words);
  } catch (const UsageFault& fault) {
    return misused(words, fault);
  }
}

}  // namespace nook

// From the words of the command line to the exit status.
#include "command/run.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/command_line.h"
#include "command/completions.h"
#include "command/help.h"
#include "command/man_page.h"
#include "command/output.h"
#include "command/table.h"
#include "command/version.h"
#include "sheet/answer.h"

namespace nook {
namespace {

const Command& wanted(const std::string& word) {
  const Command* command = command_named(word);
  if (!command) throw unknown_command(word);
  return *command;
}

std::string page_as(const std::string& what) {
  if (what == "man") return man_page();
  if (what == "bash") return bash_completion();
  if (what == "zsh") return zsh_completion();
  if (what == "fish") return fish_completion();
  throw UsageFault(fmt::format("'{}' is no page of help", what), "help-page",
                   "one of man, bash, zsh, fish");
}

std::string helped(const std::vector<std::string>& words) {
  const std::string topic = words.size() < 2 ? "" : words[1];
  if (topic == "--as") return page_as(words.size() < 3 ? "" : words[2]);
  if (topic.empty()) return long_help();
  return help_of(topic == help_command().name ? help_command() : wanted(topic));
}

ExitStatus carried_out(const std::vector<std::string>& words) {
  const std::string first = words.empty() ? "" : words.front();
  if (words.empty()) return print(short_help()), ExitStatus::well;
  if (first == "-h" || first == "--help" || first == "help")
    return print(helped(words)), ExitStatus::well;
  if (first == "--version") return print(version_text()), ExitStatus::well;
  const Command& command = wanted(first);
  const Request request = asked(command, {words.begin() + 1, words.end()});
  if (request.has("--help")) return print(help_of(command)), ExitStatus::well;
  return command.run(request);
}

// The job as typed, before the words were understood: the first that is no option.
std::string job_of(const std::vector<std::string>& words) {
  const bool given = words.size() > 1 && !words[1].starts_with("-");
  return given ? words[1] : ".";
}

ExitStatus misused(const std::vector<std::string>& words, const UsageFault& fault) {
  const Diagnostic said{"nookfit", {}, fault.what(), fault.code, fault.help};
  complain(message(said, ""));
  if (std::find(words.begin(), words.end(), "--json") != words.end()) {
    print(bad_input(command_named(words.front()) ? words.front() : "", job_of(words), {said}));
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

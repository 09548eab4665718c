// Reads a command line by the table of commands.
#include "command/command_line.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "base/diagnostic.h"
#include "command/table.h"

namespace nook {
namespace {

std::string help_hint(const Command& command) {
  return fmt::format("'nookfit help {}' lists what it takes", command.name);
}

void declare(CLI::App& app, const std::vector<Option>& options) {
  app.set_help_flag();
  app.allow_extras();
  app.add_option("JOB")->multi_option_policy(CLI::MultiOptionPolicy::Throw);
  for (const Option& option : options) {
    const std::string name(option.name == "--help" ? "-h,--help" : option.name);
    if (option.value.empty()) {
      app.add_flag(name)->disable_flag_override();
    } else {
      app.add_option(name)->expected(option.least, option.most);
    }
  }
}

/// CLI11 names the option at the start of what it says, a switch without its dashes.
bool speaks_of(const std::string& said, const Option& option) {
  const std::string bare(option.name.substr(option.name.find_first_not_of('-')));
  return said.rfind(std::string(option.name) + ":", 0) == 0 || said.rfind(bare + " was", 0) == 0;
}

/// The rest is said in our words.
UsageFault misused(const Command& command, const std::string& said) {
  for (const Option& option : options_of(command)) {
    if (!speaks_of(said, option)) continue;
    if (option.value.empty()) {
      return {fmt::format("{} takes no value", option.name), "option-takes-no-value",
              help_hint(command)};
    }
    const std::string count =
        option.most > 1 ? fmt::format("{} to {} of ", option.least, option.most) : std::string();
    return {fmt::format("{} wants {}{}, once", option.name, count, option.value), "option-value",
            help_hint(command)};
  }
  return {said, "bad-usage", help_hint(command)};
}

UsageFault not_taken(const Command& command, const std::string& word) {
  if (word.rfind('-', 0) != 0 || word == "-") {
    return {fmt::format("'{}' is one job too many", word), "extra-argument",
            "give one folder; a name with spaces wants quotes"};
  }
  std::vector<std::string_view> names;
  const std::vector<Option> options = options_of(command);
  for (const Option& option : options) names.push_back(option.name);
  const std::string_view near = nearest(word, names);
  return {fmt::format("{} takes no option '{}'", command.name, word), "unknown-option",
          near.empty() ? help_hint(command) : fmt::format("did you mean {}?", near)};
}

void parse(CLI::App& app, const Command& command, const std::vector<std::string>& words) {
  try {
    app.parse(std::vector<std::string>(words.rbegin(), words.rend()));  // it takes them reversed
  } catch (const CLI::ParseError& fault) {
    throw misused(command, fault.what());
  }
  if (!app.remaining().empty()) throw not_taken(command, app.remaining().front());
}

}  // namespace

Request asked(const Command& command, const std::vector<std::string>& words) {
  CLI::App app;
  const std::vector<Option> options = options_of(command);
  declare(app, options);
  parse(app, command, words);
  Request request;
  request.command = &command;
  for (const Option& option : options) {
    const CLI::Option* given = app.get_option(std::string(option.name));
    if (given->count() > 0) request.given[std::string(option.name)] = given->results();
  }
  const CLI::Option* job = app.get_option("JOB");
  if (job->count() > 0) request.job = job->results().front();
  return request;
}

UsageFault unknown_command(const std::string& word) {
  if (word.rfind('-', 0) == 0) {
    return {fmt::format("'{}' stands where a command is wanted", word), "option-before-command",
            "options stand after the command: nookfit check JOB --json"};
  }
  std::vector<std::string_view> names = {"help"};
  for (const Command& row : commands()) names.push_back(row.name);
  const std::string_view near = nearest(word, names);
  return {fmt::format("no command is called '{}'", word), "unknown-command",
          near.empty() ? "'nookfit' alone lists the commands"
                       : fmt::format("did you mean '{}'?", near)};
}

}  // namespace nook

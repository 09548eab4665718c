// A command as one row of the table, and what a person asked of it.
#pragma once

#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace nook {

/// What the program leaves behind for the shell.
enum class ExitStatus { well = 0, not_well = 1, bad_input = 2, broken = 3 };

/// One option: a switch where `value` is empty.
struct Option {
  std::string_view name;                       // "--round"
  std::string_view value;                      // "LENGTH"
  std::string_view help;                       // what it does, in a line or two
  int least = 1, most = 1;                     // how many values it takes
  std::vector<std::string_view> choices = {};  // the only values it takes; empty: any
};

struct Request;

/// One row of the table: help, parsing, manual page and completions all come from it.
struct Command {
  std::string_view name;
  std::string_view summary;                // one line
  std::string_view about;                  // a paragraph
  std::vector<std::string_view> examples;  // whole command lines
  std::vector<Option> options;             // besides the common ones
  ExitStatus (*run)(const Request&);       // null: answered before any job is read
};

/// What was asked on the command line.
struct Request {
  const Command* command = nullptr;
  std::string job = ".";
  std::map<std::string, std::vector<std::string>, std::less<>> given;  // option -> its values

  bool has(std::string_view option) const { return given.find(option) != given.end(); }
  /// The single value of an option, or `fallback` where it was not given.
  std::string value(std::string_view option, std::string_view fallback) const {
    const auto found = given.find(option);
    return found == given.end() ? std::string(fallback) : found->second.front();
  }
};

/// A command line that cannot be carried out. Caught once, in run().
struct UsageFault : std::runtime_error {
  UsageFault(const std::string& what, std::string named, std::string advice)
      : std::runtime_error(what), code(std::move(named)), help(std::move(advice)) {}
  std::string code;  // kebab-case, permanent
  std::string help;  // what to do
};

}  // namespace nook

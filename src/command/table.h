// The table of commands and options.
#pragma once

#include "command/request.h"

namespace nook {

/// Every command, in the order in which they are listed.
const std::vector<Command>& commands();

/// The options that every command takes.
const std::vector<Option>& common_options();

/// `help`, which is answered before any job is read and is no row of commands().
const Command& help_command();

/// What an exit status says.
struct Status {
  int number;
  std::string_view meaning;
};
const std::vector<Status>& exit_statuses();

inline constexpr std::string_view kPurpose =
    "nookfit checks how shop-made pieces fit into a measured room corner.";
inline constexpr std::string_view kJobIs =
    "A job is a folder with what was measured (room.toml), what is to be built (design.toml) and "
    "the pieces as cut (pieces.toml). Left out, it is the folder you are in.";

/// What stands after a command's name, as help calls it.
std::string_view operand(const Command& command);

/// The options of a command: its own, then the common ones; `help` has only its own.
std::vector<Option> options_of(const Command& command);

/// The command of that name, or null; `help` is none.
const Command* command_named(std::string_view name);

/// Each row's own file defines its run.
ExitStatus run_check(const Request& request);
ExitStatus run_survey(const Request& request);
ExitStatus run_room(const Request& request);
ExitStatus run_fit(const Request& request);
ExitStatus run_drill(const Request& request);
ExitStatus run_adapt(const Request& request);
ExitStatus run_cut(const Request& request);
ExitStatus run_verify(const Request& request);
ExitStatus run_carry(const Request& request);
ExitStatus run_safety(const Request& request);
ExitStatus run_sheet(const Request& request);

}  // namespace nook

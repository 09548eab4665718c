// The table of commands and options.
#pragma once

#include "command/request.h"

namespace nook {

/// Every command, in the order in which they are listed.
const std::vector<Command>& commands();

/// The options that every command takes.
const std::vector<Option>& common_options();

/// The command of that name, or null.
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

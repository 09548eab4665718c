// The only place that prints.
#pragma once

#include <string>

#include "base/diagnostic.h"
#include "base/verdict.h"
#include "command/request.h"
#include "job/job.h"

namespace nook {

/// Writes to standard output whole; throws std::system_error where it will not take it.
void print(const std::string& text);
/// Writes to standard error.
void complain(const std::string& text);

/// Prints an answer (the verdict alone with --quiet, unless it is JSON) and says how to exit.
ExitStatus told(const Request& request, Verdict verdict, const std::string& page);

/// Complains about the faults of a job's files; with --json the answer "bad input" is printed too.
ExitStatus told(const Request& request, const Faults& faults);

}  // namespace nook

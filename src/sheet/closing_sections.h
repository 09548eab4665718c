// What ends a sheet: what is not sure yet, and the cautions.
#pragma once

#include <string>
#include <vector>

#include "sheet/sheet.h"
#include "sheet/sheet_job.h"

namespace nook {

/// What is not sure, each with what to do; `else_said` alone where all is.
SheetList unsure(const std::vector<Finding>& findings, const std::string& else_said);

/// What does not fit, or cannot be told yet.
SheetSection fit_section(const SheetJob& job);

/// The cautions, each with its source, and who decides.
SheetSection caution_section(const SheetJob& job);

}  // namespace nook

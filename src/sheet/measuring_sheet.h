// The sheet for measuring: what was read and where the tape was held, and what to take next.
#pragma once

#include "sheet/sheet.h"
#include "sheet/sheet_job.h"

namespace nook {

/// Works without a fit and with a room whose readings do not determine it yet (`known` false): then
/// without pictures of the room.
Sheet measuring_sheet(const SheetJob& job, bool known);

}  // namespace nook

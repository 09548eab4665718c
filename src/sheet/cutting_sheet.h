// The sheet for the shop.
#pragma once

#include "sheet/sheet.h"
#include "sheet/sheet_job.h"

namespace nook {

/// Cutting list, layout on sheets and boards, what to buy; then each piece with its dimensions,
/// what is cut into it, the measures that prove it right, and the gaps along its edges. Lines too
/// long for a template stand as a list to copy onto a stick. Requires: job.cut.
Sheet cutting_sheet(const SheetJob& job);

}  // namespace nook

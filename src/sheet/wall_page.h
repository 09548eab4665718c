// The page taped to a wall: one side, one wall as one faces it, numbers first.
#pragma once

#include <optional>
#include <string>

#include "sheet/sheet.h"
#include "sheet/sheet_job.h"

namespace nook {

/// The page of one wall; none where nothing hangs on or meets it.
/// 1. Every number runs from the plumb line, the level line or a piece's own edge; never a chain.
/// 2. Framing is told to 1/16 in or 1 mm, whatever rounding was asked for.
/// 3. Numbers stand before cautions; no chance and no statistics stand on it.
std::optional<SheetSection> wall_page(const SheetJob& job, int wall);

/// Framing is not laid out finer than this.
Rounding framing_rounding(Rounding rounding);

}  // namespace nook

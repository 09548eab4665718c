// The sheet for the afternoon of installing.
#pragma once

#include "sheet/sheet.h"
#include "sheet/sheet_job.h"

namespace nook {

/// Order of work with its pictures, a page to tape on each wall, holes from piece to piece, story
/// poles, the way in where it is tight, what does not hold or fit yet, cautions.
Sheet installing_sheet(const SheetJob& job);

}  // namespace nook

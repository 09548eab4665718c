// The readings that a job's design still asks for.
#pragma once

#include "command/worked.h"
#include "sheet/measuring_list.h"

namespace nook {

/// The plan for the job's design, or for the room alone; it points into `job`.
MeasuringJob measuring_of(const Job& job, const RoomShape& room);

}  // namespace nook

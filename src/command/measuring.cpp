// From what a design hangs on to the readings that tell it.
#include "command/measuring.h"

namespace nook {

MeasuringJob measuring_of(const Job& job, const RoomShape& room) {
  DesignWants wants;
  if (job.design) wants = design_wants(*job.design, room);
  return {job.survey, job.design ? &*job.design : nullptr,
          measuring_plan(job.survey, job.origin_corner, wants.plan), std::move(wants.studs)};
}

}  // namespace nook

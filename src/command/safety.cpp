// `nookfit safety`: cautions with their sources.
#include "safety/safety.h"

#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/safety_json.h"
#include "sheet/safety_text.h"

namespace nook {

ExitStatus run_safety(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const RoomWorked room = drawn_room_of(*job);
  const FitAnswer fit = fit_of(*job, room, style.sure);
  const DrillAnswer drill = drill_of(*job, room, fit, style.sure);
  const SafetyAnswer answer = safety_of(*job, room, {fit, drill}, style.sure);
  return told(
      request, answer.verdict,
      request.has("--json") ? safety_json_text(answer, request.job) : safety_text(answer, style));
}

}  // namespace nook

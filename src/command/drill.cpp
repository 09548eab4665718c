// `nookfit drill`: the holes and what they hold.
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/check_json.h"
#include "sheet/drill_text.h"

namespace nook {

ExitStatus run_drill(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const RoomWorked room = drawn_room_of(*job);
  const FitAnswer fit = fit_of(*job, room, style.sure);
  const DrillAnswer answer = drill_of(*job, room, fit, style.sure);
  return told(
      request, answer.verdict,
      request.has("--json") ? drill_json_text(answer, request.job) : drill_text(answer, style));
}

}  // namespace nook

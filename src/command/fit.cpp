// `nookfit fit`: the design in the room as found.
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/check_json.h"
#include "sheet/fit_text.h"

namespace nook {

ExitStatus run_fit(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const RoomWorked room = drawn_room_of(*job);
  FitAnswer answer = fit_of(*job, room, style.sure);
  name_next(room, answer);
  return told(request, answer.verdict,
              request.has("--json") ? fit_json_text(answer, request.job) : fit_text(answer, style));
}

}  // namespace nook

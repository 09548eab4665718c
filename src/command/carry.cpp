// `nookfit carry`: the way in.
#include "shop/carry.h"

#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/carry_json.h"
#include "sheet/carry_text.h"

namespace nook {

ExitStatus run_carry(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const RoomWorked room = drawn_room_of(*job);
  const FitAnswer fit = fit_of(*job, room, style.sure);
  const CarryAnswer answer = carry_of(*job, room, fit, style.sure);
  return told(
      request, answer.verdict,
      request.has("--json") ? carry_json_text(answer, request.job) : carry_text(answer, style));
}

}  // namespace nook

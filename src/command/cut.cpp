// `nookfit cut`: the cutting list.
#include "shop/cut.h"

#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/cut_json.h"
#include "sheet/cut_text.h"

namespace nook {

ExitStatus run_cut(const Request& request) {
  const auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey.units);
  const RoomWorked room = drawn_room_of(*job);
  const FitAnswer fit = fit_of(*job, room, style.sure);
  const DrillAnswer drill = drill_of(*job, room, fit, style.sure);
  const CutAnswer answer = cut({*job->design, fit, &drill, job->survey.units});
  return told(request, answer.verdict,
              request.has("--json") ? cut_json_text(answer, request.job) : cut_text(answer, style));
}

}  // namespace nook

// `nookfit cut`: the cutting list.
#include "shop/cut.h"

#include "command/output.h"
#include "command/sheet_folder.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/cut_json.h"
#include "sheet/cut_text.h"

namespace nook {
namespace {

// The pieces' outlines and templates, where a folder for them was named and the room is known.
void put_templates(const Request& request, const JobScene& scene, const CutAnswer& answer) {
  if (request.has("-o") && answer.known)
    put_into(request.value("-o", ""), piece_files(scene, answer));
}

}  // namespace

ExitStatus run_cut(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const RoomWorked room = drawn_room_of(*job);
  const FitAnswer fit = fit_of(*job, room, style.sure);
  const DrillAnswer drill = drill_of(*job, room, fit, style.sure);
  const CutAnswer answer = cut({*job->design, fit, &drill});
  put_templates(request,
                {job->survey, room.shape(), room.draws, room.report, fit.pieces, fit.frames,
                 &*job->design, &fit, &drill, style.rounding},
                answer);
  return told(request, answer.verdict,
              request.has("--json") ? cut_json_text(answer, request.job) : cut_text(answer, style));
}

}  // namespace nook

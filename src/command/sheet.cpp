// `nookfit sheet`: the sheets to hold, as files.
#include "command/foretell.h"
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "job/whole_file.h"
#include "safety/safety.h"
#include "sheet/folder.h"
#include "sheet/sheet_set.h"
#include "shop/carry.h"
#include "shop/cut.h"

namespace nook {
namespace {

std::vector<SheetFile> files_of(const Job& job, const FitAnswer& fit, const RoomWorked& room,
                                const Style& style) {
  const Design& design = *job.design;
  const RoomShape& shape = room.adjustment.room();
  const bool known = room.adjustment.complete();
  const DrillAnswer drill = drill_of(job, room, fit, style.sure);
  const CutAnswer list = cut({design, fit, &drill, job.survey.units});
  const CarryAnswer way = carry({job.survey, design, shape, room.draws, fit, style.sure});
  const SafetyAnswer cautions = safety(
      {job.survey, design, shape, room.draws, fit.pieces, fit.frames, &fit, known, style.sure});
  const JobScene scene{job.survey, shape,   room.draws, room.report, fit.pieces,
                       fit.frames, &design, &fit,       &drill,      style.rounding};
  return sheet_files({design.title, scene, &list, &way, &cautions, proof_of(job, room, fit), style},
                     known);
}

}  // namespace

ExitStatus run_sheet(const Request& request) {
  if (!request.has("-o"))
    throw UsageFault("sheet needs a folder", "no-folder", "say where: nookfit sheet JOB -o FOLDER");
  const auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey.units);
  const std::string folder = request.value("-o", "");
  const RoomWorked room = drawn_room_of(*job);
  const FitAnswer fit = fit_of(*job, room, style.sure);
  const std::vector<SheetFile> files = files_of(*job, fit, room, style);
  make_folder(folder);
  for (const SheetFile& file : files) write_whole(folder + "/" + file.name, file.bytes);
  return told(request, fit.verdict,
              request.has("--json") ? sheet_json(files, request.job, fit.verdict)
                                    : sheet_text(files, folder, fit.verdict, style));
}

}  // namespace nook

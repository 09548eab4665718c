// `nookfit sheet`: the sheets to hold, as files.
#include "command/foretell.h"
#include "command/measuring.h"
#include "command/output.h"
#include "command/sheet_folder.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "safety/safety.h"
#include "shop/carry.h"
#include "shop/cut.h"

namespace nook {
namespace {

constexpr int kNext = 3;  // readings that the measuring sheet asks for. Chosen

// Without a room the fewest readings that make one; else what helps most with what is open.
void add_readings(SheetJob& sheet, const Job& job, const RoomWorked& room) {
  if (room.adjustment.complete()) {
    std::vector<Undecided> open;
    for (const OpenFinding& finding : sheet.fit().undecided) open.push_back(finding.hangs_on);
    sheet.to_take = room.adjustment.measure_next(open, kNext);
    return;
  }
  const MeasuringPlan plan = measuring_of(job, room.adjustment.room()).plan;
  for (const auto* list : {&plan.readings, &plan.ceiling})
    for (const PlannedReading& planned : *list) {
      sheet.to_take.push_back(planned.reading);
      sheet.twice.push_back(planned.twice);
    }
  sheet.minutes = plan.minutes;
}

std::vector<SheetFile> files_of(const Job& job, const FitAnswer& fit, const RoomWorked& room,
                                const Style& style) {
  const Design& design = *job.design;
  const RoomShape& shape = room.shape();
  const bool known = room.adjustment.complete();
  const DrillAnswer drill = drill_of(job, room, fit, style.sure);
  const CutAnswer list = cut({design, fit, &drill});
  const CarryAnswer way = carry({job.survey, design, shape, room.draws, fit, style.sure});
  const SafetyAnswer cautions = safety_of(job, room, {fit, drill}, style.sure);
  const JobScene scene{job.survey, shape,   room.draws, room.report, fit.pieces,
                       fit.frames, &design, &fit,       &drill,      style.rounding};
  SheetJob sheet{design.title, scene, &list, &way, &cautions, {}, {}, 0, proof_of(job, room, fit),
                 style};
  add_readings(sheet, job, room);
  return sheet_files(sheet, known);
}

}  // namespace

ExitStatus run_sheet(const Request& request) {
  if (!request.has("-o"))
    throw UsageFault("sheet needs a folder", "no-folder", "say where: nookfit sheet JOB -o FOLDER");
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const std::string folder = request.value("-o", "");
  const RoomWorked room = drawn_room_of(*job);
  const FitAnswer fit = fit_of(*job, room, style.sure);
  const std::vector<SheetFile> files = files_of(*job, fit, room, style);
  put_into(folder, files);
  return told(request, fit.verdict,
              request.has("--json") ? sheet_json(files, request.job, fit.verdict)
                                    : sheet_text(files, folder, fit.verdict, style));
}

}  // namespace nook

// `nookfit survey`: guided entry of the readings, or the sheet that says what to measure.
#include "command/entry.h"
#include "command/measuring.h"
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "job/file_text.h"
#include "job/job.h"
#include "sheet/measuring_text.h"
#include "sheet/room_text.h"
#include "sheet/survey_json.h"

namespace nook {
namespace {

std::string page_of(const Job& job, const RoomReport& report, const Style& style, int accepted) {
  const std::string what = accepted == 1 ? " reading" : " readings";
  return std::to_string(accepted) + what + " taken into " + job.folder + "/room.toml.\n\n" +
         room_text(report, job.survey, style);
}

bool has_walls(const std::string& folder) {
  const std::string file = folder + "/room.toml";
  const auto text = file_text(file, file);
  const auto survey = text ? parse_room(*text, file) : tl::unexpected(Diagnostics{});
  return text && (!survey || !survey->walls.empty());
}

// The first wall that the design names and that is not of its corner: on which side of it nobody
// says.
const Mention* third_wall(const Design& design) {
  for (const Mention& wall : design.walls_named)
    if (wall.name != design.corner[0] && wall.name != design.corner[1]) return &wall;
  return nullptr;
}

// A folder with a design, and no room.toml yet or one without walls: a room with the design's two
// walls, nothing read.
tl::expected<Job, Faults> job_to_measure(const std::string& folder) {
  const std::string file = folder + "/design.toml";
  const auto text = file_text(file, file);
  if (has_walls(folder) || !text) return read_job(folder);
  auto design = parse_design(*text, file);
  if (!design) return tl::unexpected(Faults{design.error(), {{file, *text}}});
  if (const Mention* third = third_wall(*design))
    return tl::unexpected(
        Faults{{{file, third->place, "the '" + third->name + "' wall is no wall of the corner",
                 "walls-not-known", "name all walls in room.toml, from left to right"}},
               {{file, *text}}});
  Job job;
  job.folder = folder;
  job.survey.units = design->units;
  for (const std::string& name : design->corner) {
    job.survey.walls.emplace_back();
    job.survey.walls.back().name = name;
  }
  job.survey.corners.emplace_back();
  job.design = std::move(*design);
  return job;
}

// Whatever of a job is there before the entry: a design alone says where readings matter.
tl::expected<Job, Faults> job_so_far(const std::string& folder) {
  if (has_room(folder)) return read_job(folder);
  Job job;
  const std::string file = folder + "/design.toml";
  if (!has_file(file)) return job;
  const auto text = file_text(file, file);
  if (!text) return tl::unexpected(Faults{{text.error()}, {}});
  auto design = parse_design(*text, file);
  if (!design) return tl::unexpected(Faults{design.error(), {{file, *text}}});
  job.design = std::move(*design);
  return job;
}

ExitStatus print_sheet(const Request& request) {
  auto job = job_to_measure(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const RoomWorked room = room_of(*job);
  const MeasuringJob sheet = measuring_of(*job, room.adjustment.room());
  const Verdict known = room_verdict(room.report);
  const Verdict verdict = measuring_verdict(measuring_stops(sheet, style.rounding), known);
  return told(request, verdict,
              request.has("--json") ? measuring_json(sheet, known, request.job)
                                    : measuring_text(sheet, known, style));
}

}  // namespace

ExitStatus run_survey(const Request& request) {
  if (request.has("--sheet")) return print_sheet(request);
  auto job = job_so_far(request.job);
  if (!job) return told(request, job.error());
  const bool json = request.has("--json"), fixed = request.has("--round") || request.has("--units");
  const Style asked = style_of(request, job->survey);
  RoomEntry entry(request.job, job->design ? &*job->design : nullptr, json);
  entry.walk(fixed ? &asked.rounding : nullptr);
  auto after = read_job(request.job);
  if (!after) return told(request, after.error());
  const Style style = style_of(request, after->survey);
  RoomWorked room = room_of(*after);
  name_next(room);
  return told(request, room_verdict(room.report),
              json ? survey_json_text(room.report, request.job)
                   : page_of(*after, room.report, style, entry.accepted()));
}

}  // namespace nook

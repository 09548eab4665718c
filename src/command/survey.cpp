// `nookfit survey`: guided entry of the readings.
#include "command/entry.h"
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "job/job.h"
#include "sheet/room_text.h"
#include "sheet/survey_json.h"

namespace nook {
namespace {

std::string page_of(const Job& job, const RoomReport& report, const Style& style, int accepted) {
  const std::string what = accepted == 1 ? " reading" : " readings";
  return std::to_string(accepted) + what + " taken into " + job.folder + "/room.toml.\n\n" +
         room_text(report, job.survey, style);
}

}  // namespace

ExitStatus run_survey(const Request& request) {
  std::optional<Job> job;
  if (has_room(request.job)) {
    auto read = read_job(request.job);
    if (!read) return told(request, read.error());
    job = std::move(*read);
  }
  const bool json = request.has("--json"), fixed = request.has("--round") || request.has("--units");
  const Style asked = style_of(request, job ? job->survey.units : Unit::inch);
  Entry entry(request.job, job && job->design ? &*job->design : nullptr, json);
  entry.walk(fixed ? &asked.rounding : nullptr);
  const auto after = read_job(request.job);
  if (!after) return told(request, after.error());
  const RoomReport report = room_of(*after).report;
  const Style style = style_of(request, after->survey.units);
  return told(request, room_verdict(report),
              json ? survey_json_text(report, request.job)
                   : page_of(*after, report, style, entry.accepted()));
}

}  // namespace nook

// `nookfit adapt`: the design changed to suit the room, as a new job.
#include "adapt/adapt.h"

#include <fmt/format.h>

#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/ticker.h"
#include "command/worked.h"
#include "job/new_job.h"
#include "sheet/adapt_json.h"
#include "sheet/adapt_text.h"

namespace nook {
namespace {

void check_folder(const std::string& job, const std::string& folder) {
  switch (refused_by(job, folder)) {
    case NewJobRefused::no:
      return;
    case NewJobRefused::same_folder:
      throw UsageFault("the new job would be written over the old one", "same-folder",
                       "name another folder: nookfit adapt JOB -o NEWJOB");
    case NewJobRefused::other_job:
      throw UsageFault(folder + " holds the job of another room", "other-job",
                       "name a folder that is not there yet");
  }
}

// What to measure where the new job cannot be told.
std::string next_reading(const RoomWorked& room, const FitAnswer& fit) {
  if (fit.verdict != Verdict::cannot_tell) return {};
  for (const Missing& missing : room.report.missing)
    if (missing.blocks) return missing.what;
  if (!room.adjustment.complete()) return {};
  std::vector<Undecided> undecided;
  for (const OpenFinding& open : fit.undecided) undecided.push_back(open.hangs_on);
  const auto next = room.adjustment.measure_next(undecided, 1);
  return next.empty() ? "" : next.front().reading;
}

}  // namespace

ExitStatus run_adapt(const Request& request) {
  if (!request.has("-o"))
    throw UsageFault("adapt needs a folder for the new job", "no-folder",
                     "say where: nookfit adapt JOB -o NEWJOB");
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const std::string folder = request.value("-o", "");
  check_folder(request.job, folder);
  const Style style = style_of(request, job->survey);
  const RoomWorked room = drawn_room_of(*job);
  const AdaptAnswer answer = [&] {
    Ticker ticker(request);
    return adapt({job->survey, room.shape(), room.draws, design_text(request.job), style.sure,
                  room.adjustment.complete(),
                  [&](int tried) { ticker.tick(fmt::format("{} designs tried ...", tried)); }});
  }();
  if (const std::string lost = lost_under(request.job, folder, answer.draft.text); !lost.empty())
    throw UsageFault(lost + " is not what would be written over it", "would-be-lost",
                     "it may hold work of yours: name a folder that is not there yet, or move it");
  write_job(request.job, folder, answer.draft.text);
  const std::string reading = next_reading(room, answer.fit);
  return told(request, answer.fit.verdict,
              request.has("--json") ? adapt_json_text(answer, request.job, reading)
                                    : adapt_text(answer, folder, reading, style));
}

}  // namespace nook

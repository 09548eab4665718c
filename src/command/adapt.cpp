// `nookfit adapt`: the design changed to suit the room, as a new job.
#include "adapt/adapt.h"

#include <filesystem>

#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "job/file_text.h"
#include "job/whole_file.h"
#include "sheet/adapt_json.h"
#include "sheet/adapt_text.h"
#include "sheet/folder.h"

namespace nook {
namespace {

namespace fs = std::filesystem;

std::string text_of(const fs::path& file) {
  auto text = file_text(file, file.string());
  return text ? *text : std::string{};
}

// Nothing that someone wrote is lost: neither the job itself nor another job is written over.
void check_folder(const std::string& job, const std::string& folder) {
  std::error_code error;
  if (fs::equivalent(job, folder, error))
    throw UsageFault("the new job would be written over the old one", "same-folder",
                     "name another folder: nookfit adapt JOB -o NEWJOB");
  const fs::path room = fs::path(folder) / "room.toml";
  if (fs::exists(room, error) && text_of(room) != text_of(fs::path(job) / "room.toml"))
    throw UsageFault(folder + " holds the job of another room", "other-job",
                     "name a folder that is not there yet");
}

void write_job(const std::string& job, const std::string& folder, const std::string& design) {
  make_folder(folder);
  for (const char* name : {"room.toml", "pieces.toml"})
    if (const fs::path from = fs::path(job) / name; fs::exists(from))
      write_whole(fs::path(folder) / name, text_of(from));
  write_whole(fs::path(folder) / "design.toml", design);
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
  const auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const std::string folder = request.value("-o", "");
  check_folder(request.job, folder);
  const Style style = style_of(request, job->survey.units);
  const RoomWorked room = drawn_room_of(*job);
  const AdaptAnswer answer = adapt({job->survey, room.adjustment.room(), room.draws,
                                    text_of(fs::path(request.job) / "design.toml"), style.sure,
                                    room.adjustment.complete()});
  write_job(request.job, folder, answer.draft.text);
  const std::string reading = next_reading(room, answer.fit);
  return told(request, answer.fit.verdict,
              request.has("--json") ? adapt_json_text(answer, request.job, reading)
                                    : adapt_text(answer, folder, reading, style));
}

}  // namespace nook

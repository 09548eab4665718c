// `nookfit room`: the room as found.
#include <optional>

#include "command/foretell.h"
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/check_json.h"
#include "sheet/room_text.h"

namespace nook {

ExitStatus run_room(const Request& request) {
  const auto words = request.given.find("--expect");
  if (words != request.given.end()) require_marks(words->second);
  auto job = read_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  RoomWorked room = room_of(*job);
  name_next(room);
  std::optional<Foretold> expect;
  if (words != request.given.end()) expect = foretell(words->second, *job, room);
  Verdict verdict = room_verdict(room.report);
  if (expect && !expect->value) verdict = worse(verdict, Verdict::cannot_tell);
  if (request.has("--json")) {
    return told(request, verdict, room_json_text(room.report, expect, request.job));
  }
  const std::string foretold = expect ? foretold_text(*expect, style) + "\n" : "";
  return told(request, verdict, foretold + room_text(room.report, job->survey, style));
}

}  // namespace nook

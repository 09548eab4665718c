// `nookfit check`: everything on one page.
#include "sheet/check_text.h"

#include "command/foretell.h"
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/check_json.h"

namespace nook {
namespace {

CheckAnswer check_of(const Job& job, double sure) {
  const RoomWorked room = drawn_room_of(job);
  FitAnswer fit = fit_of(job, room, sure);
  name_next(room, fit);
  DrillAnswer drill = drill_of(job, room, fit, sure);
  Foretold proof = proof_of(job, room, fit);
  CarryAnswer carry = carry_of(job, room, fit, sure);
  SafetyAnswer safety = safety_of(job, room, fit, sure);
  return {job.design->title, room.report,      std::move(fit),   std::move(drill),
          std::move(proof),  std::move(carry), std::move(safety)};
}

}  // namespace

ExitStatus run_check(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const CheckAnswer answer = check_of(*job, style.sure);
  return told(request, check_verdict(answer),
              request.has("--json") ? check_json(answer, request.job) : check_text(answer, style));
}

}  // namespace nook

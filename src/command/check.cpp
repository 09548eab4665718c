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

// Of the pieces that are cut already; nothing where none is, or the room does not say what it
// needs.
std::optional<VerifyAnswer> verify_of(const Job& job, const FitAnswer& fit, double sure) {
  if (!fit.known || !job.pieces || job.pieces->pieces.empty()) return {};
  const std::vector<NeededPiece> needed = needed_pieces(*job.design, fit);
  return verify({job.survey, needed, *job.pieces, sure});
}

// The page for a person names what settles this design, not what settles any room.
CheckAnswer check_of(const Job& job, double sure, bool for_programs) {
  RoomWorked room = drawn_room_of(job);
  if (for_programs) name_next(room);
  FitAnswer fit = fit_of(job, room, sure);
  name_next(room, fit);
  DrillAnswer drill = drill_of(job, room, fit, sure);
  Foretold proof = proof_of(job, room, fit);
  CarryAnswer carry = carry_of(job, room, fit, sure);
  SafetyAnswer safety = safety_of(job, room, {fit, drill}, sure);
  auto verify = verify_of(job, fit, sure);
  return {job.design->title, std::move(room.report), std::move(fit),    std::move(drill),
          std::move(proof),  std::move(carry),       std::move(safety), std::move(verify)};
}

}  // namespace

ExitStatus run_check(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const bool json = request.has("--json");
  const CheckAnswer answer = check_of(*job, style.sure, json);
  return told(request, check_verdict(answer),
              json ? check_json(answer, request.job) : check_text(answer, style));
}

}  // namespace nook

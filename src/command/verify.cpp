// `nookfit verify`: pieces as cut against pieces as needed.
#include "shop/verify.h"

#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/verify_json.h"
#include "sheet/verify_text.h"

namespace nook {

ExitStatus run_verify(const Request& request) {
  const auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey.units);
  const FitAnswer fit = fit_of(*job, drawn_room_of(*job), style.sure);
  const PiecesAsCut cut = job->pieces.value_or(PiecesAsCut{});
  const VerifyAnswer answer =
      verify({job->survey, needed_pieces(*job->design, fit), cut, style.sure, fit.known});
  return told(
      request, answer.verdict,
      request.has("--json") ? verify_json_text(answer, request.job) : verify_text(answer, style));
}

}  // namespace nook

// `nookfit verify`: pieces as cut against pieces as needed.
#include "shop/verify.h"

#include "command/bench_entry.h"
#include "command/output.h"
#include "command/style.h"
#include "command/table.h"
#include "command/worked.h"
#include "sheet/verify_json.h"
#include "sheet/verify_text.h"

namespace nook {
namespace {

// Asks for what pieces.toml lacks, then reads the job again.
tl::expected<Job, Faults> entered(const Request& request, const Job& job,
                                  std::vector<PieceToMeasure> pieces) {
  BenchEntry entry(request.job, std::move(pieces), job.survey.units, request.has("--json"));
  entry.walk();
  return designed_job(request.job);
}

}  // namespace

ExitStatus run_verify(const Request& request) {
  auto job = designed_job(request.job);
  if (!job) return told(request, job.error());
  const Style style = style_of(request, job->survey);
  const FitAnswer fit = fit_of(*job, drawn_room_of(*job), style.sure);
  const std::vector<NeededPiece> needed = needed_pieces(*job->design, fit);
  std::optional<PiecesAsCut> pieces = job->pieces;
  if (request.has("--enter")) {
    const auto after = entered(request, *job, to_measure(*job->design, fit, needed));
    if (!after) return told(request, after.error());
    pieces = after->pieces;
  }
  const PiecesAsCut cut = pieces.value_or(PiecesAsCut{});
  const VerifyAnswer answer = verify({job->survey, needed, cut, style.sure, fit.known});
  return told(
      request, answer.verdict,
      request.has("--json") ? verify_json_text(answer, request.job) : verify_text(answer, style));
}

}  // namespace nook

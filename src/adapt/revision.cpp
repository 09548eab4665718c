// Edits made one after the other, then read again as any design is.
#include "adapt/revision.h"

#include <fmt/format.h>

#include <cmath>

#include "job/job.h"

namespace nook {

tl::expected<Revision, std::string> redrawn(const Revision& draft, const std::vector<Edit>& edits) {
  TextEdit text(draft.text);
  for (const Edit& edit : edits)
    if (const auto done = edit.gone ? text.remove(edit.path) : text.set(edit.path, edit.value);
        !done && !edit.if_there)
      return tl::unexpected(done.error());
  auto design = parse_design(text.text(), "design.toml");
  if (!design) return tl::unexpected(design.error().front().what);
  return Revision{text.text(), std::make_shared<const Design>(std::move(*design))};
}

std::string typed(double mm, Unit unit) {
  constexpr double kSame = 1e-6;  // mm; far below what a reading says
  Rounding rounding = usual_rounding(unit);
  for (int halving = 0; halving < 3; ++halving) {
    const double marks = mm / rounding.step.mm;
    if (std::abs(std::round(marks) - marks) * rounding.step.mm < kSame)
      return written(millimetres(mm), rounding);
    rounding.step = unit == Unit::inch ? rounding.step / 2 : rounding.step / 10;
  }
  return fmt::format("{:.4f} mm", mm);
}

}  // namespace nook

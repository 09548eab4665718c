// Findings and cautions as lists.
#include "sheet/closing_sections.h"

#include <fmt/format.h>

#include "sheet/fit_text.h"
#include "sheet/safety_text.h"

namespace nook {
namespace {

std::string finding_words(const Finding& f) {
  return fmt::format("{}: {}: {}{}{}", words(f.verdict), f.where, f.what,
                     f.next.empty() ? "" : "; ", f.next);
}

}  // namespace

SheetList unsure(const std::vector<Finding>& findings, const std::string& else_said) {
  SheetList list;
  for (const Finding& f : findings)
    if (f.verdict != Verdict::fits) list.items.push_back(finding_words(f));
  if (list.items.empty()) list.items.push_back(else_said);
  return list;
}

SheetSection fit_section(const SheetJob& job) {
  return {"What does not fit yet, or cannot be told",
          {unsure(fit_findings(job.fit(), job.style),
                  "As drawn everything fits, and surely. Pieces as cut: 'nookfit verify'.")}};
}

SheetSection caution_section(const SheetJob& job) {
  SheetSection section{"Cautions", {}};
  if (job.safety) {
    SheetList list{caution_lines(*job.safety, job.style)};
    if (!list.items.empty()) section.blocks.push_back(std::move(list));
  }
  section.blocks.push_back(SheetWords{std::string(kWhoDecides), true});
  return section;
}

}  // namespace nook

// One paragraph a caution: its weight, where, what and what to do, and who says so.
#include "sheet/safety_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/wrap.h"

namespace nook {
namespace {

constexpr int kColumn = 9;  // of the text, past the longest of note, caution, danger

std::string counted(int count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

int count_of(const SafetyAnswer& answer, Severity severity) {
  return static_cast<int>(
      std::count_if(answer.cautions.begin(), answer.cautions.end(),
                    [&](const Caution& caution) { return caution.severity == severity; }));
}

std::string counts(const SafetyAnswer& answer) {
  return fmt::format("{}, {}, {}", counted(count_of(answer, Severity::danger), "danger", "dangers"),
                     counted(count_of(answer, Severity::caution), "caution", "cautions"),
                     counted(count_of(answer, Severity::note), "note", "notes"));
}

std::string paragraph(const Caution& caution, const Style& style) {
  const std::string blank(kColumn, ' ');
  std::string text =
      wrapped(fmt::format("{}: {}", caution.where, spoken(caution.text, style.rounding)),
              kPageWidth, fmt::format("{:<{}}", words(caution.severity), kColumn));
  return text + wrapped(fmt::format("[{}] {}", caution.id, caution.source), kPageWidth, blank);
}

}  // namespace

std::vector<Finding> safety_findings(const SafetyAnswer& answer, const Style& style) {
  std::vector<Finding> findings;
  int rest = 0;
  for (const Caution& caution : answer.cautions) {
    if (caution.severity != Severity::danger && caution.decided) {
      ++rest;
      continue;
    }
    findings.push_back(
        {caution.decided ? Verdict::does_not_fit : Verdict::cannot_tell, 0, caution.where,
         fmt::format("{} [{}]", spoken(caution.text, style.rounding), caution.source), ""});
  }
  if (rest > 0)
    findings.push_back({Verdict::fits, 0, "safety",
                        fmt::format("{} in `nookfit safety`", counted(rest, "more caution or note",
                                                                      "more cautions and notes")),
                        ""});
  return findings;
}

std::string safety_text(const SafetyAnswer& answer, const Style& style) {
  std::string text =
      fmt::format("Safety: {} - {}\n\n", headline(answer.verdict, style), counts(answer));
  for (const Caution& caution : answer.cautions) text += paragraph(caution, style);
  return text + "\n" + wrapped(kWhoDecides, kPageWidth, "");
}

}  // namespace nook

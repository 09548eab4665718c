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

// A point ends one where a new one begins: 6.9 cm has a point too.
std::string first_sentence(const std::string& text) {
  for (std::size_t i = 0; i + 2 < text.size(); ++i)
    if (text[i] == '.' && text[i + 1] == ' ' && text[i + 2] >= 'A' && text[i + 2] <= 'Z')
      return text.substr(0, i + 1);
  return text;
}

}  // namespace

std::vector<Finding> safety_findings(const SafetyAnswer& answer, const Style& style) {
  std::vector<Finding> findings;
  for (const Caution& caution : answer.cautions)
    if (caution.severity == Severity::danger || !caution.decided)
      findings.push_back(
          {caution.decided ? Verdict::does_not_fit : Verdict::cannot_tell, 0, caution.where,
           fmt::format("{} [{}]", spoken(caution.text, style.rounding), caution.source), ""});
  return findings;
}

std::string sure_cautions(const SafetyAnswer& answer, const Style& style) {
  std::vector<std::pair<std::string, std::vector<const Caution*>>> kinds;
  for (const Caution& caution : answer.cautions) {
    if (caution.severity != Severity::caution || !caution.decided) continue;
    const auto known = std::find_if(kinds.begin(), kinds.end(),
                                    [&](const auto& kind) { return kind.first == caution.id; });
    if (known == kinds.end())
      kinds.push_back({caution.id, {&caution}});
    else
      known->second.push_back(&caution);
  }
  std::string text;
  for (const auto& [id, all] : kinds) {
    std::string line = all[0]->where + ": " + first_sentence(spoken(all[0]->text, style.rounding));
    for (std::size_t i = 1; i < all.size(); ++i)
      line += (i == 1 ? " So too: " : "; ") + all[i]->where;
    text += wrapped(line + (all.size() > 1 ? "." : ""), kPageWidth, "  ");
  }
  return text;
}

std::string safety_text(const SafetyAnswer& answer, const Style& style) {
  std::string text =
      fmt::format("Safety: {} - {}\n\n", headline(answer.verdict, style), counts(answer));
  for (const Caution& caution : answer.cautions) text += paragraph(caution, style);
  return text + "\n" + wrapped(kWhoDecides, kPageWidth, "");
}

}  // namespace nook

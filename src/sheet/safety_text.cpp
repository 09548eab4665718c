// One paragraph a caution: its weight, where, what and what to do, and who says so.
#include "sheet/safety_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/alike.h"
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

using Alike = std::vector<const Caution*>;

std::string value_said(const Caution& caution, const Style& style) {
  return caution.value ? with_unit(millimetres(caution.value->value), style.rounding) : "";
}

// Of one kind, in the same words and about the same figure.
bool alike(const Caution& a, const Caution& b, const Style& style) {
  return a.id == b.id && a.severity == b.severity && a.decided == b.decided &&
         a.source == b.source && a.text.pattern == b.text.pattern &&
         (a.value ? value_said(a, style) == value_said(b, style)
                  : spoken(a.text, style.rounding) == spoken(b.text, style.rounding));
}

std::vector<Alike> gathered(const SafetyAnswer& answer, const Style& style) {
  std::vector<Alike> all;
  for (const Caution& caution : answer.cautions) {
    const auto known = std::find_if(all.begin(), all.end(), [&](const Alike& group) {
      return alike(*group.front(), caution, style);
    });
    if (known == all.end())
      all.push_back({&caution});
    else
      known->push_back(&caution);
  }
  return all;
}

// What differs in nothing but its place in one sentence, the rest as places where the figure is the
// same.
std::string said(const Alike& group, const Style& style) {
  const std::string text = spoken(group.front()->text, style.rounding);
  std::vector<std::string> same, others;
  for (const Caution* caution : group) {
    auto& places = spoken(caution->text, style.rounding) == text ? same : others;
    if (std::find(places.begin(), places.end(), caution->where) == places.end())
      places.push_back(caution->where);
  }
  std::string words = fmt::format("{}: {}", names_said(same, "; "), text);
  if (!others.empty()) words += " As much: " + names_said(others, "; ") + ".";
  return words;
}

std::string paragraph(const Alike& group, const Style& style) {
  const Caution& caution = *group.front();
  const std::string blank(kColumn, ' ');
  return wrapped(said(group, style), kPageWidth,
                 fmt::format("{:<{}}", words(caution.severity), kColumn)) +
         wrapped(fmt::format("[{}] {}", caution.id, caution.source), kPageWidth, blank);
}

// A point ends one where a new one begins: 6.9 cm has a point too.
std::string first_sentence(const std::string& text) {
  for (std::size_t i = 0; i + 2 < text.size(); ++i)
    if (text[i] == '.' && text[i + 1] == ' ' && text[i + 2] >= 'A' && text[i + 2] <= 'Z')
      return text.substr(0, i + 1);
  return text;
}

// The first in a sentence; the others by their places, apart where their figures are not the same.
std::string short_line(const Alike& kind, const Style& style) {
  const std::string first = first_sentence(spoken(kind.front()->text, style.rounding));
  std::vector<std::string> same, others;
  for (const Caution* caution : kind) {
    if (caution == kind.front()) continue;
    const bool as_first = first_sentence(spoken(caution->text, style.rounding)) == first;
    (as_first ? same : others).push_back(caution->where);
  }
  std::string line = kind.front()->where + ": " + first;
  if (!same.empty()) line += " So too: " + names_said(same, "; ") + ".";
  if (!others.empty()) line += " With other figures: " + names_said(others, "; ") + ".";
  return line;
}

}  // namespace

std::vector<Finding> safety_findings(const SafetyAnswer& answer, const Style& style) {
  std::vector<Finding> findings;
  for (const Caution& caution : answer.cautions)
    if (caution.severity == Severity::danger || !caution.decided)
      findings.push_back(
          {caution.decided ? Verdict::does_not_fit : Verdict::cannot_tell, 0, caution.where,
           fmt::format("{} [{}]", spoken(caution.text, style.rounding), caution.source), ""});
  return told_once(findings);
}

std::vector<std::string> caution_lines(const SafetyAnswer& answer, const Style& style) {
  std::vector<std::string> lines;
  for (const Alike& group : gathered(answer, style))
    lines.push_back(fmt::format("{}: {} [{}]", words(group.front()->severity), said(group, style),
                                group.front()->source));
  return lines;
}

std::string sure_cautions(const SafetyAnswer& answer, const Style& style) {
  std::vector<Alike> kinds;  // in the same words
  for (const Caution& caution : answer.cautions) {
    if (caution.severity != Severity::caution || !caution.decided) continue;
    const auto known = std::find_if(kinds.begin(), kinds.end(), [&](const Alike& kind) {
      return kind.front()->id == caution.id && kind.front()->text.pattern == caution.text.pattern;
    });
    if (known == kinds.end())
      kinds.push_back({&caution});
    else
      known->push_back(&caution);
  }
  std::string text;
  for (const Alike& kind : kinds) text += wrapped(short_line(kind, style), kPageWidth, "  ");
  return text;
}

std::string safety_text(const SafetyAnswer& answer, const Style& style) {
  std::string text =
      fmt::format("Safety: {} - {}\n\n", headline(answer.verdict, style), counts(answer));
  for (const Alike& group : gathered(answer, style)) text += paragraph(group, style);
  return text + "\n" + wrapped(kWhoDecides, kPageWidth, "");
}

}  // namespace nook

// One paragraph a change, then what is left.
#include "sheet/adapt_text.h"

#include <fmt/format.h>

#include <cmath>

#include "sheet/wrap.h"

namespace nook {
namespace {

std::string told(const Change& change) {
  return wrapped(
             fmt::format("{}, {}: {} -> {}", change.part, change.kind, change.before, change.after),
             kPageWidth, "  ") +
         wrapped(change.why, kPageWidth, "     ");
}

std::string told(const Contradiction& c, Rounding rounding) {
  const std::string by = c.by_mm > 0 ? " by " + with_unit(millimetres(c.by_mm), rounding) : "";
  if (c.against.empty())
    return wrapped(c.wish, kPageWidth, "  ") +
           wrapped(fmt::format("nothing that may be moved, cut or covered here settles it{}",
                               c.by_mm > 0 ? "; it is missed" + by : ""),
                   kPageWidth, "     ");
  return wrapped(c.wish, kPageWidth, "  ") +
         wrapped(fmt::format("what settles it ({}, {}) spoils another{}: {}", c.part, c.kind, by,
                             c.against),
                 kPageWidth, "     ");
}

std::string changes_told(const AdaptAnswer& adapted) {
  if (adapted.changes.empty()) return "Nothing was changed.\n";
  std::string text = "Changed:\n";
  for (const Change& change : adapted.changes) text += told(change);
  return text;
}

// Findings that hold each by itself may not all hold at once.
std::string open_told(const AdaptAnswer& adapted) {
  if (adapted.open.empty() && adapted.contradictions.empty() &&
      adapted.fit.verdict != Verdict::fits)
    return "\n" +
           wrapped(fmt::format("Each finding holds by itself; all at once hold in {:.0f} of 100 "
                               "rooms that read like this one.",
                               std::floor(100 * adapted.fit.chance)),
                   kPageWidth, "  ");
  std::string page = adapted.open.empty() ? "" : "\nThe readings do not decide:\n";
  for (const std::string& open : adapted.open) page += wrapped(open, kPageWidth, "  ");
  return page;
}

}  // namespace

std::string adapt_text(const AdaptAnswer& adapted, const std::string& folder,
                       const std::string& reading, const Style& style) {
  std::string page = headline(adapted.fit.verdict, style) + "\n\n" + changes_told(adapted);
  if (!adapted.contradictions.empty()) page += "\nThese wishes contradict each other:\n";
  for (const Contradiction& c : adapted.contradictions) page += told(c, style.rounding);
  page += open_told(adapted);
  const std::string& next = reading.empty() ? adapted.reading : reading;
  if (!next.empty()) page += wrapped("Take this reading: " + next, kPageWidth, "  ");
  return page + "\n" +
         wrapped(fmt::format("The new job is in {0}. Holes, the way in and what could hurt are not "
                             "looked at here: 'nookfit check {0}' does.",
                             folder),
                 kPageWidth, "");
}

}  // namespace nook

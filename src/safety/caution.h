// One caution, and the table of all kinds of them.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/measured.h"
#include "safety/words.h"

namespace nook {

enum class Severity { note, caution, danger };
/// "note", "caution", "danger".
std::string_view words(Severity severity);

/// Something to mind, with its source. Lengths in millimeters.
struct Caution {
  std::string id;  // of its kind
  Severity severity = Severity::note;
  Words text;                     // what and how much, and what to do
  std::string where;              // names of pieces and walls
  std::string source;             // document and section, and how it is known
  std::optional<Measured> value;  // the length it is about
  bool decided = true;            // false: the limit lies within the plus-or-minus
};

/// A kind of caution. Ids are permanent.
struct CautionKind {
  std::string_view id;
  Severity worst;           // what it says when the limit is surely passed
  std::string_view checks;  // what is looked at, and how a piece is known without its name
};
/// The whole table, in the order of the page of cautions.
std::span<const CautionKind> caution_kinds();
/// The row of an id. Requires: it is in the table.
const CautionKind& caution_kind(std::string_view id);

/// Who decides in the end; stands under every list of cautions.
inline constexpr std::string_view kWhoDecides =
    "These are the usual cautions, not a certificate: your local code and a licensed person "
    "decide.";

}  // namespace nook

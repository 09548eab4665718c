// Rows by the edge and the end that their holes are measured from.
#include "sheet/pilot_words.h"

#include <fmt/format.h>

#include "sheet/copy_names.h"
#include "sheet/lengths.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

// Holes of one row: numbers, distance from the edge, running distances from one end.
struct PilotRow {
  std::string stem, edge, end;
  std::vector<std::string> numbers, distances, probe, twins_probe;
  std::vector<std::vector<std::string>> twins;  // their numbers on each further piece
};

PilotRow& row_of(std::vector<PilotRow>& rows, const CutPilot& pilot, Rounding rounding) {
  const std::string stem = stem_and_number(pilot.id).first;
  const std::string edge =
      fmt::format("{} from the {} edge", size(pilot.from_edge_mm, rounding), pilot.edge);
  for (PilotRow& row : rows)
    if (row.stem == stem && row.edge == edge && row.end == pilot.end) return row;
  rows.push_back({stem, edge, pilot.end, {}, {}, {}, {}, {}});
  return rows.back();
}

// Holes in walls have numbers of their own on each piece; those from piece to piece are called
// after the pieces.
void add_to_row(PilotRow& row, const CutPilot& pilot, Rounding rounding) {
  const auto called = [&](const std::string& id) {
    const auto [stem, number] = stem_and_number(id);
    return stem == row.stem ? number : id;
  };
  row.numbers.push_back(called(pilot.id));
  row.distances.push_back(bare(pilot.from_end_mm, rounding));
  if (pilot.probe_first) row.probe.push_back(row.numbers.back());
  if (!pilot.into.empty()) return;
  row.twins.resize(pilot.twins.size());
  for (size_t k = 0; k < pilot.twins.size(); ++k) {
    row.twins[k].push_back(called(pilot.twins[k].id));
    if (pilot.twins[k].probe_first) row.twins_probe.push_back(row.twins[k].back());
  }
}

// "1, 2, 3 (on the other 4, 5, 6)".
std::string numbers_of(const PilotRow& row) {
  std::string text = fmt::format("{}", fmt::join(row.numbers, ", "));
  if (row.twins.empty()) return text;
  text += row.twins.size() == 1 ? " (on the other " : " (on the others ";
  for (size_t k = 0; k < row.twins.size(); ++k)
    text += fmt::format("{}{}", k == 0 ? "" : "; ", fmt::join(row.twins[k], ", "));
  return text + ")";
}

}  // namespace

std::string pilot_lines(const CutPiece& piece, Rounding rounding) {
  std::vector<PilotRow> rows;
  for (const CutPilot& pilot : piece.pilots)
    add_to_row(row_of(rows, pilot, rounding), pilot, rounding);
  for (PilotRow& row : rows)
    row.probe.insert(row.probe.end(), row.twins_probe.begin(), row.twins_probe.end());
  std::string text;
  for (const PilotRow& row : rows)
    text += indented(fmt::format("bore {}{}: {}; from the {} end {}{}{}", row.stem, numbers_of(row),
                                 row.edge, row.end, fmt::join(row.distances, ", "),
                                 row.probe.empty() ? "" : "; probe the wall first at ",
                                 fmt::join(row.probe, ", ")));
  return text;
}

}  // namespace nook

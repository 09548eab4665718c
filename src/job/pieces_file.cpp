// Reads pieces.toml.
#include <fmt/format.h>

#include <algorithm>

#include "job/job.h"
#include "job/names.h"
#include "job/table.h"

namespace nook {
namespace {

using namespace pieces_keys;

// The figures of one check measurement that are not struck.
CheckedAt checked(Source& source, const Node& node, std::string_view name) {
  CheckedAt found;
  found.place = node.place;
  for (const Reading& reading : readings_of(source, node, {name, {""}, Range::positive})) {
    if (reading.on_said)  // a piece has no baseboard
      source.fault(reading.place, "'on' has no meaning here", "key-without-meaning",
                   "it says what a reading to a wall was taken on");
    if (reading.struck) continue;
    found.measured.push_back(reading.value);
    found.sd.push_back(reading.sd);
  }
  return found;
}

// A list of [where, size there].
std::vector<CheckedAt> read_sizes(const Table& table, std::string_view key) {
  std::vector<CheckedAt> found;
  for (const Node& item : table.list({key})) {
    const std::size_t before = table.source().troubles();
    const auto* pair = table.source().list(item, fmt::format("an entry of {}", key),
                                           {2, 2, "[where it was taken, the size there]"});
    if (!pair) continue;
    const auto at = table.source().length((*pair)[0], "where it was taken", Range::not_negative);
    CheckedAt size = checked(table.source(), (*pair)[1], "the size");
    size.at = at.value_or(Length{});
    if (table.source().sound_since(before) && !size.measured.empty())
      found.push_back(std::move(size));
  }
  return found;
}

void read_notch(Source& source, const Node& node, PieceAsCut& piece) {
  Table table(source, node, kNotch);
  NotchAsCut notch;
  notch.place = node.place;
  using W = Word<std::string>;
  notch.corner =
      table
          .word<std::string>({"corner", needed},
                             {W{"lower left", "lower left"}, W{"lower right", "lower right"},
                              W{"upper left", "upper left"}, W{"upper right", "upper right"}})
          .value_or("");
  notch.width = table.length({"width", false, Range::positive});
  notch.height = table.length({"height", false, Range::positive});
  const auto same = [&](const NotchAsCut& other) { return other.corner == notch.corner; };
  if (!notch.corner.empty() && std::any_of(piece.notches.begin(), piece.notches.end(), same))
    source.fault(table.place_of("corner"), fmt::format("a second notch in the {}", notch.corner),
                 "given-twice", "a corner has one notch: measure its width and its height");
  piece.notches.push_back(std::move(notch));
}

void read_piece(Source& source, const Node& node, PiecesAsCut& pieces, Names& parts) {
  Table table(source, node, kPiece);
  PieceAsCut piece;
  piece.place = table.place_of("part");
  piece.part = table.text({"part", needed}).value_or("");
  using W = Word<bool>;
  piece.show_face_up =
      table.word<bool>({"show_face"}, {W{"up", true}, W{"down", false}}).value_or(true);
  piece.widths = read_sizes(table, "widths");
  piece.heights = read_sizes(table, "heights");
  if (const Node* diagonals = table.find({"diagonals"}))
    if (const auto* two =
            source.list(*diagonals, "diagonals", {2, 2, "[lower left to upper right, the other]"}))
      for (const Node& item : *two) piece.diagonals.push_back(checked(source, item, "a diagonal"));
  for (const Node* notch : table.tables("notches")) read_notch(source, *notch, piece);
  if (!parts.add(piece.part) && !piece.part.empty())
    source.fault(piece.place, fmt::format("'{}' a second time", piece.part), "name-taken",
                 "measured again is a list: [['2', ['37 1/4', '37 5/16']]]; copies are \"rung 1\"");
  pieces.pieces.push_back(std::move(piece));
}

}  // namespace

tl::expected<PiecesAsCut, Diagnostics> parse_pieces(std::string_view text,
                                                    const std::string& name) {
  const auto tree = parse_tree(text, name);
  if (!tree) return tl::unexpected(Diagnostics{tree.error()});
  Source source(text, name);
  PiecesAsCut pieces;
  Table root(source, *tree, kPieces);
  source.read_units(root.find({"units"}));
  pieces.units = source.units();
  Names parts;
  for (const Node* piece : root.tables("piece")) read_piece(source, *piece, pieces, parts);
  if (!source.sound_since(0)) return tl::unexpected(std::move(source).faults());
  return pieces;
}

}  // namespace nook

// The pieces' questions, and readings far from what the room needs.
#include "command/bench_entry.h"

#include <algorithm>
#include <cmath>

#include "job/job.h"

namespace nook {
namespace {

constexpr double kFromEdge = 25.4;  // mm; where a hooked tape reads well. Chosen
constexpr double kFarOff = 25.4;    // mm; further from what is wanted is asked again. Chosen

SizeToMeasure width_at(const NeededPiece& piece, double v) {
  return {v, chord_level(piece.outline, v).length()};
}
SizeToMeasure height_at(const NeededPiece& piece, double u) {
  return {u, chord_upright(piece.outline, u).length()};
}

// The lower of the two sides' upper ends: above it a width is not edge to edge.
double sides_end(const Polygon& outline) {
  double end = 1e300;
  for (const EdgeSide side : {EdgeSide::left, EdgeSide::right}) {
    const EdgeRun run = side_of(outline, side);
    end = std::min(end, std::max(outline[run.first].y, outline[(run.last + 1) % outline.size()].y));
  }
  return end;
}

// Figures of one size of one piece that `after` has and `before` has not, the last of them.
std::optional<Length> added(const std::vector<CheckedAt>& before,
                            const std::vector<CheckedAt>& after) {
  if (after.empty() || after.back().measured.empty()) return {};
  const bool more =
      after.size() > before.size() || after.back().measured.size() > before.back().measured.size();
  return more ? std::optional(after.back().measured.back()) : std::nullopt;
}

std::optional<Length> added(const PiecesAsCut& before, const PiecesAsCut& after) {
  static const PieceAsCut none;
  for (std::size_t i = 0; i < after.pieces.size(); ++i) {
    const PieceAsCut& old = i < before.pieces.size() ? before.pieces[i] : none;
    for (const auto list : {&PieceAsCut::widths, &PieceAsCut::heights})
      if (const auto size = added(old.*list, after.pieces[i].*list)) return size;
  }
  return {};
}

}  // namespace

std::vector<PieceToMeasure> to_measure(const std::vector<NeededPiece>& needed) {
  std::vector<PieceToMeasure> pieces;
  for (const NeededPiece& piece : needed) {
    const Bounds box = bounds_of(piece.outline);
    PieceToMeasure found{piece.part, piece.stock->kind == StockKind::lumber, {}, {}, {}};
    if (found.stick) {
      const double middle = (box.low.y + box.high.y) / 2;
      found.widths = {{middle - box.low.y, chord_level(piece.outline, middle).length()}};
    } else {
      found.widths = {width_at(piece, kFromEdge),
                      width_at(piece, sides_end(piece.outline) - kFromEdge)};
      found.heights = {height_at(piece, kFromEdge), height_at(piece, box.high.x - kFromEdge)};
      for (const NeededNotch& notch : piece.notches) found.notches.push_back(notch.corner);
    }
    pieces.push_back(std::move(found));
  }
  return pieces;
}

std::vector<Question> BenchEntry::open(const std::string& text) {
  std::vector<Question> questions;
  if (const auto cut = parse_pieces(text, file()))
    for (PieceQuestion& next : piece_questions(*cut, pieces_, units_))
      questions.push_back(std::move(next.question));
  return questions;
}

Diagnostics BenchEntry::faults(const std::string& text) const {
  const auto cut = parse_pieces(text, file());
  return cut ? Diagnostics{} : cut.error();
}

std::string BenchEntry::doubt(const std::string& before, const std::string& after,
                              const Question& question) const {
  const auto old = parse_pieces(before, file()), cut = parse_pieces(after, file());
  const std::optional<Length> size = old && cut ? added(*old, *cut) : std::nullopt;
  if (!size) return {};
  for (const PieceQuestion& asked : piece_questions(*old, pieces_, units_)) {
    if (asked.question.id != question.id || asked.wanted_mm <= 0) continue;
    if (std::abs(size->mm - asked.wanted_mm) <= kFarOff) return {};
    const Rounding rounding = usual_rounding(cut->units);
    return with_unit(*size, rounding) + "; the room needs " +
           with_unit({asked.wanted_mm}, rounding);
  }
  return {};
}

}  // namespace nook

// The pieces' questions, and readings far from what the room needs.
#include "command/bench_entry.h"

#include <algorithm>
#include <cmath>

#include "job/job.h"
#include "shop/cut_piece.h"

namespace nook {
namespace {

constexpr double kFarOff = 25.4;  // mm; further from what is wanted is asked again. Chosen

std::vector<SizeToMeasure> sizes_of(const std::vector<CutCheck>& checks) {
  std::vector<SizeToMeasure> sizes;
  for (const CutCheck& check : checks) sizes.push_back({check.at, check.value});
  return sizes;
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

std::vector<PieceToMeasure> to_measure(const Design& design, const FitAnswer& fit,
                                       const std::vector<NeededPiece>& needed) {
  std::vector<PieceToMeasure> pieces;
  for (int k = 0; k < static_cast<int>(needed.size()); ++k) {
    const CutPiece cut = cut_piece({design, fit}, k, needed[k]);
    PieceToMeasure found{needed[k].part, cut.stick, {}, {}, {}, {}};
    if (cut.stick) {
      found.widths = {{cut.blank.height / 2, cut.blank.width}};
    } else {
      found.widths = sizes_of(cut.checks.widths), found.heights = sizes_of(cut.checks.heights);
      if (!cut.contour.empty()) found.diagonals = cut.checks.diagonal_ends;
      for (const NeededNotch& notch : needed[k].notches) found.notches.push_back(notch.corner);
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

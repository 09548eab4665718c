// The walk through the pieces on the bench: what pieces.toml still lacks, as questions.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/vector.h"
#include "design/as_cut.h"
#include "job/walk.h"

namespace nook {

/// A size to measure: where (a height for a width, a distance from the left for a height), and what
/// it should come to, mm.
struct SizeToMeasure {
  double at = 0, wanted = 0;
};

/// A piece to measure. A stick has one width, its length, and nothing else.
struct PieceToMeasure {
  std::string part;
  bool stick = false;
  std::vector<SizeToMeasure> widths, heights;
  std::vector<std::string> notches;  // corners: "lower left"
  // Of a piece that is no rectangle: the corners that both diagonals join, from its lower left one.
  std::vector<std::array<Vec2, 2>> diagonals;
};

/// A question of the walk, and what its answer should come to; 0 = not foretold.
struct PieceQuestion {
  Question question;
  double wanted_mm = 0;
};

/// What is not measured yet, piece by piece in their order: widths, heights, both diagonals,
/// notches. Where the file has no [[piece]] yet, `units` are written with the first answer.
std::vector<PieceQuestion> piece_questions(const PiecesAsCut& cut,
                                           const std::vector<PieceToMeasure>& pieces, Unit units);

}  // namespace nook

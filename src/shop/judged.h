// One piece as cut held against one piece needed.
#pragma once

#include <vector>

#include "shop/cut_figures.h"

namespace nook {

struct Judged {
  PieceAsCut piece;  // its readings as seen from the front
  const NeededPiece* needed = nullptr;
  CutShape shape;
  std::vector<CutFigure> figures;
  std::vector<std::string> extra;  // corners that have a notch and should not
  double chance = 0;               // that all known figures are accepted
  Verdict verdict = Verdict::fits;

  const CutFigure* figure(CutFigure::Of of) const;
};

/// What one reading of a piece is worth, and how sure a verdict has to be.
struct CutScale {
  double sd = 0;
  double sure = 0.95;
};

/// A piece that shows both faces or none is held the way round that suits it better.
Judged judge(const PieceAsCut& cut, const NeededPiece& needed, CutScale scale);

}  // namespace nook

// One piece as cut held against one piece needed.
#pragma once

#include <vector>

#include "shop/cut_figures.h"
#include "shop/turned.h"

namespace nook {

/// What one reading of a piece is worth, and how sure a verdict has to be.
struct CutScale {
  double sd = 0;
  double sure = 0.95;
};

struct Judged {
  PieceAsCut piece;  // its readings as seen from the front
  const NeededPiece* needed = nullptr;
  CutScale scale;
  CutShape shape;
  std::vector<CutFigure> figures;
  std::vector<std::string> extra;  // corners that have a notch and should not
  double chance = 0;               // that all known figures are accepted
  Verdict verdict = Verdict::fits;

  const CutFigure* figure(CutFigure::Of of) const;
};

/// The readings are as seen from the front already.
Judged judge_seen(PieceAsCut seen, const NeededPiece& needed, CutScale scale);

/// A piece that shows both faces or none is held the way round that suits it better.
Judged judge(const PieceAsCut& cut, const NeededPiece& needed, CutScale scale);

/// The width and height of the needed outline, mm.
Vec2 size_of(const NeededPiece& needed);

}  // namespace nook

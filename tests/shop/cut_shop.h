// A shop in code: pieces needed, what was measured of them, and what verify says.
#pragma once

#include <optional>

#include "sample.h"
#include "shop/verify.h"
#include "taping.h"

namespace nook::sample {

/// Pieces needed, made by hand, and what was measured of them.
struct Shop {
  Drawn drawn;
  std::vector<NeededPiece> needed;
  PiecesAsCut cut;
  Survey survey;

  Shop() { drawn.design.parts.reserve(8), drawn.design.stock.reserve(8); }

  NeededPiece& need(const std::string& name, Polygon outline) {
    const Part& part = drawn.piece(name, outline);
    NeededPiece piece;
    piece.part = name;
    piece.drawn = &part;
    piece.stock = &drawn.design.stock[part.stock];
    piece.thickness = 18;
    piece.outline = piece.fitted = std::move(outline);
    SideAllowance usual;
    usual.over = kMayBeOver, usual.under = kSawStrays;
    piece.sides.fill(usual);
    needed.push_back(piece);
    return needed.back();
  }
  PieceAsCut& measure(const std::string& name, const Polygon& corners, double mark = in(1. / 16)) {
    cut.pieces.push_back(taped(name, corners, {mark, 0, nullptr}));
    return cut.pieces.back();
  }
  VerifyAnswer answer() const { return verify({survey, needed, cut}); }
};

inline Polygon panel(double width = in(36), double height = in(70)) {
  return rectangle(width, height);
}
inline NotchAsCut notch(const std::string& corner, double width, double height) {
  return {corner, inches(width), inches(height), {}};
}
inline NeededNotch wanted_notch() {
  return {"lower left", in(11. / 16), in(5.375), 0, 0, in(0.125), "left wall baseboard"};
}
inline bool has(const PieceVerify& piece, CutFault::Kind kind) {
  for (const CutFault& fault : piece.faults)
    if (fault.kind == kind) return true;
  return false;
}
inline std::optional<Remedy> trim_of(const PieceVerify& piece, const std::string& edge) {
  for (const Remedy& remedy : piece.remedies)
    if (remedy.what == Remedy::Do::trim && remedy.edge == edge) return remedy;
  return std::nullopt;
}

}  // namespace nook::sample

// Figures gathered, their joint chance, the verdict.
#include "shop/judged.h"

#include <algorithm>

namespace nook {
namespace {

std::vector<std::string> extra_notches(const PieceAsCut& piece, const NeededPiece& needed) {
  std::vector<std::string> extra;
  for (const NotchAsCut& notch : piece.notches) {
    const bool wanted = std::any_of(needed.notches.begin(), needed.notches.end(),
                                    [&](const NeededNotch& n) { return n.corner == notch.corner; });
    if (!wanted) extra.push_back(notch.corner);
  }
  return extra;
}

}  // namespace

const CutFigure* Judged::figure(CutFigure::Of of) const {
  for (const CutFigure& one : figures)
    if (one.of == of) return &one;
  return nullptr;
}

Judged judge_seen(PieceAsCut piece, const NeededPiece& needed, CutScale scale) {
  CutShape shape = cut_shape(piece, needed, scale.sd);
  std::vector<CutFigure> figures = figures_of(piece, needed, shape, scale.sd);
  std::vector<std::string> extra = extra_notches(piece, needed);
  const double chance = extra.empty() ? joint_chance(figures, shape) : 0;
  Verdict verdict = verdict_of(chance, scale.sure);
  if (!std::all_of(figures.begin(), figures.end(), [](const CutFigure& f) { return f.known(); }))
    verdict = worse(verdict, Verdict::cannot_tell);
  if (shape.disagreement && extra.empty()) verdict = Verdict::cannot_tell;
  return {std::move(piece),   &needed,          scale,  std::move(shape),
          std::move(figures), std::move(extra), chance, verdict};
}

Vec2 size_of(const NeededPiece& needed) {
  const Box2 b = box_of(needed.outline);
  return b.high - b.low;
}

Judged judge(const PieceAsCut& cut, const NeededPiece& needed, CutScale scale) {
  const PieceAsCut behind = turned(cut, Turn::sideways, size_of(needed));
  const ShowFace show = needed.drawn->show;
  const bool from_behind = cut.show_face_up == (show == ShowFace::back);
  Judged first = judge_seen(from_behind ? behind : cut, needed, scale);
  if (show == ShowFace::front || show == ShowFace::back) return first;
  Judged other = judge_seen(from_behind ? cut : behind, needed, scale);
  return other.chance > first.chance ? other : first;
}

}  // namespace nook

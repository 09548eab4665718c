// Linear figures of four corners; notches by themselves.
#include "shop/cut_figures.h"

#include <algorithm>
#include <cmath>

#include "shop/chance.h"

namespace nook {
namespace {

constexpr int kDraws = 4000;         // a share of .95 is then known to .0035. Chosen
constexpr double kSquare = 3.175;    // 1/8 in over the height: what a butt joint hides. Chosen
constexpr double kNotchOver = 6.35;  // 1/4 in wider than needed. Chosen
constexpr double kNotchLeast =
    0.79375;  // 1/32 in: without clearance a notch may fall so short. Chosen

// Unknowns of CornerVector.
enum { ll_u, ll_v, lr_u, lr_v, ur_u, ur_v, ul_u, ul_v };
using Of = CutFigure::Of;

CornerVector difference(int more, int less, double share = 1) {
  CornerVector row{};
  row[more] += share, row[less] -= share;
  return row;
}
CornerVector sum(const CornerVector& a, const CornerVector& b) {
  CornerVector row;
  for (int i = 0; i < kCorners; ++i) row[i] = a[i] + b[i];
  return row;
}
double product(const CornerVector& a, const CornerVector& b) {
  double total = 0;
  for (int i = 0; i < kCorners; ++i) total += a[i] * b[i];
  return total;
}

const SideAllowance& side(const NeededPiece& needed, EdgeSide which) {
  return needed.sides[static_cast<size_t>(which)];
}

CutFigure figure(Of of, const CornerVector& row, const CutShape& shape) {
  CutFigure made;
  made.of = of;
  made.row = row;
  made.off = {product(row, shape.off), std::sqrt(shape.equations.variance(row))};
  return made;
}

// A size between two sides may stray by what the stricter of them allows, and by wood left wild.
CutFigure between(CutFigure made, const SideAllowance& a, const SideAllowance& b) {
  made.low = -std::min(a.under, b.under);
  made.high = std::min(a.over, b.over) + a.wild + b.wild;
  return made;
}

CutFigure width(const NeededPiece& needed, const CutShape& shape, Of of, const CornerVector& row) {
  CutFigure made =
      between(figure(of, row, shape), side(needed, EdgeSide::left), side(needed, EdgeSide::right));
  const Bounds b = bounds_of(needed.outline);
  const double v = of == Of::width_bottom ? b.low.y
                   : of == Of::width_top  ? b.high.y
                                          : 0.5 * (b.low.y + b.high.y);
  made.wanted = chord_level(needed.outline, v).length();
  return made;
}

CutFigure height(const NeededPiece& needed, const CutShape& shape, Of of, const CornerVector& row) {
  CutFigure made =
      between(figure(of, row, shape), side(needed, EdgeSide::bottom), side(needed, EdgeSide::top));
  const Bounds b = bounds_of(needed.outline);
  const double u = of == Of::height_left    ? b.low.x
                   : of == Of::height_right ? b.high.x
                                            : 0.5 * (b.low.x + b.high.x);
  made.wanted = chord_upright(needed.outline, u).length();
  return made;
}

// How far the top leans to the right of square: each side against each end, wild ones left out.
std::vector<CornerVector> leans(const NeededPiece& needed, const CutShape& shape) {
  const double share = shape.height / shape.width;
  const struct {
    EdgeSide side;
    CornerVector row;
  } upright[] = {{EdgeSide::left, difference(ul_u, ll_u)},
                 {EdgeSide::right, difference(ur_u, lr_u)}},
    level[] = {{EdgeSide::bottom, difference(lr_v, ll_v, share)},
               {EdgeSide::top, difference(ur_v, ul_v, share)}};
  std::vector<CornerVector> all;
  for (const auto& u : upright)
    for (const auto& l : level)
      if (side(needed, u.side).wild == 0 && side(needed, l.side).wild == 0)
        all.push_back(sum(u.row, l.row));
  return all;
}

// Their mean is what the diagonals tell; the rest is a matter of widths and heights.
void add_square(std::vector<CutFigure>& figures, const NeededPiece& needed, const CutShape& shape) {
  const std::vector<CornerVector> all = leans(needed, shape);
  if (all.empty()) return;
  CornerVector mean{};
  for (const CornerVector& row : all)
    for (int i = 0; i < kCorners; ++i) mean[i] += row[i] / static_cast<double>(all.size());
  CutFigure square = figure(Of::square, mean, shape);
  square.low = -kSquare, square.high = kSquare;
  figures.push_back(square);
}

void add_panel(std::vector<CutFigure>& figures, const NeededPiece& needed, const CutShape& shape) {
  figures.push_back(width(needed, shape, Of::width_bottom, difference(lr_u, ll_u)));
  figures.push_back(width(needed, shape, Of::width_top, difference(ur_u, ul_u)));
  figures.push_back(height(needed, shape, Of::height_left, difference(ul_v, ll_v)));
  figures.push_back(height(needed, shape, Of::height_right, difference(ur_v, lr_v)));
  add_square(figures, needed, shape);
}

// Its section comes from the mill and is judged only where it was measured.
void add_stick(std::vector<CutFigure>& figures, const NeededPiece& needed, const CutShape& shape) {
  figures.push_back(width(needed, shape, Of::length,
                          sum(difference(lr_u, ll_u, 0.5), difference(ur_u, ul_u, 0.5))));
  const CutFigure section = height(needed, shape, Of::section,
                                   sum(difference(ul_v, ll_v, 0.5), difference(ur_v, lr_v, 0.5)));
  if (section.known()) figures.push_back(section);
}

double wild_beside(const NeededPiece& needed, const std::string& corner, bool across) {
  const bool left = corner.find("left") != std::string::npos;
  const bool low = corner.find("lower") != std::string::npos;
  return across ? side(needed, left ? EdgeSide::left : EdgeSide::right).wild
                : side(needed, low ? EdgeSide::bottom : EdgeSide::top).wild;
}

CutFigure notch_figure(const NeededNotch& notch, bool across, std::optional<Length> cut,
                       double sd) {
  CutFigure made;
  made.of = across ? Of::notch_width : Of::notch_height;
  made.corner = notch.corner;
  made.wanted = across ? notch.width_mm : notch.height_mm;
  made.low = -std::max(notch.clearance_mm / 2, kNotchLeast);
  made.high = kNotchOver;
  made.off = cut ? Measured{cut->mm - made.wanted, sd} : Measured{0, 1e3};
  return made;
}

void add_notches(std::vector<CutFigure>& figures, const PieceAsCut& piece,
                 const NeededPiece& needed, double sd) {
  for (const NeededNotch& notch : needed.notches) {
    const auto cut = std::find_if(piece.notches.begin(), piece.notches.end(),
                                  [&](const NotchAsCut& n) { return n.corner == notch.corner; });
    for (const bool across : {true, false}) {
      const bool there = cut != piece.notches.end();
      CutFigure made = notch_figure(notch, across,
                                    there ? (across ? cut->width : cut->height) : std::nullopt, sd);
      made.high += wild_beside(needed, notch.corner, across);
      figures.push_back(made);
    }
  }
}

bool accepted(const CutFigure& figure, double off) {
  return off >= figure.low && off <= figure.high;
}

}  // namespace

double CutFigure::chance() const {
  return chance_above_zero({high - off.value, off.sd}) +
         chance_above_zero({off.value - low, off.sd}) - 1;
}

std::vector<CutFigure> figures_of(const PieceAsCut& piece, const NeededPiece& needed,
                                  const CutShape& shape, double sd) {
  std::vector<CutFigure> figures;
  if (needed.stock->kind == StockKind::lumber)
    add_stick(figures, needed, shape);
  else
    add_panel(figures, needed, shape);
  add_notches(figures, piece, needed, sd);
  return figures;
}

double joint_chance(const std::vector<CutFigure>& figures, const CutShape& shape) {
  int well = 0;
  for (const CornerVector& draw : shape.equations.draws(kDraws, 1)) {
    const auto holds = [&](const CutFigure& figure) {
      return figure.of_notch() || !figure.known() ||
             accepted(figure, figure.off.value + product(figure.row, draw));
    };
    well += std::all_of(figures.begin(), figures.end(), holds);
  }
  double chance = static_cast<double>(well) / kDraws;
  for (const CutFigure& figure : figures)
    if (figure.of_notch() && figure.known()) chance *= figure.chance();
  return chance;
}

}  // namespace nook

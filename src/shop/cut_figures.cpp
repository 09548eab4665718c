// Linear figures of four corners; notches by themselves.
#include "shop/cut_figures.h"

#include <algorithm>
#include <cmath>

#include "design/side.h"
#include "shop/chance.h"

namespace nook {
namespace {

constexpr int kDraws = 4000;  // a share of .95 is then known to .0035. Chosen
constexpr double kDiagonals =
    3.175;                           // 1/8 in that diagonals may differ: common practice, no source
constexpr double kMostLean = 6.35;   // 1/4 in of lean, however narrow a piece is. Chosen
constexpr double kOfWild = 0.5;      // of the wood left wild, that may lean. Chosen
constexpr double kNotchOver = 6.35;  // 1/4 in wider than needed. Chosen

constexpr double kApart = 0.25;   // of a piece: two readings nearer than that are one. Chosen
constexpr double kUnknown = 1e3;  // mm, sd of what was not measured

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

// A size between two sides may stray by what the stricter of them allows, square to it, and by wood
// left wild.
CutFigure between(CutFigure made, const SideAllowance& a, const SideAllowance& b) {
  made.low = -made.steep * std::min(a.under, b.under) - made.scribed;
  const double over = std::min(a.over, b.over);
  const bool trapped = a.met && b.met && a.wild + b.wild == 0;
  made.wild = a.wild + b.wild;
  made.high = made.steep * (trapped ? std::min(over, kSawStrays) : over) + made.wild;
  return made;
}

// Which sides a figure lies between, and its names from the first station to the last.
struct Stretches {
  EdgeSide near, far;
  Of first, middle, last;
};
constexpr Stretches kAcross{EdgeSide::left, EdgeSide::right, Of::width_bottom, Of::width_middle,
                            Of::width_top};
constexpr Stretches kUp{EdgeSide::bottom, EdgeSide::top, Of::height_left, Of::height_middle,
                        Of::height_right};

CutFigure at_station(const CutStation& station, Of of, const CutShape& shape) {
  CutFigure made = figure(of, station.row, shape);
  made.off.value = station.off;
  made.wanted = station.wanted, made.steep = station.steep;
  made.scribed = station.scribed;
  return made;
}

CutFigure unknown(Of of) {
  CutFigure made;
  made.of = of;
  made.off = {0, kUnknown};
  made.measured = false;
  return made;
}

// Measured at two ends, and between; what was not measured is a figure without a value.
void add_stations(std::vector<CutFigure>& figures, const NeededPiece& needed, const CutShape& shape,
                  const Stretches& way) {
  const bool across = way.near == EdgeSide::left;
  const std::vector<CutStation>& all = across ? shape.widths : shape.heights;
  const double span = across ? shape.height : shape.width;
  std::vector<CutFigure> made;
  for (size_t k = 0; k < all.size(); ++k)
    made.push_back(at_station(all[k], k == 0 ? way.first : way.middle, shape));
  if (all.empty()) made.push_back(unknown(way.first));
  if (all.size() > 1 && all.back().at - all.front().at > kApart * span)
    made.back().of = way.last;
  else
    made.push_back(unknown(way.last));
  for (CutFigure& one : made)
    figures.push_back(between(one, side(needed, way.near), side(needed, way.far)));
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

// What the lean may be. A wild edge that is not square costs wood that comes off there anyway.
void add_lean(std::vector<CutFigure>& figures, CutFigure square, const CutShape& shape,
              double wild) {
  square.high =
      std::min(kMostLean, kDiagonals * std::hypot(shape.width, shape.height) / (2 * shape.width)) +
      kOfWild * wild;
  square.low = -square.high;
  figures.push_back(square);
}

// A piece without some corner of its bounds leans by as much as its diagonals say, like a rectangle
// of that size.
void add_crossed(std::vector<CutFigure>& figures, const NeededPiece& needed,
                 const CutShape& shape) {
  const double share = std::hypot(shape.width, shape.height) / (2 * shape.width);
  CutStation lean = shape.crossed;
  for (double& x : lean.row) x *= share;
  lean.off *= share;
  double wild = 0;
  for (const SideAllowance& side : needed.sides) wild = std::max(wild, side.wild);
  add_lean(figures, at_station(lean, Of::square, shape), shape, wild);
}

// Their mean is what the diagonals tell; the rest is a matter of widths and heights.
void add_square(std::vector<CutFigure>& figures, const NeededPiece& needed, const CutShape& shape) {
  if (is_shaped(needed.outline)) return add_crossed(figures, needed, shape);
  const std::vector<CornerVector> all = leans(needed, shape);
  if (all.empty()) return;
  CornerVector mean{};
  for (const CornerVector& row : all)
    for (int i = 0; i < kCorners; ++i) mean[i] += row[i] / static_cast<double>(all.size());
  add_lean(figures, figure(Of::square, mean, shape), shape, 0);
}

void add_panel(std::vector<CutFigure>& figures, const NeededPiece& needed, const CutShape& shape) {
  add_stations(figures, needed, shape, kAcross);
  add_stations(figures, needed, shape, kUp);
  add_square(figures, needed, shape);
}

// The mean of what was measured: sticks are parallel as they come from the mill.
CutFigure mean_of(const std::vector<CutStation>& stations, Of of, const CutShape& shape) {
  if (stations.empty()) return unknown(of);
  CutStation mean;
  const double share = 1.0 / static_cast<double>(stations.size());
  for (const CutStation& one : stations) {
    for (int i = 0; i < kCorners; ++i) mean.row[i] += share * one.row[i];
    mean.wanted += share * one.wanted, mean.off += share * one.off;
    mean.steep = std::max(mean.steep, one.steep);
  }
  return at_station(mean, of, shape);
}

// Its section comes from the mill and is judged only where it was measured.
void add_stick(std::vector<CutFigure>& figures, const NeededPiece& needed, const CutShape& shape) {
  figures.push_back(between(mean_of(shape.widths, Of::length, shape), side(needed, EdgeSide::left),
                            side(needed, EdgeSide::right)));
  if (!shape.heights.empty())
    figures.push_back(between(mean_of(shape.heights, Of::section, shape),
                              side(needed, EdgeSide::bottom), side(needed, EdgeSide::top)));
}

// Wood left wild beside a notch: how much may be, and how much the sizes say is still on, which a
// tape from the edge into the notch measures with it. Between two wild edges nobody can tell.
struct WildWood {
  double most = 0, there = 0;
};
WildWood wild_beside(const NeededPiece& needed, const CutShape& shape, const NeededNotch& notch,
                     bool across) {
  const EdgeSide edge = notch_side(notch.corner, across);
  const double most = across ? notch.wild_across_mm : notch.wild_up_mm;
  const auto& sizes = across ? shape.widths : shape.heights;
  if (most == 0 || sizes.empty() || side(needed, opposite(edge)).wild > 0) return {most, 0};
  const double finished = side(needed, edge).wild - most;  // how far out its line lies there
  const double over = mean_of(sizes, Of::length, shape).off.value;
  return {most, std::clamp(over - finished, 0.0, most)};
}

CutFigure notch_figure(const NeededNotch& notch, bool across, const WildWood& wild) {
  CutFigure made;
  made.of = across ? Of::notch_width : Of::notch_height;
  made.corner = notch.corner;
  made.wanted = (across ? notch.width_mm : notch.height_mm) + wild.there;
  made.low = -std::max(notch.clearance_mm / 2, kNotchShort);
  made.high = kNotchOver + wild.most - wild.there;
  made.off = {0, kUnknown};
  return made;
}

void add_notches(std::vector<CutFigure>& figures, const PieceAsCut& piece,
                 const NeededPiece& needed, const CutShape& shape, double sd) {
  for (const NeededNotch& notch : needed.notches) {
    const auto cut = std::find_if(piece.notches.begin(), piece.notches.end(),
                                  [&](const NotchAsCut& n) { return n.corner == notch.corner; });
    for (const bool across : {true, false}) {
      CutFigure made = notch_figure(notch, across, wild_beside(needed, shape, notch, across));
      const auto taped = cut == piece.notches.end() ? std::nullopt
                         : across                   ? cut->width
                                                    : cut->height;
      made.measured = taped.has_value();
      if (taped) made.off = {taped->mm - made.wanted, sd};
      figures.push_back(made);
    }
  }
}

bool accepted(const CutFigure& figure, double off) {
  return off >= figure.low && off <= figure.high;
}

}  // namespace

double CutFigure::strayed() const {
  return off.value - std::clamp(off.value, 0.0, wild);
}

double CutFigure::used() const {
  const double by = strayed();
  return by > 0 ? by / (high - wild) : by / low;
}

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
  add_notches(figures, piece, needed, shape, sd);
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

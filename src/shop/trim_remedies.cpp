// Trims with what they spoil, each tried on the piece as cut before it is offered.
#include "shop/trim_remedies.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <optional>
#include <tuple>

#include "design/side.h"
#include "shop/trimmed.h"

namespace nook {
namespace {

using Of = CutFigure::Of;

constexpr double kLeastWood = 25.4;  // mm beside a cutout. Chosen
constexpr double kSame = 0.01;       // mm; two sides so alike are symmetric. Chosen

// A trim of the side that cutouts are laid off from moves them.
bool reference(const NeededPiece& piece, EdgeSide side) {
  const LaidFrom from = laid_from(piece);
  return side == from.across || side == from.up;
}

// A region seen so that the trimmed side's direction is x: u for left and right, v for the others.
Chord across(const Polygon& outline, EdgeSide side) {
  const Box2 b = box_of(outline);
  return upright(side) ? Chord{b.low.x, b.high.x} : Chord{b.low.y, b.high.y};
}

// Whether cutouts sit alike on both sides of the piece's middle.
bool symmetric(const Part& part, EdgeSide side) {
  const Chord whole = across(part.outline, side);
  double off = 0;
  for (const Cutout& cutout : part.cutouts) {
    const Chord hole = across(cutout.outline, side);
    off += hole.from + hole.to - whole.from - whole.to;
  }
  return std::abs(off) < kSame;
}

// Wood between a cutout and a side as drawn.
double beside(const Cutout& cutout, const Part& part, EdgeSide side) {
  const Chord hole = across(cutout.outline, side), whole = across(part.outline, side);
  const bool low = side == EdgeSide::left || side == EdgeSide::bottom;
  return low ? hole.from - whole.from : whole.to - hole.to;
}

void spoil_cutouts(Remedy& remedy, const NeededPiece& piece, const Trim& trim) {
  if (!reference(piece, trim.side)) return;
  const Part& part = *piece.drawn;
  for (const Cutout& cutout : part.cutouts) {
    const double left = beside(cutout, part, trim.side) - trim.most();
    const bool cut = left < kLeastWood;
    remedy.spoils.push_back({cut ? Spoil::Kind::cutout_cut : Spoil::Kind::cutout_moves, cutout.name,
                             cut ? left : trim.most(), name_of(trim.side)});
  }
  if (!part.cutouts.empty() && symmetric(part, trim.side))
    remedy.spoils.push_back({Spoil::Kind::not_centered, "", trim.most()});
}

// A notch at the trimmed edge loses what comes off at its own end of it.
void spoil_notches(Remedy& remedy, const PieceAsCut& piece, const Trim& trim) {
  const std::string side = trim.side == EdgeSide::bottom ? "lower"
                           : trim.side == EdgeSide::top  ? "upper"
                                                         : name_of(trim.side);
  const std::string last_end = upright(trim.side) ? "upper" : "right";
  for (const NotchAsCut& notch : piece.notches) {
    if (notch.corner.find(side) == std::string::npos) continue;
    const bool at_last = notch.corner.find(last_end) != std::string::npos;
    const double off = at_last ? trim.last : trim.first;
    if (off > kNotchShort) remedy.spoils.push_back({Spoil::Kind::notch_narrows, notch.corner, off});
  }
}

SideTrim told_of(const Trim& trim) {
  return {name_of(trim.side), trim.most(), trim.first, trim.last};
}

Remedy trimmed(const Judged& judged, const std::vector<Trim>& trims) {
  Remedy remedy;
  const SideTrim first = told_of(trims.front());
  remedy.edge = first.edge, remedy.by_mm = first.by_mm;
  remedy.by_first_mm = first.by_first_mm, remedy.by_last_mm = first.by_last_mm;
  for (size_t k = 1; k < trims.size(); ++k) remedy.also.push_back(told_of(trims[k]));
  for (const Trim& trim : trims) {
    spoil_cutouts(remedy, *judged.needed, trim);
    spoil_notches(remedy, judged.piece, trim);
  }
  return remedy;
}

const SideAllowance& allowance(const Judged& judged, EdgeSide side) {
  return judged.needed->sides[static_cast<size_t>(side)];
}

// How far one end is off; where it was not measured it is as the other end, a stick all along.
double off_of(const Judged& judged, std::initializer_list<Of> figures) {
  for (const Of of : figures)
    if (const CutFigure* figure = judged.figure(of); figure && figure->known())
      return figure->off.value;
  return 0;
}

// At the bottom or left end, and at the top or right end.
struct Ends {
  double first, last;
};
Ends widths_off(const Judged& judged) {
  return {off_of(judged, {Of::width_bottom, Of::width_top, Of::length}),
          off_of(judged, {Of::width_top, Of::width_bottom, Of::length})};
}
Ends heights_off(const Judged& judged) {
  return {off_of(judged, {Of::height_left, Of::height_right, Of::section}),
          off_of(judged, {Of::height_right, Of::height_left, Of::section})};
}

bool across_it(const CutFigure& figure) {
  return figure.of == Of::width_bottom || figure.of == Of::width_middle ||
         figure.of == Of::width_top || figure.of == Of::length;
}

// A figure that a trim is not made for and that it leaves as it was.
bool kept(const CutFigure& before, const CutFigure& after, bool same_ends) {
  constexpr double kNoWorse = 0.01;  // of its chance. Chosen
  return (before.of != Of::square && same_ends) || after.chance() >= before.chance() - kNoWorse;
}

// Whether a trim for its widths, or its heights, leaves everything well: each figure is accepted
// then, except one across the other way that is left as it was. A piece surely out of square has to
// come square.
bool leaves_well(const Judged& judged, bool widths, const Trim& trim) {
  const std::vector<CutFigure> after = figures_after(judged, {trim});
  const bool same_ends = changes_ends(judged, trim) < kLeastTrim;
  for (size_t k = 0; k < after.size(); ++k) {
    const CutFigure& before = judged.figures[k];
    if (before.of_notch() || !before.known() || after[k].chance() >= judged.scale.sure) continue;
    const bool other = before.of == Of::square ? before.chance() > 1 - judged.scale.sure
                                               : across_it(before) != widths;
    if (!other || !kept(before, after[k], same_ends)) return false;
  }
  return !after.empty();
}

// What the needed piece comes short once it is cut from this one; nothing where a figure is not
// accepted for another reason.
struct Short {
  double width = 0, height = 0;
};
std::optional<Short> short_after(const Judged& judged, const std::vector<Trim>& trims) {
  const std::vector<CutFigure> after = figures_after(judged, trims);
  Short by;
  for (size_t k = 0; k < after.size(); ++k) {
    const CutFigure& figure = after[k];
    if (figure.of_notch() || !judged.figures[k].known()) continue;
    if (figure.chance() >= judged.scale.sure) continue;
    if (figure.of == Of::square || figure.off.value > 0) return std::nullopt;
    double& most = across_it(figure) ? by.width : by.height;
    most = std::max(most, -figure.off.value);
  }
  return after.empty() ? std::nullopt : std::optional(by);
}

void spoil_size(Remedy& remedy, const char* name, double by) {
  if (by > 0) remedy.spoils.push_back({Spoil::Kind::comes_short, name, by});
}

// The trims that leave the needed piece, or the largest of its shape that is in the wood.
struct Way {
  Remedy remedy;
  double short_mm;
  bool better(const Way& other) const {
    const auto rank = [](const Way& way) {
      return std::tuple(way.remedy.spoils.size(), way.short_mm, way.remedy.also.size(),
                        way.remedy.by_mm);
    };
    return rank(*this) < rank(other);
  }
};

std::vector<Way> ways_out(const Judged& judged) {
  std::vector<Way> ways;
  for (const std::vector<Trim>& trims : layings(judged)) {
    const auto by = trims.empty() ? std::nullopt : short_after(judged, trims);
    if (!by) continue;
    Way way{trimmed(judged, trims), by->width + by->height};
    spoil_size(way.remedy, "width", by->width);
    spoil_size(way.remedy, "height", by->height);
    ways.push_back(std::move(way));
  }
  std::stable_sort(ways.begin(), ways.end(),
                   [](const Way& a, const Way& b) { return a.better(b); });
  return ways;
}

}  // namespace

bool same_edges(const Remedy& a, const Remedy& b) {
  return a.edge == b.edge &&
         std::equal(a.also.begin(), a.also.end(), b.also.begin(), b.also.end(),
                    [](const SideTrim& x, const SideTrim& y) { return x.edge == y.edge; });
}

void add_laid(std::vector<Remedy>& remedies, const Judged& judged) {
  constexpr size_t kWays = 2;  // chosen
  std::vector<Remedy> told;
  for (const Way& way : ways_out(judged)) {
    const bool worse = !told.empty() && way.remedy.spoils.size() > told.front().spoils.size();
    const bool again = std::any_of(told.begin(), told.end(), [&](const Remedy& remedy) {
      return same_edges(remedy, way.remedy);
    });
    if (!worse && !again && told.size() < kWays) told.push_back(way.remedy);
  }
  remedies.insert(remedies.end(), told.begin(), told.end());
}

void add_trims(std::vector<Remedy>& remedies, const Judged& judged, CutFault::Of of) {
  const bool level = of == CutFault::Of::width;
  const EdgeSide near = level ? EdgeSide::left : EdgeSide::bottom;
  const EdgeSide far = level ? EdgeSide::right : EdgeSide::top;
  const double wild = allowance(judged, near).wild + allowance(judged, far).wild;
  const auto [first, last] = level ? widths_off(judged) : heights_off(judged);
  bool any = false;
  for (const EdgeSide side : {far, near}) {
    const Trim trim{side, std::max(first - wild, 0.0), std::max(last - wild, 0.0)};
    if (!leaves_well(judged, level, trim)) continue;
    remedies.push_back(trimmed(judged, {trim}));
    any = true;
  }
  if (!any) add_laid(remedies, judged);
}

}  // namespace nook

// Trims with what they spoil, notches cut again, pieces turned over, cut again.
#include "shop/remedies.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "design/side.h"

namespace nook {
namespace {

using Of = CutFigure::Of;
using Kind = CutFault::Kind;

constexpr double kLeastWood = 25.4;      // mm beside a cutout. Chosen
constexpr double kHides = 9.525;         // 3/8 in: what a filler or trim closes; common practice
constexpr double kNotchShort = 0.79375;  // mm, 1/32 in that a notch may fall short. Chosen
constexpr double kSame = 0.01;           // mm; two sides so alike are symmetric. Chosen

// A trim of one side: how much at its bottom or left end, and at its top or right end.
struct Trim {
  EdgeSide side;
  double first, last;
  double most() const { return std::max(first, last); }
};

// A trim of the side that cutouts are laid off from moves them.
bool reference(const NeededPiece& piece, EdgeSide side) {
  const LaidFrom from = laid_from(piece);
  return side == from.across || side == from.up;
}

// A region seen so that the trimmed side's direction is x: u for left and right, v for the others.
Chord across(const Polygon& outline, EdgeSide side) {
  const Bounds b = bounds_of(outline);
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
                             cut ? left : trim.most()});
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

Remedy trimmed(const Judged& judged, const Trim& trim) {
  Remedy remedy;
  remedy.edge = name_of(trim.side);
  remedy.by_mm = trim.most();
  remedy.by_first_mm = trim.first, remedy.by_last_mm = trim.last;
  spoil_cutouts(remedy, *judged.needed, trim);
  spoil_notches(remedy, judged.piece, trim);
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

// What is too much between two sides, off one of them or the other; wood left wild stays.
void add_trims(std::vector<Remedy>& remedies, const Judged& judged, CutFault::Of of) {
  const bool level = of == CutFault::Of::width;
  const EdgeSide near = level ? EdgeSide::left : EdgeSide::bottom;
  const EdgeSide far = level ? EdgeSide::right : EdgeSide::top;
  const double wild = allowance(judged, near).wild + allowance(judged, far).wild;
  const auto [first, last] = level ? widths_off(judged) : heights_off(judged);
  for (const EdgeSide side : {far, near})
    remedies.push_back(
        trimmed(judged, {side, std::max(first - wild, 0.0), std::max(last - wild, 0.0)}));
}

Remedy plain(Remedy::Do what) {
  Remedy remedy;
  remedy.what = what;
  return remedy;
}

// Too small: where a wall is on one side, a filler or trim hides a little.
void add_fill(std::vector<Remedy>& remedies, const Judged& judged, const CutFault& fault) {
  if (-fault.off.value > kHides) return;
  const bool level = fault.of == CutFault::Of::width;
  for (const EdgeSide side :
       {level ? EdgeSide::left : EdgeSide::bottom, level ? EdgeSide::right : EdgeSide::top}) {
    if (!allowance(judged, side).meets_wall) continue;
    Remedy remedy = plain(Remedy::Do::fill);
    remedy.edge = name_of(side);
    remedy.by_mm = -fault.off.value;
    remedy.spoils = {{Spoil::Kind::filled, name_of(side), remedy.by_mm}};
    remedies.push_back(remedy);
    return;
  }
}

// A wedge off the bottom, or the top, makes it square to its sides and costs height.
void add_squaring(std::vector<Remedy>& remedies, const Judged& judged, const CutFault& fault) {
  const double wedge = std::abs(fault.off.value) * judged.shape.width / judged.shape.height;
  const Ends heights = heights_off(judged);
  const double spare = std::min(heights.first, heights.last);
  // Leaning right, the bottom gives wood at its left end, the top at its right end.
  const bool right = fault.off.value > 0;
  for (const EdgeSide side : {EdgeSide::bottom, EdgeSide::top}) {
    const bool at_first = (side == EdgeSide::bottom) == right;
    Remedy remedy = trimmed(judged, {side, at_first ? wedge : 0, at_first ? 0 : wedge});
    if (wedge > spare + kSawStrays)
      remedy.spoils.push_back({Spoil::Kind::comes_short, "", wedge - std::max(spare, 0.0)});
    remedies.push_back(remedy);
  }
}

void add_recut(std::vector<Remedy>& remedies, const CutFault& fault) {
  Remedy remedy = plain(Remedy::Do::recut_notch);
  remedy.edge = fault.where;
  remedy.by_mm = -fault.off.value;
  remedies.push_back(remedy);
}

void add_for(std::vector<Remedy>& remedies, const Judged& judged, const CutFault& fault) {
  switch (fault.kind) {
    case Kind::still_stock:
    case Kind::too_large:
      return add_trims(remedies, judged, fault.of);
    case Kind::off_by_kerf:
    case Kind::too_small:
      return add_fill(remedies, judged, fault);
    case Kind::out_of_square:
      return add_squaring(remedies, judged, fault);
    case Kind::notch_without_clearance:
    case Kind::notch_too_small:
      return add_recut(remedies, fault);
    case Kind::mirrored:
      remedies.push_back(plain(Remedy::Do::turn_over));
      remedies.back().spoils = {{Spoil::Kind::other_face, "", 0}};
      return;
    case Kind::notch_too_large:
    case Kind::notch_not_wanted:
      remedies.push_back(plain(Remedy::Do::fill));
      remedies.back().edge = fault.where.substr(0, fault.where.find(','));
      remedies.back().by_mm = std::max(fault.off.value, 0.0);
      remedies.back().spoils = {{Spoil::Kind::filled, fault.where, remedies.back().by_mm}};
      return;
    case Kind::swapped:
      remedies.push_back(plain(Remedy::Do::change_marks));
      remedies.back().edge = fault.other;
      return;
    case Kind::taper_reversed:
    case Kind::not_measured:
    case Kind::disagree:
    case Kind::figures_swapped:
    case Kind::taken_beyond:
      return;
  }
}

bool same(const Remedy& a, const Remedy& b) {
  return a.what == b.what && a.edge == b.edge && a.by_mm == b.by_mm;
}

// Wood that is missing cannot be put back.
bool lacks_wood(Kind kind) {
  return kind == Kind::off_by_kerf || kind == Kind::too_small || kind == Kind::taper_reversed ||
         kind == Kind::out_of_square || kind == Kind::mirrored || kind == Kind::notch_too_large ||
         kind == Kind::notch_not_wanted;
}

// Off by so much that the figure is more likely wrong than the saw.
bool hardly_cut(const CutFault& fault) {
  constexpr double kShare = 0.5;  // of the size wanted; chosen
  const bool sized = fault.kind == Kind::too_large || fault.kind == Kind::too_small;
  return sized && std::abs(fault.off.value) > kShare * fault.wanted_mm;
}

// What mends one fault, the one that spoils least first; to cut again comes last, to
// take a figure again that cannot be believed first.
std::vector<Remedy> for_fault(const Judged& judged, const CutFault& fault) {
  if (fault.kind == Kind::figures_swapped || fault.kind == Kind::taken_beyond)
    return {plain(Remedy::Do::mend_file)};
  std::vector<Remedy> all;
  if (fault.verdict == Verdict::does_not_fit) add_for(all, judged, fault);
  std::stable_sort(all.begin(), all.end(), [](const Remedy& a, const Remedy& b) {
    return a.spoils.size() < b.spoils.size();
  });
  if (fault.verdict == Verdict::cannot_tell)
    all.push_back(plain(Remedy::Do::measure));
  else if (hardly_cut(fault))
    all.insert(all.begin(), plain(Remedy::Do::take_again));
  else if (lacks_wood(fault.kind))
    all.push_back(plain(Remedy::Do::cut_again));
  return all;
}

}  // namespace

std::vector<Remedy> remedies_for(const Judged& judged, const std::vector<CutFault>& faults) {
  std::vector<Remedy> once;
  for (int k = 0; k < static_cast<int>(faults.size()); ++k)
    for (Remedy remedy : for_fault(judged, faults[k])) {
      remedy.fault = k;
      if (std::none_of(once.begin(), once.end(), [&](const Remedy& r) { return same(r, remedy); }))
        once.push_back(std::move(remedy));
    }
  return once;
}

}  // namespace nook

// Forgotten cuts, kerfs, tapers, squareness, notches.
#include "shop/cut_faults.h"

#include <algorithm>
#include <cmath>

#include "shop/closing.h"

namespace nook {
namespace {

using Of = CutFigure::Of;
using Kind = CutFault::Kind;

constexpr double kAlike = 1.6;                 // mm; two figures so near are one. Chosen
constexpr double kNearStock = 3.2;             // mm; panels are sold up to 1/16 in small. Chosen
constexpr double kKerfLow = 2, kKerfHigh = 4;  // mm; saws take 3/32 to 1/8 in: common practice

// The two ends of a width or a height.
struct Pair {
  const CutFigure *first, *last;
  CutFault::Of of;
  const char *at_first, *at_last;

  double measured(const CutFigure* f) const { return f->wanted + f->off.value; }
};

Verdict verdict_for(const CutFigure& figure, double sure) {
  return figure.known() ? verdict_of(figure.chance(), sure) : Verdict::cannot_tell;
}
bool stands(const CutFigure& figure, double sure) {
  return figure.known() && figure.chance() >= sure;
}

CutFault fault(Kind kind, CutFault::Of of, const CutFigure& figure) {
  CutFault made;
  made.kind = kind;
  made.of = of;
  made.off = figure.off;
  made.accepted = Accepted{figure.low, figure.high};
  made.wanted_mm = figure.wanted, made.wild_mm = figure.wild;
  made.measured_mm = figure.wanted + figure.off.value;
  return made;
}

// The name of the stock where a size is one of its own, uncut.
bool is_stock_size(const Stock& stock, double size) {
  const std::vector<double> sizes = sizes_of(stock);
  return std::any_of(sizes.begin(), sizes.end(),
                     [&](double s) { return std::abs(s - size) < kNearStock; });
}

bool is_kerf_small(const CutFigure& figure) {
  return figure.off.value < -kKerfLow && figure.off.value > -kKerfHigh;
}

Kind kind_of(const CutFigure& figure, const Stock& stock) {
  if (figure.off.value > 0)
    return is_stock_size(stock, figure.wanted + figure.off.value) ? Kind::still_stock
                                                                  : Kind::too_large;
  return is_kerf_small(figure) ? Kind::off_by_kerf : Kind::too_small;
}

CutFault size_fault(const CutFigure& figure, const Judged& judged, CutFault::Of of, double sure) {
  const Kind kind = figure.known() ? kind_of(figure, *judged.needed->stock) : Kind::not_measured;
  CutFault made = fault(kind, of, figure);
  made.verdict = verdict_for(figure, sure);
  if (kind == Kind::still_stock) made.other = judged.needed->stock->sheet[0] ? "sheet" : "board";
  return made;
}

// Needed and cut differ from end to end by the same, in opposite directions.
bool reversed(const Pair& pair) {
  const double needed = pair.last->wanted - pair.first->wanted;
  const double cut = pair.measured(pair.last) - pair.measured(pair.first);
  return pair.first->known() && pair.last->known() && std::abs(needed) > 2 * kAlike &&
         std::abs(cut + needed) < 2 * kAlike;
}

void add_pair(std::vector<CutFault>& faults, const Pair& pair, const Judged& judged, double sure) {
  if (!pair.first || !pair.last) return;
  const bool first_well = stands(*pair.first, sure), last_well = stands(*pair.last, sure);
  if (first_well && last_well) return;
  if (reversed(pair)) {
    faults.push_back(fault(Kind::taper_reversed, pair.of, *pair.last));
    faults.back().where = pair.at_last;
    return;
  }
  const bool alike = !first_well && !last_well && pair.first->known() == pair.last->known() &&
                     std::abs(pair.first->off.value - pair.last->off.value) < kAlike;
  for (const CutFigure* figure : {pair.first, pair.last}) {
    if (stands(*figure, sure)) continue;
    faults.push_back(size_fault(*figure, judged, pair.of, sure));
    if (alike) return;
    faults.back().where = figure == pair.first ? pair.at_first : pair.at_last;
  }
}

void add_single(std::vector<CutFault>& faults, const CutFigure* figure, CutFault::Of of,
                const Judged& judged, double sure) {
  if (figure && !stands(*figure, sure)) faults.push_back(size_fault(*figure, judged, of, sure));
}

void add_square(std::vector<CutFault>& faults, const Judged& judged, double sure) {
  const CutFigure* square = judged.figure(Of::square);
  if (!square || stands(*square, sure)) return;
  faults.push_back(fault(square->known() ? Kind::out_of_square : Kind::not_measured,
                         CutFault::Of::square, *square));
  faults.back().verdict = verdict_for(*square, sure);
}

// Sizes that differ from end to end make a piece lean too: that is told once.
bool uneven(const std::vector<CutFault>& faults) {
  return std::any_of(faults.begin(), faults.end(), [](const CutFault& f) {
    return f.of != CutFault::Of::notch && f.verdict == Verdict::does_not_fit && !f.where.empty();
  });
}

bool cut_at(const PieceAsCut& piece, const std::string& corner) {
  return std::any_of(piece.notches.begin(), piece.notches.end(),
                     [&](const NotchAsCut& n) { return n.corner == corner; });
}

Kind notch_kind(const CutFigure& figure, double clearance) {
  if (!figure.known()) return Kind::not_measured;
  if (figure.off.value > 0) return Kind::notch_too_large;
  const bool bare = clearance > 0 && std::abs(figure.off.value + clearance) < kAlike;
  return bare ? Kind::notch_without_clearance : Kind::notch_too_small;
}

void add_notch(std::vector<CutFault>& faults, const Judged& judged, const NeededNotch& notch,
               double sure) {
  for (const CutFigure& figure : judged.figures) {
    if (figure.corner != notch.corner || stands(figure, sure)) continue;
    CutFault made = fault(notch_kind(figure, notch.clearance_mm), CutFault::Of::notch, figure);
    made.where = notch.corner + (figure.of == Of::notch_width ? ", width" : ", height");
    made.verdict = verdict_for(figure, sure);
    if (made.kind == Kind::not_measured) made.where = notch.corner;
    faults.push_back(made);
    if (made.kind == Kind::not_measured) return;
  }
}

// The most that a panel's figure uses up of what is accepted.
double most_used(const Judged& judged) {
  double most = 0;
  for (const CutFigure& figure : judged.figures)
    if (figure.known() && !figure.of_notch()) most = std::max(most, figure.used());
  return most;
}

// Turned over, its notches are where they are wanted and all else is no worse.
bool suits_turned(const Judged& judged) {
  if (!may_turn(*judged.needed, Turn::sideways)) return false;
  const Judged over = judge_seen(turned(judged.piece, Turn::sideways, size_of(*judged.needed)),
                                 *judged.needed, judged.scale);
  const auto notch_well = [&](const CutFigure& figure) {
    return !figure.of_notch() ||
           (figure.known() && verdict_for(figure, judged.scale.sure) != Verdict::does_not_fit);
  };
  return over.extra.empty() && most_used(over) <= std::max(1.0, most_used(judged)) &&
         std::all_of(over.figures.begin(), over.figures.end(), notch_well);
}

// A notch that is wanted here and was cut on the other side.
bool add_mirrored(std::vector<CutFault>& faults, const Judged& judged, const NeededNotch& notch) {
  const std::string mirror = turned_corner(notch.corner, Turn::sideways);
  const auto& extra = judged.extra;
  if (cut_at(judged.piece, notch.corner) ||
      std::find(extra.begin(), extra.end(), mirror) == extra.end() || !suits_turned(judged))
    return false;
  CutFault made;
  made.kind = Kind::mirrored;
  made.of = CutFault::Of::notch;
  made.where = notch.corner;
  made.other = mirror;
  made.wanted_mm = notch.width_mm;
  made.off = {-notch.width_mm, 0};
  faults.push_back(made);
  return true;
}

void add_notches(std::vector<CutFault>& faults, const Judged& judged, double sure) {
  std::vector<std::string> told;
  for (const NeededNotch& notch : judged.needed->notches) {
    if (add_mirrored(faults, judged, notch))
      told.push_back(turned_corner(notch.corner, Turn::sideways));
    else
      add_notch(faults, judged, notch, sure);
  }
  for (const std::string& corner : judged.extra) {
    if (std::find(told.begin(), told.end(), corner) != told.end()) continue;
    CutFault made;
    made.kind = Kind::notch_not_wanted;
    made.of = CutFault::Of::notch;
    made.where = corner;
    faults.push_back(made);
  }
}

// Each figure by itself may be sure and all together not: then the least sure one is named.
void add_least_sure(std::vector<CutFault>& faults, const Judged& judged) {
  const auto least = std::min_element(
      judged.figures.begin(), judged.figures.end(),
      [](const CutFigure& a, const CutFigure& b) { return a.chance() < b.chance(); });
  if (least == judged.figures.end()) return;
  const bool level =
      least->of == Of::width_bottom || least->of == Of::width_top || least->of == Of::length;
  const CutFault::Of of = least->of_notch()         ? CutFault::Of::notch
                          : least->of == Of::square ? CutFault::Of::square
                          : level                   ? CutFault::Of::width
                                                    : CutFault::Of::height;
  CutFault made = fault(least->off.value > 0 ? Kind::too_large : Kind::too_small, of, *least);
  if (of == CutFault::Of::square) made.kind = Kind::out_of_square;
  if (of == CutFault::Of::notch)
    made.kind = least->off.value > 0 ? Kind::notch_too_large : Kind::notch_too_small;
  made.where = least->corner;
  made.verdict = judged.verdict;
  faults.push_back(made);
}

// "the second diagonal".
std::string name_of(const CutDisagreement& disagreement) {
  const char* what = disagreement.of == CutDisagreement::Of::width    ? "width"
                     : disagreement.of == CutDisagreement::Of::height ? "height"
                                                                      : "diagonal";
  return in_order(static_cast<std::size_t>(disagreement.index), what);
}

CutFault disagreeing(const CutDisagreement& disagreement) {
  CutFault made;
  made.kind = Kind::disagree;
  made.of = CutFault::Of::whole;
  made.verdict = Verdict::cannot_tell;
  made.where = name_of(disagreement);
  made.measured_mm = disagreement.read, made.wanted_mm = disagreement.others_say;
  made.off.value = made.measured_mm - made.wanted_mm;
  return made;
}

}  // namespace

std::string in_order(std::size_t index, const std::string& what) {
  static constexpr const char* kOrder[] = {"first", "second", "third", "fourth"};
  return std::string("the ") + (index < std::size(kOrder) ? kOrder[index] : "last") + " " + what;
}

std::vector<CutFault> faults_of(const Judged& judged, double sure) {
  std::vector<CutFault> faults;
  if (judged.verdict == Verdict::fits) return faults;

  const auto of = [&](Of which) { return judged.figure(which); };
  add_notches(faults, judged, sure);
  if (judged.shape.disagreement) {
    faults.push_back(disagreeing(*judged.shape.disagreement));
    return faults;
  }
  add_pair(
      faults,
      {of(Of::width_bottom), of(Of::width_top), CutFault::Of::width, "at the bottom", "at the top"},
      judged, sure);
  add_pair(faults,
           {of(Of::height_left), of(Of::height_right), CutFault::Of::height, "at the left",
            "at the right"},
           judged, sure);
  add_single(faults, of(Of::length), CutFault::Of::width, judged, sure);
  add_single(faults, of(Of::section), CutFault::Of::height, judged, sure);
  for (const CutFigure& figure : judged.figures) {
    if (figure.of == Of::width_middle)
      add_single(faults, &figure, CutFault::Of::width, judged, sure);
    if (figure.of == Of::height_middle)
      add_single(faults, &figure, CutFault::Of::height, judged, sure);
  }
  if (!uneven(faults)) add_square(faults, judged, sure);
  if (faults.empty()) add_least_sure(faults, judged);
  std::stable_sort(faults.begin(), faults.end(), [](const CutFault& a, const CutFault& b) {
    return a.verdict != b.verdict ? a.verdict > b.verdict
                                  : std::abs(a.off.value) > std::abs(b.off.value);
  });
  for (CutFault& fault : faults)
    fault.lengthwise =
        judged.needed->stock->kind == StockKind::lumber && fault.of == CutFault::Of::width;
  // Two figures, each unsure alone, may be surely wrong together.
  if (!faults.empty()) faults.front().verdict = judged.verdict;
  return faults;
}

}  // namespace nook

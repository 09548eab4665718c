// Notches cut again, pieces filled, turned, cut again; trims stand by themselves.
#include "shop/remedies.h"

#include <algorithm>
#include <cmath>

#include "design/side.h"
#include "shop/trim_remedies.h"

namespace nook {
namespace {

using Kind = CutFault::Kind;

constexpr double kHides = 9.525;  // 3/8 in: what a filler or trim closes; common practice

const SideAllowance& allowance(const Judged& judged, EdgeSide side) {
  return judged.needed->sides[static_cast<size_t>(side)];
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

// Turned over it shows its other face, which matters where it shows one alone.
void add_turn(std::vector<Remedy>& remedies, const Judged& judged, const CutFault& fault) {
  Remedy remedy = plain(Remedy::Do::turn);
  remedy.turn = fault.kind == Kind::end_for_end ? Turn::end_for_end : fault.turn;
  const ShowFace show = judged.needed->drawn->show;
  if (turns_over(remedy.turn) && (show == ShowFace::front || show == ShowFace::back))
    remedy.spoils = {{Spoil::Kind::other_face, "", 0}};
  remedies.push_back(remedy);
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
      return add_laid(remedies, judged);
    case Kind::notch_without_clearance:
    case Kind::notch_too_small:
      return add_recut(remedies, fault);
    case Kind::mirrored:
    case Kind::end_for_end:
      return add_turn(remedies, judged, fault);
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
    case Kind::still_square:
      remedies.push_back(plain(Remedy::Do::cut_outline));
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
  return a.what == b.what && a.edge == b.edge && a.by_mm == b.by_mm && same_edges(a, b);
}

// Wood that is missing cannot be put back.
bool lacks_wood(Kind kind) {
  return kind == Kind::off_by_kerf || kind == Kind::too_small || kind == Kind::taper_reversed ||
         kind == Kind::out_of_square || kind == Kind::mirrored || kind == Kind::notch_too_large ||
         kind == Kind::notch_not_wanted;
}

// Whether a new piece is a way too: where wood is missing, or nothing mends it without harm.
bool wants_new(const CutFault& fault, const std::vector<Remedy>& ways) {
  const bool sized = fault.kind == Kind::too_large || fault.kind == Kind::still_stock;
  if (ways.empty()) return sized || lacks_wood(fault.kind);
  const auto& spoils = ways.front().spoils;
  const bool is_short = std::any_of(spoils.begin(), spoils.end(), [](const Spoil& spoil) {
    return spoil.kind == Spoil::Kind::comes_short;
  });
  return is_short || (lacks_wood(fault.kind) && !spoils.empty());
}

// Off by so much that the figure is more likely wrong than the saw.
bool hardly_cut(const CutFault& fault) {
  constexpr double kShare = 0.5;  // of the size wanted; chosen
  const bool sized = fault.kind == Kind::too_large || fault.kind == Kind::too_small;
  return sized && std::abs(fault.off.value) > kShare * fault.wanted_mm;
}

// What is not measured yet, or wrongly.
bool asked_anew(Kind kind) {
  return kind == Kind::not_measured || kind == Kind::disagree;
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
  const bool slip = !fault.perhaps.empty() || hardly_cut(fault);
  if (fault.verdict == Verdict::cannot_tell)
    all.push_back(plain(asked_anew(fault.kind) ? Remedy::Do::measure : Remedy::Do::measure_again));
  else if ((!slip || !fault.perhaps.empty()) && wants_new(fault, all))
    all.push_back(plain(Remedy::Do::cut_again));
  if (slip && fault.verdict != Verdict::cannot_tell)
    all.insert(all.begin(), plain(Remedy::Do::take_again));
  if (!all.empty()) all.front().perhaps = fault.perhaps;
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

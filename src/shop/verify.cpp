// Each measured piece judged, then looked at beside the others: two may have been swapped.
#include "shop/verify.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "shop/cut_faults.h"
#include "shop/cut_slips.h"
#include "shop/mixed_figures.h"
#include "shop/remedies.h"
#include "shop/tape_reads.h"
#include "shop/taped.h"

namespace nook {
namespace {

// The needed pieces that an entry of pieces.toml means: one, or every copy of a part.
std::vector<const NeededPiece*> meant(const std::string& part,
                                      const std::vector<NeededPiece>& needed) {
  std::vector<const NeededPiece*> all;
  for (const NeededPiece& piece : needed)
    if (piece.part == part || piece.drawn->name == part) all.push_back(&piece);
  return all;
}

// A piece that may be any copy has to suit the one it suits worst.
Judged judged_for(const PieceAsCut& cut, const std::vector<const NeededPiece*>& needed,
                  CutScale scale) {
  Judged worst = judge(cut, *needed.front(), scale);
  for (size_t k = 1; k < needed.size(); ++k) {
    Judged next = judge(cut, *needed[k], scale);
    if (next.chance < worst.chance) worst = std::move(next);
  }
  return worst;
}

struct Measuring {
  const PieceAsCut* cut;
  std::vector<const NeededPiece*> needed;
  Judged judged;
};

bool suits(const Measuring& piece, const Measuring& place, CutScale scale) {
  return judged_for(*piece.cut, place.needed, scale).verdict == Verdict::fits;
}

// Another piece that fails at its own place too, where each would suit the other's place.
const Measuring* swapped_with(const Measuring& piece, const std::vector<Measuring>& all,
                              CutScale scale) {
  if (piece.judged.verdict != Verdict::does_not_fit) return nullptr;
  for (const Measuring& other : all)
    if (&other != &piece && other.judged.verdict == Verdict::does_not_fit &&
        suits(piece, other, scale) && suits(other, piece, scale))
      return &other;
  return nullptr;
}

CutFault swap_fault(const Measuring& piece, const std::string& other, double sure) {
  const std::vector<CutFault> own = faults_of(piece.judged, sure);
  CutFault fault;
  fault.kind = CutFault::Kind::swapped;
  fault.of = CutFault::Of::whole;
  fault.other = other;
  if (!own.empty()) fault.off = own.front().off;
  return fault;
}

// A turn after which a piece that does not fit, or whose readings disagree, is as needed.
std::optional<Turn> turn_for(const Measuring& piece, CutScale scale) {
  if (piece.judged.verdict != Verdict::does_not_fit && !piece.judged.shape.disagreement)
    return std::nullopt;
  for (const Turn turn : {Turn::end_for_end, Turn::sideways, Turn::endways}) {
    const bool may =
        std::all_of(piece.needed.begin(), piece.needed.end(),
                    [&](const NeededPiece* needed) { return may_turn(*needed, turn); });
    const PieceAsCut other = turned(*piece.cut, turn, size_of(*piece.judged.needed));
    if (may && judged_for(other, piece.needed, scale).verdict == Verdict::fits) return turn;
  }
  return std::nullopt;
}

// A notch on the other side is told as that; all else as the piece.
CutFault turn_fault(const PieceVerify& piece, Turn turn) {
  if (piece.faults.size() == 1 && piece.faults[0].kind == CutFault::Kind::mirrored &&
      turn == Turn::sideways)
    return piece.faults[0];
  CutFault fault;
  fault.kind = turns_over(turn) ? CutFault::Kind::mirrored : CutFault::Kind::end_for_end;
  fault.of = CutFault::Of::whole;
  fault.turn = turn;
  fault.off = piece.off;
  return fault;
}

constexpr double kMuchBetter = 0.25;  // of that: the figures were swapped. Chosen

// The furthest that a size is off, or a notch's, without end where sizes contradict each other so
// much that nothing is known; squareness says nothing about swapped figures.
double furthest_off(const Judged& judged, bool notches) {
  double most = 0;
  for (const CutFigure& figure : judged.figures) {
    if (!figure.measured || figure.of_notch() != notches || figure.of == CutFigure::Of::square)
      continue;
    if (!figure.known()) return std::numeric_limits<double>::infinity();
    most = std::max(most, std::abs(figure.off.value));
  }
  return most;
}

// The figure that uses up most of what is accepted.
Measured worst_off(const Judged& judged) {
  Measured worst;
  double most = -1;
  for (const CutFigure& figure : judged.figures) {
    if (!figure.known()) continue;
    if (figure.used() > most) most = figure.used(), worst = {figure.strayed(), figure.off.sd};
  }
  return worst;
}

// The most wood left on that is to be scribed off.
double most_wild(const Judged& judged) {
  double most = 0;
  for (const CutFigure& figure : judged.figures)
    if (figure.known()) most = std::max(most, figure.off.value - figure.strayed());
  return most;
}

CutFault swapped_figures(const std::string& what, Measured off) {
  CutFault fault;
  fault.kind = CutFault::Kind::figures_swapped;
  fault.of = CutFault::Of::whole;
  fault.verdict = Verdict::cannot_tell;
  fault.other = what;
  fault.off = off;
  return fault;
}

// A size of its stock is no slip of the pencil.
bool uncut(const std::vector<CutFault>& faults) {
  return std::any_of(faults.begin(), faults.end(), [](const CutFault& fault) {
    return fault.kind == CutFault::Kind::still_stock;
  });
}

// Figures that cannot be of this piece as they stand: swapped, or taken where there is no piece.
std::optional<CutFault> written_wrong(const Measuring& piece, CutScale scale) {
  const auto meant_better = [&](const PieceAsCut& meant, bool notches) {
    const double as_given = furthest_off(piece.judged, notches);
    if (as_given < kFarOff) return false;
    const Judged other = judged_for(meant, piece.needed, scale);
    return !other.shape.disagreement && furthest_off(other, notches) <= kMuchBetter * as_given &&
           std::isfinite(furthest_off(other, notches));
  };
  for (const MixUp& mixed : mix_ups(*piece.cut))
    if (meant_better(mixed.meant, false))
      return swapped_figures(mixed.what, worst_off(piece.judged));
  if (meant_better(with_notches_turned(*piece.cut), true))
    return swapped_figures("notches", worst_off(piece.judged));
  return taken_beyond(*piece.cut, *piece.judged.needed);
}

// Whether the needed outline is smaller at one of the places where a size was taken than all over.
bool smaller_somewhere(const Polygon& needed, const std::vector<CheckedAt>& sizes,
                       Reads (*at)(const Polygon&, double), double size) {
  return std::any_of(sizes.begin(), sizes.end(), [&](const CheckedAt& one) {
    return at(needed, one.at.mm)(needed) < size - kSawStrays - kMayBeOver;
  });
}

// Every size as large as the piece's bounds, wild wood on or off, where it should be smaller.
bool still_square(const Measuring& piece) {
  const NeededPiece& needed = *piece.judged.needed;
  if (!is_shaped(needed.outline) || piece.cut->widths.empty() || piece.cut->heights.empty())
    return false;
  const auto wild = [&](EdgeSide a, EdgeSide b) {
    return needed.sides[static_cast<size_t>(a)].wild + needed.sides[static_cast<size_t>(b)].wild;
  };
  const auto whole = [](const std::vector<CheckedAt>& sizes, double size, double beyond) {
    return std::all_of(sizes.begin(), sizes.end(), [&](const CheckedAt& one) {
      return std::all_of(one.measured.begin(), one.measured.end(), [&](Length read) {
        return read.mm > size - kSawStrays && read.mm < size + beyond + kMayBeOver;
      });
    });
  };
  const Vec2 size = size_of(needed);
  return piece.judged.verdict != Verdict::fits &&
         (smaller_somewhere(needed.outline, piece.cut->widths, width_at, size.x) ||
          smaller_somewhere(needed.outline, piece.cut->heights, height_at, size.y)) &&
         whole(piece.cut->widths, size.x, wild(EdgeSide::left, EdgeSide::right)) &&
         whole(piece.cut->heights, size.y, wild(EdgeSide::bottom, EdgeSide::top));
}

CutFault square_fault() {
  CutFault fault;
  fault.kind = CutFault::Kind::still_square;
  fault.of = CutFault::Of::whole;
  return fault;
}

PieceVerify verified(const VerifyInput& input, const Measuring& piece,
                     const std::vector<Measuring>& all, CutScale scale) {
  const Judged& judged = piece.judged;
  PieceVerify answer{piece.cut->part,
                     judged.verdict,
                     judged.chance,
                     worst_off(judged),
                     faults_of(judged, scale.sure),
                     {},
                     most_wild(judged)};
  if (still_square(piece))
    answer.faults = {square_fault()}, answer.verdict = Verdict::does_not_fit;
  else if (const Measuring* other = swapped_with(piece, all, scale))
    answer.faults = {swap_fault(piece, other->cut->part, scale.sure)};
  else if (const auto turn = turn_for(piece, scale))
    answer.faults = {turn_fault(answer, *turn)}, answer.verdict = Verdict::does_not_fit;
  else if (const auto wrong = uncut(answer.faults) ? std::nullopt : written_wrong(piece, scale))
    answer.faults = {*wrong}, answer.verdict = Verdict::cannot_tell;
  if (!answer.faults.empty()) answer.off = answer.faults.front().off;
  for (CutFault& fault : answer.faults) fault.perhaps = likely_slip(input, fault);
  answer.remedies = remedies_for(judged, answer.faults);
  return answer;
}

std::vector<std::string> unmeasured(const VerifyInput& input) {
  std::vector<std::string> names;
  for (const NeededPiece& piece : input.needed) {
    const bool found =
        std::any_of(input.cut.pieces.begin(), input.cut.pieces.end(), [&](const PieceAsCut& cut) {
          return cut.part == piece.part || cut.part == piece.drawn->name;
        });
    if (!found) names.push_back(piece.part);
  }
  return names;
}

}  // namespace

VerifyAnswer verify(const VerifyInput& input) {
  const CutScale scale{sd_between_edges(input.survey), input.sure};
  VerifyAnswer answer;
  answer.known = input.known;
  answer.said = input.survey.said();
  answer.not_measured = unmeasured(input);
  std::vector<Measuring> all;
  for (const PieceAsCut& cut : input.cut.pieces) {
    const auto needed = meant(cut.part, input.needed);
    if (!needed.empty()) all.push_back({&cut, needed, judged_for(cut, needed, scale)});
  }
  for (const Measuring& piece : all) answer.pieces.push_back(verified(input, piece, all, scale));
  for (const PieceVerify& piece : answer.pieces)
    answer.verdict = worse(answer.verdict, piece.verdict);
  if (!input.known || answer.pieces.empty())
    answer.verdict = worse(answer.verdict, Verdict::cannot_tell);
  return answer;
}

}  // namespace nook

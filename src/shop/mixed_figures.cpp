// Widths for heights, sizes for places, and places that are off the piece.
#include "shop/mixed_figures.h"

#include <algorithm>
#include <utility>

#include "shop/closing.h"
#include "shop/cut_faults.h"
#include "shop/outline.h"

namespace nook {
namespace {

constexpr double kHair = 6.35;  // mm, 1/4 in beyond the end is a slip of the hand. Chosen

void change_pair(std::vector<CheckedAt>& sizes) {
  for (CheckedAt& size : sizes)
    if (!size.measured.empty()) std::swap(size.at, size.measured.front());
}

double largest(const std::vector<CheckedAt>& sizes, double least) {
  for (const CheckedAt& size : sizes)
    for (const Length length : size.measured) least = std::max(least, length.mm);
  return least;
}

// How far a piece may go one way: as its sizes that way say, or else as its stock lets it.
double reach(const std::vector<CheckedAt>& sizes, double needed, const Stock& stock) {
  if (!sizes.empty()) return largest(sizes, needed);
  for (const double size : sizes_of(stock)) needed = std::max(needed, size);
  return needed;
}

std::optional<CutFault> beyond(const std::vector<CheckedAt>& sizes, double end, const char* what) {
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (sizes[i].at.mm <= end + kHair) continue;
    CutFault fault;
    fault.kind = CutFault::Kind::taken_beyond;
    fault.of = what[0] == 'w' ? CutFault::Of::width : CutFault::Of::height;
    fault.verdict = Verdict::cannot_tell;
    fault.where = in_order(i, what);
    fault.measured_mm = sizes[i].at.mm, fault.wanted_mm = end;
    return fault;
  }
  return {};
}

}  // namespace

std::vector<MixUp> mix_ups(const PieceAsCut& piece) {
  std::vector<MixUp> found;
  if (!piece.widths.empty() && !piece.heights.empty()) {
    found.push_back({"keys", piece});
    std::swap(found.back().meant.widths, found.back().meant.heights);
  }
  found.push_back({"pairs", piece});
  change_pair(found.back().meant.widths), change_pair(found.back().meant.heights);
  return found;
}

PieceAsCut with_notches_turned(PieceAsCut piece) {
  for (NotchAsCut& notch : piece.notches) std::swap(notch.width, notch.height);
  return piece;
}

std::optional<CutFault> taken_beyond(const PieceAsCut& piece, const NeededPiece& needed) {
  if (needed.stock->kind == StockKind::lumber) return {};  // its section is even all along
  const Box2 box = box_of(needed.outline);
  const double wide = reach(piece.widths, box.high.x - box.low.x, *needed.stock);
  const double high = reach(piece.heights, box.high.y - box.low.y, *needed.stock);
  const auto width = beyond(piece.widths, high, "width");
  return width ? width : beyond(piece.heights, wide, "height");
}

}  // namespace nook

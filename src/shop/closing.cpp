// Gaps against the wood there is.
#include "shop/closing.h"

#include <algorithm>
#include <limits>

#include "design/fitting.h"
#include "design/side.h"

namespace nook {
namespace {

constexpr double kNoLimit = std::numeric_limits<double>::infinity();

double longest(const Stock& stock) {
  double most = stock.lengths.empty() ? kNoLimit : 0;
  for (const Length length : stock.lengths) most = std::max(most, length.mm);
  return most;
}

// How large the stock lets a piece be one way, its other size given.
double limit(const Stock& stock, bool along_u, double other) {
  if (stock.kind == StockKind::lumber)
    return along_u ? longest(stock) : stock.width ? stock.width->mm : kNoLimit;
  if (!stock.sheet[0] || !stock.sheet[1]) return kNoLimit;
  const double width = stock.sheet[0]->mm, length = stock.sheet[1]->mm;
  double most = 0;
  if (other <= length) most = std::max(most, width);
  if (other <= width) most = std::max(most, length);
  return most;
}

bool is_cut_to_room(const Piece& piece, const Design& design, EdgeSide side) {
  return std::any_of(design.contacts.begin(), design.contacts.end(), [&](const Contact& contact) {
    return is_cut_to_fit(contact.by) && is_named(piece, contact.part) &&
           side_meant(piece.drawn->outline, contact.edge) == side;
  });
}

}  // namespace

std::vector<double> sizes_of(const Stock& stock) {
  std::vector<double> sizes;
  for (const auto& side : stock.sheet)
    if (side) sizes.push_back(side->mm);
  for (const Length length : stock.lengths) sizes.push_back(length.mm);
  return sizes;
}

double wood_beyond(const Piece& piece, const Design& design, EdgeSide side) {
  const Box2 b = box_of(piece.drawn->outline);
  const Vec2 size = b.high - b.low;
  const double own = upright(side) ? size.x : size.y, other = upright(side) ? size.y : size.x;
  const double most = limit(design.stock[piece.drawn->stock], upright(side), other);
  const double beyond = std::max(0.0, most - own);
  return is_cut_to_room(piece, design, opposite(side)) ? beyond / 2 : beyond;
}

double widest_open(const ContactFit& found) {
  double open = 0;
  for (const GapPoint& point : found.line) open = std::max(open, point.gap - found.how->gap.mm);
  return open;
}

double closing(const Piece& piece, const Design& design, const ContactFit& found) {
  const double open = widest_open(found);
  const auto side = side_meant(piece.drawn->outline, found.how->edge);
  const double wood = side ? wood_beyond(piece, design, *side) : kNoLimit;
  return std::max(std::min(found.wood_mm, open), open - wood);
}

}  // namespace nook

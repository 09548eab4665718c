// Opposite edges are added up: a piece that is short between two walls is short of both gaps.
#include "sheet/fit_wood.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/measured.h"
#include "design/fitting.h"
#include "design/side.h"
#include "solid/polygon.h"

namespace nook {
namespace {

double drawn_size(const FitAnswer& fit, const ContactFit& contact, EdgeSide side) {
  const Box2 box = box_of(fit.pieces[contact.piece].drawn->outline);
  return upright(side) ? box.high.x - box.low.x : box.high.y - box.low.y;
}

// A stick is crosscut to length; all else is ripped to size.
const char* cut_word(const Piece& piece, EdgeSide side) {
  return piece.stick && upright(side) ? "crosscut" : "rip";
}

}  // namespace

const ContactFit* across_from(const FitAnswer& fit, const ContactFit& contact) {
  const EdgeSide* side = std::get_if<EdgeSide>(&contact.how->edge);
  if (!side) return nullptr;
  for (const ContactFit& other : fit.contacts) {
    const EdgeSide* there = std::get_if<EdgeSide>(&other.how->edge);
    if (other.piece == contact.piece && there && *there == opposite(*side) &&
        other.meets_anything && other.how->by != Fitting::clear)
      return &other;
  }
  return nullptr;
}

double wood_missing(const ContactFit& contact) {
  const Fitting by = contact.how->by;
  if (!is_cut_to_fit(by) && contact.verdict == Verdict::fits) return 0;
  return std::max(0.0, contact.scribe_mm - contact.how->gap.mm - contact.wood_mm);
}

std::string missing_wood(const FitAnswer& fit, const ContactFit& contact, const Style& style) {
  const auto length = [&](double mm) { return with_unit(millimetres(mm), style.rounding); };
  const double least = style.rounding.step.mm / 2, own = wood_missing(contact);
  if (own < least) return "";
  std::string text = fmt::format("the drawn piece has no wood for {} of it", length(own));
  const EdgeSide* side = std::get_if<EdgeSide>(&contact.how->edge);
  if (!side) return text + ": leave the edge " + length(own) + " wild";
  const ContactFit* other = across_from(fit, contact);
  const double there = other ? wood_missing(*other) : 0;
  const bool both = there >= least;
  if (both) text += fmt::format(", nor for {} at its {} edge", length(there), other->edge);
  return text + fmt::format(": {} the blank {} and leave {} wild",
                            cut_word(fit.pieces[contact.piece], *side),
                            length(drawn_size(fit, contact, *side) + own + there),
                            both ? "both edges" : "the edge");
}

}  // namespace nook

// The gap of one contact in words: how wide, where widest.
#pragma once

#include <cmath>
#include <string>

#include "base/measured.h"
#include "design/side.h"
#include "fit/fit_answer.h"
#include "sheet/answer.h"

namespace nook {

/// One contact with what its words need.
struct ContactWords {
  const FitAnswer& fit;
  const ContactFit& contact;
  const Style& style;

  std::string length(double mm) const { return with_unit(millimetres(mm), style.rounding); }
  /// ", give or take 1/16\"", or nothing.
  std::string about(double sd) const {
    return sd > 0 ? ", give or take " + give_or_take(millimetres(kTwoSided95 * sd), style.rounding)
                  : "";
  }
  /// Mm: less than this prints as nothing.
  double half_step() const { return style.rounding.step.mm / 2; }
  /// The widest gap; where it prints like what is accepted and is more, it says so.
  std::string widest() const {
    const double most = contact.gap.most;
    const bool hair = contact.verdict != Verdict::fits && most > contact.allow &&
                      length(most) == length(contact.allow);
    return (hair ? "a hair over " : "") + length(most);
  }
  /// Whether the edge is a plumb one.
  bool upright() const {
    const EdgeSide* side = std::get_if<EdgeSide>(&contact.how->edge);
    return side && nook::upright(*side) && plumb();
  }
  /// Whether the piece stands upright.
  bool plumb() const { return std::abs(fit.frames[contact.piece].v.z) > 0.99; }
};

/// Where along the edge its gap is widest; of equally wide spots the first.
double widest_at(const ContactFit& contact);

/// Where it is narrowest, of both faces; on a face contact as from its left end.
GapPoint narrowest(const ContactFit& contact);

/// "36 up", "36 from its left end", "36 along it".
std::string spot(const ContactWords& words, double at);

/// "gap 0 to 3/8, give or take 1/16, widest 82 up", or by how much it overlaps or lacks clearance.
std::string gap_words(const ContactWords& words);

}  // namespace nook

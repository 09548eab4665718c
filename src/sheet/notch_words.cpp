// Sizes along u and v; steps of a profile from the end that the edge is measured from.
#include "sheet/notch_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/cut_text.h"

namespace nook {
namespace {

std::string length(double mm, const Style& style) {
  return with_unit(millimetres(mm), style.rounding);
}

const ContactFit* contact_of(const FitAnswer& fit, const NotchFit& notch) {
  for (const ContactFit& contact : fit.contacts)
    if (contact.contact == notch.contact && contact.piece == notch.piece) return &contact;
  return nullptr;
}

// How far along the edge: up a plumb piece, else from its bottom, its left end, or its first point.
const char* counted(const FitAnswer& fit, const NotchFit& notch) {
  const ContactFit* contact = contact_of(fit, notch);
  const EdgeSide* side = contact ? std::get_if<EdgeSide>(&contact->how->edge) : nullptr;
  if (!side) return "along it";
  if (*side == EdgeSide::bottom || *side == EdgeSide::top) return "from its left end";
  return std::abs(fit.frames[notch.piece].v.z) > 0.99 ? "up" : "from its bottom edge";
}

}  // namespace

std::string notch_words(const NotchFit& notch, const Style& style) {
  double low_u = 1e300, high_u = -1e300, low_v = 1e300, high_v = -1e300;
  for (const Vec2 p : notch.polygon) {
    low_u = std::min(low_u, p.x), high_u = std::max(high_u, p.x);
    low_v = std::min(low_v, p.y), high_v = std::max(high_v, p.y);
  }
  return fmt::format("{}: {} wide, {} high, for the {}", notch.part,
                     rounded_up(high_u - low_u, style.rounding),
                     rounded_up(high_v - low_v, style.rounding), notch.around);
}

std::string finish_words(const FitAnswer& fit, const NotchFit& notch, const Style& style) {
  const ContactFit* contact = contact_of(fit, notch);
  const Fitting by = contact ? contact->how->by : Fitting::butt;
  const double closer = by == Fitting::scribe  ? contact->scribe_mm
                        : by == Fitting::taper ? contact->taper_mm
                                               : 0;
  if (closer < style.rounding.step.mm / 2) return "";
  return fmt::format(
      "; this is before its edge is {}: 'nookfit cut' says it from the finished line",
      by == Fitting::scribe ? "scribed" : "tapered");
}

std::string profile_words(const FitAnswer& fit, const NotchFit& notch, const Style& style) {
  if (!notch.follows_profile) return "";
  std::string text = "; it follows the profile:";
  for (std::size_t k = 0; k < notch.steps.size(); ++k)
    text += fmt::format("{} {} deep at {} {}", k == 0 ? "" : ",",
                        rounded_up(notch.steps[k].deep, style.rounding),
                        length(notch.steps[k].at, style), counted(fit, notch));
  return text + ", straight between; 'nookfit cut -o FOLDER' draws it full size";
}

}  // namespace nook

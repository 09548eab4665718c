// Gaps, overlaps and clearances of an edge as one reads them off a tape.
#include "sheet/contact_gap.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace nook {
namespace {

constexpr double kSameGap = 0.005;  // mm

std::string clear_words(const ContactWords& w) {
  const GapPoint least = narrowest(w.contact);
  const std::string wanted = fmt::format("; {} is wanted", w.length(w.contact.allow));
  if (least.gap < -w.half_step())
    return fmt::format("{} into it at {}{}", w.length(-least.gap), spot(w, least.at),
                       w.about(w.contact.gap_sd)) +
           wanted;
  return fmt::format("{} clear at its narrowest, {}{}", w.length(std::max(0.0, least.gap)),
                     spot(w, least.at), w.about(w.contact.gap_sd)) +
         wanted;
}

// An edge that leans is looked out from along the piece: the air beside it is less.
std::string square_words(const ContactWords& w) {
  constexpr double kUpright = 0.95;  // as good as square to the wall. Chosen, 18 degrees
  const EdgeSide* side = std::get_if<EdgeSide>(&w.contact.how->edge);
  if (!side || wall_named(w.contact.meets).empty()) return "";
  const Frame& frame = w.fit.frames[w.contact.piece];
  const Vec3 way = upright(*side) ? frame.u : frame.v;
  const double level = std::hypot(way.x, way.y);
  if (level > kUpright) return "";
  return fmt::format(" along the piece, {} square to the wall",
                     w.length(level * w.contact.gap.most));
}

}  // namespace

std::string spot(const ContactWords& w, double at) {
  const std::string length = w.length(at);
  const EdgeSide* side = std::get_if<EdgeSide>(&w.contact.how->edge);
  if (!side) return length + " along it";
  const bool along_v = upright(*side);
  if (along_v && w.plumb()) return length + " up";
  return length + (along_v ? " from its bottom edge" : " from its left end");
}

GapPoint narrowest(const ContactFit& contact) {
  GapPoint least{0, 1e300, 0};
  for (const auto* line : {&contact.line, &contact.front, &contact.back})
    for (const GapPoint& p : *line)
      if (p.gap < least.gap - kSameGap) least = p;
  for (const FieldPoint& p : contact.field)
    if (p.gap < least.gap - kSameGap) least = {p.u, p.gap, p.sd};
  return least;
}

double widest_at(const ContactFit& contact) {
  // Of equally wide spots the first is named.
  const auto widest =
      std::find_if(contact.line.begin(), contact.line.end(),
                   [&](const GapPoint& p) { return p.gap > contact.gap.most - kSameGap; });
  return widest == contact.line.end() ? 0 : widest->at;
}

std::string gap_words(const ContactWords& w) {
  if (w.contact.how->by == Fitting::clear) return clear_words(w);
  const GapRange& gap = w.contact.gap;
  const double step = w.half_step();
  if (gap.most < -step) return "too big by " + w.length(-gap.least) + w.about(w.contact.gap_sd);
  if (gap.least < -step && gap.most < step)
    return "overlaps by " + w.length(-gap.least) + w.about(w.contact.gap_sd);
  if (gap.least < -step)
    return fmt::format("overlaps by {}, open {} at {}{}", w.length(-gap.least), w.widest(),
                       spot(w, widest_at(w.contact)), w.about(w.contact.gap_sd));
  const bool alike = w.length(std::max(0.0, gap.least)) == w.length(gap.most);
  const std::string square = square_words(w);
  if (gap.most - gap.least < step || alike)
    return "gap " + w.widest() + square + w.about(w.contact.gap_sd);
  return fmt::format("gap {} to {}{}{}, widest {}", w.length(std::max(0.0, gap.least)), w.widest(),
                     square, w.about(w.contact.gap_sd), spot(w, widest_at(w.contact)));
}

}  // namespace nook

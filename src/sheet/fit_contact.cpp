// Gap, place of its widest spot, and the way to close it that the design asks for.
#include "sheet/fit_contact.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/measured.h"
#include "sheet/fit_words.h"

namespace nook {
namespace {

constexpr double kEasyScribe = kMillimetresPerInch * 3 / 8;  // common practice, no source
constexpr double kSameGap = 0.005;                           // mm
constexpr double kBevel = kMillimetresPerInch / 32;  // more between the faces is cut at a bevel

struct Words {
  const FitAnswer& fit;
  const ContactFit& contact;
  const Style& style;

  std::string length(double mm) const { return with_unit(millimetres(mm), style.rounding); }
  std::string about(double sd) const {
    return sd > 0 ? ", give or take " + give_or_take(millimetres(kTwoSided95 * sd), style.rounding)
                  : "";
  }
  bool upright() const {
    const EdgeSide* side = std::get_if<EdgeSide>(&contact.how->edge);
    return side && (*side == EdgeSide::left || *side == EdgeSide::right) && plumb();
  }
  bool plumb() const { return std::abs(fit.frames[contact.piece].v.z) > 0.99; }
};

// "at 36 up", "36 from its left end", "36 along it".
std::string spot(const Words& w, double at) {
  const std::string length = w.length(at);
  const EdgeSide* side = std::get_if<EdgeSide>(&w.contact.how->edge);
  if (!side) return length + " along it";
  const bool along_v = *side == EdgeSide::left || *side == EdgeSide::right;
  if (along_v && w.plumb()) return length + " up";
  return length + (along_v ? " from its bottom edge" : " from its left end");
}

double widest_at(const ContactFit& contact) {
  // Of equally wide spots the first is named.
  const auto widest =
      std::find_if(contact.line.begin(), contact.line.end(),
                   [&](const GapPoint& p) { return p.gap > contact.gap.most - kSameGap; });
  return widest == contact.line.end() ? 0 : widest->at;
}

std::string gap_words(const Words& w) {
  const GapRange& gap = w.contact.gap;
  const double step = w.style.rounding.step.mm / 2;
  if (gap.most < -step) return "too big by " + w.length(-gap.least) + w.about(w.contact.gap_sd);
  if (gap.least < -0.1)
    return fmt::format("overlaps by {}, open {} at {}{}", w.length(-gap.least), w.length(gap.most),
                       spot(w, widest_at(w.contact)), w.about(w.contact.gap_sd));
  if (gap.most - gap.least < step) return "gap " + w.length(gap.most) + w.about(w.contact.gap_sd);
  return fmt::format("gap {} to {}{}, widest {}", w.length(std::max(0.0, gap.least)),
                     w.length(gap.most), w.about(w.contact.gap_sd), spot(w, widest_at(w.contact)));
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : "; ") + word;
  return text;
}

// The blank's width (or height) with the wood that is missing at the edge added.
std::string blank(const Words& w, double missing) {
  const EdgeSide* side = std::get_if<EdgeSide>(&w.contact.how->edge);
  if (!side) return "leave the edge " + w.length(missing) + " wild";
  const Polygon& outline = w.fit.pieces[w.contact.piece].drawn->outline;
  double low = 1e300, high = -1e300;
  for (Vec2 p : outline) {
    const double x = *side == EdgeSide::left || *side == EdgeSide::right ? p.x : p.y;
    low = std::min(low, x);
    high = std::max(high, x);
  }
  return fmt::format("rip the blank {} and leave the edge wild", w.length(high - low + missing));
}

std::string bevel_words(const Words& w) {
  if (w.contact.bevel_mm <= kBevel) return "";
  return fmt::format("; the faces differ by {}: bevel it", w.length(w.contact.bevel_mm));
}

std::string missing_wood(const Words& w) {
  const double missing = w.contact.scribe_mm - w.contact.how->gap.mm - w.contact.wood_mm;
  if (missing < w.style.rounding.step.mm / 2) return "";
  return fmt::format("; the drawn piece has no wood for {} of it: {}", w.length(missing),
                     blank(w, missing));
}

std::string taper_words(const Words& w) {
  return fmt::format("taper {} over the edge, nothing {}{}{}", w.length(w.contact.taper_mm),
                     spot(w, widest_at(w.contact)), missing_wood(w), bevel_words(w));
}

std::string scribe_words(const Words& w) {
  if (w.contact.scribe_mm < w.style.rounding.step.mm / 2) return "push it home; nothing to scribe";
  std::string text = fmt::format("{}, touching at {}, set the scribers to {}",
                                 w.upright() ? "hold it plumb" : "push it home",
                                 w.length(w.contact.touches_at), w.length(w.contact.scribe_mm));
  text += bevel_words(w);
  if (!w.contact.spoils.empty())
    text += fmt::format("; it then comes {} closer and spoils {}: leave the edge that much wild",
                        w.length(w.contact.scribe_mm), joined(w.contact.spoils));
  else if (w.contact.scribe_mm > w.contact.wood_mm + w.style.rounding.step.mm / 2)
    text += fmt::format("; it then comes {} closer: leave the edge wild if its far end matters",
                        w.length(w.contact.scribe_mm));
  if (w.contact.scribe_mm > kEasyScribe) text += "; a filler strip or cover trim is less work";
  return text;
}

std::string butt_words(const Words& w) {
  const double most = w.contact.gap.most;
  if (w.contact.gap.least < -0.1)
    return fmt::format("take {} off this edge, or move the piece", w.length(-w.contact.gap.least));
  if (most <= kMillimetresPerInch / 4) return "caulk it, or scribe the edge";
  if (most <= kEasyScribe)
    return fmt::format("scribe or taper the edge, up to {}{}", w.length(w.contact.scribe_mm),
                       missing_wood(w));
  return fmt::format("fit a filler strip or cover trim, or taper the edge{}", missing_wood(w));
}

std::string next_words(const Words& w) {
  switch (w.contact.how->by) {
    case Fitting::taper:
      return taper_words(w);
    case Fitting::scribe:
      return scribe_words(w);
    case Fitting::shim:
      return fmt::format("shim it, up to {} at the widest spot", w.length(w.contact.gap.most));
    case Fitting::filler:
      return fmt::format("the strip leaves {} beside it", w.length(w.contact.after.most));
    case Fitting::clear:
      return fmt::format("move it {} further away",
                         w.length(w.contact.allow - w.contact.gap.least));
    case Fitting::caulk:
      return "too wide for caulk: scribe the edge or cover it with trim";
    case Fitting::trim:
      return "wider than the trim covers: take a wider one, or scribe the edge";
    case Fitting::butt:
      break;
  }
  return butt_words(w);
}

bool cut_on_site(Fitting by) {
  return by == Fitting::taper || by == Fitting::scribe || by == Fitting::shim;
}

Finding cannot_meet(const ContactFit& contact) {
  return {Verdict::does_not_fit, 0, contact_place(contact),
          "this edge cannot meet it: no ray square to the edge gets there within 12\" (300 mm) "
          "[edge-cannot-meet]",
          "name another edge, or the face that lies against it"};
}

}  // namespace

Finding contact_finding(const FitAnswer& fit, const ContactFit& contact, const Style& style) {
  if (!fit.known)
    return {Verdict::cannot_tell, 0, contact_place(contact), "readings are missing",
            "'nookfit room' names them"};
  if (!contact.meets_anything && contact.verdict == Verdict::cannot_tell)
    return {Verdict::cannot_tell, 0, contact_place(contact), "nothing says how high it is",
            "measure from the level line up to the ceiling there"};
  if (!contact.meets_anything && contact.verdict == Verdict::fits)
    return {Verdict::fits, 0, contact_place(contact), "nothing of it within 12\" (300 mm)", ""};
  if (!contact.meets_anything) return cannot_meet(contact);
  const Words w{fit, contact, style};
  // Equally wide gaps stay in their order: the weight goes by what is printed.
  const double weight = std::round(contact.gap.most / style.rounding.step.mm);
  Finding finding{contact.verdict, weight * style.rounding.step.mm, contact_place(contact),
                  gap_words(w), ""};
  if (contact.verdict != Verdict::fits || cut_on_site(contact.how->by))
    finding.next = next_words(w);
  if (contact.verdict == Verdict::cannot_tell)
    finding.what += fmt::format("; up to {} is accepted", w.length(contact.allow));
  if (contact.verdict == Verdict::does_not_fit && contact.how->by != Fitting::clear)
    finding.what += fmt::format("; {} is accepted", w.length(contact.allow));
  return finding;
}

}  // namespace nook

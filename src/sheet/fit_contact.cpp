// Gap, place of its widest spot, and the way to close it that the design asks for.
#include "sheet/fit_contact.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/fitting.h"
#include "fit/touching.h"
#include "sheet/contact_gap.h"
#include "sheet/fit_wood.h"
#include "sheet/fit_words.h"
#include "sheet/held_off.h"

namespace nook {
namespace {

constexpr double kEasyScribe = kMillimetresPerInch * 3 / 8;  // common practice, no source
constexpr double kBevel = kMillimetresPerInch / 32;  // more between the faces is cut at a bevel

// The first few, and how many more.
std::string joined(const std::vector<std::string>& words) {
  constexpr std::size_t kFew = 3;  // and one more is told in full too. Chosen
  const std::size_t told = words.size() <= kFew + 1 ? words.size() : kFew;
  std::string text;
  for (std::size_t k = 0; k < told; ++k) text += (k == 0 ? "" : "; ") + words[k];
  return told == words.size() ? text : text + fmt::format("; and {} more", words.size() - told);
}

std::string bevel_words(const ContactWords& w) {
  if (w.contact.bevel_mm <= kBevel) return "";
  return fmt::format("; the faces differ by {}: bevel it", w.length(w.contact.bevel_mm));
}

// With a semicolon before it, as more words of an advice.
std::string missing_words(const ContactWords& w) {
  const std::string text = missing_wood(w.fit, w.contact, w.style);
  return text.empty() ? "" : "; " + text;
}

// The gap is as wide all along: no straight cut closes it.
bool parallel(const ContactWords& w) {
  return w.contact.taper_mm < w.half_step();
}

std::string taper_words(const ContactWords& w) {
  if (!parallel(w))
    return fmt::format("taper {} over the edge, nothing {}{}{}", w.length(w.contact.taper_mm),
                       spot(w, widest_at(w.contact)), missing_words(w), bevel_words(w));
  if (w.contact.gap.most < w.half_step()) return "push it home; nothing to taper";
  return fmt::format("the gap is as wide all along, which no taper closes{}",
                     wood_missing(w.contact) < w.half_step()
                         ? ": fit a filler strip or cover trim"
                         : missing_words(w) + ", or fit a filler strip or cover trim");
}

// Whether the piece meets walls at both ends.
bool trapped(const ContactWords& w) {
  const ContactFit* other = across_from(w.fit, w.contact);
  return other && !wall_named(w.contact.meets).empty() && !wall_named(other->meets).empty();
}

std::string easier_words(const ContactWords& w) {
  if (trapped(w)) return "; both ends are trapped: a filler strip or cover trim is less work";
  if (w.contact.scribe_mm > kEasyScribe) return "; a filler strip or cover trim is less work";
  return "";
}

// What a cut leaves open where the piece does not reach.
std::string left_open_words(const ContactWords& w) {
  if (w.contact.after.most < w.half_step()) return "";
  return fmt::format(
      "; {} stays open where it does not reach: leave the edge that much wild, or "
      "cover it with trim",
      w.length(w.contact.after.most));
}

// Where the piece is in the wall: what to take off, following it.
std::string cut_back_words(const ContactWords& w) {
  return fmt::format("cut it back along the {}, up to {} at {}{}{}{}", w.contact.meets,
                     w.length(-w.contact.gap.least), spot(w, narrowest(w.contact).at),
                     left_open_words(w), bevel_words(w), easier_words(w));
}

std::string scribe_words(const ContactWords& w) {
  if (w.contact.gap.least < -w.half_step()) return cut_back_words(w);
  if (w.contact.scribe_mm < w.half_step()) return "push it home; nothing to scribe";
  std::string text =
      fmt::format("{}, touching at {}, set the scribers to {} for the piece as drawn",
                  w.upright() ? "hold it plumb" : "push it home", w.length(w.contact.touches_at),
                  w.length(w.contact.scribe_mm));
  text += bevel_words(w);
  const ContactFit* other = across_from(w.fit, w.contact);
  if (other && wood_missing(*other) >= w.half_step() && !missing_words(w).empty())
    text += missing_words(w);
  else if (!w.contact.spoils.empty())
    text += fmt::format("; it then comes {} closer and spoils {}: leave the edge that much wild",
                        w.length(w.contact.scribe_mm), joined(w.contact.spoils));
  else if (w.contact.scribe_mm > w.contact.wood_mm + w.half_step())
    text += fmt::format("; it then comes {} closer: leave the edge wild if its far end matters",
                        w.length(w.contact.scribe_mm));
  return text + easier_words(w);
}

// What closes a gap that is too wide for its butt.
std::string close_words(const ContactWords& w) {
  const std::string missing = missing_words(w);
  const std::string larger = missing.empty() ? "" : ", or make the piece larger" + missing;
  if (w.contact.gap.most <= kMillimetresPerInch / 4) return "caulk it, or scribe the edge";
  if (w.contact.gap.most > kEasyScribe)
    return "fit a filler strip or cover trim" +
           (parallel(w) ? larger : ", or taper the edge" + missing);
  if (parallel(w)) return "cover it with trim" + larger;
  return fmt::format("scribe or taper the edge, up to {}{}", w.length(w.contact.scribe_mm),
                     missing);
}

// An end that stands askew on the floor, as that of a leg that leans.
bool askew_foot(const ContactWords& w) {
  constexpr double kLeans = 1;  // degree; chosen
  return w.contact.meets == "floor" && w.contact.taper_deg >= kLeans;
}

std::string foot_words(const ContactWords& w) {
  return fmt::format("cut this end to the floor, {} over the edge, nothing {}",
                     w.length(w.contact.taper_mm), spot(w, widest_at(w.contact)));
}

// Carpet gives way before wood has to.
std::string press_words(const ContactWords& w) {
  for (const FloorFit& floor : w.fit.floor)
    if (w.contact.meets == "floor" && floor.piece == w.contact.piece && floor.squash_most_mm > 0)
      return fmt::format(
          "press the covering down there first: it gives {}; ",
          floor.squash_least_mm < w.half_step()
              ? "up to " + w.length(floor.squash_most_mm)
              : w.length(floor.squash_least_mm) + " to " + w.length(floor.squash_most_mm));
  return "";
}

std::string butt_words(const ContactWords& w) {
  if (w.contact.gap.least < -w.half_step() && !press_words(w).empty())
    return press_words(w) + "what is left of it comes off this edge";
  if (w.contact.gap.least < -w.half_step())
    return fmt::format("take {} off this edge, or move the piece", w.length(-w.contact.gap.least));
  if (w.contact.gap.least < -kTouching) return "ease this edge with a plane until it goes in";
  return askew_foot(w) ? foot_words(w) : close_words(w);
}

std::string shim_words(const ContactWords& w) {
  if (w.contact.gap.most < w.half_step()) return "";
  return fmt::format("shim it, up to {} at the widest spot", w.length(w.contact.gap.most));
}

std::string move_away_words(const ContactWords& w) {
  const double by = w.contact.allow - narrowest(w.contact).gap;
  if (by < w.half_step()) return "move it a hair further away, less than the tape tells";
  return fmt::format("move it {} further away, or take that off", w.length(by));
}

std::string cut_words(const ContactWords& w) {
  switch (w.contact.how->by) {
    case Fitting::taper:
      return taper_words(w);
    case Fitting::scribe:
      return scribe_words(w);
    case Fitting::shim:
      return shim_words(w);
    default:
      return "";
  }
}

// Closed first of all by getting past what holds the piece off.
std::string past_obstacles(const ContactWords& w, const std::string& closing) {
  const std::string held = w.contact.gap.most > kEasyScribe ? held_off_words(w) : "";
  return held.empty() ? closing : held + "; else " + closing;
}

// What does not fit.
std::string remedy_words(const ContactWords& w) {
  switch (w.contact.how->by) {
    case Fitting::clear:
      return move_away_words(w);
    case Fitting::filler:
      return fmt::format("the strip leaves {} beside it: scribe the strip, or cover it with trim",
                         w.length(w.contact.after.most));
    case Fitting::caulk:
      return w.contact.gap.least < -kTouching
                 ? butt_words(w)
                 : "too wide for caulk: scribe the edge or cover it with trim" + missing_words(w);
    case Fitting::trim:
      return w.contact.gap.least < -kTouching
                 ? butt_words(w)
                 : "wider than the trim covers: take a wider one, or scribe the edge";
    case Fitting::shim:
      if (w.contact.gap.least < -kTouching) return butt_words(w);
      return askew_foot(w)
                 ? foot_words(w)
                 : "too much for shims: pack it out with a strip of wood, or plane the high spot";
    case Fitting::butt:
      return butt_words(w);
    case Fitting::taper:
    case Fitting::scribe:
      break;
  }
  return cut_words(w);
}

// What the readings do not decide: be ready for it.
std::string ready_words(const ContactWords& w) {
  const ContactFit& c = w.contact;
  const bool wide = c.gap.most + kTwoSided95 * c.gap_sd > c.allow;
  switch (c.how->by) {
    case Fitting::taper:
    case Fitting::scribe:
      return cut_words(w);
    case Fitting::clear:
      return "it may come too near: one more reading tells, or give it more room";
    case Fitting::shim:
      if (wide) return "it may be too much for shims: have a strip of wood ready";
      break;
    case Fitting::caulk:
      if (wide) return "it may be too wide for caulk: have a cover trim ready";
      break;
    case Fitting::trim:
      if (wide) return "it may be too wide for the trim: have a wider one ready";
      break;
    case Fitting::filler:
      return "the strip may not close it: scribe the strip in the room";
    case Fitting::butt:
      if (wide) return "it may stay open: be ready to caulk it, or leave wood to scribe";
      break;
  }
  return "it may bind: be ready to ease the edge with a plane";
}

// The farthest that an edge is looked out from: 300 mm.
std::string reach_words(const Style& style) {
  const Unit unit = style.rounding.unit;
  return with_unit(millimetres(300), {unit, unit == Unit::inch ? inches(1) : millimetres(10)});
}

Finding cannot_meet(const ContactFit& contact, const Style& style) {
  if (contact.faces_away)
    return {Verdict::does_not_fit, 0, contact_place(contact),
            "it faces away from it [edge-cannot-meet]", "name the opposite edge or face"};
  return {Verdict::does_not_fit, 0, contact_place(contact),
          "this edge cannot meet it: no ray square to the edge gets there within " +
              reach_words(style) + " [edge-cannot-meet]",
          "name another edge, or the face that lies against it"};
}

}  // namespace

Finding contact_finding(const FitAnswer& fit, const ContactFit& contact, const Style& style) {
  if (!contact.meets_anything && contact.verdict == Verdict::cannot_tell)
    return {Verdict::cannot_tell, 0, contact_place(contact), "nothing says how high it is",
            "measure from the level line up to the ceiling there"};
  if (!contact.meets_anything && contact.verdict == Verdict::fits)
    return {Verdict::fits, 0, contact_place(contact),
            "nothing of it straight ahead within " + reach_words(style), ""};
  if (!contact.meets_anything) return cannot_meet(contact, style);
  const ContactWords w{fit, contact, style};
  if (contact.verdict != Verdict::does_not_fit && !contact.eased_by.empty())
    return {contact.verdict, 0, contact_place(contact),
            "too big by " + w.length(-contact.gap.least) + " until its " + contact.eased_by +
                " is scribed, which lets it come off again",
            "scribe that first; what binds then, ease with a plane"};
  // Equally wide gaps stay in their order: the weight goes by what is printed.
  const double weight = std::round(contact.gap.most / style.rounding.step.mm);
  Finding finding{contact.verdict, weight * style.rounding.step.mm, contact_place(contact),
                  gap_words(w), ""};
  finding.next = contact.verdict == Verdict::fits          ? cut_words(w)
                 : contact.verdict == Verdict::cannot_tell ? ready_words(w)
                                                           : remedy_words(w);
  const Fitting by = contact.how->by;
  if (contact.verdict == Verdict::does_not_fit || is_cut_to_fit(by))
    finding.next = past_obstacles(w, finding.next);
  if (contact.past_mm > 0) {
    finding.what += fmt::format("; {} of it lies past the end of the {} as measured",
                                w.length(contact.past_mm), contact.meets);
    finding.next = "see how far the wall goes on, and correct its `length` or shorten the piece" +
                   (contact.verdict == Verdict::does_not_fit ? "; " + finding.next : "");
    return finding;
  }
  if (contact.verdict == Verdict::fits || contact.how->by == Fitting::clear) return finding;
  const bool binds = contact.gap.most <= contact.allow && contact.gap.least < -kTouching;
  if (contact.verdict == Verdict::cannot_tell)
    finding.what += fmt::format("; up to {} is accepted", w.length(contact.allow));
  else if (!binds)
    finding.what += fmt::format("; {} is accepted", w.length(contact.allow));
  return finding;
}

}  // namespace nook

// Findings of a fit, then notches and how each group goes in.
#include "sheet/fit_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/measured.h"
#include "sheet/fit_contact.h"
#include "sheet/fit_words.h"
#include "sheet/notch_words.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

std::string length(double mm, const Style& style) {
  return with_unit(millimetres(mm), style.rounding);
}

std::string about(double sd, const Style& style) {
  return sd > 0 ? ", give or take " + give_or_take(millimetres(kTwoSided95 * sd), style.rounding)
                : "";
}

Finding finding_of(const ClashFit& c, const Style& style) {
  const double step = style.rounding.step.mm / 2;
  Finding f{c.verdict, c.depth_mm, c.part + " and " + the(c.with), "", ""};
  if (c.depth_mm >= step) {
    f.what = "they overlap by " + length(c.depth_mm, style) + about(c.sd_mm, style);
    f.next =
        "trim or notch one of them by that much, or move it; where they are to meet, say so "
        "by a [[contact]]";
  } else if (c.most_mm >= step) {
    f.what = "they touch, and may overlap by up to " + length(c.most_mm, style);
    f.next =
        "leave that much room between them, or settle it by one more reading; where they are "
        "to meet, say so by a [[contact]]";
  } else {
    f.what =
        "they touch, and may bind by less than " + with_unit(style.rounding.step, style.rounding);
    f.next = "be ready to ease one of them with a plane";
  }
  return f;
}

Finding finding_of(const ClearanceFit& c, const Style& style) {
  Finding f{c.verdict, c.needed_mm - c.least_mm, c.part + " beside " + the(c.from),
            length(c.least_mm, style) + " clear" + about(c.sd_mm, style), ""};
  if (c.needed_mm > 0) f.what += "; " + length(c.needed_mm, style) + " is wanted";
  const double lacks = c.needed_mm - c.least_mm;
  if (c.verdict == Verdict::cannot_tell)
    f.next = "it may come too near: one more reading tells, or give it more room";
  else if (c.verdict == Verdict::does_not_fit && lacks < style.rounding.step.mm / 2)
    f.next = "move it a hair further away, less than the tape tells";
  else if (c.verdict == Verdict::does_not_fit)
    f.next = "move it " + length(lacks, style) + " away";
  return f;
}

Finding finding_of(const CoveredFit& c, const Style& style) {
  Finding f{c.verdict, c.needed_mm - c.margin_mm, c.part + " behind " + the(c.behind), "", ""};
  f.what = c.margin_mm < 0
               ? "its edge shows by " + length(-c.margin_mm, style) + about(c.sd_mm, style)
               : "covered by " + length(c.margin_mm, style) + about(c.sd_mm, style);
  f.what += "; " + length(c.needed_mm, style) + " is wanted";
  const double lacks = c.needed_mm - c.margin_mm;
  if (c.verdict != Verdict::fits && lacks >= style.rounding.step.mm / 2)
    f.next = "make the " + c.behind + " larger there by " + length(lacks, style) +
             ", or move one of the two";
  else if (c.verdict != Verdict::fits)
    f.next = "it may show: one more reading tells, or make the " + c.behind + " a little larger";
  return f;
}

Finding finding_of(const GroupFit& g, const Style& style) {
  return {Verdict::cannot_tell, g.still_moves_mm, g.name,
          "where it comes to rest cannot be told: pushed home again it slides on by " +
              length(g.still_moves_mm, style),
          "give it more to go against: make that longer, or name what else it is tight to"};
}

Finding finding_of(const ShowFit& s) {
  return {Verdict::fits, s.by_mm, s.part + " in " + s.where, s.what, "see that it is meant so",
          true};
}

Finding finding_of(const EarlyFit& e) {
  return {Verdict::fits,
          0,
          e.part,
          fmt::format("it would go in before what carries it: {}", fmt::join(e.on, ", ")),
          "give its group a higher 'order', or write its group below in design.toml",
          true};
}

std::string edges_words(const MovementFit& m) {
  return fmt::format("{} and {} edge", m.edges[0], m.edges[1]);
}

Finding finding_of(const MovementFit& m, const Style& style) {
  const std::string moves = length(m.moves_mm, style);
  return {Verdict::fits,
          m.moves_mm,
          m.part + ", " + edges_words(m),
          fmt::format("solid wood, tight on both sides across its grain, at {} and {}: {} of it "
                      "swells and shrinks by about {} over a year (common practice, no source)",
                      the(m.meets[0]), the(m.meets[1]), length(m.across_mm, style), moves),
          fmt::format("leave {} open on one side, where cover trim or the back hides it: say so as "
                      "gap = '{}' in that contact, and allow as much",
                      moves, moves),
          true};
}

// A leg drawn square at its end stands on a corner: the level cut, and where its wood comes from.
std::string foot_words(const FloorFit& f, const Style& style) {
  const auto degrees = [](double deg) { return fmt::format("{:.1f} degrees", deg); };
  std::string cut;
  if (f.foot_deg >= 0.05) cut = degrees(f.foot_deg) + " across its face";
  if (f.foot_bevel_deg >= 0.05)
    cut += (cut.empty() ? "" : " and ") + degrees(f.foot_bevel_deg) + " through its thickness";
  return fmt::format(
      "it leans: cut its foot {} off square, {} from corner to corner. With a square end it stands "
      "on "
      "one corner, and sawn from the end as drawn it comes down by nearly as much: leave it {} "
      "longer",
      cut, length(f.foot_mm, style), length(f.foot_mm, style));
}

std::string floor_words(const FloorFit& f, const Style& style) {
  std::string text;
  if (f.shim_mm >= style.rounding.step.mm / 2)
    text += "shim up to " + length(f.shim_mm, style) + " under it" + about(f.shim_sd_mm, style);
  if (f.squash_most_mm > 0) {
    const std::string least = length(f.squash_least_mm, style),
                      most = length(f.squash_most_mm, style);
    text += fmt::format("{}sinks {}{} under load", text.empty() ? "" : "; ",
                        least == most ? "" : least + " to ", most);
  }
  if (f.settles_mm > 0)
    text += fmt::format("{}may settle by up to {} into the carpet", text.empty() ? "" : "; ",
                        length(f.settles_mm, style));
  if (f.foot_mm > 0) text += (text.empty() ? "" : "; ") + foot_words(f, style);
  if (f.on_tack_strip) text += "; part of it stands on the tack strip, which does not sink";
  return text;
}

std::string notches_text(const FitAnswer& fit, const Style& style) {
  std::string text;
  for (const NotchFit& n : fit.notches) {
    std::string line = notch_words(n, style) + about(n.depth_sd_mm, style) +
                       finish_words(fit, n, style) + profile_words(fit, n, style);
    for (const std::string& warning : n.warnings) line += "; " + warning;
    text += wrapped(line + ".", kPageWidth, "  ");
  }
  return text.empty() ? "" : "\nNotches:\n" + text;
}

std::string group_words(const GroupFit& g, const Style& style) {
  std::string text = g.name + ": ";
  if (std::abs(g.turn_deg) >= 0.05)
    text += fmt::format("turned {:.1f} degrees {}, ", std::abs(g.turn_deg),
                        g.turn_deg > 0 ? "anticlockwise from above" : "clockwise from above");
  const double move = std::hypot(g.move.x, g.move.y);
  if (move < style.rounding.step.mm / 2 && std::abs(g.move.z) < style.rounding.step.mm / 2)
    text += "goes where it is drawn";
  else if (std::abs(g.move.z) >= style.rounding.step.mm / 2)
    text += (g.move.z > 0 ? "comes up " : "goes down ") + length(std::abs(g.move.z), style);
  else
    text += "is pushed home";
  if (g.touches.empty()) return text + ".";
  text += "; touches ";
  for (std::size_t i = 0; i < g.touches.size(); ++i)
    text += (i == 0 ? "" : ", ") + the(g.touches[i]);
  return text + ".";
}

std::string groups_text(const FitAnswer& fit, const Style& style) {
  if (fit.groups.empty()) return "";
  std::string text = "\nIn this order:\n";
  for (std::size_t g = 0; g < fit.groups.size(); ++g)
    text += wrapped(group_words(fit.groups[g], style), kPageWidth, fmt::format("{:>3}. ", g + 1));
  return text;
}

std::string floor_text(const FitAnswer& fit, const Style& style) {
  std::string text;
  for (const FloorFit& f : fit.floor) {
    const std::string words = floor_words(f, style);
    if (words.empty()) continue;
    text +=
        wrapped(f.part + ": " + words + (f.note.empty() ? "." : ". " + f.note), kPageWidth, "  ");
  }
  return text.empty() ? "" : "\nOn the floor:\n" + text;
}

std::string next_text(const FitAnswer& fit) {
  if (fit.measure_next.empty()) return "";
  std::string text = "\nWhat cannot be told, one more reading may settle:\n";
  for (const NextReading& next : fit.measure_next)
    text +=
        wrapped(fmt::format("{} (settles {:.0f} % of what is open)", next.reading, 100 * next.gain),
                kPageWidth, "  ");
  return text;
}

// Whether what a contact meets is this surface or piece, named by itself or as one of its part.
bool meets(const FitAnswer& fit, const ContactFit& contact, const std::string& name) {
  return contact.meets == name ||
         std::any_of(fit.pieces.begin(), fit.pieces.end(), [&](const Piece& piece) {
           return piece.name == name && is_named(piece, contact.meets);
         });
}

// A contact that overlaps says so itself.
bool told_by_contact(const FitAnswer& fit, const ClashFit& clash) {
  return std::any_of(fit.contacts.begin(), fit.contacts.end(), [&](const ContactFit& c) {
    const bool same = (c.part == clash.part && meets(fit, c, clash.with)) ||
                      (c.part == clash.with && meets(fit, c, clash.part));
    return same && c.verdict != Verdict::fits && c.meets_anything;
  });
}

// A contact that is to stay clear says it itself; elsewhere along the piece it may be nearer.
bool told_by_contact(const FitAnswer& fit, const ClearanceFit& clearance) {
  return std::any_of(fit.contacts.begin(), fit.contacts.end(), [&](const ContactFit& c) {
    return c.how->by == Fitting::clear && c.piece == clearance.piece &&
           meets(fit, c, clearance.from) && c.meets_anything &&
           worse(c.verdict, clearance.verdict) == c.verdict;
  });
}

// One line for all: what is missing is told by the room.
Finding not_known(const FitAnswer& fit) {
  const std::size_t count = fit.contacts.size();
  return {Verdict::cannot_tell, 0, "the fit",
          fmt::format("readings are missing: {} {} to meet something {} not looked at", count,
                      count == 1 ? "edge or face that has" : "edges and faces that have",
                      count == 1 ? "was" : "were"),
          "'nookfit room' names what is missing"};
}

Finding finding_of(const NotchFit& n) {
  return {Verdict::does_not_fit, 0, fmt::format("{}, its notch for the {}", n.part, n.around),
          n.ruins, "end the piece short of it, move it away, or leave the notch out there"};
}

}  // namespace

std::vector<Finding> fit_findings(const FitAnswer& fit, const Style& style) {
  if (!fit.known) return {not_known(fit)};
  std::vector<Finding> findings;
  for (const ClashFit& c : fit.clashes)
    if (!told_by_contact(fit, c)) findings.push_back(finding_of(c, style));
  for (const GroupFit& g : fit.groups)
    if (g.still_moves_mm > 0) findings.push_back(finding_of(g, style));
  for (const ContactFit& c : fit.contacts) findings.push_back(contact_finding(fit, c, style));
  for (const NotchFit& n : fit.notches)
    if (!n.ruins.empty()) findings.push_back(finding_of(n));
  for (const CoveredFit& c : fit.covered) findings.push_back(finding_of(c, style));
  for (const ClearanceFit& c : fit.clearances)
    if ((c.needed_mm > 0 || c.verdict != Verdict::fits) && !told_by_contact(fit, c))
      findings.push_back(finding_of(c, style));
  for (const ShowFit& s : fit.shows) findings.push_back(finding_of(s));
  for (const EarlyFit& e : fit.early) findings.push_back(finding_of(e));
  for (const MovementFit& m : fit.movement) findings.push_back(finding_of(m, style));
  sort(findings);
  return findings;
}

std::string fit_text(const FitAnswer& fit, const Style& style) {
  const std::string findings = listed(fit_findings(fit, style), style);
  const std::string text =
      headline(fit.verdict, style) + "\n" + (findings.empty() ? "" : "\n" + findings);
  if (style.quiet) return text;
  return text + next_text(fit) + notches_text(fit, style) + floor_text(fit, style) +
         groups_text(fit, style);
}

}  // namespace nook

// Faults in words, remedies with what they spoil.
#include "sheet/verify_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/cut_text.h"
#include "sheet/wrap.h"

namespace nook {
namespace {

using Kind = CutFault::Kind;

std::string size(double mm, Rounding rounding) {
  return with_unit(millimetres(std::abs(mm)), rounding);
}
std::string sure_to(Measured off, Rounding rounding) {
  return "give or take " + give_or_take(millimetres(kTwoSided95 * off.sd), rounding);
}

const char* wide_or_high(const CutFault& fault) {
  if (fault.lengthwise) return "long";
  return fault.of == CutFault::Of::width ? "wide" : "high";
}

std::string at(const CutFault& fault) {
  return fault.where.empty() ? "" : " " + fault.where;
}

// "wanted 36" and up to 1/2" wild".
std::string wanted(const CutFault& fault, Rounding rounding) {
  const std::string wild =
      fault.wild_mm > 0 ? fmt::format(" and up to {} wild", size(fault.wild_mm, rounding)) : "";
  return "wanted " + size(fault.wanted_mm, rounding) + wild;
}

// "36 1/4" wide at the top, wanted 36""
std::string against_wanted(const CutFault& fault, Rounding rounding) {
  return fmt::format("{} {}{}, {}", size(fault.measured_mm, rounding), wide_or_high(fault),
                     at(fault), wanted(fault, rounding));
}

// What is accepted is as fine as 3/32 in.
Rounding finely(Rounding rounding) {
  if (rounding.unit == Unit::inch) rounding.step = std::min(rounding.step, inches(1.0 / 32));
  return rounding;
}

// "from 1/16" too small to 1/8" too large is accepted".
std::string accepted_told(const CutFault& fault, Rounding rounding) {
  if (fault.verdict != Verdict::cannot_tell || !fault.accepted) return "";
  return fmt::format("; from {} too small to {} too large is accepted",
                     rounded_down(-fault.accepted->least, finely(rounding)),
                     rounded_down(fault.accepted->most, finely(rounding)));
}

std::string size_told(const CutFault& fault, Rounding rounding) {
  return fmt::format("{}: {} too {}, {}{}", against_wanted(fault, rounding),
                     size(fault.off.value, rounding), fault.off.value > 0 ? "large" : "small",
                     sure_to(fault.off, rounding), accepted_told(fault, rounding));
}

std::string stock_told(const CutFault& fault, Rounding rounding) {
  return fmt::format("still as {} as the {}{}: {}, {}",
                     fault.of == CutFault::Of::width && !fault.lengthwise ? "wide" : "long",
                     fault.other, at(fault), size(fault.measured_mm, rounding),
                     wanted(fault, rounding));
}

std::string square_told(const CutFault& fault, Rounding rounding) {
  const std::string accepted =
      fault.verdict == Verdict::cannot_tell && fault.accepted
          ? "; " + rounded_down(fault.accepted->most, finely(rounding)) + " is accepted"
          : "";
  return fmt::format("out of square: its top leans {} to the {}, {}{}",
                     size(fault.off.value, rounding), fault.off.value > 0 ? "right" : "left",
                     sure_to(fault.off, rounding), accepted);
}

std::string notch_told(const CutFault& fault, const std::string& why, Rounding rounding) {
  return fmt::format("notch at the {} {}, wanted {}: {}", fault.where,
                     size(fault.measured_mm, rounding), rounded_up(fault.wanted_mm, rounding), why);
}

std::string swapped_told(const std::string& what) {
  if (what == "keys") return "its widths fit as heights, its heights as widths";
  if (what == "notches") return "its notch fits with width and height changed";
  return "each size stands before the place where it was taken";
}

std::string unmeasured_told(const CutFault& fault) {
  switch (fault.of) {
    case CutFault::Of::width:
      return (fault.lengthwise ? "its length is not known" : "its width is not known") + at(fault);
    case CutFault::Of::height:
      return "its height is not known" + at(fault);
    case CutFault::Of::square:
      return "nothing says that it is square";
    default:
      return fmt::format("its notch at the {} is not measured", fault.where);
  }
}

std::string side_told(const SideTrim& trim, Rounding rounding) {
  const std::string first = taken(trim.by_first_mm, rounding);
  const std::string last = taken(trim.by_last_mm, rounding);
  if (first == last) return fmt::format("the {} edge by {}", trim.edge, size(trim.by_mm, rounding));
  const bool upright = trim.edge == "left" || trim.edge == "right";
  return fmt::format("the {} edge, {} at the {} and {} at the {}", trim.edge, first,
                     upright ? "bottom" : "left", last, upright ? "top" : "right");
}

std::string trim_told(const Remedy& remedy, Rounding rounding) {
  std::string all =
      "trim " +
      side_told({remedy.edge, remedy.by_mm, remedy.by_first_mm, remedy.by_last_mm}, rounding);
  for (const SideTrim& trim : remedy.also) all += ", and " + side_told(trim, rounding);
  return all;
}

const char* turn_told(Turn turn) {
  switch (turn) {
    case Turn::sideways:
      return "turn it over, left for right";
    case Turn::endways:
      return "turn it over, top for bottom";
    case Turn::end_for_end:
      return "turn it end for end, its front still in front";
  }
  return "";
}

// Turned over it is right, or a notch is on the wrong side.
std::string mirrored_told(const CutFault& fault) {
  if (!fault.other.empty())
    return fmt::format("mirrored: its notch is at the {}, wanted at the {}", fault.other,
                       fault.where);
  return fmt::format("mirrored: turned over, {}, it is as needed",
                     fault.turn == Turn::sideways ? "left for right" : "top for bottom");
}

std::string fill_told(const Remedy& remedy, Rounding rounding) {
  if (remedy.edge.find(' ') != std::string::npos)
    return fmt::format("glue a piece into the {} notch", remedy.edge);
  return fmt::format("close the {} left at its {} edge with a filler strip or trim",
                     size(remedy.by_mm, rounding), remedy.edge);
}

std::string done(const Remedy& remedy, Rounding rounding) {
  switch (remedy.what) {
    case Remedy::Do::trim:
      return trim_told(remedy, rounding);
    case Remedy::Do::recut_notch:
      return fmt::format("cut the notch larger ({}) by {}", remedy.edge,
                         size(remedy.by_mm, rounding));
    case Remedy::Do::turn:
      return turn_told(remedy.turn);
    case Remedy::Do::change_marks:
      return "mark it " + remedy.edge;
    case Remedy::Do::fill:
      return fill_told(remedy, rounding);
    case Remedy::Do::cut_again:
      return "cut it again";
    case Remedy::Do::measure:
      return "measure that and write it into pieces.toml, as finely as the tape is marked" +
             (remedy.perhaps.empty() ? "" : ": perhaps " + remedy.perhaps);
    case Remedy::Do::cut_outline:
      return "cut its outline: 'nookfit cut' gives it";
    case Remedy::Do::measure_again:
      return "measure it again, as finely as the tape is marked, and write the second reading "
             "beside the first in pieces.toml";
    case Remedy::Do::take_again:
      return "measure it again first: " + (remedy.perhaps.empty()
                                               ? "a piece is hardly ever cut so far off"
                                               : "perhaps " + remedy.perhaps);
    case Remedy::Do::mend_file:
      return "look at the piece and put it right in pieces.toml: widths are [height, width there], "
             "heights [from the left, height there]";
  }
  return {};
}

std::string done_and_spoiled(const Remedy& remedy, Rounding rounding) {
  std::string spoiled;
  for (const Spoil& spoil : remedy.spoils)
    spoiled += (spoiled.empty() ? "" : ", ") + told(spoil, rounding);
  return done(remedy, rounding) + (spoiled.empty() ? "" : " (" + spoiled + ")");
}

template <typename List, typename Words>
std::string joined(const List& list, const std::string& between, const Words& words) {
  std::string all;
  for (const auto& one : list) all += (all.empty() ? "" : between) + words(one);
  return all;
}

// Fault by fault; for each the ways to mend it.
std::string remedies_told(const std::vector<Remedy>& remedies, Rounding rounding) {
  std::string all;
  for (size_t k = 0; k < remedies.size(); ++k) {
    if (k > 0)
      all += remedies[k].fault != remedies[k - 1].fault       ? "; and besides "
             : remedies[k - 1].what == Remedy::Do::take_again ? "; if it is right, "
                                                              : "; or ";
    all += done_and_spoiled(remedies[k], rounding);
  }
  return all;
}

std::string as_needed(const PieceVerify& piece, Rounding rounding) {
  const std::string wild = taken(piece.wild_mm, rounding);
  return "as needed, " + (wild == "nothing" ? "" : wild + " left wild, ") + "off by " +
         give_or_take(millimetres(std::abs(piece.off.value)), rounding);
}

Finding finding_of(const PieceVerify& piece, Rounding rounding) {
  if (piece.faults.empty()) return {piece.verdict, 0, piece.part, as_needed(piece, rounding), ""};
  return {piece.verdict, std::abs(piece.off.value), piece.part,
          joined(piece.faults, "; ", [&](const CutFault& f) { return told(f, rounding); }),
          remedies_told(piece.remedies, rounding)};
}

Finding nothing_measured() {
  return {Verdict::cannot_tell, 1e9, "pieces as cut", "nothing is measured",
          "measure each piece (two widths, two heights, two diagonals, its notches) and write it "
          "into pieces.toml"};
}

}  // namespace

std::string told(const CutFault& fault, Rounding rounding) {
  switch (fault.kind) {
    case Kind::still_square:
      return "its outline is not cut yet: it is still a rectangle";
    case Kind::still_stock:
      return stock_told(fault, rounding);
    case Kind::off_by_kerf:
      return against_wanted(fault, rounding) +
             ": a kerf too small - the blade ran on the wrong side of the line";
    case Kind::too_large:
    case Kind::too_small:
      return size_told(fault, rounding);
    case Kind::taper_reversed:
      return "its taper runs the wrong way: " + against_wanted(fault, rounding);
    case Kind::out_of_square:
      return square_told(fault, rounding);
    case Kind::mirrored:
      return mirrored_told(fault);
    case Kind::end_for_end:
      return "end for end: turned round, its front still in front, it is as needed";
    case Kind::notch_without_clearance:
      return notch_told(fault, "cut to what stands there, without its clearance", rounding);
    case Kind::notch_too_small:
      return notch_told(fault, "too small", rounding);
    case Kind::notch_too_large:
      return notch_told(fault, "too large", rounding);
    case Kind::notch_not_wanted:
      return "a notch at the " + fault.where + " that is not wanted";
    case Kind::swapped:
      return fmt::format("swapped: this is {}", fault.other);
    case Kind::not_measured:
      return unmeasured_told(fault);
    case Kind::disagree:
      return fmt::format(
          "its readings do not agree: with the others right, {} would be {} instead of {}",
          fault.where, size(fault.wanted_mm, rounding), size(fault.measured_mm, rounding));
    case Kind::figures_swapped:
      return "its numbers look swapped: " + swapped_told(fault.other);
    case Kind::taken_beyond:
      return fmt::format("{} is said to be taken at {}, and the piece ends at {}", fault.where,
                         size(fault.measured_mm, rounding), size(fault.wanted_mm, rounding));
  }
  return {};
}

std::string told(const Spoil& spoil, Rounding rounding) {
  const std::string by = size(spoil.by_mm, rounding);
  switch (spoil.kind) {
    case Spoil::Kind::cutout_moves:
      return fmt::format("{} comes {} nearer to the {} edge", spoil.name, by, spoil.edge);
    case Spoil::Kind::cutout_cut:
      return spoil.by_mm > 0 ? fmt::format("only {} of wood is left beside {}", by, spoil.name)
                             : fmt::format("it cuts into {}", spoil.name);
    case Spoil::Kind::notch_narrows:
      return fmt::format("the notch at the {} wants cutting {} deeper", spoil.name, by);
    case Spoil::Kind::not_centered:
      return "its two sides are no longer alike";
    case Spoil::Kind::comes_short:
      return fmt::format("it comes {} short in {}", by, spoil.name);
    case Spoil::Kind::other_face:
      return "its other face shows";
    case Spoil::Kind::filled:
      return "that shows unless painted";
  }
  return {};
}

std::vector<Finding> verify_findings(const VerifyAnswer& verify, const Style& style) {
  std::vector<Finding> findings;
  if (verify.pieces.empty()) findings.push_back(nothing_measured());
  for (const PieceVerify& piece : verify.pieces)
    findings.push_back(finding_of(piece, style.rounding));
  sort(findings);
  return findings;
}

std::string verify_text(const VerifyAnswer& verify, const Style& style) {
  std::string page = "Pieces as cut: " + headline(verify.verdict, style) + "\n\n";
  page += listed(verify_findings(verify, style), style);
  if (!verify.not_measured.empty())
    page += "\n" + wrapped(joined(verify.not_measured, ", ", [](const auto& n) { return n; }),
                           kPageWidth, "Not measured: ");
  if (!verify.known)
    page += "\n" + wrapped("The room is not known yet: the pieces are held against the drawing.",
                           kPageWidth, "");
  return page;
}

}  // namespace nook

// Sizes rounded to the safe side, then tapers, scribes, notches, holes, checks.
#include "sheet/cut_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/side.h"
#include "sheet/copy_names.h"
#include "sheet/cut_text.h"
#include "sheet/lengths.h"
#include "sheet/pilot_words.h"
#include "sheet/wrap.h"
#include "shop/needed.h"

namespace nook {
namespace {

std::string kept_exact(double mm, bool exact, Rounding rounding) {
  return exact ? rounded_down(mm, rounding) : size(mm, rounding);
}

std::string finished_words(const CutPiece& piece, Rounding rounding) {
  const std::string width = kept_exact(piece.finished.width, piece.exact_across, rounding);
  if (piece.stick) return width;
  return width + " x " + kept_exact(piece.finished.height, piece.exact_up, rounding);
}

std::string sizes_line(const CutPiece& piece, Rounding rounding) {
  const std::string blank = blank_words(piece, rounding);
  const std::string finished = finished_words(piece, rounding);
  std::string text = piece.stick ? "cut " + blank + " long" : "cut " + blank;
  if (finished != blank) text += ", finished " + finished;
  return indented(text);
}

std::string wild_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const LeftWild& edge : piece.wild)
    text += indented(fmt::format("leave wild: {} edge, {} beyond its finished line", edge.edge,
                                 size(edge.beyond_mm, rounding)));
  return text;
}

std::string taper_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const CutTaper& taper : piece.tapers) {
    const char *first = taper.widths ? "bottom" : "left", *last = taper.widths ? "top" : "right";
    const bool off = taper.off_first_mm + taper.off_last_mm > 0;
    text += indented(fmt::format("taper the {} edge: {} {} at the {}, {} at the {}{}", taper.edge,
                                 size(taper.first_mm, rounding), taper.widths ? "wide" : "high",
                                 first, size(taper.last_mm, rounding), last,
                                 off ? fmt::format("; off this edge {} at the {}, {} at the {}",
                                                   taken(taper.off_first_mm, rounding), first,
                                                   taken(taper.off_last_mm, rounding), last)
                                     : ""));
  }
  return text;
}

std::string spots_words(const CutScribe& scribe, Rounding rounding) {
  std::string text;
  for (const CutScribe::Spot& spot : scribe.spots)
    text += fmt::format("{}{} at {}", text.empty() ? "" : ", ", size(spot.off, rounding),
                        bare(spot.at, rounding));
  return text;
}

std::string scribe_words(const CutScribe& scribe, Rounding rounding) {
  if (scribe.shop)
    return fmt::format("cut the {} edge to the line of the {} beforehand: off the blank {}",
                       scribe.edge, scribe.meets, spots_words(scribe, rounding));
  return fmt::format(
      "scribe the {} edge to the {}: hold the blank parallel to its place, touching at {}, set "
      "the scribers to {}; for roughing out, off the blank {}",
      scribe.edge, scribe.meets, size(scribe.touches_at, rounding),
      size(scribe.setting_mm, rounding), spots_words(scribe, rounding));
}

std::string scribe_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const CutScribe& scribe : piece.scribes) {
    text += indented(scribe_words(scribe, rounding));
    if (scribe.bevel_mm >= rounding.step.mm)
      text += indented(fmt::format("its faces differ by {} there: bevel it, the longer face first",
                                   size(scribe.bevel_mm, rounding)));
  }
  return text;
}

std::string point_words(Vec2 p, Rounding rounding) {
  return fmt::format("({}, {})", bare(p.x, rounding), bare(p.y, rounding));
}

std::string outline_line(const CutPiece& piece, Rounding rounding) {
  if (piece.contour.empty() || (piece.stick && !piece.slants.empty())) return {};
  std::string text = "outline, across and up from the lower left corner of the blank:";
  for (const Vec2 p : piece.contour) text += " " + point_words(p, rounding);
  return indented(text);
}

// "72" along the bottom, 71 1/2" along the top"; to a point where there is no such edge.
std::string along_words(const CutPiece& piece, EdgeSide a, EdgeSide b, Rounding rounding) {
  const auto side = [&](EdgeSide which) {
    const double mm = piece.sides[static_cast<size_t>(which)];
    return mm > 0 ? fmt::format("{} along the {}", size(mm, rounding), name_of(which))
                  : fmt::format("to a point at the {}", name_of(which));
  };
  return side(a) + ", " + side(b);
}

bool any_slanted(const CutPiece& piece, bool sides) {
  return std::any_of(piece.slants.begin(), piece.slants.end(),
                     [&](const CutSlant& slant) { return upright(slant.edge) == sides; });
}

std::string slant_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const std::string& words : sides_words(piece, rounding)) text += indented(words);
  for (const CutSlant& slant : piece.slants) text += indented(slant_words(piece, slant, rounding));
  return text;
}

// Rounded into the wood: a notch never comes out smaller.
std::string away(double mm, double into, Rounding rounding) {
  return into > 0   ? rounded_up(mm, rounding)
         : into < 0 ? rounded_down(mm, rounding)
                    : with_unit(millimetres(mm), rounding);
}

// From the lower left corner of the blank.
std::string notch_words(const CutPiece& piece, const CutNotch& notch, Rounding rounding) {
  std::string text;
  for (size_t i = 0; i < notch.polygon.size(); ++i) {
    const Vec2 p = notch.polygon[i] - piece.corner;
    text += fmt::format(" ({}, {})", away(p.x, notch.into[i].x, rounding),
                        away(p.y, notch.into[i].y, rounding));
  }
  return text;
}

std::string notch_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const CutNotch& notch : piece.notches) {
    if (notch.corner.empty())
      text += indented(fmt::format(
          "notch around {}{}, across and up from the lower left corner of the blank:{}{}",
          notch.around, notch.follows_profile ? ", following its profile" : "",
          notch_words(piece, notch, rounding),
          notch.follows_profile ? "; lay it out by the full-size template" : ""));
    else
      text += indented(fmt::format(
          "notch {}: {} wide{}, {} high{}, around {}", notch.corner,
          rounded_up(notch.width_mm, rounding), past_wild(notch, true, rounding),
          rounded_up(notch.height_mm, rounding), past_wild(notch, false, rounding), notch.around));
  }
  return text;
}

std::string hole_words(const CutHole& hole, Rounding rounding) {
  const std::string from =
      fmt::format("{} from the {} edge, {} from the {}", size(hole.from_across_mm, rounding),
                  name_of(hole.across), size(hole.from_up_mm, rounding), name_of(hole.up));
  if (hole.diameter_mm)
    return fmt::format("{}: {} across, its middle {}", hole.name, size(*hole.diameter_mm, rounding),
                       from);
  return fmt::format("{}: {} wide, {} high, its near sides {}", hole.name,
                     size(hole.width_mm, rounding), size(hole.height_mm, rounding), from);
}

std::string hole_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const CutHole& hole : piece.holes) text += indented(hole_words(hole, rounding));
  return text;
}

std::string check_words(const std::vector<CutCheck>& checks, Rounding rounding) {
  std::string text;
  for (const CutCheck& check : checks)
    text += fmt::format("{}{} at {}", text.empty() ? "" : ", ", size(check.value, rounding),
                        bare(check.at, rounding));
  return text;
}

std::string checks_line(const CutPiece& piece, Rounding rounding) {
  if (piece.stick) return {};
  const auto diagonal = [&](size_t which) {
    const std::string ends =
        piece.contour.empty() ? "" : " from " + diagonal_words(piece, which, rounding);
    return size(piece.checks.diagonals[which], rounding) + ends;
  };
  return indented(fmt::format("check before notching: width {}; height {}; diagonals {} and {}",
                              check_words(piece.checks.widths, rounding),
                              check_words(piece.checks.heights, rounding), diagonal(0),
                              diagonal(1)));
}

}  // namespace

std::string diagonal_words(const CutPiece& piece, size_t which, Rounding rounding) {
  const auto& ends = piece.checks.diagonal_ends[which];
  return point_words(ends[0], rounding) + " to " + point_words(ends[1], rounding);
}

std::string slant_words(const CutPiece& piece, const CutSlant& slant, Rounding rounding) {
  const bool end = piece.stick && upright(slant.edge);
  const char* in_at =
      upright(slant.edge) ? (slant.last ? "top" : "bottom") : (slant.last ? "right" : "left");
  return fmt::format("cut the {} {} slanted: {} in at the {}, {:.1f} degrees off square",
                     name_of(slant.edge), end ? "end" : "edge", size(slant.off_mm, rounding), in_at,
                     slant.angle_deg);
}

std::vector<std::string> sides_words(const CutPiece& piece, Rounding rounding) {
  std::vector<std::string> words;
  if (any_slanted(piece, true))
    words.push_back(along_words(piece, EdgeSide::bottom, EdgeSide::top, rounding));
  if (any_slanted(piece, false))
    words.push_back(along_words(piece, EdgeSide::left, EdgeSide::right, rounding));
  return words;
}

std::string called(const CutPiece& piece) {
  return piece.part == piece.names.front() ? copies_named(piece.names) : piece.part;
}

std::string past_wild(const CutNotch& notch, bool across, Rounding rounding) {
  const double size = across ? notch.width_mm : notch.height_mm;
  const double wild = across ? notch.wild_across_mm : notch.wild_up_mm;
  if (wild < rounding.step.mm / 2) return "";
  return fmt::format(" from the finished line, {} from the wild edge",
                     rounded_up(size + wild, rounding));
}

std::string blank_words(const CutPiece& piece, Rounding rounding) {
  const bool wild = !piece.wild.empty();
  const auto words = [&](double mm, bool exact) {
    return wild ? rounded_up(mm, rounding) : kept_exact(mm, exact, rounding);
  };
  const std::string width = words(piece.blank.width, piece.exact_across);
  return piece.stick ? width : width + " x " + words(piece.blank.height, piece.exact_up);
}

std::string piece_words(const CutPiece& piece, Rounding rounding) {
  std::string text = called(piece);
  if (piece.names.size() > 1) text += fmt::format(" ({} alike)", piece.names.size());
  return text + "\n" + sizes_line(piece, rounding) + slant_lines(piece, rounding) +
         outline_line(piece, rounding) + wild_lines(piece, rounding) +
         taper_lines(piece, rounding) + scribe_lines(piece, rounding) +
         notch_lines(piece, rounding) + hole_lines(piece, rounding) + pilot_lines(piece, rounding) +
         checks_line(piece, rounding);
}

}  // namespace nook

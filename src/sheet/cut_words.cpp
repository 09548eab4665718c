// Sizes rounded to the safe side, then tapers, scribes, notches, holes, checks.
#include "sheet/cut_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "design/side.h"
#include "sheet/cut_text.h"
#include "sheet/wrap.h"
#include "shop/needed.h"

namespace nook {
namespace {

std::string size(double mm, Rounding rounding) {
  return with_unit(millimetres(mm), rounding);
}
std::string bare(double mm, Rounding rounding) {
  return written(millimetres(mm), rounding);
}

std::string line(const std::string& text) {
  return wrapped(text, kPageWidth, "  ");
}

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
  return line(text);
}

std::string wild_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const LeftWild& edge : piece.wild)
    text += line(fmt::format("leave wild: {} edge, {} beyond its finished line", edge.edge,
                             size(edge.beyond_mm, rounding)));
  return text;
}

std::string taper_lines(const CutPiece& piece, Rounding rounding) {
  std::string text;
  for (const CutTaper& taper : piece.tapers) {
    const char *first = taper.widths ? "bottom" : "left", *last = taper.widths ? "top" : "right";
    const bool off = taper.off_first_mm + taper.off_last_mm > 0;
    text += line(fmt::format("taper the {} edge: {} {} at the {}, {} at the {}{}", taper.edge,
                             size(taper.first_mm, rounding), taper.widths ? "wide" : "high", first,
                             size(taper.last_mm, rounding), last,
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
    text += line(scribe_words(scribe, rounding));
    if (scribe.bevel_mm >= rounding.step.mm)
      text += line(fmt::format("its faces differ by {} there: bevel it, the longer face first",
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
  return line(text);
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
  for (const std::string& words : sides_words(piece, rounding)) text += line(words);
  for (const CutSlant& slant : piece.slants) text += line(slant_words(piece, slant, rounding));
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
      text += line(fmt::format(
          "notch around {}{}, across and up from the lower left corner of the blank:{}{}",
          notch.around, notch.follows_profile ? ", following its profile" : "",
          notch_words(piece, notch, rounding),
          notch.follows_profile ? "; lay it out by the full-size template" : ""));
    else
      text += line(fmt::format(
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
  for (const CutHole& hole : piece.holes) text += line(hole_words(hole, rounding));
  return text;
}

// "left 3" -> "left " and "3".
std::pair<std::string, std::string> stem_and_number(const std::string& id) {
  const size_t digits = id.find_last_not_of("0123456789") + 1;
  return {id.substr(0, digits), id.substr(digits)};
}

// Holes of one row: numbers, distance from the edge, running distances from one end.
struct PilotRow {
  std::string stem, edge, end;
  std::vector<std::string> numbers, distances, probe, twins_probe;
  std::vector<std::vector<std::string>> twins;  // their numbers on each further piece
};

PilotRow& row_of(std::vector<PilotRow>& rows, const CutPilot& pilot, Rounding rounding) {
  const std::string stem = stem_and_number(pilot.id).first;
  const std::string edge =
      fmt::format("{} from the {} edge", size(pilot.from_edge_mm, rounding), pilot.edge);
  for (PilotRow& row : rows)
    if (row.stem == stem && row.edge == edge && row.end == pilot.end) return row;
  rows.push_back({stem, edge, pilot.end, {}, {}, {}, {}, {}});
  return rows.back();
}

// Holes in walls have numbers of their own on each piece; those from piece to piece are called
// after the pieces.
void add_to_row(PilotRow& row, const CutPilot& pilot, Rounding rounding) {
  const auto called = [&](const std::string& id) {
    const auto [stem, number] = stem_and_number(id);
    return stem == row.stem ? number : id;
  };
  row.numbers.push_back(called(pilot.id));
  row.distances.push_back(bare(pilot.from_end_mm, rounding));
  if (pilot.probe_first) row.probe.push_back(row.numbers.back());
  if (pilot.id.find(" to ") != std::string::npos) return;
  row.twins.resize(pilot.twins.size());
  for (size_t k = 0; k < pilot.twins.size(); ++k) {
    row.twins[k].push_back(called(pilot.twins[k].id));
    if (pilot.twins[k].probe_first) row.twins_probe.push_back(row.twins[k].back());
  }
}

// "1, 2, 3 (on the other 4, 5, 6)".
std::string numbers_of(const PilotRow& row) {
  std::string text = fmt::format("{}", fmt::join(row.numbers, ", "));
  if (row.twins.empty()) return text;
  text += row.twins.size() == 1 ? " (on the other " : " (on the others ";
  for (size_t k = 0; k < row.twins.size(); ++k)
    text += fmt::format("{}{}", k == 0 ? "" : "; ", fmt::join(row.twins[k], ", "));
  return text + ")";
}

std::string pilot_lines(const CutPiece& piece, Rounding rounding) {
  std::vector<PilotRow> rows;
  for (const CutPilot& pilot : piece.pilots)
    add_to_row(row_of(rows, pilot, rounding), pilot, rounding);
  for (PilotRow& row : rows)
    row.probe.insert(row.probe.end(), row.twins_probe.begin(), row.twins_probe.end());
  std::string text;
  for (const PilotRow& row : rows)
    text += line(fmt::format("bore {}{}: {}; from the {} end {}{}{}", row.stem, numbers_of(row),
                             row.edge, row.end, fmt::join(row.distances, ", "),
                             row.probe.empty() ? "" : "; probe the wall first at ",
                             fmt::join(row.probe, ", ")));
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
  return line(fmt::format("check before notching: width {}; height {}; diagonals {} and {}",
                          check_words(piece.checks.widths, rounding),
                          check_words(piece.checks.heights, rounding), diagonal(0), diagonal(1)));
}

std::string waste_words(double waste) {
  return fmt::format("{:.0f} in 100 is waste", 100 * waste);
}

std::string board_lines(const BoardPlan& plan, Rounding rounding) {
  std::string text;
  for (const BoardCut& board : plan.boards) {
    std::string parts;
    for (const Stick& stick : board.sticks)
      parts += fmt::format("{}{} {}", parts.empty() ? "" : ", ", stick.part,
                           bare(stick.length, rounding));
    text += line(fmt::format("a board of {}: {}", size(board.length, rounding), parts));
  }
  for (const Stick& stick : plan.too_long)
    text += line(fmt::format("no board is long enough for {}: {}", stick.part,
                             size(stick.length, rounding)));
  return plan.boards.empty() ? text : text + line(waste_words(plan.waste()));
}

std::string sheet_lines(const SheetPlan& plan, Rounding rounding) {
  std::string text;
  for (const auto& sheet : plan.sheets) {
    std::string parts;
    for (const LaidPanel& panel : sheet)
      parts += fmt::format("{}{} {} x {}{}", parts.empty() ? "" : ", ", panel.part,
                           bare(panel.width, rounding), bare(panel.length, rounding),
                           panel.turned ? " (across the grain)" : "");
    text += line(fmt::format("a sheet of {} x {}: {}", bare(plan.width, rounding),
                             size(plan.length, rounding), parts));
  }
  for (const Panel& panel : plan.too_large)
    text += line(fmt::format("no sheet is large enough for {}: {} x {}", panel.part,
                             bare(panel.across, rounding), size(panel.along, rounding)));
  return plan.sheets.empty() ? text : text + line(waste_words(plan.waste()));
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

std::string copies_named(const std::vector<std::string>& names) {
  std::string text = names.front();
  for (size_t k = 1; k < names.size(); ++k)
    text += (k + 1 < names.size() ? ", " : " and ") + stem_and_number(names[k]).second;
  return text;
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

std::string layout_words(const StockCut& stock, Rounding rounding) {
  if (stock.boards) return board_lines(*stock.boards, rounding);
  if (stock.sheets) return sheet_lines(*stock.sheets, rounding);
  return line(fmt::format("the design does not say what {} it is sold in",
                          stock.width_mm ? "lengths" : "sheets"));
}

}  // namespace nook

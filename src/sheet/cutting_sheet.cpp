// Sections of the cutting sheet.
#include "sheet/cutting_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/closing_sections.h"
#include "sheet/cut_text.h"
#include "sheet/cut_words.h"
#include "sheet/drill_text.h"
#include "sheet/layout_drawing.h"
#include "sheet/piece_drawing.h"
#include "sheet/stop_numbers.h"

namespace nook {
namespace {

// One piece: its picture, then a table for each kind of work.
class PieceSection {
 public:
  PieceSection(const SheetJob& job, const CutPiece& piece)
      : job_(job), piece_(piece), rounding_(job.style.rounding) {}

  SheetSection section() const {
    SheetSection section{called(piece_), {}};
    if (piece_.names.size() > 1) section.heading += fmt::format(", {} alike", piece_.names.size());
    section.blocks.push_back(SheetWords{sizes(), true});
    if (SheetList list = slants(); !list.items.empty()) section.blocks.push_back(std::move(list));
    const PieceView view = cut_view(job_.scene, piece_);
    section.blocks.push_back(SheetFigure{[view, rounding = rounding_](const Canvas& canvas) {
                                           return piece_drawing(view, canvas, rounding);
                                         },
                                         150});
    for (SheetTable& table :
         std::vector{outline(), wild(), tapers(), notches(), holes(), pilots(), checks()})
      if (!table.rows.empty()) section.blocks.push_back(std::move(table));
    if (SheetList list{pilot_warnings()}; !list.items.empty())
      section.blocks.push_back(std::move(list));
    for (const CutScribe& scribe : piece_.scribes) section.blocks.push_back(scribe_table(scribe));
    if (!view.gaps.empty())
      section.blocks.push_back(SheetFigure{[view, rounding = rounding_](const Canvas& canvas) {
                                             return gap_drawing(view, canvas, rounding);
                                           },
                                           100});
    return section;
  }

 private:
  std::string said(double mm) const { return job_.said(mm); }
  std::string bare(double mm) const { return job_.bare(mm); }

  std::string finished() const {
    const auto safe = [&](double mm, bool exact) {
      return exact ? rounded_down(mm, rounding_) : said(mm);
    };
    const std::string width = safe(piece_.finished.width, piece_.exact_across);
    return piece_.stick ? width : width + " x " + safe(piece_.finished.height, piece_.exact_up);
  }
  std::string sizes() const {
    const std::string blank = blank_words(piece_, rounding_), done = finished();
    if (blank == done) return "Cut and finished " + done + ".";
    return "Blank " + blank + ", finished " + done + ".";
  }

  SheetList slants() const {
    SheetList list;
    list.items = sides_words(piece_, rounding_);
    for (const CutSlant& slant : piece_.slants)
      list.items.push_back(slant_words(piece_, slant, rounding_));
    return list;
  }
  SheetTable outline() const {
    SheetTable table{"Outline, from the lower left corner of the blank", {"Across", "Up"}, {}};
    if (piece_.stick && !piece_.slants.empty()) return table;
    for (const Vec2 p : piece_.contour) table.rows.push_back({bare(p.x), bare(p.y)});
    return table;
  }
  SheetTable wild() const {
    SheetTable table{"Leave wild", {"Edge", "Beyond its line"}, {}};
    for (const LeftWild& edge : piece_.wild)
      table.rows.push_back({edge.edge, said(edge.beyond_mm)});
    return table;
  }
  SheetTable tapers() const {
    SheetTable table{"Taper", {"Edge", "Bottom or left", "Top or right"}, {}};
    for (const CutTaper& taper : piece_.tapers)
      table.rows.push_back({taper.edge, said(taper.first_mm) + (taper.widths ? " wide" : " high"),
                            said(taper.last_mm) + (taper.widths ? " wide" : " high")});
    return table;
  }
  std::string wide(const CutNotch& notch, bool across) const {
    return rounded_up(across ? notch.width_mm : notch.height_mm, rounding_) +
           past_wild(notch, across, rounding_);
  }
  SheetTable notches() const {
    SheetTable table{"Notch", {"Corner", "Wide", "High", "Around"}, {}};
    for (const CutNotch& notch : piece_.notches)
      table.rows.push_back({notch.corner.empty() ? "see template" : notch.corner, wide(notch, true),
                            wide(notch, false), notch.around});
    return table;
  }
  SheetTable holes() const {
    SheetTable table{"Cut out", {"What", "Size", "Across", "Up"}, {}};
    for (const CutHole& hole : piece_.holes) {
      const std::string size = hole.diameter_mm
                                   ? said(*hole.diameter_mm) + " across"
                                   : bare(hole.width_mm) + " x " + said(hole.height_mm);
      const char* to = hole.diameter_mm ? " to its center" : " to its side";
      table.rows.push_back({hole.name, size,
                            said(hole.from_across_mm) +
                                (hole.across == EdgeSide::left ? " from left" : " from right") + to,
                            said(hole.from_up_mm) +
                                (hole.up == EdgeSide::bottom ? " from bottom" : " from top") + to});
    }
    return table;
  }
  static const char* probe(bool first) { return first ? " (probe the wall first)" : ""; }
  // What a hole into a wall is called on each of the pieces cut alike: "right 5, right 7".
  static std::string on_each(const CutPilot& pilot) {
    std::string ids = pilot.id + probe(pilot.probe_first);
    for (const CutPilot::Twin& twin : pilot.twins) ids += ", " + twin.id + probe(twin.probe_first);
    return ids;
  }
  std::vector<std::string> pilot_warnings() const {
    std::vector<JointDrill> own;
    for (const JointDrill& joint : job_.drill().parts)
      if (std::find(piece_.names.begin(), piece_.names.end(), joint.part) != piece_.names.end())
        own.push_back(joint);
    return bench_warnings(own);
  }
  SheetTable pilots() const {
    SheetTable table{"Bore, flat on the bench", {"Hole", "From its end", "From its edge"}, {}};
    std::size_t into_pieces = 0;
    for (const CutPilot& pilot : piece_.pilots) {
      const std::string id = pilot.into.empty() ? on_each(pilot)
                                                : letter_of(into_pieces++) + ", into " +
                                                      pilot.into + probe(pilot.probe_first);
      table.rows.push_back({id, bare(pilot.from_end_mm) + " from the " + pilot.end,
                            bare(pilot.from_edge_mm) + " from the " + pilot.edge});
    }
    return table;
  }
  SheetTable checks() const {
    SheetTable table{"Check before notching and paint", {"Measure", "Where", "Must be"}, {}};
    if (piece_.stick) return table;
    for (const CutCheck& check : piece_.checks.widths)
      table.rows.push_back({"Width", bare(check.at) + " up", said(check.value)});
    for (const CutCheck& check : piece_.checks.heights)
      table.rows.push_back({"Height", bare(check.at) + " from the left", said(check.value)});
    const char* ways[] = {"lower left to upper right", "lower right to upper left"};
    for (std::size_t i = 0; i < piece_.checks.diagonals.size() && i < 2; ++i)
      table.rows.push_back({"Diagonal",
                            piece_.contour.empty() ? ways[i] : diagonal_words(piece_, i, rounding_),
                            said(piece_.checks.diagonals[i])});
    return table;
  }
  SheetTable scribe_table(const CutScribe& scribe) const {
    SheetTable table;
    table.caption =
        scribe.shop
            ? fmt::format("Cut the {} edge to the line of the {} beforehand: copy onto a stick",
                          scribe.edge, scribe.meets)
            : fmt::format(
                  "Scribe the {} edge to the {}: hold the blank parallel to its place, touching at "
                  "{}, set the scribers to {}; for roughing out:",
                  scribe.edge, scribe.meets, said(scribe.touches_at), said(scribe.setting_mm));
    table.heads = {scribe.upright ? "Up" : "From the left", "Off the blank"};
    for (const CutScribe::Spot& spot : scribe.spots)
      table.rows.push_back({bare(spot.at), bare(spot.off)});
    return table;
  }

  const SheetJob& job_;
  const CutPiece& piece_;
  Rounding rounding_;
};

SheetSection list_section(const SheetJob& job) {
  SheetSection section{"Cutting list", {}};
  if (job.cut->verdict != Verdict::fits)
    section.blocks.push_back(SheetWords{
        "Not everything fits yet: see the findings at the end before anything is cut.", true});
  const std::string diagonal = diagonal_words(job);
  if (!diagonal.empty())
    section.blocks.push_back(SheetWords{diagonal + " If not: do not cut.", true});
  for (const StockCut& stock : job.cut->stock) {
    SheetTable table{stock.name + ", " + stock.kind, {"Piece", "Count", "Blank", "Leave wild"}, {}};
    for (const CutPiece& piece : job.cut->pieces) {
      if (piece.stock != stock.name) continue;
      std::vector<std::string> wild;
      for (const LeftWild& edge : piece.wild) wild.push_back(edge.edge);
      table.rows.push_back({called(piece), std::to_string(piece.names.size()),
                            blank_words(piece, job.style.rounding),
                            wild.empty() ? "-" : fmt::format("{}", fmt::join(wild, ", "))});
    }
    if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  }
  return section;
}

SheetTable board_table(const SheetJob& job, const StockCut& stock) {
  SheetTable table{"Boards of " + stock.name, {"Board", "Off it, from one end on"}, {}};
  for (const BoardCut& board : stock.boards->boards) {
    std::vector<std::string> sticks;
    for (const Stick& stick : board.sticks)
      sticks.push_back(stick.part + " " + job.bare(stick.length));
    table.rows.push_back({job.said(board.length), fmt::format("{}", fmt::join(sticks, ", "))});
  }
  for (const Stick& stick : stock.boards->too_long)
    table.rows.push_back({"none is long enough", stick.part + " " + job.bare(stick.length)});
  return table;
}

SheetSection layout_section(const SheetJob& job) {
  SheetSection section{"Laid out on sheets and boards", {}};
  for (const StockCut& stock : job.cut->stock) {
    if (stock.sheets)
      for (std::size_t i = 0; i < stock.sheets->sheets.size(); ++i)
        section.blocks.push_back(SheetFigure{[plan = *stock.sheets, i, name = stock.name,
                                              rounding = job.style.rounding](const Canvas& canvas) {
                                               return layout_drawing(plan, static_cast<int>(i),
                                                                     name, canvas, rounding);
                                             },
                                             90, stock.sheets->sheets.size() > 1 ? 2 : 1});
    if (!stock.boards) continue;
    SheetTable table = board_table(job, stock);
    if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  }
  return section;
}

SheetSection shopping_section(const SheetJob& job) {
  SheetSection section{"Besides the stock, buy", {}};
  SheetList list;
  for (const Purchase& item : job.cut->shopping)
    list.items.push_back(purchase_words(item, job.style.rounding));
  if (!list.items.empty()) section.blocks.push_back(std::move(list));
  return section;
}

}  // namespace

Sheet cutting_sheet(const SheetJob& job) {
  Sheet sheet{"cutting", "Cutting: " + job.title + in_units(job.style.rounding), {}};
  sheet.sections.push_back(list_section(job));
  for (SheetSection& section : std::vector{layout_section(job), shopping_section(job)})
    if (!section.blocks.empty()) sheet.sections.push_back(std::move(section));
  for (const CutPiece& piece : job.cut->pieces)
    sheet.sections.push_back(PieceSection(job, piece).section());
  sheet.sections.push_back(fit_section(job));
  sheet.sections.push_back(caution_section(job));
  return sheet;
}

}  // namespace nook

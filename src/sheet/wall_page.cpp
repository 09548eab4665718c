// Heads, the wall, its holes, then what to mind.
#include "sheet/wall_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/cut_words.h"
#include "sheet/drill_text.h"
#include "sheet/elevation.h"
#include "sheet/lift.h"
#include "sheet/piece_drawing.h"
#include "sheet/piece_view.h"
#include "sheet/stop_numbers.h"

namespace nook {
namespace {

constexpr double kWorkWidth = 110;    // mm of paper that the work fills at least. Chosen
constexpr std::size_t kPictured = 2;  // more pieces than that leave no room for theirs. Chosen

class WallPage {
 public:
  WallPage(const SheetJob& job, int wall)
      : job_(job),
        index_(wall),
        wall_(job.drill().walls[wall]),
        rounding_(framing_rounding(job.style.rounding)) {}

  SheetSection section() const {
    SheetSection page;
    page.one_page = true;
    page.heading = fmt::format("{} WALL, as you face it; its corner is on the {}",
                               capitals(wall_.name), wall_.runs_left ? "right" : "left");
    page.blocks.push_back(
        SheetWords{"Check these three first. If one is not so: stop and measure again."});
    for (const std::string& number : stop_numbers(job_, index_))
      page.blocks.push_back(SheetWords{number, true});
    page.blocks.push_back(wall_picture());
    if (!wall_.holes.empty()) page.blocks.push_back(SheetWords{start_words(), false});
    for (const HungPiece& piece : wall_.pieces) add_piece(page, piece);
    if (!wall_.holes.empty()) page.blocks.push_back(hole_table());
    add_cautions(page);
    return page;
  }

 private:
  std::string said(double mm) const { return with_unit(millimetres(mm), rounding_); }
  std::string bare(double mm) const { return written(millimetres(mm), rounding_); }

  static std::string capitals(std::string words) {
    for (char& c : words)
      if (c >= 'a' && c <= 'z') c -= 'a' - 'A';
    return words;
  }

  SheetFigure wall_picture() const {
    return {[this_job = &job_, wall = index_, rounding = rounding_](const Canvas& canvas) {
              JobScene scene = this_job->scene;
              scene.rounding = rounding;
              return elevation_of_work(scene, wall, canvas);
            },
            0, 1, std::clamp(kWorkWidth * shape_of_work(job_.scene, index_), 75.0, 120.0)};
  }

  std::string start_words() const {
    if (!wall_.datum)
      return "No stud here is proven by nail on both edges: probe one first, strike a plumb line "
             "through "
             "its middle, and lay the holes out on the piece.";
    return fmt::format(
        "START: a plumb line through the middle of the proven stud, {} from the corner at "
        "{} up. Along is counted from it.",
        said(wall_.datum->along_mm), said(wall_.datum->height_mm));
  }

  // "16 1/16 left", as one faces the wall.
  std::string along(const Hole& hole) const {
    if (!hole.from_datum_mm) return "on the piece";
    const std::string shown = bare(std::abs(*hole.from_datum_mm));
    if (shown == "0") return "on the line";
    return fmt::format("{} {}", shown,
                       (*hole.from_datum_mm > 0) == wall_.runs_left ? "left" : "right");
  }
  std::string down(const Hole& hole) const {
    if (!hole.from_line_mm) return bare(hole.height_mm) + " off the floor";
    const std::string shown = bare(std::abs(*hole.from_line_mm));
    return shown == "0" ? "on the line" : shown + (*hole.from_line_mm > 0 ? " up" : " down");
  }

  void add_piece(SheetSection& page, const HungPiece& piece) const {
    std::vector<const Hole*> holes;
    for (const Hole& hole : wall_.holes)
      if (hole.part == piece.part) holes.push_back(&hole);
    if (holes.empty()) return;
    page.blocks.push_back(SheetWords{piece_words(piece, holes), true});
    if (wall_.pieces.size() <= kPictured) page.blocks.push_back(piece_picture(piece.part));
  }

  std::string top_words(const HungPiece& piece) const {
    if (!piece.top_from_line_mm) return "top " + said(piece.top_mm) + " off the floor";
    const std::string by = said(std::abs(*piece.top_from_line_mm));
    if (bare(std::abs(*piece.top_from_line_mm)) == "0") return "top at the line";
    return fmt::format("top {} {} from the line", by, *piece.top_from_line_mm > 0 ? "up" : "down");
  }
  std::string piece_words(const HungPiece& piece, const std::vector<const Hole*>& holes) const {
    const Hole& hole = *holes.front();
    const std::string numbers =
        holes.size() == 1
            ? "hole " + number_of(hole.id)
            : fmt::format("holes {} to {}", number_of(hole.id), number_of(holes.back()->id));
    return fmt::format(
        "{}, {}: {}, {}. {}; bit {} for the thread, flag it {} from its tip, {} for the shank. {}.",
        capitals(piece.part), numbers,
        said(piece.far_mm - piece.near_mm) + " long" + blank_of(piece.part), top_words(piece),
        piece.screw, bit_for(hole.pilot_mm, rounding_), said(hole.depth_mm),
        bit_for(hole.shank_pilot_mm, rounding_), lift(piece.part));
  }
  std::string lift(const std::string& part) const {
    for (const Piece& piece : job_.scene.pieces)
      if (piece.name == part)
        return lift_words(*job_.scene.design, piece, job_.style.rounding.unit);
    return "";
  }

  // The entry of the cutting list that a piece belongs to; null where there is none.
  const CutPiece* cut_of(const std::string& piece) const {
    if (!job_.cut) return nullptr;
    for (const CutPiece& cut : job_.cut->pieces)
      if (std::find(cut.names.begin(), cut.names.end(), piece) != cut.names.end()) return &cut;
    return nullptr;
  }

  // ", blank 47 3/4"" where it leaves the shop larger than it ends.
  std::string blank_of(const std::string& piece) const {
    const CutPiece* cut = cut_of(piece);
    return cut && !cut->wild.empty() ? ", blank " + blank_words(*cut, rounding_) : "";
  }

  // As it is bored, its wild edges hatched.
  SheetFigure piece_picture(const std::string& part) const {
    for (std::size_t i = 0; i < job_.scene.pieces.size(); ++i)
      if (job_.scene.pieces[i].name == part) {
        PieceView view = bench_view(job_.scene, static_cast<int>(i));
        if (const CutPiece* cut = cut_of(part)) {
          const PieceView as_cut = cut_view(job_.scene, *cut);
          view.outline = as_cut.outline, view.blank = as_cut.blank;
        }
        return {[view, rounding = rounding_](const Canvas& canvas) {
                  return nook::piece_picture(view, canvas, rounding);
                },
                34};
      }
    return {};
  }

  // Along and up on the wall; from its end and its edge on the piece.
  SheetTable hole_table() const {
    SheetTable table{"", {"Hole", "Along", "Up or down", "On the piece", "Shim"}, {}};
    for (const Hole& hole : wall_.holes)
      table.rows.push_back({number_of(hole.id) + (hole.probe_first ? " (probe first)" : ""),
                            along(hole), down(hole),
                            fmt::format("{} from {}, {} from {}", bare(hole.from_end_mm), hole.end,
                                        bare(hole.from_edge_mm), hole.edge),
                            bare(hole.shim_mm) == "0" ? "-" : bare(hole.shim_mm)});
    return table;
  }

  // Each warning once, with the holes it is for.
  void add_cautions(SheetSection& page) const {
    SheetList list;
    std::vector<std::pair<std::string, std::string>> told;
    for (const Hole& hole : wall_.holes)
      for (const std::string& warning : hole.warnings) {
        auto known = std::find_if(told.begin(), told.end(),
                                  [&](const auto& t) { return t.first == warning; });
        if (known == told.end())
          told.emplace_back(warning, number_of(hole.id));
        else
          known->second += ", " + number_of(hole.id);
      }
    for (const auto& [warning, numbers] : told)
      list.items.push_back(fmt::format(
          "Hole{} {}: {}", numbers.find(',') == std::string::npos ? "" : "s", numbers, warning));
    if (!list.items.empty()) page.blocks.push_back(std::move(list));
  }

  const SheetJob& job_;
  int index_;
  const WallDrill& wall_;
  Rounding rounding_;
};

}  // namespace

Rounding framing_rounding(Rounding rounding) {
  const Length coarsest = usual_rounding(rounding.unit).step;
  return {rounding.unit, std::max(rounding.step, coarsest)};
}

std::optional<SheetSection> wall_page(const SheetJob& job, int wall) {
  if (wall >= static_cast<int>(job.drill().walls.size())) return std::nullopt;
  bool touched = !job.drill().walls[wall].holes.empty();
  for (std::size_t i = 0; i < job.scene.pieces.size(); ++i)
    touched |= touches_wall(job.scene, static_cast<int>(i), job.scene.room.walls[wall].name);
  if (!touched) return std::nullopt;
  return WallPage(job, wall).section();
}

}  // namespace nook

// Pieces and holes on a faced wall.
#include "sheet/elevation.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/dimension.h"
#include "sheet/wall_draft.h"

namespace nook {
namespace {

constexpr double kHoleMark = 1.1;  // paper mm, radius of a hole's mark. Chosen

// "left ledger: top up 1"" - tops are said from the level line.
std::string piece_words(const WallDraft& wall, const Piece& piece, const PageBox& seen) {
  const bool hung =
      std::any_of(wall.scene.design->fastenings.begin(), wall.scene.design->fastenings.end(),
                  [&](const Fastening& f) {
                    return f.part == piece.drawn->name && wall_named(f.to) == wall.survey().name;
                  });
  if (!hung || !wall.scene.room.line_z) return piece.drawn->name;
  const double up = seen.high.y - *wall.scene.room.line_z;
  const std::string by = wall.draft.said(std::abs(up));
  if (std::abs(up) < wall.draft.rounding.step.mm / 2)
    return piece.drawn->name + ": top at the line";
  return fmt::format("{}: top {} {}", piece.drawn->name, up > 0 ? "up" : "down", by);
}

void draw_piece(WallDraft& wall, int index, bool named) {
  const Piece& piece = wall.scene.pieces[index];
  const Region seen = seen_on(wall.faced, piece, wall.scene.frames[index]);
  wall.add("pieces", Polyline{seen.outline, true, LineKind::heavy}, piece.name);
  PageBox box;
  for (Vec2 p : seen.outline) box.take_in(p);
  for (const Polygon& hole : seen.holes)
    wall.add("pieces", Polyline{hole, true, LineKind::normal}, piece.name + " cutout");
  if (!named) return;
  const double clear = 0.5 * wall.draft.drawing.scale * std::min(box.width(), box.height());
  wall.labels.push_back({piece_words(wall, piece, box), 0.5 * (box.low + box.high), clear, true, 0,
                         "label " + piece.name});
}

void draw_pieces(WallDraft& wall) {
  std::string last;
  for (std::size_t i = 0; i < wall.scene.pieces.size(); ++i) {
    if (!touches_wall(wall.scene, static_cast<int>(i), wall.survey().name)) continue;
    const std::string& name = wall.scene.pieces[i].drawn->name;
    draw_piece(wall, static_cast<int>(i), name != last);
    last = name;
  }
}

void draw_plumb_line(WallDraft& wall, const WallDrill& drill) {
  const Vec2 at = wall.faced.page_from_reading(drill.datum->along_mm, drill.datum->height_mm);
  const double a = wall.faced.side() * at.x;
  const Vec2 foot{at.x, wall.faced.floor_at(a)}, head{at.x, wall.faced.top_at(a, wall.top)};
  wall.add("plumb line", Polyline{{foot, head}, false, LineKind::dash_dot}, "plumb line");
  std::vector<RunningMark> marks;
  for (const Hole& hole : drill.holes) {
    if (!hole.from_datum_mm) continue;
    const double run = wall.faced.side() * *hole.from_datum_mm;
    const auto same = [&](const RunningMark& m) { return std::abs(m.at - run) < 0.5; };
    if (std::none_of(marks.begin(), marks.end(), same))
      marks.push_back({run, wall.draft.bare(std::abs(run)), "run to hole " + number_of(hole.id)});
  }
  draw(wall.draft, Running{{at.x, box_on_page(wall).low.y}, {1, 0}, {0, -1}, 4, "0 plumb line"},
       marks);
}

void draw_holes(WallDraft& wall) {
  const WallDrill* drill = wall.drill();
  if (!drill || drill->holes.empty()) return;
  std::vector<Label> numbers;
  for (const Hole& hole : drill->holes) {
    const Vec2 at = wall.faced.page_from_reading(hole.along_mm, hole.height_mm);
    const std::string number = number_of(hole.id);
    wall.mark("holes", at, kHoleMark, hole.probe_first ? Paint::paper : Paint::ink,
              "hole " + number);
    numbers.push_back({number, at, kHoleMark, true, 0, "number " + number});
  }
  wall.labels.insert(wall.labels.begin(), numbers.begin(), numbers.end());
  if (drill->datum) draw_plumb_line(wall, *drill);
}

}  // namespace

Drawing elevation(const JobScene& scene, int wall, const Canvas& canvas) {
  WallDraft draft = wall_draft(scene, wall, canvas);
  draft.draft.drawing.description = fmt::format(
      "The corner stands at the {}-hand end. Shaded strips: studs found. Dashed strips with a "
      "question "
      "mark: studs reckoned from the others. Filled spots: holes. Open circles: probe first. "
      "Dotted: "
      "where cables are likely.",
      draft.faced.side() < 0 ? "right" : "left");
  draw_wall(draft);
  draw_pieces(draft);
  draw_holes(draft);
  return finished(std::move(draft));
}

std::string number_of(const std::string& hole_id) {
  return hole_id.substr(hole_id.find_last_of(' ') + 1);
}

}  // namespace nook

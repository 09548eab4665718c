// Pieces and holes on a faced wall.
#include "sheet/elevation.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/dimension.h"
#include "sheet/wall_draft.h"

namespace nook {
namespace {

constexpr double kHoleMark = 1.1;   // paper mm, radius of a hole's mark. Chosen
constexpr double kRoundWork = 120;  // mm of wall shown round what hangs on it. Chosen

// Whether the piece is screwed to that wall.
bool hangs_on(const JobScene& scene, const Piece& piece, const std::string& wall) {
  const auto& all = scene.design->fastenings;
  return std::any_of(all.begin(), all.end(), [&](const Fastening& f) {
    return (f.part == piece.drawn->name || f.part == piece.name) && wall_named(f.to) == wall;
  });
}

// "left ledger: top up 1"" - tops are said from the level line.
std::string piece_words(const WallDraft& wall, const Piece& piece, const PageBox& seen) {
  if (!hangs_on(wall.scene, piece, wall.survey().name) || !wall.scene.room.line_z)
    return piece.drawn->name;
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
  const double spot = wall.shown.low.y + 0.97 * wall.shown.height();
  wall.labels.push_back({"plumb line", {at.x, spot}, 0, true, 0, "label plumb line"});
}

// Every hole's distance from the plumb line, below the wall.
void draw_run(WallDraft& wall, const WallDrill& drill) {
  std::vector<RunningMark> marks;
  for (const Hole& hole : drill.holes) {
    if (!hole.from_datum_mm) continue;
    const double run = wall.faced.side() * *hole.from_datum_mm;
    const std::string words = wall.draft.bare(std::abs(run));
    const auto same = [&](const RunningMark& m) {
      return m.words == words && (m.at > 0) == (run > 0);
    };
    if (std::none_of(marks.begin(), marks.end(), same))
      marks.push_back({run, words, "run to hole " + number_of(hole.id)});
  }
  std::erase_if(marks, [](const RunningMark& m) { return m.words == "0"; });
  const Vec2 at = wall.faced.page_from_reading(drill.datum->along_mm, drill.datum->height_mm);
  draw(wall.draft, Running{{at.x, wall.shown.low.y}, {1, 0}, {0, -1}, 4, "0"}, marks);
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

// Round what hangs on the wall and the level line, from the corner on.
PageBox round_the_work(const JobScene& scene, int wall) {
  const PageBox whole = whole_wall(scene, wall);
  const FacedWall faced(scene.room, wall);
  PageBox work;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    if (hangs_on(scene, scene.pieces[i], faced.wall().name))
      for (Vec2 p : seen_on(faced, scene.pieces[i], scene.frames[i]).outline) work.take_in(p);
  if (work.empty()) return whole;
  work.take_in(Vec2{0, scene.room.line_z.value_or(work.low.y)});
  work = work.grown(kRoundWork);
  return {{std::max(work.low.x, whole.low.x), std::max(work.low.y, whole.low.y)},
          {std::min(work.high.x, whole.high.x), std::min(work.high.y, whole.high.y)}};
}

Drawing drawn(const JobScene& scene, int wall, const Canvas& canvas, const PageBox& shown) {
  WallDraft draft = wall_draft(scene, wall, canvas, shown);
  draw_wall(draft);
  draw_pieces(draft);
  draw_holes(draft);
  cut_to_shown(draft);
  const WallDrill* drill = draft.drill();
  if (drill && drill->datum && !drill->holes.empty()) draw_run(draft, *drill);
  draft.draft.drawing.description = fmt::format(
      "The corner stands at the {}-hand end. Shaded strips: studs found. Dashed strips with a "
      "question mark: studs reckoned from the others. Filled spots: holes. Open circles: probe "
      "first. "
      "Dotted: where cables are likely.",
      draft.faced.side() < 0 ? "right" : "left");
  return finished(std::move(draft));
}

}  // namespace

Drawing elevation(const JobScene& scene, int wall, const Canvas& canvas) {
  return drawn(scene, wall, canvas, whole_wall(scene, wall));
}

Drawing elevation_of_work(const JobScene& scene, int wall, const Canvas& canvas) {
  Drawing drawing = drawn(scene, wall, canvas, round_the_work(scene, wall));
  drawing.name += "-work";
  return drawing;
}

double shape_of_work(const JobScene& scene, int wall) {
  const PageBox work = round_the_work(scene, wall);
  return work.height() / work.width();
}

std::string number_of(const std::string& hole_id) {
  return hole_id.substr(hole_id.find_last_of(' ') + 1);
}

}  // namespace nook

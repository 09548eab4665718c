// The layers every elevation has, from behind the wall's surface outwards.
#include "sheet/wall_draft.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/floor_spot.h"
#include "sheet/full_size.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr int kStations = 24;

PageBox extent_on(const FacedWall& faced, double top) {
  PageBox box;
  for (double z : {0.0, top})
    for (double a : {faced.ends_at(z).x, faced.ends_at(z).y}) {
      box.take_in(faced.page(a, faced.floor_at(a)));
      box.take_in(faced.page(a, faced.top_at(a, top)));
    }
  return box;
}

// The wall's lower or upper end, from along 0 on.
std::vector<Vec2> run(const WallDraft& wall, bool at_top) {
  std::vector<Vec2> points;
  const Vec2 ends = wall.faced.ends_at(at_top ? wall.top : 0);
  for (int i = 0; i <= kStations; ++i) {
    const double a = ends.x + (ends.y - ends.x) * i / kStations;
    points.push_back(
        wall.faced.page(a, at_top ? wall.faced.top_at(a, wall.top) : wall.faced.floor_at(a)));
  }
  return points;
}

void draw_ground(WallDraft& wall) {
  Polygon whole = run(wall, false);
  const std::vector<Vec2> top = run(wall, true);
  whole.insert(whole.end(), top.rbegin(), top.rend());
  wall.add("wall", Patch{{whole, {}}, Paint::paper, LineKind::none}, wall.survey().name + " wall");
}

void draw_stud(WallDraft& wall, const StudReport& stud, const std::string& number) {
  const double half = (wall.survey().studs ? wall.survey().studs->width.mm : 38.1) / 2;
  const bool found = stud.found != StudReport::Found::inferred;
  const double a = wall.scene.room.base_along(wall.index, stud.centre_mm, stud.height_mm);
  const double low = wall.faced.floor_at(a), high = wall.faced.top_at(a, wall.top);
  const Vec2 foot[2] = {wall.faced.page(a - half, low), wall.faced.page(a + half, low)};
  const Vec2 head[2] = {wall.faced.page(a - half, high), wall.faced.page(a + half, high)};
  const std::string name = "stud " + number;
  if (found)
    wall.add("studs",
             Patch{{{foot[0], foot[1], head[1], head[0]}, {}}, Paint::shade, LineKind::none}, name);
  for (int side : {0, 1})
    wall.add("studs",
             Polyline{{foot[side], head[side]}, false, found ? LineKind::normal : LineKind::dashed},
             name + (side ? " far edge" : " near edge"));
  const double spot = wall.shown.low.y + 0.9 * wall.shown.height();
  wall.labels.push_back({"S" + number + (found ? "" : "?"),
                         {wall.faced.page(a, 0).x, spot},
                         0,
                         false,
                         0,
                         "label " + name});
}

void draw_studs(WallDraft& wall) {
  const WallDrill* drill = wall.drill();
  int number = 0;
  for (const StudReport& stud : drill ? drill->studs : wall.scene.report.walls[wall.index].studs)
    draw_stud(wall, stud, std::to_string(++number));
}

void draw_baseboard(WallDraft& wall) {
  if (!wall.survey().baseboard) return;
  const Baseboard& board = *wall.survey().baseboard;
  const Vec2 ends = wall.faced.ends_at(0);
  const double from = ends.x + board.starts.mm;
  const double to = board.ends ? ends.x + board.ends->mm : ends.y;
  const double height = board.height.mm;
  const auto at = [&](double a, double up) {
    return wall.faced.page(a, wall.faced.floor_at(a) + up);
  };
  const Polygon box{at(from, 0), at(to, 0), at(to, height), at(from, height)};
  wall.add("wall", Patch{{box, {}}, Paint::wall, LineKind::thin}, "baseboard");
  wall.labels.push_back({"baseboard", 0.3 * box[0] + 0.7 * box[1] + Vec2{0, height / 2}, 0, false,
                         0, "label baseboard"});
}

void draw_edges(WallDraft& wall) {
  const std::vector<Vec2> floor = run(wall, false), top = run(wall, true);
  const bool ceiling = wall.faced.has_ceiling();
  wall.add("wall", Polyline{floor, false, LineKind::heavy}, "floor");
  wall.add("wall", Polyline{top, false, ceiling ? LineKind::heavy : LineKind::dotted},
           ceiling ? "ceiling" : "open above");
  wall.add("wall", Polyline{{floor.front(), top.front()}, false, LineKind::heavy}, "corner");
  const bool corner_too =
      wall.index > 0 && wall.index + 1 < static_cast<int>(wall.scene.room.walls.size());
  wall.add(
      "wall",
      Polyline{
          {floor.back(), top.back()}, false, corner_too ? LineKind::heavy : LineKind::dash_dot},
      corner_too ? "far corner" : "far end");
}

void draw_obstacles(WallDraft& wall) {
  for (const Obstacle& o : wall.survey().obstacles) {
    const Vec2 a = wall.faced.page_from_reading(o.along[0].mm, o.height[0], o.from_right);
    const Vec2 b = wall.faced.page_from_reading(o.along[1].mm, o.height[1], o.from_right);
    PageBox box;
    box.take_in(a);
    box.take_in(b);
    box.high.y = std::min(box.high.y, wall.shown.high.y);
    wall.add("obstacles", Patch{region_of(box), Paint::paper, LineKind::normal}, o.name);
    hatch(wall.draft, "obstacles", region_of(box), 135, 1.4);
    wall.marks.push_back(box);
    const double clear = 0.5 * wall.draft.drawing.scale * std::min(box.width(), box.height());
    wall.labels.push_back({o.name, 0.5 * (a + b), clear, false, 0, "label " + o.name});
  }
}

void draw_cables(WallDraft& wall) {
  for (const CableRun& run : cable_runs(wall.scene, wall.index))
    wall.add(
        "cables",
        Polyline{{wall.faced.page(run.from.x, run.from.y), wall.faced.page(run.to.x, run.to.y)},
                 false,
                 LineKind::dotted},
        "cable");
}

// A spot of the page's width near the end away from the corner.
double far_side(const WallDraft& wall) {
  const double share = wall.faced.side() > 0 ? 0.85 : 0.15;
  return wall.shown.low.x + share * wall.shown.width();
}

void draw_level_line(WallDraft& wall) {
  if (!wall.scene.room.line_z) return;
  const double z = *wall.scene.room.line_z;
  const Vec2 ends = wall.faced.ends_at(z);
  wall.add(
      "level line",
      Polyline{{wall.faced.page(ends.x, z), wall.faced.page(ends.y, z)}, false, LineKind::dash_dot},
      "level line");
  // On a narrow wall only its name finds room beside it.
  std::string words =
      fmt::format("level line, {} above high spot", wall.draft.said(z - high_spot(wall.scene).z));
  if (width_of(words, wall.draft.text(), true) > wall.shown.width()) words = "level line";
  wall.labels.insert(wall.labels.begin(),
                     {words, {far_side(wall), z}, 0.5, true, 0, "label level line"});
}

bool holds_cable(ObstacleKind kind) {
  return kind == ObstacleKind::outlet || kind == ObstacleKind::switch_box ||
         kind == ObstacleKind::thermostat;
}

}  // namespace

const WallDrill* WallDraft::drill() const {
  if (!scene.drill) return nullptr;
  for (const WallDrill& wall : scene.drill->walls)
    if (wall.name == survey().name) return &wall;
  return nullptr;
}

void WallDraft::mark(const std::string& layer, Vec2 at, double radius, Paint paint,
                     const std::string& name) {
  add(layer, Circle{at, draft.paper(radius), paint, LineKind::normal}, name);
  PageBox box;
  box.take_in(at);
  marks.push_back(box.grown(draft.paper(radius)));
}

PageBox whole_wall(const JobScene& scene, int wall) {
  return extent_on(FacedWall(scene.room, wall), usual_top(scene));
}

WallDraft wall_draft(const JobScene& scene, int wall, const Canvas& canvas, const PageBox& shown) {
  const Vec2 free{canvas.text, 7.5 * canvas.text};
  WallDraft it{scene,
               wall,
               FacedWall(scene.room, wall),
               usual_top(scene),
               shown,
               drafted(canvas, scene.rounding, shown, free),
               {},
               {}};
  it.draft.drawing.name = "wall-" + it.survey().name;
  it.draft.drawing.title = it.survey().name + " wall, as one faces it" + in_units(scene.rounding);
  return it;
}

void draw_wall(WallDraft& wall) {
  draw_ground(wall);
  draw_studs(wall);
  draw_cables(wall);
  draw_baseboard(wall);
  draw_edges(wall);
  draw_obstacles(wall);
  draw_level_line(wall);
}

void cut_to_shown(WallDraft& wall) {
  const Drawing all = std::move(wall.draft.drawing);
  wall.draft.drawing = clipped(all, wall.shown);
  wall.draft.drawing.description = all.description;
  const auto outside = [&](Vec2 p) {
    const PageBox& box = wall.shown;
    return p.x < box.low.x || p.x > box.high.x || p.y < box.low.y || p.y > box.high.y;
  };
  std::erase_if(wall.labels, [&](const Label& label) { return outside(label.about); });
  std::erase_if(wall.marks, [&](const PageBox& mark) { return !overlap(mark, wall.shown); });
}

Drawing finished(WallDraft wall) {
  place_labels(wall.draft, wall.labels, wall.marks, canvas_round(wall.draft, wall.shown));
  return finished(std::move(wall.draft));
}

std::vector<CableRun> cable_runs(const JobScene& scene, int wall) {
  const FacedWall faced(scene.room, wall);
  std::vector<Vec2> boxes;
  for (const Obstacle& o : scene.survey.walls[wall].obstacles)
    if (holds_cable(o.kind)) {
      const Vec2 p = 0.5 * (faced.page_from_reading(o.along[0].mm, o.height[0], o.from_right) +
                            faced.page_from_reading(o.along[1].mm, o.height[1], o.from_right));
      boxes.push_back({faced.side() * p.x, p.y});
    }
  std::vector<CableRun> runs;
  for (Vec2 box : boxes)
    runs.push_back(
        {{box.x, faced.floor_at(box.x)}, {box.x, faced.top_at(box.x, usual_top(scene))}});
  for (std::size_t i = 0; i < boxes.size(); ++i)
    for (std::size_t j = i + 1; j < boxes.size(); ++j)
      runs.push_back({boxes[i], {boxes[j].x, boxes[i].y}});
  return runs;
}

}  // namespace nook

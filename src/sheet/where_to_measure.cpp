// Walls and corners drawn from names alone, with the sticks and tapes in their places.
#include "sheet/where_to_measure.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/dimension.h"
#include "sheet/label.h"

namespace nook {
namespace {

constexpr double kBeyond = 300;     // mm of wall drawn beyond the last mark. Chosen
constexpr double kWallHigh = 2000;  // mm of wall drawn at least. Chosen

// Once each, on one measuring line.
void add_mark(std::vector<RunningMark>& marks, const Draft& draft, double at, double shown) {
  const auto same = [&](const RunningMark& m) { return std::abs(m.at - shown) < 0.5; };
  if (at > 0 && std::none_of(marks.begin(), marks.end(), same))
    marks.push_back({shown, draft.bare(at), "mark"});
}

void add_number(Draft& draft, std::vector<Label>& labels, const NumberedReading& it, Vec2 at) {
  const std::string number = std::to_string(it.number);
  labels.push_back({number, at, 0.8, true, 1.3 * draft.canvas.text, "reading " + number});
}

bool is_level(const NumberedReading& it) {
  return it.reading.kind == NextReading::Kind::level;
}

std::string tape_words(const Draft& draft, const NumberedReading& it) {
  return fmt::format("{} up", draft.said(it.reading.up_mm));
}

}  // namespace

std::vector<NumberedReading> on_wall(const std::vector<NextReading>& readings, int wall) {
  std::vector<NumberedReading> mine;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const NextReading& r = readings[i];
    const bool here =
        r.kind == NextReading::Kind::level || r.kind == NextReading::Kind::straightedge;
    if (here && r.of == wall) mine.push_back({static_cast<int>(i) + 1, r});
  }
  return mine;
}

std::vector<NumberedReading> in_corner(const std::vector<NextReading>& readings, int corner) {
  std::vector<NumberedReading> mine;
  for (std::size_t i = 0; i < readings.size(); ++i)
    if (readings[i].kind == NextReading::Kind::diagonal && readings[i].of == corner)
      mine.push_back({static_cast<int>(i) + 1, readings[i]});
  return mine;
}

Drawing where_on_wall(const Survey& survey, int wall, const std::vector<NumberedReading>& readings,
                      const Canvas& canvas, const Rounding& rounding) {
  const double side = wall == 0 && survey.walls.size() > 1 ? -1 : 1;
  const double level = survey.level.length.mm;
  double far = 0, high = kWallHigh;
  for (const NumberedReading& it : readings) {
    far = std::max({far, it.reading.at_mm, is_level(it) ? 0 : it.reading.to_mm});
    high = std::max(high, it.reading.up_mm + (is_level(it) ? level : 0) + 100);
  }
  PageBox real;
  real.take_in(Vec2{0, 0});
  real.take_in(Vec2{side * (far + kBeyond), high});
  Draft draft = drafted(canvas, rounding, real, {2 * canvas.text, 9 * canvas.text});
  const std::string& name = survey.walls[wall].name;
  draft.drawing.name = "measure-" + name;
  draft.drawing.title =
      fmt::format("{} wall, as you face it: where to hold the level and the straightedge{}", name,
                  in_units(rounding));
  draft.drawing.description = fmt::format(
      "The corner stands at the {}-hand end; distances run from it.", side < 0 ? "right" : "left");
  draft.drawing.add(
      "wall", Polyline{{{0, high}, {0, 0}, {side * (far + kBeyond), 0}}, false, LineKind::heavy},
      "corner and floor");
  std::vector<Label> labels;
  std::vector<RunningMark> marks;
  for (const NumberedReading& it : readings) {
    const NextReading& r = it.reading;
    const Vec2 from{side * r.at_mm, r.up_mm};
    const Vec2 to = is_level(it) ? from + Vec2{0, level} : Vec2{side * r.to_mm, r.up_mm};
    draft.drawing.add("sticks", Polyline{{from, to}, false, LineKind::heavy}, "stick");
    add_mark(marks, draft, r.at_mm, side * r.at_mm);
    if (!is_level(it)) add_mark(marks, draft, r.to_mm, side * r.to_mm);
    add_number(draft, labels, it, 0.5 * (from + to));
    labels.push_back({tape_words(draft, it), from, 0.8, false, 0, "height"});
  }
  const PageBox dimension = draw(draft, Running{{0, 0}, {1, 0}, {0, -1}, 3, "0 corner"}, marks);
  place_labels(draft, labels, {dimension}, canvas_round(draft, real));
  return finished(std::move(draft));
}

Drawing where_in_corner(const Survey& survey, int corner,
                        const std::vector<NumberedReading>& readings, const Canvas& canvas,
                        const Rounding& rounding) {
  double first = 0, second = 0;
  for (const NumberedReading& it : readings) {
    first = std::max(first, it.reading.at_mm);
    second = std::max(second, it.reading.to_mm);
  }
  // The corner at the upper right, its first wall to the left, its second wall downward.
  const PageBox real{{-first - kBeyond, -second - kBeyond}, {0, 0}};
  Draft draft = drafted(canvas, rounding, real, {9 * canvas.text, 9 * canvas.text});
  const std::string left = survey.walls[corner].name, right = survey.walls[corner + 1].name;
  draft.drawing.name = fmt::format("measure-{}-{}", left, right);
  draft.drawing.title = fmt::format("Corner of the {} and the {} wall from above: diagonals{}",
                                    left, right, in_units(rounding));
  draft.drawing.description = fmt::format(
      "The {} wall runs to the left of the corner, the {} wall down from it.", left, right);
  draft.drawing.add("walls",
                    Polyline{{{real.low.x, 0}, {0, 0}, {0, real.low.y}}, false, LineKind::heavy},
                    "walls");
  std::vector<Label> labels{{left + " wall", {real.low.x, 0}, 0, true, 0, "left"},
                            {right + " wall", {0, real.low.y}, 0, true, 0, "right"}};
  std::vector<RunningMark> along, down;
  for (const NumberedReading& it : readings) {
    const Vec2 a{-it.reading.at_mm, 0}, b{0, -it.reading.to_mm};
    draft.drawing.add("tapes", Polyline{{a, b}, false, LineKind::dashed}, "tape");
    add_mark(along, draft, it.reading.at_mm, -it.reading.at_mm);
    add_mark(down, draft, it.reading.to_mm, -it.reading.to_mm);
    add_number(draft, labels, it, 0.5 * (a + b));
    labels.push_back({tape_words(draft, it), 0.5 * (a + b), 0.8, false, 0, "height"});
  }
  const std::vector<PageBox> dimensions{draw(draft, Running{{0, 0}, {1, 0}, {0, 1}, 3, "0"}, along),
                                        draw(draft, Running{{0, 0}, {0, 1}, {1, 0}, 3, ""}, down)};
  place_labels(draft, labels, dimensions, canvas_round(draft, real));
  return finished(std::move(draft));
}

}  // namespace nook

// Arrows, ticks and words of dimensions.
#include "sheet/dimension.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/invariant.h"
#include "sheet/label.h"
#include "sheet/text_width.h"

namespace nook {
namespace {

constexpr double kArrow = 2.2, kArrowHalf = 0.45;  // paper mm. Chosen
constexpr double kTick = 1.2;
constexpr const char* kLayer = "dimensions";

void arrow(Draft& draft, Vec2 tip, Vec2 towards) {
  const double length = draft.paper(kArrow), half = draft.paper(kArrowHalf);
  const Vec2 back = tip - length * towards, side = half * left_of(towards);
  draft.drawing.add(kLayer,
                    Patch{{{tip, back + side, back - side}, {}}, Paint::ink, LineKind::none});
}

// The angle at which words along d read from below or from the right.
double reading_angle(Vec2 d) {
  double angle = std::atan2(d.y, d.x) * 180 / std::numbers::pi;
  if (angle > 90.001) angle -= 180;
  if (angle <= -89.999) angle += 180;
  return std::abs(angle) < 1e-9 ? 0 : angle;
}

void extension(Draft& draft, Vec2 from, Vec2 to) {
  const double length = norm(to - from);
  if (length < draft.paper(1.5)) return;
  const Vec2 d = (1 / length) * (to - from);
  draft.drawing.add(
      kLayer,
      Polyline{{from + draft.paper(0.8) * d, to + draft.paper(kTick) * d}, false, LineKind::thin});
}

// Words above the middle of the line, or past its second end where they are too long.
Text words_on(const Draft& draft, const Dimension& dimension, Vec2 a, Vec2 b) {
  const double size = draft.text(), length = norm(b - a);
  const Vec2 d = (1 / length) * (b - a);
  const double angle = reading_angle(d);
  const Vec2 up = left_of(
      Vec2{std::cos(angle * std::numbers::pi / 180), std::sin(angle * std::numbers::pi / 180)});
  if (width_of(dimension.words, size) + draft.paper(2 * kArrow) <= length)
    return {0.5 * (a + b) + 0.75 * size * up, dimension.words, size, Align::middle, angle, false};
  const bool forward = dot(d, Vec2{up.y, -up.x}) > 0;  // d runs as the words do
  return {b + draft.paper(kArrow + 1) * d,     dimension.words, size,
          forward ? Align::start : Align::end, angle,           false};
}

void tick(Draft& draft, const Running& run, double at, double shown_at, double base, double reach) {
  const Vec2 on = run.start + at * run.along, moved = run.start + shown_at * run.along;
  const double kink = base + draft.paper(2);
  draft.drawing.add(kLayer, Polyline{{on + (base - draft.paper(kTick)) * run.off,
                                      on + (base + draft.paper(0.6)) * run.off,
                                      moved + kink * run.off, moved + (kink + reach) * run.off},
                                     false,
                                     LineKind::thin});
}

Text words_at(const Draft& draft, const Running& run, double shown_at, double off) {
  const Vec2 at = run.start + shown_at * run.along + off * run.off;
  const bool level = run.along.y == 0;
  const bool first = level ? run.off.y > 0 : run.off.x > 0;
  return {at, "", draft.text(), first ? Align::start : Align::end, level ? 90.0 : 0.0, false};
}

}  // namespace

void draw(Draft& draft, const Dimension& dimension) {
  const double length = norm(dimension.to - dimension.from);
  require(length > 0, "a dimension has two ends");
  const Vec2 d = (1 / length) * (dimension.to - dimension.from);
  const Vec2 shift = draft.paper(dimension.off) * left_of(d);
  const Vec2 a = dimension.from + shift, b = dimension.to + shift;
  extension(draft, dimension.from, a);
  extension(draft, dimension.to, b);
  draft.drawing.add(kLayer, Polyline{{a, b}, false, LineKind::thin}, dimension.name);
  const bool outside = length < draft.paper(2 * kArrow + 1);
  arrow(draft, a, outside ? d : -d);
  arrow(draft, b, outside ? -d : d);
  draft.drawing.add(kLayer, words_on(draft, dimension, a, b), dimension.name);
}

PageBox draw(Draft& draft, const Running& run, std::vector<RunningMark> marks) {
  require(run.along.x * run.along.y == 0, "running dimensions are level or upright");
  std::stable_sort(marks.begin(), marks.end(),
                   [](const RunningMark& a, const RunningMark& b) { return a.at < b.at; });
  std::vector<double> wanted{0};
  for (const RunningMark& mark : marks) wanted.push_back(mark.at);
  std::sort(wanted.begin(), wanted.end());
  const std::vector<double> shown = spread(wanted, 1.12 * draft.text(), -1e9, 1e9);
  const double base = draft.paper(run.distance), reach = draft.paper(1);
  const auto at_zero = std::find(wanted.begin(), wanted.end(), 0.0) - wanted.begin();
  PageBox covered;
  const auto put = [&](double at, double moved, const std::string& words, const std::string& name) {
    tick(draft, run, at, moved, base, reach);
    if (words.empty()) return;
    Text text = words_at(draft, run, moved, base + draft.paper(2) + reach + 0.3 * draft.text());
    text.words = words;
    covered.take_in(box_on_page(text));
    draft.drawing.add(kLayer, text, name);
  };
  put(0, shown[at_zero], run.zero, "start");
  std::size_t i = 0;
  for (const RunningMark& mark : marks) {
    if (static_cast<long>(i) == at_zero) ++i;
    put(mark.at, shown[i++], mark.words, mark.name);
  }
  const Vec2 line = run.start + base * run.off;
  const Vec2 from = line + wanted.front() * run.along, to = line + wanted.back() * run.along;
  draft.drawing.add(kLayer, Polyline{{from, to}, false, LineKind::normal});
  draft.drawing.add(kLayer, Circle{line, draft.paper(0.9), Paint::paper, LineKind::normal});
  covered.take_in(from);
  covered.take_in(to);
  return covered;
}

}  // namespace nook

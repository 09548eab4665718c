// Straight tapes between marks in plan, corners and places on walls as equations.
#include "survey/first_values.h"
#include "survey/mark_names.h"
#include "survey/observations.h"
#include "survey/span_places.h"

namespace nook {
namespace {

SpanSpot spot_of(RoomModel& model, const SpanEnd& end, Face on) {
  SpanSpot spot;
  if (end.height) spot.height = *end.height;
  if (end.mark.empty()) {
    spot.wall = end.wall;
    spot.from_right = end.from_right;
    spot.mark = mark_unknown(model, end.along, end.wall, end.from_right);
    spot.board = board_at(model, end.wall, spot.height, on);
  } else if (const auto corner = corner_named(*model.survey, end.mark)) {
    spot.corner = *corner;
    spot.board = board_at(model, *corner, spot.height, on);
    spot.other_board = board_at(model, *corner + 1, spot.height, on);
  } else {
    spot.x = model.point.at(end.mark);
  }
  return spot;
}

void add_points(RoomModel& model) {
  for (const std::string& name : model.survey->marks) {
    model.point[name] = model.add({UnknownKind::point, 0, name, 0, 0});
    model.add({UnknownKind::point, 1, name, 0, 0});
  }
}

// What a board may have taken off a span that ends low on its wall.
double board_below(const RoomModel& model, const SpanSpot& spot) {
  return spot.wall >= 0 && spot.height.value.mm == 0 ? board_thickness(model, spot.wall) : 0;
}

void observe_span(RoomModel& model, const Span& span) {
  for (const Reading& reading : span.is) {
    const SpanSpot a = spot_of(model, span.between[0], reading.on);
    const SpanSpot b = spot_of(model, span.between[1], reading.on);
    const bool corner = a.corner >= 0 || b.corner >= 0;
    const Ends ends = corner ? Ends::inside_corner : Ends::marks;
    Observed how{worth(*model.survey, reading, ends)};
    if (reading.on == Face::wall) how.board = board_below(model, a) + board_below(model, b);
    observe(model, reading, how, [a, b](View& view) { return distance(view, a, b); });
    if (&reading == &span.is.front())
      model.ties.push_back({a, b, mean_or(span.is, reading.value.mm)});
  }
}

}  // namespace

void observe_spans(RoomModel& model) {
  add_points(model);
  for (const Span& span : model.survey->spans) observe_span(model, span);
  place_free_marks(model);
}

}  // namespace nook

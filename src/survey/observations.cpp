// What all kinds of readings share: their error, their id, their order.
#include "survey/observations.h"

#include <algorithm>
#include <tuple>

#include "room/baseboard.h"

namespace nook {

void add_observations(RoomModel& model) {
  observe_walls(model);
  observe_corners(model);
  observe_spans(model);
  observe_levels(model);
  std::stable_sort(model.observations.begin(), model.observations.end(),
                   [](const Observation& a, const Observation& b) {
                     return std::tie(a.place.line, a.place.column) <
                            std::tie(b.place.line, b.place.column);
                   });
}

void observe(RoomModel& model, const Reading& reading, const Observed& how, Equation equation) {
  Observation row;
  row.id = reading.id;
  row.given = reading.given;
  row.place = reading.place;
  row.struck = reading.struck;
  row.value = reading.value.mm;
  row.worth = how.worth;
  row.wall = how.wall;
  row.corner = how.corner;
  row.counted_from = how.counted_from;
  row.board = how.board;
  row.two_ended = how.two_ended;
  const int tape = model.tape;
  const double share = how.worth.tape;
  row.model = [tape, share, equation = std::move(equation)](View& view) {
    return share > 0 ? equation(view) + view.unknown(tape) * share : equation(view);
  };
  model.observations.push_back(std::move(row));
}

int mark_unknown(RoomModel& model, const Reading& reading, int wall, bool from_right) {
  for (std::size_t i = 0; i < model.unknowns.size(); ++i)
    if (model.unknowns[i].kind == UnknownKind::mark && model.unknowns[i].name == reading.id &&
        !reading.id.empty())
      return static_cast<int>(i);
  const int index = model.add({UnknownKind::mark, wall, reading.id, reading.value.mm, 0});
  const bool between = model.length[wall] >= 0;
  const bool known = between || !model.survey->walls[wall].length.empty();
  Observed how{worth(*model.survey, reading, Ends::inside_corner), wall};
  how.corner = wall == 0 ? 0 : from_right ? wall : wall - 1;
  how.counted_from = known ? model.assumed_length[wall] : 0;
  observe(model, reading, how, [index](View& view) { return view.unknown(index); });
  return index;
}

double board_at(const RoomModel& model, int wall, const Height& height, Face on) {
  const auto& board = model.survey->walls[wall].baseboard;
  if (on == Face::wall || !board) return 0;
  const double line = model.line >= 0 ? model.unknowns[model.line].start : 0;
  return stand_out(*board, {height.value.mm + (height.from_line ? line : 0)}).mm;
}

double board_thickness(const RoomModel& model, int wall) {
  const auto& board = model.survey->walls[wall].baseboard;
  return board ? board->thickness.mm : 0;
}

}  // namespace nook

// Every reading of a survey as an equation.
#pragma once

#include "survey/room_model.h"
#include "survey/view.h"

namespace nook {

/// Adds all readings, struck ones too, in file order, with the unknowns that only they need.
void add_observations(RoomModel& model);

// Its parts, one a kind of reading.
void observe_walls(RoomModel& model);
void observe_corners(RoomModel& model);
void observe_spans(RoomModel& model);
void observe_levels(RoomModel& model);

/// Adds readings of one thing: value = of(room) + the tape's share + its own error.
struct Observed {
  Worth worth;  // of each of them, unless it states its own
  int wall = -1, corner = -1;
  double counted_from = 0, board = 0;
  bool two_ended = false;
};
using Equation = std::function<Varied(View&)>;
void observe(RoomModel& model, const Reading& reading, const Observed& how, Equation equation);

/// A mark laid off along a wall from one of its corners: the unknown of its true place. Marks with
/// one id are one mark.
int mark_unknown(RoomModel& model, const Reading& reading, int wall, bool from_right);

/// How far the board on `wall` stands out at a height, where the reading was taken on it.
double board_at(const RoomModel& model, int wall, const Height& height, Face on);

/// How thick the board on `wall` is; 0 without one.
double board_thickness(const RoomModel& model, int wall);

}  // namespace nook

// Lays the walls out from the origin corner to either side.
#include "survey/base_lines.h"

#include <numbers>

namespace nook {
namespace {

constexpr double kHalfTurn = std::numbers::pi;

VariedPoint heading(const Varied& angle) {
  return {cosine(angle), sine(angle)};
}

// From the origin corner to the left end; `away` leads away from the corner just passed.
void lay_left(const RoomModel& model, const State& state, std::vector<VariedWall>& walls) {
  VariedPoint at;
  Varied angle;
  for (int k = model.origin; k >= 0; --k) {
    const VariedPoint away = heading(angle);
    if (k == 0) {
      walls[0] = {at, away, left_of(away)};
      return;
    }
    at = at + unknown(state, model.length[k]) * away;
    walls[k] = {at, -away, left_of(away)};
    angle = angle + Varied(kHalfTurn) - unknown(state, model.angle[k - 1]);
  }
}

// From the origin corner to the right end.
void lay_right(const RoomModel& model, const State& state, std::vector<VariedWall>& walls) {
  VariedPoint at;
  Varied angle = unknown(state, model.angle[model.origin]);
  for (int k = model.origin + 1; k < model.walls(); ++k) {
    const VariedPoint along = heading(angle);
    walls[k] = {at, along, -left_of(along)};
    if (k + 1 == model.walls()) return;
    at = at + unknown(state, model.length[k]) * along;
    angle = angle + Varied(kHalfTurn) + unknown(state, model.angle[k]);
  }
}

}  // namespace

Varied unknown(const State& state, int index) {
  return {state.unknowns[index], {{index, 1}}};
}

std::vector<VariedWall> base_lines(const RoomModel& model, const State& state) {
  std::vector<VariedWall> walls(model.walls());
  if (model.corners() == 0) {
    for (VariedWall& wall : walls) wall = {{0, 0}, {1, 0}, {0, 1}};
    return walls;
  }
  lay_left(model, state, walls);
  lay_right(model, state, walls);
  return walls;
}

}  // namespace nook

// Readings from the level line down to the floor and up to the ceiling as equations.
#include "survey/observations.h"

namespace nook {
namespace {

// The spot of a drop in plan: `along` from the corner at the floor, `out` from the wall there.
Vec2 spot(View& view, const DropReading& drop) {
  const double a = view.base_along(drop.wall, drop.along.mm, 0, drop.from_right);
  const WallShape& wall = view.room().walls[drop.wall];
  return wall.room_from_wall(a, wall.out_at(a, 0) + drop.out.mm);
}

// A level carried along the wall strays by its slope error; a laser or a water level does not.
double carrying(const Survey& survey, const DropReading& drop) {
  return survey.level_line == LevelLine::level ? survey.level.slope_error * drop.along.mm : 0;
}

void observe_drops(RoomModel& model, const std::vector<DropReading>& drops,
                   Equation (*of)(const DropReading&)) {
  for (const DropReading& drop : drops)
    for (const Reading& reading : drop.drop) {
      const double more = carrying(*model.survey, drop);
      const Observed how{worth(*model.survey, reading, Ends::marks, more), drop.wall};
      observe(model, reading, how, of(drop));
    }
}

Equation down_to_floor(const DropReading& drop) {
  return [drop](View& view) {
    const RoomModel& model = view.model();
    return view.unknown(model.line) -
           view.rise(model.floor_field(), model.floor_slope, spot(view, drop));
  };
}

Equation up_to_ceiling(const DropReading& drop) {
  return [drop](View& view) {
    const RoomModel& model = view.model();
    return view.unknown(model.ceiling) +
           view.rise(model.ceiling_field(), model.ceiling_slope, spot(view, drop)) -
           view.unknown(model.line);
  };
}

}  // namespace

void observe_levels(RoomModel& model) {
  observe_drops(model, model.survey->floor.down, down_to_floor);
  observe_drops(model, model.survey->ceiling, up_to_ceiling);
}

}  // namespace nook

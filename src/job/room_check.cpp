// Faults of a room that show only when all of it is read.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "job/room_file.h"

namespace nook {
namespace {

// A floor runs out of level: a height from the level line is a height above the floor only to this
// much (chosen).
constexpr Length kFloorStray = millimetres(10);

// What the checks of one room share.
class RoomCheck {
 public:
  explicit RoomCheck(RoomFile& file) : file_(file) {
    double sum = 0;
    int count = 0;
    for (const DropReading& down : file.survey.floor.down)
      for (const Reading& reading : down.drop)
        if (!reading.struck) sum += reading.value.mm, ++count;
    if (count > 0) line_ = millimetres(sum / count);
  }

  void wall(const Wall& wall) {
    if (wall.studs)
      for (const StudFound& stud : wall.studs->found) this->stud(wall, stud);
    for (const Obstacle& obstacle : wall.obstacles) this->obstacle(wall, obstacle);
    for (const LevelReading& level : wall.levels) this->level(wall, level);
    for (const PlumbReading& plumb : wall.plumbs)
      for (const Station& station : plumb.line)
        on_wall(wall, {station.height, plumb.at, plumb.from_right}, station.reading);
    for (const StringReading& string : wall.strings)
      for (const Station& station : string.line)
        on_wall(wall, {string.height, station.at, string.from_right}, station.reading);
    for (const StraightedgeReading& stick : wall.straightedges)
      for (const Station& station : stick.gaps)
        on_wall(wall, {stick.height, station.at, stick.from_right}, station.reading);
  }

  // A left wall with a corner at its own left counts from there.
  void corner(const Corner& corner) {
    const Wall &left = file_.survey.walls[corner.walls[0]],
               &right = file_.survey.walls[corner.walls[1]];
    const bool left_far = corner.walls[0] > 0;
    for (const Diagonal& diagonal : corner.diagonals) {
      check_diagonal(file_, diagonal);
      between_walls(left, {diagonal.height, diagonal.first.value, left_far}, diagonal.straight);
      between_walls(right, {diagonal.height, diagonal.second.value, false}, diagonal.straight);
    }
    for (const SquareReading& square : corner.squares) {
      between_walls(left, {square.height, square.blade, left_far}, square.gap);
      between_walls(right, {square.height, square.blade, false}, square.gap);
    }
  }

  void across(const Across& across) {
    const Wall &left = file_.survey.walls[across.walls[0]],
               &right = file_.survey.walls[across.walls[1]];
    const bool left_far = across.walls[0] > 0;
    between_walls(left, {across.height, across.out, left_far}, across.is);
    between_walls(right, {across.height, across.out, false}, across.is);
  }

 private:
  // Where on a wall something was read.
  struct At {
    Height height;
    Length along;
    bool from_right = false;
  };

  std::string said(Length value) const {
    return with_unit(value, usual_rounding(file_.survey.units));
  }

  void stud(const Wall& wall, const StudFound& stud) {
    const auto length = wall.longest();
    const bool edges = !stud.left_edge.empty();
    const Readings& first = edges ? stud.left_edge : stud.centre;
    const Readings& second = edges ? stud.right_edge : stud.centre;
    if (!length || first.empty() || first[0].struck || second[0].struck) return;
    if (0.5 * (first[0].value + second[0].value) <= *length) return;
    file_.source.fault(
        stud.place, fmt::format("this stud is outside its wall, which is {} long", said(*length)),
        "stud-outside-wall", "check the reading, and from which corner it counts");
  }

  void obstacle(const Wall& wall, const Obstacle& obstacle) {
    const auto length = wall.longest();
    const bool beyond = length && obstacle.along[0] >= *length;
    if (!beyond && obstacle.along[1].mm > 0) return;
    file_.source.fault(obstacle.place, "this obstacle is outside its wall", "obstacle-outside-wall",
                       "check the reading, and from which corner it counts");
  }

  void level(const Wall& wall, const LevelReading& level) {
    on_wall(wall, {level.from, level.at, level.from_right}, level.gap);
    if (level.from.from_line != level.to.from_line) return;
    const Length span = level.to.value - level.from.value;
    if (span.mm <= 0)
      file_.source.fault(level.to.place, "the level ends no higher than it starts", "pair-reversed",
                         "from is its lower end, to its upper");
    // A level's ends wear, and heights are read to a mark: an inch more is no slip (chosen).
    else if (file_.survey.level.length_said && span > file_.survey.level.length + inches(1))
      file_.source.fault(
          level.to.place,
          fmt::format("a level of {} does not reach so far", said(file_.survey.level.length)),
          "longer-than-level", "check from and to, and length in [level]");
  }

  bool board_runs(const Wall& wall, const At& at) const {
    const Baseboard& board = *wall.baseboard;
    if (board.starts.mm == 0 && !board.ends) return true;
    Length along = at.along;
    if (at.from_right != wall.from_corner_right) {
      const auto length = wall.longest();
      if (!length) return false;  // cannot be told: no fault
      along = *length - along;
    }
    return along >= board.starts && (!board.ends || along <= *board.ends);
  }

  enum class Side { below, above, unknown };
  Side side_of_top(const Wall& wall, const Height& height) const {
    const Length top = wall.baseboard->height;
    if (!height.from_line) return height.value < top ? Side::below : Side::above;
    if (!line_) return Side::unknown;
    const Length above = *line_ + height.value - top;
    return above < -kFloorStray ? Side::below : above > kFloorStray ? Side::above : Side::unknown;
  }

  // Readings to a wall: one on the board says so, one off it does not.
  void on_wall(const Wall& wall, const At& at, const Readings& readings) {
    const bool runs = wall.baseboard && board_runs(wall, at);
    const Side side = runs ? side_of_top(wall, at.height) : Side::above;
    for (const Reading& reading : readings) {
      if (reading.struck) continue;
      if (side == Side::below && !reading.on_said)
        file_.source.fault(
            reading.place,
            fmt::format("taken at the baseboard (its top is at {}), and does not say so",
                        said(wall.baseboard->height)),
            "on-baseboard",
            fmt::format("write {{ is = '{}', on = \"baseboard\" }}, or on = \"wall\" "
                        "where it reached the wall",
                        reading.given));
      if (side == Side::above && reading.on == Face::baseboard)
        file_.source.fault(reading.place, "there is no baseboard here", "no-baseboard",
                           "check the height, and where the board starts and ends");
    }
  }

  // Readings from wall to wall: boards shorten them.
  void between_walls(const Wall& wall, const At& at, const Readings& readings) {
    const bool low =
        wall.baseboard && board_runs(wall, at) && side_of_top(wall, at.height) == Side::below;
    for (const Reading& reading : readings) {
      if (reading.struck || (reading.on_said && reading.on == Face::wall)) continue;
      if (low || reading.on == Face::baseboard)
        file_.source.fault(
            reading.place, "taken at the baseboard, not between the walls", "on-baseboard",
            "take it above the board, or say on = \"wall\" where it reached the walls");
    }
  }

  RoomFile& file_;
  std::optional<Length> line_;  // the level line above the floor, about
};

}  // namespace

void check_room(RoomFile& file) {
  RoomCheck check(file);
  for (const Wall& wall : file.survey.walls) check.wall(wall);
  for (const Corner& corner : file.survey.corners) check.corner(corner);
  for (const Across& across : file.survey.across) check.across(across);
}

}  // namespace nook

// What stands on walls and runs in them: NEC 300.4, BS 7671 522.6.202; head room and reach, chosen.
#include "limit_rows.h"

namespace nook::test {
namespace {

constexpr double kIn = kMillimetresPerInch;

// A ledger 1 1/4 thick on the left wall (1/2 of wallboard), `from` mm from the corner.
Loft ledger(double screw, double from) {
  Loft loft;
  loft.use(User::adult, 0, 0, Purpose::desk);
  loft.board("ledger", 40, 3, {40 + from / kIn, 0, 25}, "-x", "+z", 1.25);
  loft.screw("ledger", "left wall", screw);
  return loft;
}

Loft under_ceiling(double room) {
  Loft loft = platform(42, 38);
  loft.room.ceiling = LevelSurface{};
  loft.room.ceiling->offset = (42 + room) * kIn;
  return loft;
}

Loft with_obstacle(Loft loft, ObstacleKind kind, double from, double to, double low, double high) {
  Obstacle obstacle;
  obstacle.kind = kind;
  obstacle.name = "thing";
  obstacle.along[0] = inches(from), obstacle.along[1] = inches(to);
  obstacle.height[0].value = inches(low), obstacle.height[1].value = inches(high);
  obstacle.out[1] = inches(2);
  loft.survey.walls[0].obstacles.push_back(obstacle);
  return loft;
}

}  // namespace

std::vector<LimitRow> room_rows() {
  return {
      {Of::stud_cable, "screw-reaches-cable", "caution", 1.24, 1.26,
       [](double x) { return ledger(1.25 + 0.5 + x, 500); }},
      {Of::cable_depth, "corner-cables", "note", 49.5, 50.5,
       [](double x) { return ledger(1.25 + x / kIn, 500); }},
      {Of::cable_zone, "corner-cables", "note", 150.5, 149.5,
       [](double x) { return ledger(2, x); }},
      {Of::sitting_room, "head-room-low", "caution", 36.1, 35.9, under_ceiling},
      {Of::standing_room, "bump-under-deck", "note", 76.1, 75.9,
       [](double x) { return platform(x + 0.75, 38); }},
      {Of::window_reach, "window-near", "caution", 36.1, 35.9,
       [](double x) {
         return with_obstacle(platform(42, 38), ObstacleKind::casing, 46 + x, 80 + x, 50, 80);
       }},
      {Of::heater_reach, "heater-near", "caution", 36.1, 35.9,
       [](double x) {
         return with_obstacle(platform(42, 38), ObstacleKind::heater, 46.75 + x, 90 + x, 4, 20);
       }},
  };
}

}  // namespace nook::test

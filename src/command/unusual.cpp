// Ranges of walls, boards, coverings and ways in.
#include "command/unusual.h"

namespace nook {
namespace {

// What nearly all houses have, mm. Chosen.
struct Range {
  double least, most;
};
constexpr Range kWall{150, 12000}, kBoard{20, 350}, kBoardThick{3, 50}, kCovering{1, 60},
    kDoorWide{400, 3000}, kDoorHigh{1500, 3500}, kHall{500, 6000};

class Finder {
 public:
  explicit Finder(const Rounding& rounding) : rounding_(rounding) {}

  void look(const char* what, Length size, Range usual) {
    if (size.mm < usual.least || size.mm > usual.most)
      found.push_back(what + (" of " + with_unit(size, rounding_)));
  }
  void look(const Wall& wall) {
    for (const Reading& reading : wall.length)
      if (!reading.struck) look("a wall", reading.value, kWall);
    if (!wall.baseboard) return;
    look("a baseboard's height", wall.baseboard->height, kBoard);
    look("a baseboard's thickness", wall.baseboard->thickness, kBoardThick);
  }

  std::vector<std::string> found;

 private:
  Rounding rounding_;
};

}  // namespace

std::vector<std::string> unusual(const Survey& survey, const Rounding& rounding) {
  Finder finder(rounding);
  for (const Wall& wall : survey.walls) finder.look(wall);
  if (survey.floor.covering)
    finder.look("a covering's thickness", survey.floor.covering->thickness, kCovering);
  for (const Doorway& door : survey.doorways) {
    finder.look("a door's width", door.width, kDoorWide);
    finder.look("a door's height", door.height, kDoorHigh);
  }
  for (const HallTurn& turn : survey.turns) {
    finder.look("a hall's width", turn.from, kHall);
    finder.look("a hall's width", turn.to, kHall);
    finder.look("a hall's height", turn.height, kDoorHigh);
  }
  return finder.found;
}

}  // namespace nook

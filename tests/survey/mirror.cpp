// Turns plain types round.
#include "mirror.h"

#include <algorithm>

#include "survey/mark_names.h"

namespace nook::test {
namespace {

class Mirror {
 public:
  explicit Mirror(const Survey& survey)
      : from_(survey), walls_(static_cast<int>(survey.walls.size())) {}

  Survey image() const {
    Survey out = from_;
    std::reverse(out.walls.begin(), out.walls.end());
    for (int k = 0; k < walls_; ++k) turn(out.walls[static_cast<std::size_t>(k)], between(k));
    std::reverse(out.corners.begin(), out.corners.end());
    for (Corner& corner : out.corners) turn(corner);
    for (Across& across : out.across)
      across.walls[0] = other(across.walls[0]), across.walls[1] = other(across.walls[1]),
      std::swap(across.walls[0], across.walls[1]);
    for (Span& span : out.spans)
      for (SpanEnd& end : span.between) turn(end);
    for (auto* drops : {&out.floor.down, &out.ceiling})
      for (DropReading& drop : *drops) {
        drop.from_right = between(drop.wall) ? !drop.from_right : false;
        drop.wall = other(drop.wall);
      }
    return out;
  }

 private:
  int other(int wall) const { return walls_ - 1 - wall; }
  bool between(int wall) const { return wall > 0 && wall + 1 < walls_; }

  static void turn(Wall& wall, bool between) {
    if (!between) return;
    for (auto& e : wall.levels) e.from_right = !e.from_right;
    for (auto& e : wall.straightedges) e.from_right = !e.from_right;
    for (auto& e : wall.plumbs) e.from_right = !e.from_right;
    for (auto& e : wall.strings) e.from_right = !e.from_right;
  }

  void turn(Corner& corner) const {
    const int left = other(corner.walls[1]);
    corner.walls[0] = left;
    corner.walls[1] = left + 1;
    for (Diagonal& diagonal : corner.diagonals) std::swap(diagonal.first, diagonal.second);
  }

  void turn(SpanEnd& end) const {
    if (end.mark.empty()) {
      end.from_right = between(end.wall) ? !end.from_right : false;
      end.wall = other(end.wall);
    } else if (const auto corner = corner_named(from_, end.mark)) {
      const auto k = static_cast<std::size_t>(*corner);
      end.mark = from_.walls[k + 1].name + "/" + from_.walls[k].name;
    }
  }

  const Survey& from_;
  int walls_;
};

}  // namespace

Survey mirrored(const Survey& survey) {
  return Mirror(survey).image();
}

Survey shuffled(const Survey& survey, std::mt19937_64& random) {
  Survey out = survey;
  const auto mix = [&](auto& list) {
    for (std::size_t i = list.size(); i > 1; --i) std::swap(list[i - 1], list[random() % i]);
  };
  for (Wall& wall : out.walls) {
    mix(wall.levels);
    mix(wall.plumbs);
    for (PlumbReading& plumb : wall.plumbs) mix(plumb.line);
    mix(wall.strings);
    for (StringReading& string : wall.strings) mix(string.line);
  }
  for (Corner& corner : out.corners) {
    mix(corner.diagonals);
    for (Diagonal& diagonal : corner.diagonals) mix(diagonal.straight);
  }
  mix(out.spans);
  mix(out.floor.down);
  return out;
}

}  // namespace nook::test

// Baseboard profiles cut into blocks with sloping fronts; obstacles as they are.
#include "fit/block.h"

#include <algorithm>
#include <limits>

#include "design/design.h"
#include "room/baseboard.h"

namespace nook {
namespace {

constexpr double kDeep = 1000;  // mm into the wall: a block on the wall has no back. Chosen

// mm below the floor: what stands on it goes on there, so that nothing slips under. Chosen.
constexpr double kIntoFloor = 20;

// The profile from under the floor to the board's top; a square board has three points.
std::vector<ProfilePoint> profile_of(const Baseboard& board) {
  std::vector<ProfilePoint> points = board.profile;
  if (points.empty()) points = {{{0}, board.thickness}, {board.height, board.thickness}};
  points.insert(points.begin(), {{-kIntoFloor}, points.front().out});
  if (points.back().height < board.height) points.push_back({board.height, points.back().out});
  return points;
}

Block on_board(const Wall& wall) {
  const Baseboard& board = *wall.baseboard;
  Block block;
  block.name = wall.name + " wall baseboard";
  block.along_from = board.starts.mm;
  block.along_to = board.ends ? board.ends->mm : std::numeric_limits<double>::infinity();
  block.from_right = wall.from_corner_right;
  block.out_from = -kDeep;
  block.board = true;
  return block;
}

void add_board(const Wall& wall, std::vector<Block>& blocks) {
  const std::vector<ProfilePoint> points = profile_of(*wall.baseboard);
  Block block = on_board(wall);
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double rise = (points[i + 1].height - points[i].height).mm;
    if (rise <= 0) continue;
    block.height_from.at = points[i].height.mm;
    block.height_to.at = points[i + 1].height.mm;
    block.out_to = points[i].out.mm;
    block.slope = (points[i + 1].out - points[i].out).mm / rise;
    blocks.push_back(block);
  }
  const double shoe = wall.baseboard->shoe.mm;
  if (shoe <= 0) return;
  block.height_from.at = -kIntoFloor;
  block.height_to.at = std::min(kShoeHeight, wall.baseboard->height).mm;
  block.out_to = points.front().out.mm + shoe;
  block.slope = 0;
  blocks.push_back(block);
}

}  // namespace

std::vector<Block> blocks_of(const Wall& wall) {
  std::vector<Block> blocks;
  if (wall.baseboard) add_board(wall, blocks);
  for (const Obstacle& o : wall.obstacles) {
    const auto [from, to] = std::minmax(o.out[0].mm, o.out[1].mm);
    if (to <= 0) continue;
    Block block;
    block.name = wall.name + " wall " + o.name;
    std::tie(block.along_from, block.along_to) = std::minmax(o.along[0].mm, o.along[1].mm);
    block.from_right = o.from_right;
    const double low = o.height[0].value.mm;
    block.height_from = {low == 0 && !o.height[0].from_line ? -kIntoFloor : low,
                         o.height[0].from_line};
    block.height_to = {o.height[1].value.mm, o.height[1].from_line};
    block.out_from = from > 0 ? from : -kDeep;
    block.out_to = to;
    blocks.push_back(block);
  }
  return blocks;
}

bool is_on(const std::string& name, const std::string& wall) {
  return name == wall || (name.starts_with(wall + " ") && wall_named(name).empty());
}

}  // namespace nook

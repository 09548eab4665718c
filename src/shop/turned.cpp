// Left and right, bottom and top changed in readings, corners and cutouts.
#include "shop/turned.h"

#include <algorithm>

namespace nook {
namespace {

constexpr double kAlike = 0.79375;  // mm, 1/32 in between two outlines of a cutout. Chosen

bool left_and_right(Turn turn) {
  return turn != Turn::endways;
}
bool top_and_bottom(Turn turn) {
  return turn != Turn::sideways;
}

// Each of two words of a name for the other.
void exchange(std::string& name, const std::string& one, const std::string& other) {
  for (const auto& [from, to] : {std::pair(one, other), std::pair(other, one)})
    if (const size_t at = name.find(from); at != std::string::npos) {
      name.replace(at, from.size(), to);
      return;
    }
}

Vec2 turned_point(Vec2 p, Turn turn, const Box2& around) {
  if (left_and_right(turn)) p.x = around.low.x + around.high.x - p.x;
  if (top_and_bottom(turn)) p.y = around.low.y + around.high.y - p.y;
  return p;
}

bool lies_on(const Cutout& cutout, Turn turn, const Box2& around, const Cutout& other) {
  const auto met = [&](Vec2 p) {
    const Vec2 there = turned_point(p, turn, around);
    return std::any_of(other.outline.begin(), other.outline.end(),
                       [&](Vec2 q) { return norm(q - there) < kAlike; });
  };
  return cutout.outline.size() == other.outline.size() &&
         std::all_of(cutout.outline.begin(), cutout.outline.end(), met);
}

}  // namespace

bool turns_over(Turn turn) {
  return turn != Turn::end_for_end;
}

std::string turned_corner(std::string corner, Turn turn) {
  if (left_and_right(turn)) exchange(corner, "left", "right");
  if (top_and_bottom(turn)) exchange(corner, "lower", "upper");
  return corner;
}

PieceAsCut turned(PieceAsCut piece, Turn turn, Vec2 size) {
  if (left_and_right(turn))
    for (CheckedAt& height : piece.heights) height.at = millimetres(size.x) - height.at;
  if (top_and_bottom(turn))
    for (CheckedAt& width : piece.widths) width.at = millimetres(size.y) - width.at;
  if (turns_over(turn) && piece.diagonals.size() == 2)
    std::swap(piece.diagonals[0], piece.diagonals[1]);
  for (NotchAsCut& notch : piece.notches) notch.corner = turned_corner(notch.corner, turn);
  return piece;
}

bool may_turn(const NeededPiece& needed, Turn turn) {
  const Box2 around = box_of(needed.outline);
  const auto& cutouts = needed.drawn->cutouts;
  return !needed.notched_between &&
         std::all_of(cutouts.begin(), cutouts.end(), [&](const Cutout& cutout) {
           return std::any_of(cutouts.begin(), cutouts.end(), [&](const Cutout& other) {
             return lies_on(cutout, turn, around, other);
           });
         });
}

}  // namespace nook

// A corner's two surfaces, seen from the corner.
#include "survey/corner_frame.h"

namespace nook {
namespace {

double z_of(const View& view, const Sides& sides) {
  return view.z_of(sides.height, sides.corner + 1, 0);  // the wall that starts there
}

// Distance out of the left (right) base line, at a distance from the base corner along it.
Varied out_beside(View& view, const Sides& sides, int wall, double from_corner) {
  const double a = view.from_corner(sides.corner, wall, from_corner).value;
  const double board = wall == sides.corner ? sides.left_board : sides.right_board;
  return view.out(wall, a, z_of(view, sides)) + board;
}

}  // namespace

// In the corner's own frame: x along the left base line, y into the room.
Varied straight_between(View& view, const Sides& sides, const Varied& first, const Varied& second) {
  const CornerSpot& spot =
      view.corner(sides.corner, z_of(view, sides), sides.left_board, sides.right_board);
  const Varied a = spot.left + first, b = spot.right + second;
  const Varied left = out_beside(view, sides, sides.corner, a.value);
  const Varied right = out_beside(view, sides, sides.corner + 1, b.value);
  const Varied angle = view.unknown(view.model().angle[sides.corner]);
  const Varied c = cosine(angle), s = sine(angle);
  return hypotenuse(a - b * c - right * s, left - b * s + right * c);
}

Varied angle_between(View& view, const Sides& sides, double blade) {
  const CornerSpot& spot =
      view.corner(sides.corner, z_of(view, sides), sides.left_board, sides.right_board);
  Varied angle = view.unknown(view.model().angle[sides.corner]);
  for (const int wall : {sides.corner, sides.corner + 1}) {
    const double at = (wall == sides.corner ? spot.left : spot.right).value;
    const Varied turn =
        (out_beside(view, sides, wall, at + blade) - out_beside(view, sides, wall, at)) /
        Varied(blade);
    angle = angle - turn;
  }
  return angle;
}

}  // namespace nook

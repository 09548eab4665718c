// Diagonals, squares, angle finders and wall-to-wall readings as equations.
#include <cmath>
#include <numbers>

#include "base/invariant.h"
#include "survey/corner_frame.h"
#include "survey/observations.h"

namespace nook {
namespace {

void observe_diagonal(RoomModel& model, int corner, const Diagonal& diagonal) {
  const int first = mark_unknown(model, diagonal.first, corner, corner > 0);
  const int second = mark_unknown(model, diagonal.second, corner + 1, false);
  for (const Reading& straight : diagonal.straight) {
    const auto face = [&](const Reading& mark) {
      return straight.on == Face::baseboard ? Face::baseboard : mark.on;
    };
    const Sides sides{corner, diagonal.height,
                      board_at(model, corner, diagonal.height, face(diagonal.first)),
                      board_at(model, corner + 1, diagonal.height, face(diagonal.second))};
    const Observed how{worth(*model.survey, straight, Ends::marks), -1, corner};
    observe(model, straight, how, [=](View& view) {
      return straight_between(view, sides, view.unknown(first), view.unknown(second));
    });
  }
}

void observe_square(RoomModel& model, int corner, const SquareReading& square) {
  const double blade = square.blade.mm, sign = square.gap_at_tip ? 1 : -1;
  for (const Reading& gap : square.gap) {
    const Sides sides{corner, square.height, board_at(model, corner, square.height, gap.on),
                      board_at(model, corner + 1, square.height, gap.on)};
    Observed how{worth(*model.survey, gap, Ends::marks), -1, corner};
    how.two_ended = true;
    if (!gap.sd) how.worth.sd = std::hypot(rounding_sd(*model.survey, gap), kBladeError);
    observe(model, gap, how, [=](View& view) {
      const Varied open = angle_between(view, sides, blade) - Varied(std::numbers::pi / 2);
      return tangent(open) * (blade * sign);
    });
  }
}

void observe_angle(RoomModel& model, int corner, const AngleReading& reading) {
  // Without a blade the reading's own sd says what it is worth; it lay along this much of the
  // walls.
  constexpr double kUsualBlade = 300;  // mm. Chosen
  const double blade = reading.blade.mm > 0 ? reading.blade.mm : kUsualBlade;
  const Sides sides{corner, reading.height, 0, 0};
  Observation row;
  row.id = reading.id;
  row.given = reading.given;
  row.place = reading.place;
  row.struck = reading.struck;
  row.value = reading.value.rad;
  row.worth.sd = reading.sd ? reading.sd->rad : kBladeError / blade;
  row.blade = blade;
  row.corner = corner;
  row.model = [=](View& view) { return angle_between(view, sides, blade); };
  model.observations.push_back(std::move(row));
}

void observe_across(RoomModel& model, const Across& across) {
  const int left = across.walls[0], back = left + 1, right = across.walls[1];
  require(right == left + 2, "a reading across goes over one wall");
  const Height height = across.height;
  const double out = across.out.mm;
  for (const Reading& reading : across.is) {
    const double left_board = board_at(model, left, height, reading.on);
    const double right_board = board_at(model, right, height, reading.on);
    const Observed how{worth(*model.survey, reading, Ends::inside_corner), back};
    observe(model, reading, how, [=](View& view) {
      const double z = view.z_of(height, back, view.room().walls[back].length / 2);
      const auto side = [&](int corner, int wall, double board) {
        const CornerSpot& spot = view.corner(corner, z);
        const Varied angle = view.unknown(view.model().angle[corner]);
        const Varied from = (wall == corner ? spot.left : spot.right) + Varied(out) / sine(angle);
        return view.point(wall, view.from_corner(corner, wall, from), z, board);
      };
      const VariedPoint a = side(left, left, left_board), b = side(back, right, right_board);
      return hypotenuse(a.x - b.x, a.y - b.y);
    });
  }
}

}  // namespace

void observe_corners(RoomModel& model) {
  for (const Corner& corner : model.survey->corners) {
    const int k = corner.walls[0];
    for (const Diagonal& diagonal : corner.diagonals) observe_diagonal(model, k, diagonal);
    for (const SquareReading& square : corner.squares) observe_square(model, k, square);
    for (const AngleReading& angle : corner.angles) observe_angle(model, k, angle);
  }
  for (const Across& across : model.survey->across) observe_across(model, across);
}

}  // namespace nook

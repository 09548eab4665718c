// Small designs and rooms made in code, placed as drawn.
#pragma once

#include <string>
#include <vector>

#include "base/length.h"
#include "design/design.h"
#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook::sample {

inline double in(double x) {
  return x * kMillimetresPerInch;
}
inline Polygon rectangle(double width, double height) {
  return {{0, 0}, {width, 0}, {width, height}, {0, height}};
}

/// A design to add pieces to.
struct Drawn {
  Design design;

  Drawn();
  /// A plywood piece of this thickness (mm); upright on the right wall unless placed otherwise.
  Part& piece(const std::string& name, Polygon outline, double thickness = in(23.0 / 32));
  /// The stock of that thickness; made where it is not there.
  int stock(double thickness);
};

/// Every piece where it is drawn, groups in file order, no gaps known.
FitAnswer as_drawn(const Design& design);

/// Flat, plumb walls: a square corner `length` mm both ways, with a ceiling so high (0 = none).
RoomShape square_room(double length, double ceiling);
/// An alcove of three walls, `deep` deep: `back` wide at its back, `front` wide at its front (mm),
/// both sides closing in alike. Its back wall's left corner is the origin of a frame with x along
/// it.
RoomShape alcove(double back, double front, double deep);

}  // namespace nook::sample

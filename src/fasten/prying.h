// How a pull away from what a piece lies on divides among its screws, prying counted.
#pragma once

#include <optional>
#include <vector>

#include "base/vector.h"
#include "solid/polygon.h"

namespace nook {

/// A pull square to a face, newtons, at a place of it, and the outline that bears on what is
/// behind. All places in the face's plane, mm.
struct PullAway {
  double newtons = 0;
  Vec2 at;
  Polygon bearing;
};

/// What the screws carry, and where the piece bears when it is pried.
struct Pried {
  std::vector<double> newtons;  // of each screw, none below 0
  std::optional<Vec2> bears_at;
};

/// Shares of a pull on screws at `at`: a stiff piece on equal springs that cannot go into what it
/// lies on.
/// 1. Screws and bearing are in balance with the pull; the bearing only presses, the screws only
///    hold back.
/// 2. Where no side presses, the shares are those of a stiff beam (load_share.h), both ways.
/// 3. Else the piece turns about the side or corner it bears on: R_i = P a d_i / sum d_j^2, a and
///    d_i the distances of the pull and of the screws from that side; together more than the pull.
/// 4. Empty where there is no screw, or no place of it is inside the bearing outline.
Pried pried(const std::vector<Vec2>& at, const PullAway& pull);

}  // namespace nook

// The row of screws in the overlap of two pieces: where they stand and what they keep clear of.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fasten/joint.h"
#include "fasten/spacing.h"

namespace nook {

/// Distance from one side of a piece along one direction of its plane.
struct SideScale {
  double origin = 0;
  int sign = 1;
  std::string side;  // "left", "right", "bottom", "top"

  double from(double x) const { return sign * (x - origin); }
  double at(double distance) const { return origin + sign * distance; }
};

/// One place of a row, in the coordinates of the meeting's plane.
struct RowPlace {
  Vec2 at;
  Stretch across;  // of the overlap there, square to the row
};

struct JointRow {
  bool along_x = true;  // the row runs along e1 of the plane, else along e2
  std::vector<RowPlace> places;
  double keep = 0;     // from the axis to the edges of the other piece's wood
  bool tight = false;  // nearer to edges or ends than the usual distances
};

/// How surely a screw laid out there keeps its distance from both edges.
double chance_of(const RowPlace& place, const JointRow& row);

/// The screws of a fastening, evenly spread, counted in steps from `along` and `across`. At the
/// usual distances where they surely fit; else one diameter from edges and 5 from ends
/// (chosen). None: not even that.
std::optional<JointRow> row_of(const Joining& joining);

/// Scales for a meeting by face: from the sides of the piece nearest to all that one fastening
/// joins to it; from the other one where the nearest is cut slanted, tapered or scribed, so that
/// nobody hooks a tape on it.
SideScale scale_of(const Joining& joining, bool along_u);

/// The part of an overlap that takes the screws.
const Region& largest_of(const Regions& regions);

}  // namespace nook

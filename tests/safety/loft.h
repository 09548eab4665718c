// Small designs for tests: pieces put together in inches, in a square corner that is known exactly.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "safety/safety.h"

namespace nook::test {

/// A design under construction. Everything is typed in inches; the corner is square, its walls flat
/// and plumb, the floor level; no draws until `draws` gets some.
class Loft {
 public:
  Loft();

  Loft& use(User by, double youngest, double oldest, Purpose purpose, double mattress = 0);
  /// A panel of any outline; `u` and `v` as in "+y".
  Part& panel(const std::string& name, Polygon outline, Vec3 at, const char* u, const char* v,
              double thickness = 0.75);
  Part& board(const std::string& name, double width, double height, Vec3 at, const char* u,
              const char* v, double thickness = 0.75);
  /// A round hole in a part, 64 sides drawn round the circle.
  static void bore(Part& part, const std::string& name, Vec2 centre, double diameter);
  void screw(const std::string& part, const std::string& to, double length = 3);

  /// In its drawn place, or as a fit says.
  SafetyAnswer answer(const FitAnswer* fit = nullptr) const;

  Survey survey;
  Design design;
  RoomShape room;
  std::vector<RoomShape> draws;
};

/// A deck 46 x 36 in the corner, its top at `top`, with barriers `guard` above it on both open
/// sides.
Loft platform(double top, double guard);
/// The platform with a ladder of rungs at these heights (tops), in a way up 17 wide at the right
/// wall.
Loft with_ladder(double top, const std::vector<double>& rung_tops, double thick = 1.25);
/// A bed 78 x 36 along the left wall, base `base` above the floor, rails that rise `rail` above the
/// mattress (6 thick) on every side.
Loft bed(double base, double rail);

/// The same design and room seen in a mirror: left and right change places.
Loft mirrored(const Loft& loft);

/// The first of that id, the worst one.
std::optional<Caution> find(const SafetyAnswer& answer, const std::string& id);
std::vector<Caution> all(const SafetyAnswer& answer, const std::string& id);
/// "danger", "caution", "note", or "" where there is none; the worst of that id.
std::string severity_of(const SafetyAnswer& answer, const std::string& id);

}  // namespace nook::test

// What the drawings of a job are made from, and a wall seen as one faces it.
#pragma once

#include <string>
#include <vector>

#include "design/piece.h"
#include "fasten/drill.h"
#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"
#include "sheet/answer.h"
#include "sheet/drawing.h"
#include "survey/report.h"

// A wall as one faces it: x to the right along its base line, y up, plumb. On the first wall of a
// corner `along` runs to the left, so its corner stands at the right-hand end:
//
//      left wall, faced            right wall, faced
//   ________________            ________________
//   |               | corner     |               |
//   |      <- along o            o along ->      |

namespace nook {

/// A job's answers as far as they are there; empty or null where they are not.
struct JobScene {
  const Survey& survey;
  const RoomShape& room;                // adjusted
  const std::vector<RoomShape>& draws;  // from what the readings leave open
  const RoomReport& report;
  const std::vector<Piece>& pieces;  // all pieces of the design
  const std::vector<Frame>& frames;  // where each stands
  const Design* design = nullptr;
  const FitAnswer* fit = nullptr;
  const DrillAnswer* drill = nullptr;
  Rounding rounding;
};

/// One wall as one faces it.
class FacedWall {
 public:
  FacedWall(const RoomShape& room, int wall);

  /// The page's point of base-line distance `a` and height z over the room's zero.
  Vec2 page(double a, double z) const { return {side_ * a, z}; }
  /// The same for `along` and `height` as they are read on site; heights count from the floor
  /// there.
  Vec2 page_from_reading(double along, double height, bool from_right = false) const;
  Vec2 page_from_reading(double along, const Height& height, bool from_right = false) const;
  /// The page's point of a point of the room, square to the wall's base line.
  Vec2 page_from_room(Vec3 p) const;
  /// +1 where `along` runs to the right, -1 where it runs to the left.
  double side() const { return side_; }
  /// The floor under base-line distance `a`.
  double floor_at(double a) const;
  /// Base-line distances of the wall's two ends at height z, nearer to `along` 0 first.
  Vec2 ends_at(double z) const;
  /// Where the wall ends above: the ceiling there, or `usual` where none was measured.
  double top_at(double a, double usual) const;
  bool has_ceiling() const { return room_.ceiling.has_value(); }
  const WallShape& wall() const { return room_.walls[index_]; }

 private:
  const RoomShape& room_;
  int index_;
  double side_;
};

/// The corners of a piece as it stands: those of its back, then those of its front.
std::vector<Vec3> solid_of(const Piece& piece, const Frame& frame);

/// The piece as the wall sees it: its outline with cutouts where it lies flat to the wall, else the
/// hull of its corners.
Region seen_on(const FacedWall& wall, const Piece& piece, const Frame& frame);

/// Whether a piece is fastened to, or has to meet, that wall.
bool touches_wall(const JobScene& scene, int piece, const std::string& wall);

/// 250 mm above the highest piece, or 2,400 mm: how high a wall is drawn without a ceiling. Chosen.
double usual_top(const JobScene& scene);

}  // namespace nook

// Pushes groups home in one concrete room.
#pragma once

#include <string>
#include <vector>

#include "fit/assembly.h"
#include "fit/guard.h"
#include "fit/obstacle_solid.h"
#include "fit/plan_program.h"
#include "fit/pulls.h"
#include "fit/separation.h"

namespace nook {

/// A spot of a piece that stands, feeling straight down.
struct FootSpot {
  int piece = 0;
  Feeler feeler;
};

/// Everything that stays the same from room to room once the joints are built.
struct Layout {
  const Scene& scene;
  const Site& site;
  Obstacles obstacles;
  int first_wall = 0;  // index of the left wall of the design's corner
  std::vector<Joint> joints;
  std::vector<Guard> guards;
  std::vector<Assembly> groups;             // in order
  std::vector<Parting> partings;            // between pieces of different groups
  std::vector<int> group_of;                // piece -> index into groups
  std::vector<std::vector<FootSpot>> feet;  // by group
  std::vector<Site::CornerSpots> laid_off;  // by group: the real corner it is measured from
  // By group: joints of its pieces and joints that meet one of them; guards; partings.
  std::vector<std::vector<int>> joints_at, guards_at, partings_at;
  std::vector<Pulls> pulls;  // by group
};

/// Where every group ended up in one room.
struct Placing {
  std::vector<Motion> start, placed;  // by group
  std::vector<Moves> moves;           // by group: from its start, as it was pushed home
  std::vector<StopsOnTheWay> stops;   // by group: what stopped it
  std::vector<Frame> frames;          // by piece
};

/// All groups in their order, each against those already in. `like`: how they went home in a room
/// that is much the same, where to look first.
Placing place_all(const Layout& layout, const SiteView& view, const Placing* like = nullptr);

/// The layout for pieces standing at `frames` in the adjusted room.
Layout layout_for(const Scene& scene, Site& site, int first_wall, const std::vector<Frame>& frames);

/// What a joint's parts stand like, for part_hit.
std::vector<Standing> standing_parts(const Layout& layout, const Joint& joint,
                                     const std::vector<Frame>& frames);

/// Whether one of two pieces meets the other by a contact.
bool share_joint(const Layout& layout, int a, int b);

}  // namespace nook

// A contact of one piece, with the feelers that look for its gap.
#pragma once

#include <vector>

#include "fit/ray.h"
#include "room/survey.h"

namespace nook {

/// A spot of an edge or a face where the gap is looked for.
struct JointSpot {
  Vec2 uv;
  double t = 0;          // length from the first point of the edge
  double along = 0;      // as GapPoint::at
  bool coarse = true;    // also looked at in every draw
  bool notched = false;  // cut away by the contact's notch
};

/// Whether a view asks it: a quick one only coarse spots.
inline bool asked(const JointSpot& spot, const SiteView& view) {
  return !spot.notched && (spot.coarse || !view.quick());
}

/// A stretch of an edge that a notch takes, in t; or on a face a box in u, v.
struct NotchZone {
  Stretch t;
  Box2 box;
  std::vector<int> blocks;  // of the wall
};

/// One contact of one piece. An edge has two feelers a spot: back, then front; a face has one. With
/// a notch they feel no blocks but its stops.
struct Joint {
  int contact = 0;  // index into Design::contacts
  int piece = 0;
  const Contact* how = nullptr;
  Surface meets;
  std::vector<int> parts;  // the pieces it meets, none of them its own
  bool face = false;
  bool can_meet = true;     // false: the piece lies along what it should meet, or:
  bool faces_away = false;  // it looks away from the wall, floor or ceiling
  std::vector<JointSpot> spots;
  std::vector<Feeler> feelers;
  std::vector<NotchZone> zones;
  std::vector<int> stops;     // blocks along the whole edge, at which a notched piece stops
  std::vector<Vec3> corners;  // no feeler lies outside these, in the piece's frame

  int faces() const { return face ? 1 : 2; }
};

/// Everything that is the same for all rooms.
struct Scene {
  const Survey& survey;
  const Design& design;
  const std::vector<Piece>& pieces;
  const std::vector<Body>& bodies;
};

/// The widest gap to a wall that a contact by clear asks of a piece, mm; 0 where none does.
double wanted_clear(const Scene& scene, int piece);

/// The joints of every contact, in file order and copies in order, for pieces standing at `frames`
/// in the adjusted room.
std::vector<Joint> joints_of(const Scene& scene, Site& site, const std::vector<Frame>& frames);

/// A feeler for a surface: its spot added, the blocks near it listed.
Feeler feeler_for(Site& site, Surface surface, const Frame& frame, Vec3 at, Vec3 way, bool coarse);

/// The piece is notched for all of the feeler's blocks but these.
void notch_blocks(Feeler& feeler, const std::vector<int>& stops);

/// Keeps for the draws which faces of parts are met in the adjusted room: pieces move little from
/// room to room, and a face is asked much faster than a body.
void keep_faces(Joint& joint, const Frame& frame, const std::vector<Standing>& parts);

/// The edges a contact speaks of. Requires: no face. And their points in the outline's order.
EdgeRun run_of(const EdgeChoice& edge, const Polygon& outline);
Polygon run_points(const EdgeRun& run, const Polygon& outline);

}  // namespace nook

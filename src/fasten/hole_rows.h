// Which places up a stud take the screws of one piece.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fasten/free_face.h"
#include "fasten/piece_ruler.h"
#include "fasten/said.h"
#include "fasten/services.h"
#include "fasten/stud_line.h"

namespace nook {

/// One piece to be screwed to one wall: what every hole of it shares. Holes are laid out to the
/// steps of `say`.
struct Hanging {
  const Piece& piece;
  const Fastening& fastening;
  const FaceOnWall& face;
  const PieceRuler& ruler;
  const FreeFace& free;
  const std::vector<ServiceZone>& services;
  const Design& design;
  Saying say;
  Distances distances;
  double wallboard = 0;
  double sure = .999;  // a hole less sure than this is to be probed first

  /// The same with other screws, which must outlive it.
  Hanging with(const Fastening& other) const {
    return {piece, other, face, ruler, free, services, design, say, distances, wallboard, sure};
  }
};

/// A place for a screw.
struct Seated {
  Vec2 uv;  // piece frame
  Vec2 at;  // wall: base-line distance, z
  double from_end = 0, from_edge = 0;
  double shim = 0, gap = 0, embedment = 0;  // gap: shim and wallboard
  double chance = 0;
  double edge_distance = 0;
  std::string caution;  // a service nearby
};

/// The screw's seat at a place of the face, without stud: gap and embedment.
Seated seat_at(const Hanging& hanging, double from_end, double from_edge);

/// Sd of laying out a hole, mm (chosen).
inline constexpr double kLayingOut = 1;
/// A hole is called sure from here on (chosen).
inline constexpr double kSureHit = 0.999;

struct StudHoles {
  std::vector<Seated> seats;             // from the top; fewer than asked where no more fit
  bool beside = false;                   // the stud passes beside the piece's free face
  std::optional<ServiceHit> blocked_by;  // a service that leaves no place
};
/// Up to `per_stud` places on the stud: one near the top, the last near the bottom, staggered as
/// far as every one of them stays sure; one alone in the middle.
StudHoles holes_on(const Hanging& hanging, const StudLine& stud);

/// Places of a level row in blocking, whose edges were found by nail (chosen: sd 1 mm).
StudHoles holes_in(const Hanging& hanging, Vec2 low, Vec2 high);

/// Up to `count` of the sorted places, evenly spread between first and last, at least `apart`; one
/// alone stands in the middle.
std::vector<double> spread_over(const std::vector<double>& places, int count, double apart);

}  // namespace nook

// Pipes, boxes and the cables that run from them: where a screw may not go, or not deep.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "fasten/stud_line.h"

namespace nook {

/// A stretch of wall in base-line coordinates that holds, or may hold, a service.
struct ServiceZone {
  Vec2 low, high;
  bool deep_only = false;  // a shallow screw in the stud stays allowed, with a caution
  std::string what;        // "the pipe", "the cable of the outlet"
};

/// Deeper than this in a stud a screw may reach a cable or pipe: 1-1/4 in (NEC 300.4(A)(1), (D);
/// pipes: IRC P2603.2.1, from memory).
inline constexpr double kServiceDepth = 31.75;

/// Beside a corner or the ceiling a cable may run unmarked in a zone this wide, mm (BS 7671
/// 522.6.202).
inline constexpr double kCableZone = 150;

/// What is known of one wall: things inside it, boxes, and the usual runs of their cables: straight
/// up and down beside the stud that carries the box, and level from box to box, round a corner too
/// (common practice, no source).
std::vector<ServiceZone> services_on(const Survey& survey, const RoomShape& room, int wall,
                                     const WallStuds& studs);

struct ServiceHit {
  bool forbidden = false;
  bool shallow_allowed = false;  // a screw no deeper than kServiceDepth may still go in
  std::string caution;           // what lies there
};
/// For a screw at `at` (base-line coordinates) that goes `embedment` into the stud; none: clear.
std::optional<ServiceHit> service_at(const std::vector<ServiceZone>& zones, Vec2 at,
                                     double embedment);

/// Boxes that no stud found or inferred carries: an unfound stud, or a cable without one.
std::vector<std::string> boxes_without_stud(const Survey& survey, const RoomShape& room, int wall,
                                            const WallStuds& studs);

}  // namespace nook

// What the adjustment found, as a report that text and JSON are rendered from later.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/measured.h"
#include "base/verdict.h"

namespace nook {

/// One reading after the adjustment. Signs: residual = adjusted less given.
struct ReadingReport {
  std::string id, given;
  double value_mm = 0, sd_mm = 0;  // sd with the tape's share
  double adjusted_mm = 0, adjusted_sd_mm = 0;
  double residual_mm = 0;
  double redundancy = 0;
  std::optional<double> w;  // none where redundancy < 1e-6
  std::optional<double> smallest_slip_mm;
  bool struck = false;
  int line = 0;
  std::optional<double> blade_mm;  // of an angle reading: its figures are mm at the blade's end
  int wall = -1, corner = -1;      // whose it is, or neither
};

/// Something that the readings do not say. `blocks`: no figure of the room stands without it.
struct Missing {
  std::string what;  // "nothing says how the right wall stands: take ..."
  bool blocks = true;
};

/// Readings of which one is probably a slip. More than one id: they cannot be told apart, unless
/// they are one reading and its repeats.
struct Suspect {
  std::vector<std::string> ids;
  std::string reason;
  double likely_mm = 0;
  double odds = 0;
  bool repeats = false;  // one reading, taken more than once
};

/// A reading to take, in words and as numbers: mm, `at` from the real corner on the corner's first
/// wall or on the wall, `to` on its second wall or where a straightedge ends, `up` above the floor
/// (of a level or plumb line its lower end, `to` its upper one).
struct NextReading {
  enum class Kind { other, diagonal, level, straightedge, length, drop, span, plumb, string };
  std::string reading;  // what to take, in words
  double gain = 0;      // share of variance removed
  Kind kind = Kind::other;
  int of = 0;  // the corner or the wall
  double at_mm = 0, to_mm = 0, up_mm = 0;
  bool from_right = false;  // a wall between two corners: `at` counts from its right one
};

struct CornerReport {
  std::string walls[2];
  Measured angle_deg;
};
struct StudReport {
  enum class Found { edges, centre, inferred };
  double centre_mm = 0, sd_mm = 0;  // along, from the real corner at height z_mm
  Found found = Found::centre;
  double height_mm = 0;
};
struct WallReport {
  std::string name;
  std::optional<Measured> length_mm;
  Measured lean_mm_per_m;
  double hump_mm = 0;             // largest stray from flat, signed, of the adjusted field
  std::vector<StudReport> studs;  // filled by fasten/
};

struct RoomReport {
  std::vector<CornerReport> corners;
  std::vector<WallReport> walls;
  double flatness_sd_mm = 0, flatness_reach_mm = 0;
  bool flatness_from_file = false;
  std::vector<ReadingReport> readings;       // in file order
  std::map<std::string, std::string> names;  // of readings by id, in words
  std::vector<Suspect> suspects;             // best first
  std::vector<std::string> uncheckable;      // ids with redundancy below 0.1
  std::vector<NextReading> measure_next;     // filled where the room itself is told
  std::vector<Missing> missing;
  std::vector<std::string> facts;  // that stand beside the numbers and do not agree with them
  double chi2 = 0, chi2_limit = 0;
  int dof = 0;
};

/// `cannot_tell` while a reading is suspect or something is missing, else `fits`.
Verdict room_verdict(const RoomReport& report);

}  // namespace nook

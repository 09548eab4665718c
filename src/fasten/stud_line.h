// The studs of one wall as lines up the wall, found and inferred.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "fasten/stud_belief.h"
#include "fasten/stud_pattern.h"
#include "fasten/wall_frame.h"
#include "survey/report.h"

namespace nook {

/// One stud, or a block of doubled ones, in base-line coordinates.
struct StudLine {
  explicit StudLine(StudBelief where) : belief(std::move(where)) {}

  StudBelief belief;
  StudReport::Found found = StudReport::Found::inferred;
  bool by_nail = false;  // both edges, by nail
  double z = 0;          // where it was found
  double tape_sd = 0;    // share of the tape in its place, mm
  bool on_pattern = true;
  bool leans = false;            // found at two heights
  std::vector<std::string> ids;  // of its readings

  double centre(double at_z) const { return belief.centre(at_z); }
};

/// The studs of one wall from its start on, and the pattern they follow.
struct WallStuds {
  std::vector<StudLine> lines;
  std::optional<StudPattern> pattern;
};

/// `corner_lean_sd`: sd of the corner's own lean (mm per mm) where heights differ; 0 = known.
WallStuds studs_on(const Survey& survey, const RoomShape& room, int wall, double corner_lean_sd);

/// Sd over the draws of the lean of the corner that `wall` counts from, mm per mm.
double corner_lean_sd(const std::vector<RoomShape>& draws, int wall);

/// As the room's answer lists them: one entry a ply.
std::vector<StudReport> reports_of(const WallStuds& studs, const WallFrame& frame);

}  // namespace nook

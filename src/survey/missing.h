// What the readings do not say, in words, with what to take.
#pragma once

#include "room/survey.h"
#include "survey/report.h"
#include "survey/solution.h"

namespace nook {

/// Unknowns that no reading determines, leans that are hardly better known than before, readings
/// that the room does not settle to. `sound`: the solution without the suspected readings; what is
/// so only in the shape that a slip bends the room into is not missing.
std::vector<Missing> missing(const RoomModel& model, const Solution& solution,
                             const Solution& sound);

/// What `missing` looks for in corners and walls, each over a tolerance (chosen) well within which
/// it is no longer missed: angles, lengths between corners, leans.
std::vector<Functional> never_missed(const RoomModel& model);

/// What stands or hangs by height wants three readings from the level line at least: down to the
/// floor, or up to the ceiling. Nothing where there are as many, or nothing stands or hangs.
struct HeightsWanted {
  bool floor = false, ceiling = false;
  bool headroom = false;  // something is tipped up under the ceiling: one reading is enough
};
std::vector<Missing> missing_heights(const Survey& survey, HeightsWanted wanted);
/// How many readings down to the floor are still missed so.
int missing_drops(const Survey& survey, HeightsWanted wanted);
/// How many up to the ceiling, what is tipped up under it counted too.
int missing_rises(const Survey& survey, HeightsWanted wanted);

/// A wall leans N(0, kLeanPrior^2) before anything is read, mm per mm. Chosen.
inline constexpr double kLeanPrior = 0.01;

/// Whether the readings say how far a wall leans; false where they hardly narrow what walls do.
bool lean_known(const WallReport& wall);

/// Whether the room's figures stand.
bool nothing_blocks(const RoomReport& report);

}  // namespace nook

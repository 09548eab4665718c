// Fills the report of an adjustment: each reading with its statistics, corners, walls, chi-squared.
#pragma once

#include "survey/report.h"
#include "survey/solution.h"

namespace nook {

/// Alpha of the global test and of the test of each reading; power of the least detectable slip
/// (Baarda 1968, A Testing Procedure for Use in Geodetic Networks).
inline constexpr double kAlpha = 0.001;
inline constexpr double kPower = 0.80;
/// Below it a reading is not checked by the others.
inline constexpr double kUncheckable = 0.1;
/// Below it nothing at all checks a reading: no w, no smallest slip.
inline constexpr double kNotChecked = 1e-6;

/// 4.13: the slip found with that power, over sigma / sqrt r.
double noncentrality();
/// 3.29: the limit of |w|.
double w_limit();
/// The same where what a reading is worth were not known and the readings' own scatter had to say:
/// Pope's tau (1976) times sqrt(chi2 / dof). None with fewer than 5 readings to spare, where tau
/// tells nothing.
std::optional<double> w_limit_by_scatter(const RoomReport& report);

/// Everything but suspects, missing and what to measure next.
RoomReport room_report(const RoomModel& model, const Solution& solution, const RoomShape& room);

}  // namespace nook

// The limits that cautions compare with: one table, each with its value, its source, how it is
// known.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/notation.h"

namespace nook {

/// How a figure came to be here.
enum class Known { read, partly_from_memory, from_memory, no_source, chosen };
/// "read", "from memory", "common practice, no source", ...
std::string_view words(Known known);

enum class LimitUnit { inch, millimeter, degree, pound, psf, kg, year, percent };

struct Limit {
  std::string_view id;  // kebab-case, permanent
  double value;         // in `unit`, as published
  LimitUnit unit;
  std::string_view says;    // what it limits
  std::string_view source;  // document and section
  Known known;
};

/// Every limit, in the order of the table.
enum class Of {
  head_small,
  head_large,
  probe_depth,
  neck_angle,
  neck_width,
  finger_small,
  finger_large,
  limb_small,
  limb_large,
  toddler_end,
  preschool_end,
  school_end,
  guardrail_platform,
  barrier_platform,
  barrier_platform_toddler,
  barrier_toddler,
  barrier_preschool,
  barrier_school,
  guard_drop,
  guard_height,
  guard_sphere,
  bed_base,
  bed_rail,
  bed_wall_gap,
  bed_end_gap,
  bunk_age,
  bed_barrier_mm,
  bed_entry_small,
  bed_entry_large,
  bed_wall_small,
  bed_wall_large,
  bed_tread,
  rung_thin,
  rung_thick,
  tread_flat,
  rung_apart,
  rung_even,
  toe_room,
  work_rung_low,
  work_rung_high,
  room_load,
  sleep_load,
  guard_load,
  step_load,
  man,
  boy_of_ten,
  boy_age,
  tip_height,
  tip_weight,
  one_person,
  stud_cable,
  cable_depth,
  cable_zone,
  deck_width,
  deck_room,
  handhold,
  sitting_room,
  standing_room,
  window_reach,
  heater_reach,
  paint_lead
};

/// The row of the table. Never fails.
const Limit& limit(Of which);
/// All of them, in the order of `Of`.
std::span<const Limit> limits();

/// A length's value in millimeters. Requires: a limit in inches or millimeters.
double mm(Of which);
/// A weight's value in newtons, or newtons for each square metre. Requires: pounds, psf or kg.
double newtons(Of which);

/// "3.5 in", "55 degrees": as the document prints it.
std::string published(const Limit& limit);
/// As the job says it, with the published figure behind it where that is not the same:
/// `3 1/2"`, `7/32" (0.22 in)`, `2 15/16" (75 mm)`, `38 mm (1.5 in)`.
std::string published(const Limit& limit, Rounding rounding);
/// "CPSC 325, B.2.5.1", and how it is known where it was not read.
std::string cited(const Limit& limit);

}  // namespace nook

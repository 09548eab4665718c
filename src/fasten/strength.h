// What a fastening carries against what it is asked to.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/design.h"
#include "fasten/drill.h"
#include "fasten/nds.h"
#include "fasten/said.h"

namespace nook {

/// Where no screw stands clear of what the piece would turn about.
inline constexpr const char* kNoHold = "no screw stands where it could hold the pull";

/// One screw as it sits and what it carries, newtons.
struct LoadedScrew {
  std::string id;
  double gap = 0, embedment = 0;  // mm
  double sideways = 0, pull = 0;  // pull: out of the wood that holds the thread
};

/// One fastening as it hangs.
struct Loaded {
  const Fastening& fastening;
  std::string part, to;
  std::optional<double> load, pull;  // as stated, N
  double side_length = 0;            // of the piece on the shank, mm
  double main_gravity = .42, side_gravity = .42;
  double main_angle = 0, side_angle = 0;  // load to grain, degrees
  double wood_depth = 1e9;                // of what holds the thread, mm
  bool end_grain = false;                 // the thread sits in end grain
  std::string no_figure{};                // why there is none, where that is known already
  std::string no_figure_advice{};         // and what to do about it
  std::vector<LoadedScrew> screws{};
};

/// The worst screw decides. Without a stated load the capacity is that of one screw times their
/// number, and `load_n`, `ratio` stay empty.
Strength strength_of(const Loaded& loaded, const Saying& say);

/// Puts first among its advice what the worst screw carries and may carry, and a cure that was
/// tried.
void relieve(Strength& over, const std::string& cure, const Saying& say);

/// Up to this ratio a rated screw in place of each may do. Chosen.
inline constexpr double kRatedMayDo = 2;

/// Specific gravity where nothing is stated: spruce-pine-fir (NDS 2018 table 12.3.3A).
inline constexpr double kUsualGravity = .42;

}  // namespace nook

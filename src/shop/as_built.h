// Openings measured mid-job, joined with the room: what is up tells where the walls are.
#pragma once

#include <string>
#include <vector>

#include "fit/fit_answer.h"
#include "room/shape.h"
#include "room/survey.h"

namespace nook {

/// How far a part that is up may stand off where a fit puts it, mm. Chosen: 1/32 in.
inline constexpr double kStandsOff = 0.79375;

/// One opening: as read, and as the room with its pieces foretells it.
struct OpeningRead {
  std::string id;       // "installed[0].openings[1]"
  double read = 0;      // mm; the mean of its repeats
  double sd = 0;        // of the reading, and of where the parts at its ends stand
  double adjusted = 0;  // in the adjusted room
  std::vector<double> drawn;
  std::string name = {};  // "opening between deck and left wall (line 12)"

  double foretold_sd() const;
  /// Reading less foretold, over its standard deviation.
  double w() const;
};

/// The openings of a survey's [[installed]] that are between pieces of the fit, or one and a wall;
/// those struck, and those whose parts are not in the design, are left out.
std::vector<OpeningRead> openings_read(const Survey& survey, const FitAnswer& fit,
                                       const RoomShape& room, const std::vector<RoomShape>& draws);

/// A room and draws of it.
struct RoomDrawn {
  RoomShape room;
  std::vector<RoomShape> draws;
};

/// The room given the openings too: each in turn moves every number of the room, and of every draw,
/// in proportion to its covariance with the opening over the draws (the square-root filter of
/// Whitaker and Hamill 2002, Monthly Weather Review 130; from memory). The draws stay draws of the
/// joint posterior; without openings nothing changes.
RoomDrawn as_built(const RoomShape& room, const std::vector<RoomShape>& draws,
                   std::vector<OpeningRead> openings);

}  // namespace nook

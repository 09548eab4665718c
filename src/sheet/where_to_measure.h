// Sketches of where to hold tape, level and straightedge for readings still to be taken.
#pragma once

#include <vector>

#include "room/survey.h"
#include "sheet/draft.h"
#include "survey/report.h"

namespace nook {

/// A reading to take and its number in the list it stands in.
struct NumberedReading {
  int number = 0;
  NextReading reading;
};

/// The levels and straightedges of one wall on that wall as one faces it, in true proportion, their
/// distances running from the corner. The left wall's corner stands at the right-hand end.
Drawing where_on_wall(const Survey& survey, int wall, const std::vector<NumberedReading>& readings,
                      const Canvas& canvas, const Rounding& rounding);
/// The diagonals of one corner from above, in a corner drawn square.
Drawing where_in_corner(const Survey& survey, int corner,
                        const std::vector<NumberedReading>& readings, const Canvas& canvas,
                        const Rounding& rounding);

/// Those of the readings that such a picture shows.
std::vector<NumberedReading> on_wall(const std::vector<NextReading>& readings, int wall);
std::vector<NumberedReading> in_corner(const std::vector<NextReading>& readings, int corner);

}  // namespace nook

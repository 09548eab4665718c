// Edges that must stay covered, and ends that show without having been asked for.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// Each `[[covered]]` edge seen square on against the piece it is behind, cutouts taken out: the
/// least width of cover to either side of the edge.
std::vector<CoveredFit> find_covered(const Trials& trials, double sure, Holds& all_hold);

/// The margin of one such edge with the pieces at other frames.
double cover_margin(const Trials& trials, int covered, int piece, int behind,
                    const std::vector<Frame>& frames);

/// Ends of pieces that show in a cutout of a piece in front of them, edges that come to stand out
/// past the edge they were drawn behind, and cutouts that are no longer in the middle.
std::vector<ShowFit> find_shows(const Trials& trials, const std::vector<ContactFit>& contacts);

}  // namespace nook

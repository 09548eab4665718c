// Edits that change where a piece is drawn, its outline, or how it meets something.
#pragma once

#include <string>
#include <vector>

#include "adapt/revision.h"

namespace nook {

/// The outline with a run of edges shifted outward: by `first_mm` at the run's first point, by
/// `last_mm` at its last, straight between. Negative: inward.
Polygon shifted(const Polygon& outline, const EdgeRun& run, double first_mm, double last_mm);

/// A part's outline with a run of edges set out by `ends` at its two ends; where the part is to
/// stay symmetric, the run across from it too.
Polygon set_out(const Part& part, const EdgeRun& run, Vec2 ends);

/// Gives a part a new outline of as many points; what lies on the piece (cutouts, loads) and the
/// piece itself stay where they are in the room, although u and v count from the new lower left
/// corner.
std::vector<Edit> reshape(const Design& design, int part, const Polygon& outline);

/// Moves one part by `by`, in the nominal room frame.
std::vector<Edit> move_part(const Design& design, int part, Vec3 by);

/// Makes a part that stands upright longer at its foot; it stands where it stood, so that what lies
/// on it is that much higher. Nothing where no side of it looks down.
std::vector<Edit> longer_below(const Design& design, int part, double mm);
/// How far an upright part reaches from its foot to its highest point.
double height_of(const Part& part);

/// Sets the copies of a repeated part `mm` apart, straight up.
std::vector<Edit> respace(const Design& design, int part, double mm);

/// Moves all parts of a group by `by`, in the nominal room frame.
std::vector<Edit> move_group(const Design& design, const std::string& group, Vec3 by);

/// Lets a contact meet in another way; with `trim` also by which width of cover.
std::vector<Edit> refit(const Design& design, int contact, Fitting by, bool notch);

/// "butt", "notch and scribe": how a contact meets.
std::string fitting_words(Fitting by, bool notch);

/// The width of cover trim that adapt may put on: 3/4 in, or 19 mm (1.9 cm) where the design is
/// metric (chosen; covers a gap of 1/2 in).
Length cover_width(Unit unit);

}  // namespace nook

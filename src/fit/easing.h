// How far a piece comes away from what it overlaps once its other edges are scribed.
#pragma once

#include <string>

#include "fit/trials.h"

namespace nook {

/// How far a piece moves along `way` (unit, room frame) in one room when the edges that the design
/// scribes on that side are cut to their lines, mm; 0 where none is. A piece stands on the highest
/// spot of the floor, say, until its bottom is scribed: then it comes down by the widest gap there.
double eased_along(const Trials& trials, int room, int piece, Vec3 way);
/// The edge that lets it, as "bottom edge at the floor", in the adjusted room; empty where none
/// does.
std::string easing_edge(const Trials& trials, int piece, Vec3 way);

}  // namespace nook

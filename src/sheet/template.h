// What of a piece is worth a full-size template: notches, cutouts, scribe lines.
#pragma once

#include <vector>

#include "base/notation.h"
#include "sheet/drawing.h"
#include "sheet/piece_view.h"

namespace nook {

/// One full-size drawing (scale 1) for each notch, cutout and scribe line of the piece, seen from
/// its front, with 25 mm of the outline round it and how far it lies from two edges.
std::vector<Drawing> templates_of(const PieceView& piece, const Rounding& rounding);

}  // namespace nook

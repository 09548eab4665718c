// One piece by itself, with dimensions a tape can follow.
#pragma once

#include "sheet/draft.h"
#include "sheet/piece_view.h"

namespace nook {

/// The piece seen from its front: outline, wild edges hatched, cutouts and holes, TOP and LEFT, its
/// show face; across from the left edge and up from the bottom edge (from the right or the top
/// where those are left wild or out of square), running from one start.
Drawing piece_drawing(const PieceView& piece, const Canvas& canvas, const Rounding& rounding);

/// The same without dimensions, low enough to stand beside a table that has them.
Drawing piece_picture(const PieceView& piece, const Canvas& canvas, const Rounding& rounding);

/// The gaps along its edges, drawn large by the printed factor outside the outline they belong to.
Drawing gap_drawing(const PieceView& piece, const Canvas& canvas, const Rounding& rounding);

/// The outlines alone in real millimeters, as for DXF: layers "outline", "blank", "cutouts",
/// "holes".
Drawing outline_drawing(const PieceView& piece);

}  // namespace nook

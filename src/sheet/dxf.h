// Drawings as DXF R12, for those with a router table.
#pragma once

#include <string>

#include "sheet/drawing.h"

namespace nook {

/// One drawing in real millimeters (DXF R12, version AC1009: the oldest, which everything reads).
/// Coordinates are written to 1e-9 mm; each layer keeps its name, in capitals.
std::string dxf(const Drawing& drawing);

}  // namespace nook

// Which way the grain of a piece runs, and whether its wood moves across it.
#pragma once

#include "design/design.h"

namespace nook {

/// Whether a stock is solid wood, which swells and shrinks across its grain: lumber, and boards
/// whose kind does not say that they are made of chips or fibers.
bool solid_wood(const Stock& stock);

/// Whether the grain of a part runs along its v: lumber runs along u, boards along their longer
/// side (common practice, no source).
bool grain_along_v(const Part& part, const Stock& stock);

}  // namespace nook

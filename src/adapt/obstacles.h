// What stands out of a wall where an edge meets it.
#pragma once

#include "adapt/candidate.h"

namespace nook {

/// Whether a baseboard or an obstacle of the wall that a contact meets comes as high as the piece:
/// a notch may be needed there.
bool meets_obstacle(const Workbench& bench, const ContactFit& contact);

}  // namespace nook

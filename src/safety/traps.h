// Openings, slots and gaps that catch a head, a neck, an arm or a finger.
#pragma once

#include "safety/cautions.h"
#include "safety/look.h"

namespace nook::safe {

/// Openings that let a body through and not a head.
void head_traps(const Scene& scene, const std::vector<Look>& looks, Cautions& cautions);
/// V shapes and slots that a neck slips into and stays.
void neck_traps(const Scene& scene, const std::vector<Look>& looks, Cautions& cautions);
/// Gaps as wide as a finger or a limb, those that get closed left out.
void finger_gaps(const Scene& scene, const std::vector<Look>& looks, Cautions& cautions);

}  // namespace nook::safe

// Contacts judged: gaps over the whole edge, room by room, and what closes them.
#pragma once

#include "fit/fit_answer.h"
#include "fit/trials.h"

namespace nook {

/// One entry for each joint, in their order; `all_hold` is joined with what each of them holds.
std::vector<ContactFit> find_contacts(const Trials& trials, double sure, Holds& all_hold);

}  // namespace nook

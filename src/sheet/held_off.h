// What holds a piece off the wall that its edge has to meet.
#pragma once

#include <string>

#include "sheet/contact_gap.h"

namespace nook {

/// "the left wall pipe holds it off: notch it there, or end it short of that"; where only another
/// edge of its group touches, that this holds its group off; empty where nothing does, or the
/// contact has a notch.
std::string held_off_words(const ContactWords& words);

}  // namespace nook

// How an answer is to be written, from the options of the command line.
#pragma once

#include "command/request.h"
#include "room/survey.h"
#include "sheet/answer.h"

namespace nook {

/// The style that the options ask for; units left out are those of the room, which speaks in that
/// style from then on. Throws UsageFault.
Style style_of(const Request& request, Survey& survey);

/// A length of the command line; a bare number is in `unit`. Throws UsageFault naming `option`.
Length length_given(const std::string& option, const std::string& text, Unit unit);

}  // namespace nook

// The check as a JSON answer, and answers as JSON text for those who do not see the library.
#pragma once

#include <optional>
#include <string>

#include "sheet/check_text.h"

namespace nook {

/// The opening and {room, fit, drill, carry, safety}, each an answer of its own; `verify` too where
/// pieces are cut.
std::string check_json(const CheckAnswer& check, const std::string& job);

/// The answer `room` as text, with `expect` where something was foretold.
std::string room_json_text(const RoomReport& room, const std::optional<Foretold>& expect,
                           const std::string& job);
std::string fit_json_text(const FitAnswer& fit, const std::string& job);
std::string drill_json_text(const DrillAnswer& drill, const std::string& job);

}  // namespace nook

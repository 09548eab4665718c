// Pieces as cut as a JSON answer.
#pragma once

#include <string>

#include "sheet/answer.h"
#include "shop/verify.h"

namespace nook {

/// The answer `verify`; millimeters, not rounded. Texts and spoils are in the job's units.
Json verify_json(const VerifyAnswer& verify, const std::string& job);
/// The same as text, for those who do not see the library.
std::string verify_json_text(const VerifyAnswer& verify, const std::string& job);

}  // namespace nook

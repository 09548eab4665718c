// Pieces as cut, in the words of the trade: what is wrong and how to save it.
#pragma once

#include <string>
#include <vector>

#include "sheet/answer.h"
#include "shop/verify.h"

namespace nook {

/// One fault: "still as wide as the sheet: 48", wanted 44 1/4"".
std::string told(const CutFault& fault, Rounding rounding);

/// What a remedy spoils: "porthole comes 3 3/4" nearer to the left edge".
std::string told(const Spoil& spoil, Rounding rounding);

/// One finding a piece, worst first.
std::vector<Finding> verify_findings(const VerifyAnswer& verify, const Style& style);

/// The page that `nookfit verify` prints. 80 columns.
std::string verify_text(const VerifyAnswer& verify, const Style& style);

}  // namespace nook

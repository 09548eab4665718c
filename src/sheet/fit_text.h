// The fit in the words of the trade: what is wrong, by how much, and what to do next.
#pragma once

#include <string>
#include <vector>

#include "fit/fit_answer.h"
#include "sheet/answer.h"

namespace nook {

/// Everything worth saying about a fit, worst first.
std::vector<Finding> fit_findings(const FitAnswer& fit, const Style& style);

/// The page that `nookfit fit` prints: verdict, findings, notches, how each piece goes in. 80
/// columns.
std::string fit_text(const FitAnswer& fit, const Style& style);

}  // namespace nook

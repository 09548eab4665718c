// One contact in the words of the trade.
#pragma once

#include "fit/fit_answer.h"
#include "sheet/answer.h"

namespace nook {

/// What the contact's gap is and what to do about it. `known` false: the room lacks readings.
Finding contact_finding(const FitAnswer& fit, const ContactFit& contact, const Style& style);

}  // namespace nook

// Everything on one page, worst first: the page that `nookfit check` prints.
#pragma once

#include <optional>
#include <string>

#include "fasten/drill.h"
#include "fit/fit_answer.h"
#include "safety/safety.h"
#include "sheet/answer.h"
#include "sheet/foretold.h"
#include "shop/carry.h"
#include "shop/verify.h"
#include "survey/report.h"

namespace nook {

/// The answers that a check joins. `proof`: the tape that has to come out right before cutting.
struct CheckAnswer {
  std::string title;  // of the design
  RoomReport room;
  FitAnswer fit;
  DrillAnswer drill;
  Foretold proof;
  CarryAnswer carry{};
  SafetyAnswer safety{};
  std::optional<VerifyAnswer> verify{};  // of what is cut already, if anything is
};

/// The worst of its answers' verdicts.
Verdict check_verdict(const CheckAnswer& check);

/// The page: verdict, what does not fit, what cannot be told, what fits, notches, holes, the one
/// measurement before cutting, two lines of caution. 80 columns.
std::string check_text(const CheckAnswer& check, const Style& style);

}  // namespace nook

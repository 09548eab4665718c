// The slips of the survey, tried on the size as the file's units say it.
#include "shop/cut_slips.h"

#include <cmath>

#include "survey/slips.h"

namespace nook {
namespace {

using Kind = CutFault::Kind;

constexpr double kMisread = 19.05;  // mm, 3/4 in: by less a saw goes wrong as easily. Chosen
constexpr double kAgrees = 3.175;   // mm, 1/8 in: so near the others a reading is theirs. Chosen

// Told by one reading: sizes at both ends of a panel that are off alike are off.
bool may_be_slip(const CutFault& fault) {
  switch (fault.kind) {
    case Kind::too_large:
    case Kind::too_small:
      return fault.lengthwise || !fault.where.empty();
    case Kind::notch_too_small:
    case Kind::notch_too_large:
    case Kind::disagree:
      return true;
    default:
      return false;
  }
}

bool accepted(const CutFault& fault, double off) {
  if (fault.kind == Kind::disagree) return std::abs(off) < kAgrees;
  return fault.accepted && off >= fault.accepted->least && off <= fault.accepted->most;
}

}  // namespace

std::string likely_slip(const VerifyInput& input, const CutFault& fault) {
  if (!may_be_slip(fault) || std::abs(fault.off.value) < kMisread) return {};
  Observation reading;
  reading.value = fault.measured_mm;
  reading.given = with_unit(millimetres(fault.measured_mm), usual_rounding(input.cut.units));
  Slip best;
  for (const Slip& slip : slips(input.survey, reading))
    if (accepted(fault, slip.meant - fault.wanted_mm) && slip.rate > best.rate) best = slip;
  return best.words;
}

}  // namespace nook

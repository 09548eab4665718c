// The three verdicts, never two, and how several make one.
#pragma once

#include <algorithm>
#include <string_view>

namespace nook {

enum class Verdict { fits, cannot_tell, does_not_fit };

constexpr Verdict worse(Verdict a, Verdict b) {
  return std::max(a, b);
}
/// "fits", "cannot tell", "does not fit": the words of the JSON answers.
constexpr std::string_view words(Verdict verdict) {
  return verdict == Verdict::fits          ? "fits"
         : verdict == Verdict::cannot_tell ? "cannot tell"
                                           : "does not fit";
}
/// The verdict for a chance that it fits: `fits` at chance >= sure, `does not fit` at <= 1 - sure.
constexpr Verdict verdict_of(double chance, double sure) {
  return chance >= sure       ? Verdict::fits
         : chance <= 1 - sure ? Verdict::does_not_fit
                              : Verdict::cannot_tell;
}

}  // namespace nook

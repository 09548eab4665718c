// Who uses the design and for what, as far as the file says.
#pragma once

#include "design/design.h"

namespace nook::safe {

struct Audience {
  bool stated = false;              // the file says who
  bool children = true;             // they may be there: unless only adults are
  bool ages = false;                // their ages are stated
  double youngest = 0, oldest = 0;  // years, where stated
  // Of those ages; a child of the age where two groups meet is in both.
  bool toddlers = false, preschool = false, school = false;
  std::optional<Purpose> purpose;
  double mattress = 0;  // mm
  bool mattress_stated = false;

  bool sleeps() const { return purpose == Purpose::sleep; }
  /// Something to be climbed on: for play, for sleep, or nothing says.
  bool climbed() const { return !purpose || purpose == Purpose::play || sleeps(); }
  /// Under 2 years, or of an age that nothing states.
  bool maybe_toddlers() const { return toddlers || (children && !ages); }
};
/// As [use] says; without `by` children too.
Audience audience_of(const Use& use);

}  // namespace nook::safe

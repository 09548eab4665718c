// What `adapt` did to a design and what it could not do, as plain values.
#pragma once

#include <string>

namespace nook {

/// One change of the design, in the words of the trade; before and after in the job's units.
struct Change {
  std::string part, kind, why, before, after;
};

/// A wish of the design that nothing allowed fulfils, and the wish that stands against it: the one
/// that is missed by least where `kind` of work on `part` fulfils the first. `against` is empty
/// where no work that may be done here fulfils it.
struct Contradiction {
  std::string wish, against;
  double by_mm = 0;  // by how much the second is missed (alone: the wish itself); 0: no figure
  std::string kind, part;
};

}  // namespace nook

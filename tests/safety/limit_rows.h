// For each limit a design just inside and one just outside it.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "loft.h"

namespace nook::test {

/// `make(inside)` keeps the limit; `make(outside)` has a caution `id` of that severity. Lengths in
/// the unit of the limit.
struct LimitRow {
  Of limit;
  std::string id, severity;
  double inside, outside;
  std::function<Loft(double)> make;
};

std::vector<LimitRow> opening_rows();
std::vector<LimitRow> guard_rows();
std::vector<LimitRow> bed_rows();
std::vector<LimitRow> ladder_rows();
std::vector<LimitRow> load_rows();
std::vector<LimitRow> room_rows();

/// A sheet standing free, 48 x 60, its lower edge on the floor; for play, ages 6 to 8.
Loft sheet();
/// The same with a square or rectangular hole, its corner 16 over and 30 up.
Loft pierced(double width, double height);
/// The same with a V cut into its top, 20 wide above.
Loft cut_v(double degrees);
/// The same with a slot `width` wide and 12 deep cut down from its top.
Loft slotted(double width);

}  // namespace nook::test

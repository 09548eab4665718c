// High beds: 16 CFR 1213 and 1513, EN 747-1.
#include "limit_rows.h"

namespace nook::test {
namespace {

constexpr double kIn = kMillimetresPerInch;

Loft without_rails(double base) {
  Loft loft = bed(base, 7);
  loft.design.parts.resize(1);
  return loft;
}

// The rail of the wall side in two lengths with a gap between.
Loft parted_wall_rail(double gap) {
  Loft loft = bed(50, 7);
  Part& rail = loft.design.parts[1];
  for (Vec2& p : rail.outline) p.x = std::min(p.x, 40 * kIn);
  loft.board("other wall rail", 39.5 - gap, 13.75, {39.5 - gap, 0, 50}, "-x", "+z");
  return loft;
}

// The front rail ends this far from the foot.
Loft short_rail(double gap) {
  Loft loft = bed(50, 7);
  for (Vec2& p : loft.design.parts[2].outline) p.x = std::min(p.x, (78.75 - gap) * kIn);
  return loft;
}

// The same, with a ladder before the opening.
Loft entered(double mm) {
  Loft loft = short_rail(mm / kIn);
  const double from = 78.75 - mm / kIn;
  for (int k = 0; k < 4; ++k)
    loft.board("rung " + std::to_string(k + 1), mm / kIn - 1, 1.25, {from + 0.5, 38, 9.0 + 10 * k},
               "+x", "+y", 1.25);
  return loft;
}

// The bed moved off the left wall.
Loft off_wall(double mm) {
  Loft loft = bed(50, 7);
  for (Part& part : loft.design.parts) part.place_in_room.at.y += mm - 0.75 * kIn;
  loft.design.parts.erase(loft.design.parts.begin() + 1);
  return loft;
}

Loft treads(double mm) {
  std::vector<double> tops;
  for (int k = 1; k <= 5; ++k) tops.push_back(k * mm / kIn);
  Loft loft = with_ladder(6 * mm / kIn, tops);
  return loft.use(User::child, 8, 12, Purpose::sleep, 6);
}

}  // namespace

std::vector<LimitRow> bed_rows() {
  return {
      {Of::bed_base, "bed-rail-missing", "danger", 29.9, 30.1, without_rails},
      {Of::bed_rail, "bed-rail-low", "danger", 5.1, 4.9, [](double x) { return bed(50, x); }},
      {Of::bed_wall_gap, "bed-wall-rail-gap", "danger", 0.21, 0.23, parted_wall_rail},
      {Of::bed_end_gap, "bed-end-gap", "danger", 14.95, 15.05, short_rail},
      {Of::bunk_age, "bunk-too-young", "danger", 6, 5.9,
       [](double x) { return bed(50, 7).use(User::child, x, 12, Purpose::sleep, 6); }},
      {Of::bed_barrier_mm, "bed-barrier-low", "caution", 160.5, 159.5,
       [](double x) { return bed(50, x / kIn); }},
      {Of::bed_entry_small, "bed-entry", "caution", 301, 299, entered},
      {Of::bed_entry_large, "bed-entry", "caution", 399, 401, entered},
      {Of::bed_wall_small, "bed-wall-gap", "danger", 74.5, 75.5, off_wall},
      {Of::bed_wall_large, "bed-wall-gap", "danger", 230.5, 229.5, off_wall},
      {Of::bed_tread, "bed-treads", "caution", 200.5, 199.5, treads},
  };
}

}  // namespace nook::test

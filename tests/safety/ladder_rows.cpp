// Rungs: CPSC 325 5.2.1 and 5.2.2, 29 CFR 1910.23.
#include "limit_rows.h"

namespace nook::test {
namespace {

constexpr double kIn = kMillimetresPerInch;

Loft even(double apart) {
  return with_ladder(4 * apart, {apart, 2 * apart, 3 * apart});
}
Loft for_adults(double apart) {
  Loft loft = even(apart);
  loft.design.use = {};
  return loft.use(User::adult, 0, 0, Purpose::play);
}

// Treads this deep.
Loft flat(double deep) {
  Loft loft = even(11);
  for (Part& part : loft.design.parts)
    if (part.name.starts_with("rung"))
      for (Vec2& p : part.outline) p.y = p.y > 0 ? deep * kIn : 0;
  return loft;
}

// A panel behind the rungs, this far from their middle.
Loft backed(double room) {
  Loft loft = even(11);
  loft.board("back", 13, 36, {15, 38.125 - room - 0.75, 2}, "-x", "+z");
  return loft;
}

// Rails and side panel that rise this far above the deck.
Loft rising(double above) {
  Loft loft = even(11);
  for (Part& part : loft.design.parts)
    if (part.name != "deck" && part.name != "front" && !part.name.starts_with("rung"))
      for (Vec2& p : part.outline) p.y = p.y > 1 ? (44 + above) * kIn : p.y;
  // The right wall is within reach too: leave it.
  for (Part& part : loft.design.parts)
    if (part.name != "deck" && part.name != "front") part.place_in_room.at.x += 10 * kIn;
  return loft;
}

}  // namespace

std::vector<LimitRow> ladder_rows() {
  const auto thick = [](double x) { return with_ladder(44, {11, 22, 33}, x); };
  return {
      {Of::rung_thin, "rung-grip", "caution", 0.96, 0.94, thick},
      {Of::rung_thick, "rung-grip", "caution", 1.54, 1.56, thick},
      {Of::tread_flat, "tread-not-grip", "note", 2.95, 3.05, flat},
      {Of::rung_apart, "rungs-far-apart", "caution", 11.95, 12.05, even},
      {Of::rung_even, "rungs-uneven", "caution", 0.24, 0.26,
       [](double x) {
         return with_ladder(44 + x, {11, 22, 33});
       }},
      {Of::toe_room, "toe-room", "note", 7.1, 6.9, backed},
      {Of::work_rung_low, "work-rungs", "caution", 10.05, 9.95, for_adults},
      {Of::work_rung_high, "work-rungs", "caution", 13.95, 14.05, for_adults},
      {Of::handhold, "handhold-missing", "caution", 24.1, 23.9, rising},
  };
}

}  // namespace nook::test

// Loads and weights: IRC R301.5, NCHS and CDC weights, ASTM F2057-23.
#include "limit_rows.h"

namespace nook::test {
namespace {

constexpr double kPound = 4.4482216152605, kKilogram = 9.80665;  // N

// A deck of 11.5 square feet on a ledger reckoned for `each` lb a square foot.
Loft carried(double each) {
  Loft loft = platform(42, 38);
  loft.board("ledger", 46, 3.5, {46, 0, 37.75}, "-x", "+z", 1.5);
  loft.screw("ledger", "left wall");
  loft.design.fastenings.back().load_n = each * 11.5 * kPound;
  return loft;
}

// A bed of 19.5 square feet on a ledger.
Loft bed_carried(double each) {
  Loft loft = bed(50, 7);
  loft.board("ledger", 78, 3.5, {78.75, 0.75, 46.5}, "-x", "+z", 1.5);
  loft.screw("ledger", "left wall");
  loft.design.fastenings.back().load_n = each * 19.5 * kPound;
  return loft;
}

Loft pulled(double pounds) {
  Loft loft = platform(42, 38);
  loft.screw("front", "deck");
  loft.design.fastenings.back().pull_n = pounds * kPound;
  return loft;
}

Loft stepped_on(double pounds) {
  Loft loft = with_ladder(44, {11, 22, 33});
  for (const char* rung : {"rung 1", "rung 2", "rung 3"}) {
    loft.screw(rung, "near rail");
    loft.design.fastenings.back().load_n = pounds * kPound;
  }
  return loft;
}

Loft footed(User by, double oldest, double newtons) {
  Loft loft = with_ladder(44, {11, 22, 33});
  loft.design.use = {};
  loft.use(by, 6, oldest, Purpose::play);
  loft.design.feet.push_back({"near rail", newtons, {}});
  return loft;
}

// A chest of one board, this high and this heavy.
Loft chest(double high, double pounds) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::storage);
  loft.board("chest", 24, high, {60, 20, 0}, "+y", "+z");
  const double cubic_metres = 24 * high * 0.75 * 25.4e-3 * 25.4e-3 * 25.4e-3;
  loft.design.stock.back().density = pounds * 0.45359237 / cubic_metres;
  return loft;
}

}  // namespace

std::vector<LimitRow> load_rows() {
  return {
      {Of::room_load, "deck-load", "caution", 40.1, 39.9, carried},
      {Of::sleep_load, "deck-load", "caution", 30.1, 29.9, bed_carried},
      {Of::guard_load, "guard-load", "caution", 201, 199, pulled},
      {Of::step_load, "step-load", "caution", 301, 299, stepped_on},
      {Of::man, "foot-load", "caution", 196, 195,
       [](double x) { return footed(User::adult, 0, x * kPound); }},
      {Of::boy_of_ten, "foot-load", "caution", 46.3, 46.1,
       [](double x) { return footed(User::child, 8, x * kKilogram); }},
      {Of::boy_age, "foot-load", "caution", 10, 10.1,
       [](double x) { return footed(User::child, x, 50 * kKilogram); }},
      {Of::tip_height, "tip-over", "danger", 26.9, 27.1, [](double x) { return chest(x, 40); }},
      {Of::tip_weight, "tip-over", "danger", 29.9, 30.1, [](double x) { return chest(30, x); }},
      {Of::one_person, "lifting", "caution", 2 * 51 - 1, 2 * 51 + 1,
       [](double x) { return chest(30, x); }},
  };
}

}  // namespace nook::test

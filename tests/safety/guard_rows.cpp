// Guards and barriers: CPSC 325 table 4, IRC R312.1.
#include "limit_rows.h"

namespace nook::test {
namespace {

Loft for_ages(Loft loft, double youngest, double oldest) {
  loft.use(User::child, youngest, oldest, Purpose::play);
  return loft;
}
Loft for_adults(Loft loft) {
  loft.design.use = {};
  loft.use(User::adult, 0, 0, Purpose::play);
  return loft;
}

// A deck that nothing stands round.
Loft bare(double top) {
  Loft loft;
  loft.use(User::child, 3, 4, Purpose::play);
  loft.board("deck", 46, 36, {0, 0, top - 0.75}, "+x", "+y");
  return loft;
}

// A guard with a hole above the deck, for adults.
Loft holed(double wide) {
  Loft loft = for_adults(platform(42, 38));
  Cutout hole;
  for (Vec2 p : {Vec2{10, 50}, Vec2{10 + wide, 50}, Vec2{10 + wide, 60}, Vec2{10, 60}})
    hole.outline.push_back(kMillimetresPerInch * p);
  loft.design.parts[1].cutouts.push_back(hole);
  return loft;
}

// A deck with a square hatch.
Loft hatched(double wide) {
  Loft loft = platform(42, 38);
  Cutout hatch;
  for (Vec2 p :
       {Vec2{10, 10}, Vec2{10 + wide, 10}, Vec2{10 + wide, 10 + wide}, Vec2{10, 10 + wide}})
    hatch.outline.push_back(kMillimetresPerInch * p);
  loft.design.parts[0].cutouts.push_back(hatch);
  return loft;
}

Loft narrow(double width) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("deck", 46, width, {0, 0, 41.25}, "+x", "+y");
  return loft;
}

// Boards this far above the deck, too narrow to be stood on themselves.
Loft roofed(double room) {
  Loft loft = bare(42);
  for (double y : {0.0, 13.25, 26.5}) loft.board("shelf", 46, 9.5, {0, y, 42 + room}, "+x", "+y");
  return loft;
}

}  // namespace

std::vector<LimitRow> guard_rows() {
  return {
      {Of::toddler_end, "guard-low", "danger", 2, 2.1,
       [](double x) { return for_ages(platform(42, 26), 1, x); }},
      {Of::preschool_end, "guard-low", "danger", 5, 5.1,
       [](double x) { return for_ages(platform(42, 30), 3, x); }},
      {Of::school_end, "guard-low", "danger", 12, 11.9,
       [](double x) { return for_ages(platform(42, 37), x, 14); }},
      {Of::guardrail_platform, "guardrail-missing", "caution", 19.9, 20.1, bare},
      {Of::barrier_platform, "guard-missing", "danger", 29.9, 30.1, bare},
      {Of::barrier_platform_toddler, "guard-missing", "danger", 17.9, 18.1,
       [](double x) { return for_ages(bare(x), 1, 1.5); }},
      {Of::barrier_toddler, "guard-low", "danger", 24.1, 23.9,
       [](double x) { return for_ages(platform(42, x), 1, 1.5); }},
      {Of::barrier_preschool, "guard-low", "danger", 29.1, 28.9,
       [](double x) { return for_ages(platform(42, x), 3, 4); }},
      {Of::barrier_school, "guard-low", "danger", 38.1, 37.9,
       [](double x) { return for_ages(platform(42, x), 6, 8); }},
      {Of::guard_drop, "guard-missing", "danger", 29.9, 30.1,
       [](double x) { return for_adults(bare(x)); }},
      {Of::guard_height, "guard-low", "danger", 36.1, 35.9,
       [](double x) { return for_adults(platform(42, x)); }},
      {Of::guard_sphere, "guard-opening", "danger", 3.95, 4.05, holed},
      {Of::head_large, "hole-in-deck", "danger", 8.95, 9.05, hatched},
      {Of::deck_width, "fall-height", "note", 9.9, 10.1, narrow},
      {Of::deck_room, "guard-missing", "danger", 17.9, 18.1, roofed},
  };
}

}  // namespace nook::test

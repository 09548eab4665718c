// Openings, slots and gaps: CPSC 325 B.2.5.1; EN 747-1 (from memory).
#include <cmath>
#include <numbers>

#include "limit_rows.h"

namespace nook::test {
namespace {

constexpr double kIn = kMillimetresPerInch;

// Two posts side by side, `mm` apart.
Loft posts(double mm) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("post", 6, 60, {60, 20, 0}, "+y", "+z");
  loft.board("other post", 6, 60, {60, 26 + mm / kIn, 0}, "+y", "+z");
  return loft;
}

// A hole of 6 with a board `inches` behind it.
Loft backed(double inches) {
  Loft loft = pierced(6, 6);
  loft.board("back", 48, 60, {60 - inches - 0.75, 20, 0}, "+y", "+z");
  return loft;
}

}  // namespace

Loft sheet() {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("sheet", 48, 60, {60, 20, 0}, "+y", "+z");
  return loft;
}

Loft pierced(double width, double height) {
  Loft loft = sheet();
  Cutout hole;
  hole.name = "hatch";
  for (Vec2 p : {Vec2{0, 0}, Vec2{width, 0}, Vec2{width, height}, Vec2{0, height}})
    hole.outline.push_back(kIn * (Vec2{16, 30} + p));
  loft.design.parts.back().cutouts.push_back(hole);
  return loft;
}

Loft cut_v(double degrees) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  const double deep = 10 / std::tan(degrees / 2 * std::numbers::pi / 180);
  loft.panel("sheet", {{0, 0}, {48, 0}, {48, 60}, {34, 60}, {24, 60 - deep}, {14, 60}, {0, 60}},
             {60, 20, 0}, "+y", "+z");
  return loft;
}

Loft slotted(double width) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  const double a = 24 - width / 2, b = 24 + width / 2;
  loft.panel("sheet", {{0, 0}, {48, 0}, {48, 60}, {b, 60}, {b, 48}, {a, 48}, {a, 60}, {0, 60}},
             {60, 20, 0}, "+y", "+z");
  return loft;
}

std::vector<LimitRow> opening_rows() {
  return {
      {Of::head_small, "head-trap", "danger", 3.49, 3.51, [](double x) { return pierced(x, 6); }},
      {Of::head_large, "head-trap", "danger", 9.01, 8.99, [](double x) { return pierced(x, 14); }},
      {Of::probe_depth, "head-trap", "danger", 3.95, 4.05, backed},
      {Of::neck_angle, "neck-trap", "danger", 55.5, 54.5, cut_v},
      {Of::neck_width, "neck-trap", "danger", 1.865, 1.885, slotted},
      {Of::finger_small, "finger-gap", "caution", 6.95, 7.05, posts},
      {Of::finger_large, "finger-gap", "caution", 12.05, 11.95, posts},
      {Of::limb_small, "limb-gap", "caution", 24.95, 25.05, posts},
      {Of::limb_large, "limb-gap", "caution", 60.05, 59.95, posts},
  };
}

}  // namespace nook::test

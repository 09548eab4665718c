// A mirrored room with mirrored pieces has the mirrored answer.
#include <catch2/catch.hpp>

#include "simulated_rooms.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

// Everything across the line x = y: the corner's walls change places.
Found mirrored(const Found& found) {
  Found m = found;
  std::swap(m.survey.walls[0], m.survey.walls[1]);
  for (int w = 0; w < 2; ++w) m.survey.walls[w].name = found.survey.walls[w].name;
  for (int w = 0; w < 2; ++w) {
    WallShape& wall = m.room.walls[w];
    const WallShape& source = found.room.walls[1 - w];
    wall = source;
    wall.name = found.room.walls[w].name;
    wall.along = found.room.walls[w].along;
    wall.out = found.room.walls[w].out;
  }
  return m;
}

Vec3 across(Vec3 p) {
  return {p.y, p.x, p.z};
}

EdgeChoice other_side(const EdgeChoice& edge) {
  if (const EdgeSide* side = std::get_if<EdgeSide>(&edge)) {
    if (*side == EdgeSide::left) return EdgeSide::right;
    if (*side == EdgeSide::right) return EdgeSide::left;
  }
  return edge;
}

std::string other_wall(const std::string& name) {
  return name == "left wall" ? "right wall" : name == "right wall" ? "left wall" : name;
}

Design mirrored(const Design& design) {
  Design m = design;
  for (Part& p : m.parts) {
    Placement& place = p.place_in_room;
    const double width = p.outline[1].x;
    place.at = across(place.at + width * place.u);
    place.u = -across(place.u);
    place.v = across(place.v);
  }
  for (Contact& c : m.contacts) {
    c.edge = other_side(c.edge);
    c.meets = other_wall(c.meets);
  }
  for (Group& g : m.groups) {
    for (std::string& target : g.tight_to) target = other_wall(target);
    if (g.parallel_to) g.parallel_to = other_wall(*g.parallel_to);
  }
  return m;
}

}  // namespace

// Spots of the fields follow the pieces to 0.05 mm, so both answers agree to a tenth of that.
TEST_CASE("mirror: a mirrored corner and design have the mirrored fit", "[property]") {
  // The corner's base lines: one along +x, the other mirrored at the same angle needs no turning,
  // because both frames put the left wall along +x; a square corner keeps it simple.
  Wildness wild;
  wild.angle_deg = 0;
  wild.slope = 0;
  for (int i = 0; i < 21; ++i) {
    INFO("room " << i);
    Random random(300 + i);
    Found found = simulated_corner(random, wild);
    found.room.walls[1].along = {0, 1};
    found.room.walls[1].out = {1, 0};
    found.room.floor = {};
    const Design design = simulated_design(random, i % kCornerKinds);
    const FitAnswer one = fit_exactly(found, design);
    const Found other_room = mirrored(found);
    const Design other_design = mirrored(design);
    const FitAnswer two = fit_exactly(other_room, other_design);
    REQUIRE(one.groups.size() == two.groups.size());
    for (std::size_t g = 0; g < one.groups.size(); ++g) {
      CHECK_THAT(one.groups[g].move.x, WithinAbs(two.groups[g].move.y, 5e-3));
      CHECK_THAT(one.groups[g].move.y, WithinAbs(two.groups[g].move.x, 5e-3));
      CHECK_THAT(one.groups[g].turn_deg, WithinAbs(-two.groups[g].turn_deg, 1e-3));
    }
    REQUIRE(one.contacts.size() == two.contacts.size());
    for (std::size_t c = 0; c < one.contacts.size(); ++c) {
      CHECK_THAT(one.contacts[c].gap.least, WithinAbs(two.contacts[c].gap.least, 5e-3));
      CHECK_THAT(one.contacts[c].gap.most, WithinAbs(two.contacts[c].gap.most, 5e-3));
      CHECK_THAT(one.contacts[c].wood_mm, WithinAbs(two.contacts[c].wood_mm, 5e-3));
      CHECK(one.contacts[c].verdict == two.contacts[c].verdict);
    }
    CHECK(one.notches.size() == two.notches.size());
    CHECK(one.clashes.size() == two.clashes.size());
  }
}

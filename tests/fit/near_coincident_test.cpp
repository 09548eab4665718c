// Pieces that touch in a face, an edge or a vertex, turned by a hair: the answer stays the same.
#include <catch2/catch.hpp>

#include "fit/rooms_by_hand.h"

using namespace nook;
using namespace nook::by_hand;
using Catch::WithinAbs;

namespace {

constexpr double kHairs[] = {1e-9, -1e-9, 1e-12};  // rad

struct Touching {
  const char* how;
  Vec3 at;      // the second panel's lower left corner
  bool beside;  // square to the first one, else behind it
};
// The first panel: x 800 to 818, y 100 to 500, z 100 to 1000.
const Touching kTouching[] = {
    {"faces in one plane, back to front", {782, 100, 100}, false},
    {"faces in one plane, half covered", {782, 300, 500}, false},
    {"an edge on an edge", {782, 500, 100}, false},
    {"a vertex on a vertex", {782, 500, 1000}, false},
    {"an end against a face", {800, 300, 100}, true},
    {"an end against a face's edge", {800, 500, 100}, true},
};

Design touching(const Touching& t, double hair) {
  Design d = empty_design(18);
  d.parts.push_back(panel("first", {400, 900}, {800, 100, 100}, kY, kZ));
  const Vec3 u = t.beside ? Vec3{-1, hair, 0} : Vec3{hair, 1, 0};
  d.parts.push_back(panel("second", {400, 900}, t.at, u, kZ));
  return d;
}

}  // namespace

TEST_CASE("near coincidence: a hair's turn makes no clash and no gap", "[property]") {
  for (const Touching& t : kTouching)
    for (double hair : kHairs) {
      INFO(t.how << ", turned by " << hair);
      const FitAnswer square = fit_exactly(corner(90), touching(t, 0));
      const FitAnswer turned = fit_exactly(corner(90), touching(t, hair));
      CHECK(square.clashes.empty());
      CHECK(turned.clashes.empty());
      REQUIRE(turned.groups.size() == square.groups.size());
      for (std::size_t g = 0; g < square.groups.size(); ++g)
        CHECK_THAT(norm(turned.groups[g].move - square.groups[g].move), WithinAbs(0, 1e-3));
    }
}

TEST_CASE("near coincidence: a butt off by a hair closes as the square one does", "[property]") {
  for (double hair : kHairs) {
    Design d = touching(kTouching[4], hair);
    d.contacts.push_back(meet("second", EdgeSide::left, "first"));
    d.groups.push_back(tight("second", {"first"}));
    d.parts[1].place_in_room.at.x = 795;  // drawn 5 mm short of it
    const FitAnswer f = fit_exactly(corner(90), d);
    INFO("turned by " << hair);
    CHECK_THAT(f.contacts[0].gap.most, WithinAbs(0, 1e-3));
    CHECK(f.contacts[0].verdict == Verdict::fits);
    CHECK(f.clashes.empty());
  }
}

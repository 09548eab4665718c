// What carries a deck, the hole that its ladder comes up through, gaps that contacts close.
#include <catch2/catch.hpp>

#include "loft.h"

namespace nook::test {
namespace {

constexpr double kPound = 4.4482216152605;  // N

// 46 by 36 in, 11.5 square feet: at 40 lb a square foot 460 lb, IRC R301.5.
Loft footed(double left, double right) {
  Loft loft = platform(42, 38);
  loft.board("left post", 3, 41.25, {2, 30, 0}, "+x", "+z");
  loft.board("right post", 3, 41.25, {41, 30, 0}, "+x", "+z");
  loft.design.feet.push_back({"left post", left * kPound, {}});
  loft.design.feet.push_back({"right post", right * kPound, {}});
  return loft;
}

// Rungs 14 long under a hole 20 square, its middle 23 along and 18 out, or beside it.
Loft hatch(double rungs_out) {
  Loft loft = platform(42, 38);
  Cutout hole;
  hole.name = "hatch";
  for (const Vec2 p : {Vec2{13, 8}, Vec2{33, 8}, Vec2{33, 28}, Vec2{13, 28}})
    hole.outline.push_back(kMillimetresPerInch * p);
  loft.design.parts[0].cutouts = {hole};
  for (int k = 1; k <= 3; ++k)
    loft.board("rung " + std::to_string(k), 14, 1.25, {16, rungs_out, 10.5 * k - 1.25}, "+x", "+y",
               1.25);
  return loft;
}

// Two slats alike 3/8 in beside a post: a finger goes in.
Loft slats(const std::string& part, const std::string& meets) {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("post", 30, 60, {40, 20, 0}, "+x", "+z");
  Part& slat = loft.board("slat", 4, 60, {35.625, 20, 0}, "+x", "+z");
  slat.repeat = Repeat{2, {kMillimetresPerInch * -20, 0, 0}};
  if (part.empty()) return loft;
  Contact contact;
  contact.part = part, contact.meets = meets, contact.by = Fitting::caulk;
  loft.design.contacts.push_back(contact);
  return loft;
}

}  // namespace

TEST_CASE("deck: what its feet bear is added up and held against 40 lb a square foot") {
  CHECK(severity_of(footed(231, 230).answer(), "deck-load").empty());
  CHECK(severity_of(footed(229, 230).answer(), "deck-load") == "caution");
  // A hatch bears nothing: 20 in square are 2.8 square feet less, 111 lb.
  Loft open = footed(180, 180);
  CHECK(severity_of(open.answer(), "deck-load") == "caution");
  open.design.parts[0].cutouts = hatch(17).design.parts[0].cutouts;
  CHECK(severity_of(open.answer(), "deck-load").empty());
  // A foot that stands beside the deck and ends above it bears none of it.
  Loft beside = footed(229, 230);
  beside.design.feet.push_back({"front", 100 * kPound, {}});
  CHECK(severity_of(beside.answer(), "deck-load") == "caution");
}

TEST_CASE("deck: a hole that a ladder comes up through is a caution, any other a danger") {
  CHECK(severity_of(hatch(17).answer(), "hole-in-deck") == "caution");
  CHECK(severity_of(hatch(50).answer(), "hole-in-deck") == "danger");
}

TEST_CASE("finger gaps: a contact closes a gap whichever of the two it stands at, copies too") {
  CHECK(severity_of(slats("", "").answer(), "finger-gap") == "caution");
  CHECK(severity_of(slats("slat", "post").answer(), "finger-gap").empty());
  CHECK(severity_of(slats("slat 1", "post").answer(), "finger-gap").empty());
  CHECK(severity_of(slats("post", "slat 1").answer(), "finger-gap").empty());
  CHECK(severity_of(slats("post", "slat").answer(), "finger-gap").empty());
  CHECK(severity_of(slats("post", "slat 2").answer(), "finger-gap") == "caution");
}

}  // namespace nook::test

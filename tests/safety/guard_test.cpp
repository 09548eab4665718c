// Guards as they stand round a deck.
#include <catch2/catch.hpp>
#include <set>

#include "limit_rows.h"

namespace nook::test {
namespace {

constexpr double kIn = kMillimetresPerInch;

double value_of(const SafetyAnswer& answer, const std::string& id) {
  const auto caution = find(answer, id);
  REQUIRE(caution);
  REQUIRE(caution->value);
  return caution->value->value / kIn;
}

}  // namespace

TEST_CASE("guard: 38 above the deck on both open sides, walls on the others, is enough") {
  const SafetyAnswer answer = platform(42, 38).answer();
  for (const char* id : {"guard-missing", "guard-low", "guard-opening", "head-trap", "neck-trap"})
    CHECK(severity_of(answer, id).empty());
}

TEST_CASE("guard: the height is that from the deck to the lowest place along the side") {
  Loft loft = platform(42, 38);
  Polygon& front = loft.design.parts[1].outline;
  front = {{0, 0},
           {36 * kIn, 0},
           {36 * kIn, 80 * kIn},
           {20 * kIn, 80 * kIn},
           {18 * kIn, 72 * kIn},
           {8 * kIn, 72 * kIn},
           {6 * kIn, 80 * kIn},
           {0, 80 * kIn}};
  CHECK(value_of(loft.answer(), "guard-low") == Approx(30));
  CHECK(find(loft.answer(), "guard-low")->where == "deck, edge away from the right wall");
}

TEST_CASE("guard: a dip narrower than 3.5 in counts as filled") {
  Loft loft = platform(42, 38);
  loft.design.parts[1].outline = {{0, 0},
                                  {36 * kIn, 0},
                                  {36 * kIn, 80 * kIn},
                                  {13 * kIn, 80 * kIn},
                                  {13 * kIn, 70 * kIn},
                                  {10 * kIn, 70 * kIn},
                                  {10 * kIn, 80 * kIn},
                                  {0, 80 * kIn}};
  CHECK(severity_of(loft.answer(), "guard-low").empty());
}

TEST_CASE("guard: a side without a panel is told with its length and its drop") {
  Loft loft = platform(42, 38);
  loft.design.parts.pop_back();
  const SafetyAnswer answer = loft.answer();
  const auto missing = find(answer, "guard-missing");
  REQUIRE(missing);
  CHECK(missing->severity == Severity::danger);
  CHECK(missing->where == "deck, edge away from the left wall");
  CHECK(answer.verdict == Verdict::does_not_fit);
  const std::string text = spoken(missing->text, usual_rounding(Unit::inch));
  CHECK(text ==
        "Nothing guards 46\" of the edge, 42\" above the floor. Over 30\" it wants a guard "
        "that is 38\" high; only the way up stays open.");
}

TEST_CASE("guard: the way up stays open where the ladder is, and nowhere else") {
  CHECK(severity_of(with_ladder(44, {11, 22, 33}).answer(), "guard-missing").empty());
  Loft loft = with_ladder(44, {11, 22, 33});
  for (Vec2& p : loft.design.parts[2].outline)
    p.x = std::min(p.x, 23 * kIn);  // 6 beside the ladder
  const auto missing = find(loft.answer(), "guard-missing");
  REQUIRE(missing);
  CHECK_THAT(std::get<Measured>(missing->text.said[0]).value / kIn, Catch::WithinAbs(6, 0.001));
}

TEST_CASE("guard: rails with room for a small body between them are an opening") {
  Loft loft = platform(42, 38);
  loft.design.parts.erase(loft.design.parts.begin() + 1);
  for (double up : {46.0, 54.0, 62.0, 70.0, 76.5})
    loft.board("rail " + std::to_string(static_cast<int>(up)), 37, 3.5, {46, 0, up}, "+y", "+z");
  // From the deck up: 4, three times 4 1/2, and 3, which lets nobody through.
  std::vector<double> found;
  for (const Caution& caution : all(loft.answer(), "guard-opening"))
    found.push_back(caution.value->value / kIn);
  std::sort(found.begin(), found.end());
  REQUIRE(found.size() == 4);
  CHECK_THAT(found.front(), Catch::WithinAbs(4, 0.001));
  CHECK_THAT(found.back(), Catch::WithinAbs(4.5, 0.001));
  CHECK(severity_of(loft.answer(), "guard-low").empty());
}

TEST_CASE("guard: under 36 in it is also a caution for the smallest, by the building code") {
  Loft loft = platform(42, 30);
  loft.use(User::child, 3, 4, Purpose::play);
  CHECK(severity_of(loft.answer(), "guard-low") == "caution");
  CHECK(find(loft.answer(), "guard-low")->source == "IRC R312.1");
}

TEST_CASE("guard: CPSC 325 table 4 (from memory) - the under-twos want a barrier over 18 in",
          "[reference]") {
  const auto missing = [](double top, double youngest, double oldest) {
    Loft loft;
    loft.use(User::child, youngest, oldest, Purpose::play);
    loft.board("deck", 46, 36, {0, 0, top - 0.75}, "+x", "+y");
    std::set<std::string> said;  // the height wanted, of each danger
    for (const Caution& caution : all(loft.answer(), "guard-missing"))
      if (caution.severity == Severity::danger)
        said.insert(std::string(limit(std::get<Of>(caution.text.said[3])).id));
    return said;
  };
  CHECK(missing(17.5, 1, 1.5).empty());
  CHECK(missing(25, 1, 1.5) == std::set<std::string>{"barrier-toddler"});
  CHECK(missing(40, 1, 1.5) == std::set<std::string>{"barrier-toddler"});
  CHECK(missing(25, 3, 4).empty());
  // Both groups: the smallest from 18 in up, the tallest barrier from 30 in up.
  CHECK(missing(25, 1, 4) == std::set<std::string>{"barrier-toddler"});
  CHECK(missing(40, 1, 4) == std::set<std::string>{"barrier-preschool"});
}

TEST_CASE("guard: without ages a guard that suits some of them cannot be told") {
  Loft loft = platform(42, 37);
  loft.design.use.ages[0] = loft.design.use.ages[1] = {};
  const SafetyAnswer answer = loft.answer();
  CHECK(severity_of(answer, "ages-not-stated") == "caution");
  CHECK(answer.verdict == Verdict::does_not_fit);  // nothing screws the panels to a wall
  CHECK(severity_of(platform(42, 38).answer(), "ages-not-stated").empty());
}

TEST_CASE("guard: without [use] a deck cannot be told, a desk is none") {
  Loft loft = platform(42, 38);
  loft.design.use = {};
  const SafetyAnswer answer = loft.answer();
  CHECK(severity_of(answer, "use-not-stated") == "caution");
  CHECK(answer.verdict == Verdict::cannot_tell);
  loft.design.use.purpose = Purpose::desk;
  CHECK(severity_of(loft.answer(), "use-not-stated").empty());
  CHECK(severity_of(loft.answer(), "not-checked") == "note");
}

TEST_CASE("guard: a wall beside a bare edge is no low guard, however little of it is looked at") {
  // Nothing stands on the deck: what is looked at ends 300 mm above it, the wall does not. It leans
  // in, so that the edge's first inches lie under it.
  for (double lean : {0.05, 0.1}) {
    INFO("the walls lean in by " << lean);
    Loft loft = platform(42, 38);
    loft.design.parts.resize(1);
    for (WallShape& wall : loft.room.walls) wall.lean = lean;
    const SafetyAnswer answer = loft.answer();
    CHECK(severity_of(answer, "guard-missing") == "danger");
    CHECK(severity_of(answer, "guard-low").empty());
  }
}

TEST_CASE("guard: slats side by side are one deck") {
  Loft loft = platform(42, 38);
  loft.design.parts.erase(loft.design.parts.begin());
  for (int k = 0; k < 9; ++k)
    loft.board("slat " + std::to_string(k + 1), 46, 3.5, {0, 4.0 * k, 41.25}, "+x", "+y");
  const SafetyAnswer answer = loft.answer();
  CHECK(all(answer, "fall-height").size() == 1);
  CHECK(severity_of(answer, "guard-missing").empty());
  loft.design.parts.erase(loft.design.parts.begin());  // the front panel
  CHECK(all(loft.answer(), "guard-missing").size() == 1);
}

TEST_CASE("guard: a panel that nothing screws is told, a screwed one not") {
  Loft loft = platform(42, 38);
  CHECK(all(loft.answer(), "guard-not-held").size() == 2);
  loft.screw("front", "deck");
  CHECK(all(loft.answer(), "guard-not-held").size() == 1);
}

TEST_CASE("guard: a rail wants screws at both its ends, or a wall along it") {
  Loft loft = platform(42, 38);
  loft.screw("front", "deck");
  loft.screw(loft.design.parts[2].name, "deck");
  CHECK(severity_of(loft.answer(), "guard-not-held").empty());
  // A rail along the front, a post at each of its ends.
  loft.board("rail", 36, 3, {46.75, 0, 74}, "+y", "+z");
  loft.board("near post", 1.5, 40, {47.5, 0, 40}, "+y", "+z", 1.5);
  loft.board("far post", 1.5, 40, {47.5, 34.5, 40}, "+y", "+z", 1.5);
  loft.screw("near post", "front");
  loft.screw("far post", "front");
  const auto told = [&] {
    const auto caution = find(loft.answer(), "guard-not-held");
    return caution ? caution->where + ": " + caution->text.pattern : std::string();
  };
  CHECK(told().find("rail: It guards a deck, and nothing in the design") == 0);
  loft.screw("rail", "near post");
  CHECK(told().find("rail: It guards a deck, and the design screws it at one end alone") == 0);
  loft.screw("rail", "far post");
  CHECK(told().empty());
  loft.design.fastenings.pop_back();
  loft.screw("rail", "left wall");  // where the near post is
  CHECK(told().find("rail: It guards a deck, and the design screws it at one end alone") == 0);
  loft.design.fastenings.pop_back();
  loft.design.fastenings.pop_back();
  loft.screw("rail", "left wall");
  loft.screw("rail", "far post");
  CHECK(told().empty());
}

TEST_CASE("guard: rails and slats that hold each other alone are held by nothing") {
  Loft loft = platform(42, 38);
  loft.screw("front", "deck");
  loft.screw(loft.design.parts[2].name, "deck");
  for (const double up : {48.0, 74.0})
    loft.board("rail at " + std::to_string(int(up)), 36, 3, {46.75, 0, up}, "+y", "+z");
  for (const double y : {0.0, 34.5})
    loft.board("slat at " + std::to_string(int(y)), 1.5, 40, {47.5, y, 40}, "+y", "+z");
  for (const char* slat : {"slat at 0", "slat at 34"})
    for (const char* rail : {"rail at 48", "rail at 74"}) loft.screw(slat, rail);
  const auto told = [&] {
    std::set<std::string> names;
    for (const Caution& caution : all(loft.answer(), "guard-not-held")) names.insert(caution.where);
    return names;
  };
  CHECK(told() == std::set<std::string>{"rail at 48", "rail at 74", "slat at 0", "slat at 34"});
  // One end of both rails on the wall: they turn about it, and hold no end of each other.
  loft.screw("rail at 48", "left wall");
  loft.screw("rail at 74", "left wall");
  CHECK(told() == std::set<std::string>{"rail at 48", "rail at 74"});
  // Their other slat on the deck's front panel: what is held there holds both.
  loft.screw("slat at 34", "front");
  CHECK(told().empty());
}

TEST_CASE("guard: a slot beside a wall is told alike on either hand") {
  const auto told = [](double wide, bool left) {
    Loft loft = platform(42, 38);
    Part& part = loft.design.parts[left ? 1 : 2];
    const double from = wide * kIn, to = part.outline[1].x - from;
    // Both panels run from their wall to the corner where they meet.
    if (left)
      for (Vec2& p : part.outline) p.x = std::max(p.x, from);
    else
      for (Vec2& p : part.outline) p.x = std::min(p.x, to);
    const SafetyAnswer answer = loft.answer();  // a wide one is no guard at all
    return severity_of(answer, wide < 3.9 ? "guard-opening" : "guard-missing");
  };
  for (const bool left : {true, false}) {
    CAPTURE(left);
    CHECK(told(3.4, left).empty());
    CHECK(told(3.6, left) == "danger");
    CHECK(told(4.0, left) == "danger");
  }
}

}  // namespace nook::test

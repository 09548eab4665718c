// The answer as a whole: order, verdict, mirror image, what is not known.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>
#include <set>

#include "fit/find_floor.h"
#include "limit_rows.h"
#include "safety/scene.h"

namespace nook::test {
namespace {

std::string swapped(std::string text) {
  for (auto [from, to] : {std::pair{"left", "\1"}, {"right", "left"}, {"\1", "right"}})
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos;
         at += std::string(to).size())
      text.replace(at, std::string(from).size(), to);
  return text;
}

std::multiset<std::string> told(const SafetyAnswer& answer) {
  std::multiset<std::string> lines;
  for (const Caution& c : answer.cautions)
    lines.insert(c.id + " " + std::string(words(c.severity)) + " " + c.where + " " +
                 spoken(c.text, usual_rounding(Unit::inch)) + " " + c.source);
  return lines;
}
std::multiset<std::string> swapped(const std::multiset<std::string>& lines) {
  std::multiset<std::string> others;
  for (const std::string& line : lines) others.insert(swapped(line));
  return others;
}

// What the one says and the other does not.
std::string difference(const std::multiset<std::string>& a, const std::multiset<std::string>& b) {
  std::vector<std::string> only;
  std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(only));
  return joined(only);
}

Loft chance_loft(std::mt19937& random) {
  std::uniform_real_distribution<double> u(0, 1);
  const double top = 30 + 20 * u(random), apart = top / 4 + u(random) - 0.5;
  Loft loft = with_ladder(top, {apart, 2 * apart, 3 * apart});
  Loft::bore(loft.design.parts[1], "porthole", {12 + 10 * u(random), 15 + 30 * u(random)},
             4 + 7 * u(random));
  loft.design.parts[1].place_in_room.at.y += 25.4 * 2 * u(random);
  for (Vec2& p : loft.design.parts[2].outline)
    if (p.y > 1) p.y -= 100 * u(random);
  loft.room.walls[1].lean = 0.01 * (u(random) - 0.5);
  return loft;
}

}  // namespace

TEST_CASE("safety: a mirrored design in a mirrored room has the mirrored cautions", "[property]") {
  std::mt19937 random(5);
  INFO("seed 5");
  for (int round = 0; round < 20; ++round) {
    const Loft loft = chance_loft(random);
    const SafetyAnswer answer = loft.answer(), other = mirrored(loft).answer();
    CHECK(answer.verdict == other.verdict);
    CHECK(difference(swapped(told(answer)), told(other)) == "");
    CHECK(difference(told(other), swapped(told(answer))) == "");
  }
}

TEST_CASE("safety: the same input has the same answer, worst first") {
  std::mt19937 random(9);
  const Loft loft = chance_loft(random);
  const SafetyAnswer answer = loft.answer();
  CHECK(told(answer) == told(loft.answer()));
  CHECK(std::is_sorted(answer.cautions.begin(), answer.cautions.end(),
                       [](const Caution& a, const Caution& b) { return a.severity > b.severity; }));
}

TEST_CASE("safety: the verdict is that of the worst caution") {
  CHECK(pierced(6, 6).answer().verdict == Verdict::does_not_fit);
  Loft sound = platform(42, 38);
  sound.screw("front", "left wall");
  sound.screw("side", "right wall");
  CHECK(sound.answer().verdict == Verdict::fits);
}

TEST_CASE("safety: a limit within the plus-or-minus is a caution that cannot be told") {
  // The gap between panel and wall is 3.5 in, give or take 1/4: the panel is in its drawn place.
  Loft loft = platform(42, 38);
  loft.screw("front", "left wall");
  loft.screw("side", "right wall");
  loft.design.parts[1].place_in_room.at.y = 3.5 * kMillimetresPerInch;
  loft.board("cap", 37, 20, {46, 0, 60}, "+y", "+z");
  std::mt19937 random(3);
  std::normal_distribution<double> off(0, 3);
  for (int k = 0; k < 100; ++k) {
    loft.draws.push_back(loft.room);
    loft.draws.back().walls[0].start.y += off(random);
  }
  const SafetyAnswer answer = loft.answer();
  const auto trap = find(answer, "head-trap");
  REQUIRE(trap);
  CHECK(trap->severity == Severity::caution);
  CHECK_FALSE(trap->decided);
  CHECK_THAT(trap->value->sd, Catch::WithinAbs(3, 0.7));
  CHECK(answer.verdict == Verdict::cannot_tell);
  const std::string text = spoken(trap->text, usual_rounding(Unit::inch));
  CHECK(text.find("Cannot tell") != std::string::npos);
  CHECK(text.find("give or take") != std::string::npos);
}

TEST_CASE("safety: a piece that goes with the wall in each draw keeps its gap surely") {
  Loft loft;
  loft.use(User::child, 6, 8, Purpose::play);
  loft.board("panel", 30, 60, {60, 0.375, 0}, "+y", "+z");  // 9.5 mm off the left wall
  FitAnswer fit;
  std::mt19937 random(4);
  std::normal_distribution<double> off(0, 3);
  for (int k = 0; k < 60; ++k) {
    const double moved = off(random);
    loft.draws.push_back(loft.room);
    loft.draws.back().walls[0].start.y += moved;
    Frame frame = pieces_of(loft.design)[0].frame;
    frame.at.y += moved;
    fit.frames_in_draws.push_back({frame});
  }
  const auto alone = find(loft.answer(), "finger-gap"),
             fitted = find(loft.answer(&fit), "finger-gap");
  REQUIRE(alone);
  CHECK_FALSE(alone->decided);
  CHECK_THAT(alone->value->sd, Catch::WithinAbs(3, 0.8));
  REQUIRE(fitted);
  CHECK(fitted->decided);
  CHECK_THAT(fitted->value->sd, Catch::WithinAbs(0, 1e-9));
}

TEST_CASE("safety: a panel that the fit says will sink guards less by as much") {
  Loft loft = platform(42, 38);
  FitAnswer fit;
  FloorFit front;
  front.piece = 1;
  front.part = "front";
  front.squash_mm = front.squash_least_mm = front.squash_most_mm = 9.5;
  fit.floor.push_back(front);
  const auto low = find(loft.answer(&fit), "guard-low");
  REQUIRE(low);
  CHECK(low->where == "deck, edge away from the right wall");
  CHECK_THAT(low->value->value, Catch::WithinAbs(38 * 25.4 - 9.5, 1e-6));
  CHECK_FALSE(find(loft.answer(), "guard-low"));
}

TEST_CASE("safety: without a room only what does not need it is said, and that it lacks") {
  const Loft loft = platform(42, 37);
  const auto pieces = pieces_of(loft.design);
  std::vector<Frame> frames;
  for (const Piece& piece : pieces) frames.push_back(piece.frame);
  const RoomShape none;
  const SafetyAnswer answer =
      safety({loft.survey, loft.design, none, {}, pieces, frames, nullptr, false, 0.95});
  CHECK(severity_of(answer, "room-not-known") == "caution");
  CHECK(severity_of(answer, "guard-low") == "danger");
  CHECK_FALSE(find(answer, "guard-missing"));  // a wall may be there
}

TEST_CASE("safety: every caution is of the table and has a source") {
  std::mt19937 random(1);
  for (int round = 0; round < 5; ++round)
    for (const Caution& caution : chance_loft(random).answer().cautions) {
      INFO(caution.id);
      CHECK(caution_kind(caution.id).id == caution.id);
      CHECK_FALSE(caution.source.empty());
      CHECK_FALSE(caution.where.empty());
    }
}

TEST_CASE("safety: a foot of which no load is known sinks as the fit lets it") {
  Loft loft = platform(42, 38);
  loft.survey.floor.covering = Covering{"carpet", inches(0.625), {}};
  loft.survey.floor.squash.push_back({800, {inches(3), inches(1.25)}, inches(0.375), {}});
  loft.design.feet.push_back({"front", {}, {}});
  const auto pieces = pieces_of(loft.design);
  std::vector<Frame> frames;
  for (const Piece& piece : pieces) frames.push_back(piece.frame);
  const SafetyInput input{loft.survey, loft.design, loft.room, {}, pieces, frames};
  const Measured sunk = safe::scene_of(input).sink[1];
  const SquashRange range = squash_untold(loft.survey.floor);
  CHECK(range.most > range.likely);
  CHECK(sunk.value == range.likely);
  CHECK_THAT(sunk.sd, Catch::WithinAbs((range.most - range.least) / std::sqrt(12.0), 1e-9));
}

}  // namespace nook::test

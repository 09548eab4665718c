// Adapts the three samples to rooms like theirs, made up by chance and measured with errors.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <iostream>
#include <set>
#include <sstream>

#include "brute_force.h"
#include "fit/fit.h"
#include "job/job.h"
#include "shrunk.h"
#include "varied_room.h"

using namespace nook;
using namespace nook::test;

namespace {

constexpr int kDraws = 100;

// How often each verdict came out, and what it took.
struct Score {
  int rooms = 0, fits = 0, cannot_tell = 0, does_not_fit = 0, drawn_fits = 0, drawn_does_not = 0;
  int changes = 0, sized = 0, larger = 0, said = 0, confirmed = 0;

  std::string told() const {
    return fmt::format(
        "{} rooms: as drawn {} fit, {} do not; adapted {} fit, {} cannot tell, {} do not; {} "
        "changes, {} of {} sizes larger than needed; {} of {} contradictions confirmed",
        rooms, drawn_fits, drawn_does_not, fits, cannot_tell, does_not_fit, changes, larger, sized,
        confirmed, said);
  }
};

int count(const FitAnswer& fit, Verdict verdict) {
  int n = 0;
  for (const auto& c : fit.contacts) n += c.verdict == verdict;
  for (const auto& c : fit.clashes) n += c.verdict == verdict;
  for (const auto& c : fit.clearances) n += c.verdict == verdict;
  for (const auto& c : fit.covered) n += c.verdict == verdict;
  for (const auto& g : fit.groups) n += verdict == Verdict::cannot_tell && g.still_moves_mm > 0;
  return n;
}

std::string told(const std::vector<Change>& changes) {
  std::string text;
  for (const Change& c : changes)
    text += fmt::format("{}: {} {} ({})\n", c.part, c.kind, c.after, c.why);
  return text;
}

bool is_rungs(const std::string& text) {
  return text.find("the last step") != std::string::npos;
}

// Parts and groups that were moved or cut straight, and not otherwise.
std::set<std::string> sized_only(const AdaptAnswer& answer) {
  const std::set<std::string> sized{"move", "trim", "lengthen", "left wild"};
  std::set<std::string> names, others;
  for (const Change& change : answer.changes)
    (sized.count(change.kind) && !is_rungs(change.why) ? names : others).insert(change.part);
  for (const std::string& name : others) names.erase(name);
  return names;
}

// Whether a change set back by more than 1/16 in and the mark it was rounded to does as well.
void check_sizes(const MeasuredRoom& room, const Design& before, const Design& after,
                 const AdaptAnswer& answer, Score& score) {
  const double less = kMillimetresPerInch / 16 + usual_rounding(after.units).step.mm + 0.01;
  const std::set<std::string> names = sized_only(answer);
  for (int p = 0; p < static_cast<int>(after.parts.size()); ++p) {
    const Part& part = after.parts[p];
    if (!names.count(part.name) && !names.count(part.group)) continue;
    if (changed_by(before, after, p) <= less) continue;
    const Design smaller = set_back(before, after, p, less);
    const FitAnswer fitted = fit({room.survey, smaller, room.room, room.draws, 0.95, true});
    INFO(part.name << ", set back by " << less << " mm, after\n" << told(answer.changes));
    const bool larger = as_well(fitted, answer.fit);
    CHECK_FALSE(larger);
    ++score.sized;
    score.larger += larger;
  }
}

int contradictions(const AdaptAnswer& answer) {
  int n = 0;
  for (const Contradiction& c : answer.contradictions) n += !is_rungs(c.wish);
  return n;
}
int open(const AdaptAnswer& answer) {
  int n = 0;
  for (const std::string& text : answer.open) n += !is_rungs(text);
  return n;
}

void adapt_one(const std::string& name, int seed, Score& score) {
  INFO(name << ", seed " << seed);
  const MeasuredRoom room = varied_room(name, seed, kDraws);
  REQUIRE(room.complete);
  const std::string text = source_file("rooms/" + name + "/design.toml");
  const Design before = *parse_design(text, "design.toml");
  const FitAnswer drawn = fit({room.survey, before, room.room, room.draws, 0.95, true});
  const AdaptAnswer answer = adapted(room, text);
  const auto after = parse_design(answer.draft.text, "design.toml");
  REQUIRE(after.has_value());
  const FitAnswer again = fit({room.survey, *after, room.room, room.draws, 0.95, true});
  CHECK(again.verdict == answer.fit.verdict);
  CHECK(count(again, Verdict::does_not_fit) == contradictions(answer));
  CHECK(count(again, Verdict::cannot_tell) == open(answer));
  CHECK(count(again, Verdict::does_not_fit) <= count(drawn, Verdict::does_not_fit));
  CHECK(adapted(room, answer.draft.text).draft.text == answer.draft.text);
  check_sizes(room, before, *after, answer, score);
  ++score.rooms;
  score.fits += again.verdict == Verdict::fits;
  score.cannot_tell += again.verdict == Verdict::cannot_tell;
  score.does_not_fit += again.verdict == Verdict::does_not_fit;
  score.drawn_fits += drawn.verdict == Verdict::fits;
  score.drawn_does_not += drawn.verdict == Verdict::does_not_fit;
  score.changes += static_cast<int>(answer.changes.size());
  const std::string settled = settled_by_brute_force(room, *after, again);
  score.said += again.verdict == Verdict::does_not_fit;
  score.confirmed += again.verdict == Verdict::does_not_fit && settled.empty();
  CHECK(settled == "");
}

constexpr const char* kSamples[] = {"lookout", "window-bench", "corner-desk"};

void adapt_rooms(const std::string& name, int first, int rooms) {
  Score score;
  for (int seed = first; seed < first + rooms; ++seed) adapt_one(name, seed, score);
  std::cout << name << ", " << score.told() << std::endl;
}

}  // namespace

// ADAPT_ROOMS='lookout 12 3': rooms 12 to 14 of that sample; 0 is its own room.
TEST_CASE("adapt: the rooms that ADAPT_ROOMS names", "[.rooms]") {
  const char* named = std::getenv("ADAPT_ROOMS");
  REQUIRE(named != nullptr);
  std::istringstream words(named);
  std::string name;
  int first = 1, rooms = 1;
  words >> name >> first >> rooms;
  adapt_rooms(name, first, rooms);
}

TEST_CASE("adapt: samples in rooms like theirs fit, cannot tell, or contradict themselves",
          "[property][release]") {
  for (const char* name : kSamples) adapt_rooms(name, 1, 4);
}

TEST_CASE("adapt: the lookout in a hundred rooms", "[property][.full]") {
  adapt_rooms("lookout", 1, 100);
}

TEST_CASE("adapt: the window bench in a hundred rooms", "[property][.full]") {
  adapt_rooms("window-bench", 1, 100);
}

TEST_CASE("adapt: the corner desk in a hundred rooms", "[property][.full]") {
  adapt_rooms("corner-desk", 1, 100);
}

TEST_CASE("adapt: samples in three hundred rooms like theirs", "[property][.full]") {
  for (const char* name : kSamples) adapt_rooms(name, 1001, 300);
}

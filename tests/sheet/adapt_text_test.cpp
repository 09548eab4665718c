// The words of an adaptation: changes, wishes that contradict each other, what stays open.
#include "sheet/adapt_text.h"

#include <catch2/catch.hpp>
#include <string>

using namespace nook;

namespace {

constexpr double kIn = kMillimetresPerInch;

std::string page_of(const AdaptAnswer& answer, const std::string& reading = "") {
  Style style;
  style.rounding = usual_rounding(Unit::inch);
  return adapt_text(answer, "desk-adapted", reading, style);
}

// Whether the page says so, wherever its lines are broken.
void says(const std::string& page, const std::string& words) {
  std::string text;
  for (const char c : page)
    if (c != '\n' && c != ' ')
      text += c;
    else if (!text.empty() && text.back() != ' ')
      text += ' ';
  CHECK_THAT(text, Catch::Contains(words));
}

Contradiction wish(const std::string& against, double by) {
  return {"shelf: a gap of 1/2\" at the left wall, 1/8\" may be", against, by, "taper", "shelf"};
}

}  // namespace

TEST_CASE("adapt text: what settles one wish and spoils another is told with its figure") {
  AdaptAnswer answer;
  answer.fit.verdict = Verdict::does_not_fit;
  answer.contradictions = {wish("rail: 3/4\" from the ladder, 1\" must be", kIn / 4)};
  const std::string page = page_of(answer);
  says(page, "These wishes contradict each other:");
  says(page, "shelf: a gap of 1/2\" at the left wall, 1/8\" may be");
  says(page,
       "what settles it (shelf, taper) spoils another by 1/4\": rail: 3/4\" from the ladder, 1\" "
       "must be");
  CHECK(page.find("Each finding holds by itself") == std::string::npos);
}

TEST_CASE("adapt text: without a figure none is made up") {
  AdaptAnswer answer;
  answer.fit.verdict = Verdict::does_not_fit;
  answer.contradictions = {wish("rail: its end shows", 0)};
  const std::string page = page_of(answer);
  says(page, "(shelf, taper) spoils another: rail: its end shows");
  CHECK(page.find(" by ") == std::string::npos);
}

TEST_CASE("adapt text: a wish that no work here settles says so, and by how much it is missed") {
  AdaptAnswer answer;
  answer.fit.verdict = Verdict::does_not_fit;
  answer.contradictions = {wish("", 0)};
  says(page_of(answer), "nothing that may be moved, cut or covered here settles it");
  answer.contradictions = {wish("", 3 * kIn / 8)};
  says(page_of(answer),
       "nothing that may be moved, cut or covered here settles it; it is missed by 3/8\"");
}

TEST_CASE("adapt text: each change has its part, before, after and reason") {
  AdaptAnswer answer;
  answer.fit.verdict = Verdict::fits;
  CHECK(page_of(answer).find("Nothing was changed.") != std::string::npos);
  answer.changes = {{"shelf", "size", "it overlaps the right wall", "46\"", "45 7/8\""}};
  const std::string page = page_of(answer);
  says(page, "shelf, size: 46\" -> 45 7/8\" it overlaps the right wall");
  says(page, "The new job is in desk-adapted. Holes, the way in and");
  CHECK(page.find("Nothing was changed") == std::string::npos);
}

TEST_CASE("adapt text: what the readings leave open names the reading that settles it") {
  AdaptAnswer answer;
  answer.fit.verdict = Verdict::cannot_tell;
  answer.fit.chance = 0.939;
  says(page_of(answer, "the diagonal again"),
       "all at once hold in 93 of 100 rooms that read like this one. Take this reading: the "
       "diagonal again");
  answer.open = {"shelf, back edge: 90 in 100"};
  const std::string page = page_of(answer);
  says(page, "The readings do not decide: shelf, back edge: 90 in 100");
  CHECK(page.find("Each finding holds") == std::string::npos);
}

TEST_CASE("adapt text: no line is wider than a page, however long the wishes") {
  AdaptAnswer answer;
  answer.fit.verdict = Verdict::does_not_fit;
  const std::string word = "a very long wish about the front guard rail and its upper edge, ";
  answer.contradictions = {{word + word + word, word + word, 2, "scribe", "guard rail of the bed"}};
  const std::string page = page_of(answer);
  for (std::size_t at = 0; at < page.size();) {
    const std::size_t end = page.find('\n', at);
    CHECK(end - at <= 80);
    at = end + 1;
  }
}

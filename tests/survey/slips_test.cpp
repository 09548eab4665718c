// What a reading would have been without a slip: by hand, in either system of units.
#include "survey/slips.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "base/length.h"

using namespace nook;

namespace {

constexpr double kInch = 25.4;

Observation reading(const std::string& given, double mm) {
  Observation out;
  out.given = given;
  out.value = mm;
  return out;
}

Survey in(Unit unit) {
  Survey survey;
  survey.units = unit;
  return survey;
}

bool says(const std::vector<Slip>& slips, double meant, const std::string& words) {
  return std::any_of(slips.begin(), slips.end(), [&](const Slip& slip) {
    return slip.words == words && std::abs(slip.meant - meant) < 1e-9;
  });
}

bool any(const std::vector<Slip>& slips, const std::string& part) {
  return std::any_of(slips.begin(), slips.end(),
                     [&](const Slip& slip) { return slip.words.find(part) != std::string::npos; });
}

}  // namespace

TEST_CASE("slips: an inch reading may be an inch, a foot or an eighth out", "[reference]") {
  const auto found = slips(in(Unit::inch), reading("41 3/8", 41.375 * kInch));
  CHECK(says(found, 40.375 * kInch, "a burned inch not taken off"));
  CHECK_FALSE(says(found, 42.375 * kInch, "a burned inch not taken off"));  // never the other way
  CHECK(says(found, 42.375 * kInch, "a whole inch misread"));
  CHECK(says(found, 53.375 * kInch, "a foot lost"));
  CHECK(says(found, 41.25 * kInch, "1/8 read for 1/4, or the like"));
  CHECK(says(found, 413.75 * kInch, "the decimal point slipped"));
}

TEST_CASE("slips: a metric reading has metric ones, whatever the file is in", "[reference]") {
  const auto found = slips(in(Unit::inch), reading("104.2 cm", 1042));
  CHECK(says(found, 942, "10 cm burned and not taken off"));
  CHECK(says(found, 1052, "a centimeter misread"));
  CHECK(says(found, 2042, "a meter lost"));
  CHECK_FALSE(any(found, "inch"));
  CHECK(any(slips(in(Unit::mm), reading("1042", 1042)), "10 cm burned"));
}

TEST_CASE("slips: digits that look alike or change places, as they were typed", "[reference]") {
  const auto found = slips(in(Unit::inch), reading("61 3/8", 61.375 * kInch));
  CHECK(says(found, 91.375 * kInch, "a 9 read as a 6"));
  CHECK(says(found, 67.375 * kInch, "a 7 read as a 1"));
  CHECK(says(found, 16.375 * kInch, "two digits swapped (16 3/8)"));
  CHECK_FALSE(any(slips(in(Unit::inch), reading("44", 44 * kInch)), "swapped"));
}

TEST_CASE("slips: the other end of a gap or a wall, and the board", "[reference]") {
  Observation taken = reading("6", 6);
  const Survey survey = in(Unit::mm);
  CHECK_FALSE(any(slips(survey, taken), "end"));
  taken.two_ended = true;
  taken.counted_from = 2000;
  taken.board = 15;
  const auto found = slips(survey, taken);
  CHECK(says(found, -6, "the gap is at the other end"));
  CHECK(says(found, 1994, "counted from the other end of the wall"));
  CHECK(says(found, 21, "taken on the baseboard"));
}

TEST_CASE("slips: an angle finder has none of a tape's") {
  Observation angle = reading("91.3", 1.5935);
  angle.blade = 300;
  CHECK(slips(in(Unit::inch), angle).empty());
}

TEST_CASE("slips: a unit typed that the file does not use", "[reference]") {
  CHECK(says(slips(in(Unit::inch), reading("40 cm", 400)), 40 * kInch, "the unit mistyped (40)"));
  CHECK(says(slips(in(Unit::mm), reading("40 in", 40 * kInch)), 40, "the unit mistyped (40)"));
  CHECK_FALSE(any(slips(in(Unit::inch), reading("40", 40 * kInch)), "unit"));
  CHECK_FALSE(any(slips(in(Unit::cm), reading("40 mm", 40)), "unit"));
}

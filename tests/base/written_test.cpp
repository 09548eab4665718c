// Printed lengths read back to the same value.
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "base/notation.h"

using namespace nook;

namespace {

struct Printed {
  Length value;
  Rounding rounding;
  std::string text;
};

// Prints a random length and reads it back: within half a step, and printing again changes nothing.
void check_round_trip(std::mt19937_64& random, Rounding rounding) {
  std::uniform_real_distribution<double> exponent(-3, 5);
  std::bernoulli_distribution minus(0.5);
  const Length value{std::pow(10, exponent(random)) * (minus(random) ? -1 : 1)};
  const std::string text = written(value, rounding);
  const auto read = read_length(text, rounding.unit, rounding.step);
  const auto with = read_length(with_unit(value, rounding), Unit::cm, rounding.step);
  const bool near =
      read && std::abs(read->value.mm - value.mm) <= rounding.step.mm / 2 * (1 + 1e-9) + 1e-12;
  const bool same =
      read && with && with->value == read->value && written(read->value, rounding) == text;
  if (!near || !same || text.starts_with("-0 ") || text == "-0") {
    INFO("value " << value.mm << " step " << rounding.step.mm << " text " << text);
    FAIL("does not read back");
  }
}

const Rounding kRoundings[] = {
    {Unit::inch, inches(1.0 / 16)}, {Unit::inch, inches(1.0 / 32)}, {Unit::inch, inches(1.0 / 64)},
    {Unit::inch, inches(1.0 / 2)},  {Unit::inch, inches(1)},        {Unit::inch, inches(0.01)},
    {Unit::mm, millimetres(1)},     {Unit::mm, millimetres(0.5)},   {Unit::mm, millimetres(0.01)},
    {Unit::cm, millimetres(1)},     {Unit::cm, millimetres(0.5)},   {Unit::mm, millimetres(5)}};

void check_many(int each, unsigned seed) {
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  for (const Rounding& rounding : kRoundings)
    for (int i = 0; i < each; ++i) check_round_trip(random, rounding);
  SUCCEED();
}

}  // namespace

TEST_CASE("written: lengths as they are said") {
  const Rounding sixteenth = usual_rounding(Unit::inch);
  const std::vector<Printed> table = {
      {inches(41.375), sixteenth, "41 3/8"},
      {inches(15.0 / 16), sixteenth, "15/16"},
      {inches(1.3125), sixteenth, "1 5/16"},
      {inches(-1.375), sixteenth, "-1 3/8"},
      {inches(41), sixteenth, "41"},
      {inches(41.99), sixteenth, "42"},
      {inches(0.01), sixteenth, "0"},
      {inches(-0.01), sixteenth, "0"},
      {inches(41.4), {Unit::inch, inches(1.0 / 32)}, "41 13/32"},
      {inches(41.26), {Unit::inch, inches(0.1)}, "41.3"},
      {millimetres(1042.4), usual_rounding(Unit::mm), "1042"},
      {millimetres(-1042.5), usual_rounding(Unit::mm), "-1043"},
      {millimetres(1042.3), {Unit::mm, millimetres(0.5)}, "1042.5"},
      {millimetres(1042), usual_rounding(Unit::cm), "104.2"},
      {millimetres(1040), usual_rounding(Unit::cm), "104.0"},
      {millimetres(1043), {Unit::mm, millimetres(5)}, "1045"},
  };
  for (const Printed& printed : table) {
    INFO(printed.value.mm);
    CHECK(written(printed.value, printed.rounding) == printed.text);
  }
}

TEST_CASE("written: with its unit") {
  CHECK(with_unit(inches(41.375), usual_rounding(Unit::inch)) == "41 3/8\"");
  CHECK(with_unit(millimetres(1042), usual_rounding(Unit::mm)) == "1042 mm");
  CHECK(with_unit(millimetres(1042), usual_rounding(Unit::cm)) == "104.2 cm");
}

TEST_CASE("written: a plus-or-minus is rounded up and never down to nothing") {
  const Rounding sixteenth = usual_rounding(Unit::inch);
  CHECK(give_or_take(inches(1.0 / 16), sixteenth) == "1/16\"");
  CHECK(give_or_take(inches(1.01 / 16), sixteenth) == "1/8\"");
  CHECK(give_or_take(inches(0.6 / 16), sixteenth) == "1/16\"");
  CHECK(give_or_take(inches(0.4 / 16), sixteenth) == "under 1/16\"");
  CHECK(give_or_take({}, sixteenth) == "under 1/16\"");
  CHECK(give_or_take(millimetres(1.2), usual_rounding(Unit::mm)) == "2 mm");
}

TEST_CASE("written: thousands of lengths read back to the same value", "[property]") {
  check_many(2'000, 20240601);
}

TEST_CASE("written: a million lengths read back to the same value", "[property][release]") {
  check_many(1'000'000 / 12 + 1, 20240602);
}

// Readings as said on site: what each text means, and where each fault stands.
#include "base/notation.h"

#include <catch2/catch.hpp>
#include <random>
#include <string>
#include <vector>

using namespace nook;

namespace {

constexpr double kInch = 25.4;
const Length kSixteenth = inches(1.0 / 16);

double mm(const std::string& text, Unit unit = Unit::inch, Length mark = kSixteenth) {
  const auto read = read_length(text, unit, mark);
  INFO(text << ": " << (read ? "" : read.error().what));
  REQUIRE(read);
  return read->value.mm;
}

NotationFault fault(const std::string& text, Unit unit = Unit::inch) {
  INFO(text);
  const auto read = read_length(text, unit, kSixteenth);
  REQUIRE_FALSE(read);
  return read.error();
}

struct Said {
  std::string text;
  double inches;
};
struct Wrong {
  std::string text;
  int at, width;
  std::string code;
};

}  // namespace

TEST_CASE("notation: inches as they are said") {
  const std::vector<Said> table = {
      {"41 3/8", 41.375},
      {"41-3/8\"", 41.375},
      {"41-3/8", 41.375},
      {"41.375", 41.375},
      {"41", 41},
      {".5", 0.5},
      {"0", 0},
      {"3/8", 0.375},
      {"15/16", 0.9375},
      {"1 5/16", 1.3125},
      {"3' 5 3/8\"", 41.375},
      {"3' 5 3/8", 41.375},
      {"3'5 3/8\"", 41.375},
      {"3'-5 3/8\"", 41.375},
      {"3' - 5 3/8\"", 41.375},
      {"3 ft 5 3/8 in", 41.375},
      {"3ft 5.375in.", 41.375},
      {"3'", 36},
      {"3 feet", 36},
      {"3.5 ft", 42},
      {"1/2 ft", 6},
      {"0' 5\"", 5},
      {"41 3/8 IN", 41.375},
      {"  41   3/8  ", 41.375},
      {"41 3 / 8", 41.375},
      {"41''", 41},
      {"41 24/32", 41.75},
      {"41 0/16", 41},
      {"1/3", 1.0 / 3},
      {"1/100", 0.01},
  };
  for (const Said& said : table) {
    INFO(said.text);
    CHECK(mm(said.text) == Approx(said.inches * kInch).epsilon(1e-15));
  }
}

TEST_CASE("notation: fractions, primes, dashes and spaces of Unicode") {
  const std::vector<Said> table = {
      {"41 ⅜", 41.375},
      {"41⅜", 41.375},
      {"41-⅜", 41.375},
      {"⅞", 0.875},
      {"½", 0.5},
      {"¼", 0.25},
      {"¾", 0.75},
      {"⅛", 0.125},
      {"⅝", 0.625},
      {"⅓", 1.0 / 3},
      {"⅔", 2.0 / 3},
      {"⅕", 0.2},
      {"⅖", 0.4},
      {"⅗", 0.6},
      {"⅘", 0.8},
      {"⅙", 1.0 / 6},
      {"⅚", 5.0 / 6},
      {"⅐", 1.0 / 7},
      {"⅑", 1.0 / 9},
      {"⅒", 0.1},
      {"↉", 0},
      {"41 3⁄8", 41.375},
      {"41 3∕8", 41.375},
      {"41 ³⁄₈", 41.375},
      {"41³/₈", 41.375},
      {"¹⁵⁄₁₆", 0.9375},
      {"⅟₁₆", 0.0625},
      {"3′ 5 3/8″", 41.375},
      {"3’ 5 3/8”", 41.375},
      {"3‘ 5“", 41},
      {"−1 3/8", -1.375},
      {"–30", -30},
      {"41\u00a03/8", 41.375},
      {"41\u20093/8", 41.375},
      {"3′5′′", 41},
      {"41‑3/8", 41.375},
  };
  for (const Said& said : table) {
    INFO(said.text);
    CHECK(mm(said.text) == Approx(said.inches * kInch).epsilon(1e-15).margin(1e-15));
  }
}

TEST_CASE("notation: metric readings, whatever the file's unit") {
  for (const Unit unit : {Unit::inch, Unit::mm, Unit::cm}) {
    CHECK(mm("104.2 cm", unit) == Approx(1042).epsilon(1e-15));
    CHECK(mm("104.2cm", unit) == Approx(1042).epsilon(1e-15));
    CHECK(mm("1042 mm", unit) == 1042);
    CHECK(mm("1.042 m", unit) == Approx(1042).epsilon(1e-15));
  }
}

TEST_CASE("notation: a bare number takes the file's unit") {
  CHECK(mm("12", Unit::inch) == Approx(304.8));
  CHECK(mm("12", Unit::mm) == 12);
  CHECK(mm("12.5", Unit::cm) == 125);
}

TEST_CASE("notation: signs, and never minus zero") {
  CHECK(mm("+6 1/4") == Approx(6.25 * kInch));
  CHECK(mm("-30") == Approx(-30 * kInch));
  CHECK(mm("- 30") == Approx(-30 * kInch));
  CHECK_FALSE(std::signbit(mm("-0")));
  CHECK_FALSE(std::signbit(mm("-0 0/16")));
}

TEST_CASE("notation: strong and shy are half of the smallest mark") {
  for (const std::string word : {"strong", "heavy", "full", "STRONG"})
    CHECK(mm("41 3/8 " + word) == Approx((41.375 + 1.0 / 32) * kInch).epsilon(1e-15));
  for (const std::string word : {"shy", "light", "scant"})
    CHECK(mm("41 3/8 " + word) == Approx((41.375 - 1.0 / 32) * kInch).epsilon(1e-15));
  CHECK(mm("41 3/8 shy", Unit::inch, inches(1.0 / 32)) == Approx((41.375 - 1.0 / 64) * kInch));
  CHECK(mm("1042 strong", Unit::mm, millimetres(1)) == 1042.5);
  CHECK(mm("104.2 strong", Unit::cm, millimetres(2)) == Approx(1043));
}

TEST_CASE("notation: a reading in the other system has 1/16 in or 1 mm as its smallest mark") {
  CHECK(mm("104.2 cm strong", Unit::inch, inches(0.25)) == Approx(1042.5));
  CHECK(mm("41 in shy", Unit::mm, millimetres(5)) == Approx((41 - 1.0 / 32) * kInch));
}

TEST_CASE("notation: strong on a negative reading is further from zero") {
  CHECK(mm("-3 strong") == Approx(-(3 + 1.0 / 32) * kInch));
}

TEST_CASE("notation: a burned mark is taken off") {
  CHECK(mm("42 3/8 burned 1") == Approx(41.375 * kInch));
  CHECK(mm("42 3/8 burned 1 in") == Approx(41.375 * kInch));
  CHECK(mm("42 3/8\" burned 1\"") == Approx(41.375 * kInch));
  CHECK(mm("114.2 cm burned 10 cm") == Approx(1042));
  CHECK(mm("114.2 cm burned 10") == Approx(1042));
  CHECK(mm("1142 burned 100", Unit::mm) == 1042);
  CHECK(mm("1142 burned 10 cm", Unit::mm) == 1042);
  CHECK(mm("4 ft burned 1") == Approx(47 * kInch));
  CHECK(mm("42 3/8 strong burned 1") == Approx((41.375 + 1.0 / 32) * kInch));
  CHECK(mm("42 3/8 burned 1 strong") == Approx((41.375 + 1.0 / 32) * kInch));
  CHECK(read_length("42 burned 1", Unit::inch, kSixteenth)->burned);
  CHECK_FALSE(read_length("42", Unit::inch, kSixteenth)->burned);
}

TEST_CASE("notation: each fault has its place in characters and its code") {
  const std::vector<Wrong> table = {
      {"", 0, 1, "empty-reading"},
      {"   ", 3, 1, "empty-reading"},
      {"abc", 0, 3, "not-a-reading"},
      {"41,375", 2, 1, "decimal-comma"},
      {"1,042 mm", 1, 1, "decimal-comma"},
      {"41 3/0", 3, 3, "bad-fraction"},
      {"41 9/8", 3, 3, "bad-fraction"},
      {"5/4", 0, 3, "bad-fraction"},
      {"41 3/61", 3, 4, "bad-fraction"},
      {"41 3/7", 3, 3, "bad-fraction"},
      {"3/9", 0, 3, "bad-fraction"},
      {"5/11", 0, 4, "bad-fraction"},
      {"41 3/", 5, 1, "bad-fraction"},
      {"41.5 3/8", 5, 1, "bad-fraction"},
      {"41 1.5/8", 3, 5, "bad-fraction"},
      {"41 3/8 3", 7, 1, "not-a-reading"},
      {"41 38", 3, 2, "not-a-reading"},
      {"41 -3/8", 3, 1, "not-a-reading"},
      {"41 - 3/8", 3, 1, "not-a-reading"},
      {"41.", 2, 1, "not-a-reading"},
      {"--3", 1, 1, "not-a-reading"},
      {"41 3/8 stong", 7, 5, "unknown-unit"},
      {"41 yd", 3, 2, "unknown-unit"},
      {"41 3/8 strong shy", 14, 3, "not-a-reading"},
      {"41 3/8 burned", 7, 6, "burned-mark"},
      {"3/8 burned 1", 4, 6, "burned-mark"},
      {"41 burned 1 burned 1", 12, 6, "not-a-reading"},
      {"3.5' 2\"", 0, 3, "not-a-reading"},
      {"3' 13\"", 3, 2, "not-a-reading"},
      {"3' 5 cm", 5, 2, "unknown-unit"},
      {"3' -", 4, 1, "not-a-reading"},
      {"41 3/8 cm", 0, 6, "fraction-in-metric"},
      {"41⅜ cm", 0, 3, "fraction-in-metric"},
      {"1e3", 1, 1, "unknown-unit"},
      {"nan", 0, 3, "not-a-reading"},
      {"inf", 0, 3, "not-a-reading"},
      {"100001 m", 0, 8, "absurd-length"},
      {"41 ⅜ ?", 5, 1, "not-a-reading"},
      {"\xff", 0, 1, "not-utf8"},
      {"41\n3/8", 2, 1, "not-a-reading"},
  };
  for (const Wrong& wrong : table) {
    const NotationFault found = fault(wrong.text);
    CHECK(found.at == wrong.at);
    CHECK(found.width == wrong.width);
    CHECK(found.code == wrong.code);
    CHECK_FALSE(found.what.empty());
    CHECK_FALSE(found.help.empty());
  }
}

TEST_CASE("notation: a fraction in a metric file is refused, not read as millimeters") {
  CHECK(fault("41 3/8", Unit::mm).code == "fraction-in-metric");
  CHECK(mm("41 3/8 in", Unit::mm) == Approx(41.375 * kInch));
}

TEST_CASE("notation: inches with the stroke of feet are asked about, spelled feet are taken") {
  for (const char* text : {"24 1/8'", "24 1/8′", "3/4'", "24⅛' strong"})
    CHECK(fault(text).code == "fraction-of-foot");
  CHECK(mm("24 1/8 ft") == Approx(24.125 * 12 * kInch));
  CHECK(mm("8.5'") == Approx(8.5 * 12 * kInch));
  CHECK(mm("8'") == Approx(8 * 12 * kInch));
  CHECK(fault("3 1/2' 2\"").code == "not-a-reading");
}

TEST_CASE("notation: a misspelt remark gets the nearest one") {
  CHECK(fault("41 3/8 stong").help == "did you mean 'strong'?");
  CHECK(fault("41 inchs").help == "did you mean 'inch'?");
}

TEST_CASE("notation: four hundred digits are absurd, not infinite") {
  CHECK(fault(std::string(400, '9')).code == "absurd-length");
  CHECK(fault("100000001 mm").code == "absurd-length");
  CHECK(mm("1000000 mm") == 1e6);
}

TEST_CASE("notation: any text ends in a length or in a fault inside the text", "[property]") {
  const unsigned seed = 4242;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  const std::vector<std::string> pieces = {
      "41",     "3/8",      "-", "'", "\"", "ft", " ", "⅜", ".",  "5", "cm", "strong",
      "burned", "burned 1", "/", "⁄", "³",  "₈",  ",", "+", "in", "x", "0",  "1/16"};
  int lengths = 0;
  for (int round = 0; round < 20000; ++round) {
    std::string text;
    int size = 0;
    for (int k = random() % 7; k >= 0; --k) text += pieces[random() % pieces.size()];
    for (const char c : text) size += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    const auto read = read_length(text, Unit::inch, kSixteenth);
    lengths += read.has_value();
    if (read ? std::isfinite(read->value.mm)
             : read.error().at >= 0 && read.error().width > 0 && read.error().at <= size &&
                   read.error().at + read.error().width <= size + 1)
      continue;
    FAIL("'" << text << "'");
  }
  CHECK(lengths > 1000);
  CHECK(lengths < 15000);
}

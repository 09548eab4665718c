// Slips of size, of digits in the reading as typed, and of which end was meant.
#include "survey/slips.h"

#include <cctype>
#include <cmath>

#include "base/notation.h"

namespace nook {
namespace {

// Rates of each slip, of all readings. Chosen.
constexpr double kBurned = 0.004, kWholeInch = 0.001, kFoot = 0.0007, kFraction = 0.0007,
                 kDigit = 0.001, kSwapped = 0.0005, kOtherEnd = 0.001, kBoard = 0.002,
                 kPoint = 0.0005, kGapEnd = 0.003, kUnit = 0.0005;

struct Text {
  const Survey& survey;
  const Observation& reading;

  std::optional<double> read(const std::string& text) const {
    const auto notation = read_length(text, survey.units, survey.tape.read_to);
    return notation ? std::optional(notation->value.mm) : std::nullopt;
  }
  bool metric() const {
    const auto notation = read_length(reading.given, survey.units, survey.tape.read_to);
    return notation ? notation->metric : survey.units != Unit::inch;
  }
};

void add_sizes(double value, bool metric, std::vector<Slip>& out) {
  const auto both = [&](double size, double rate, const std::string& words) {
    out.push_back({value - size, rate, words});
    out.push_back({value + size, rate, words});
  };
  if (metric) {
    out.push_back({value - 100, kBurned, "10 cm burned and not taken off"});
    both(100, kWholeInch, "10 cm misread");
    both(10, kWholeInch, "a centimeter misread");
    both(1000, kFoot, "a meter lost");
    return;
  }
  const double inch = kMillimetresPerInch;
  out.push_back({value - inch, kBurned, "a burned inch not taken off"});
  both(inch, kWholeInch, "a whole inch misread");
  both(12 * inch, kFoot, "a foot lost");
  both(inch / 8, kFraction, "1/8 read for 1/4, or the like");
  both(inch / 4, kFraction / 2, "a quarter misread");
  both(inch / 2, kFraction / 2, "a half lost");
}

// `a` typed for `b` or the other way round, anywhere in the text.
void add_lookalikes(const Text& text, char a, char b, std::vector<Slip>& out) {
  const std::string& given = text.reading.given;
  for (std::size_t i = 0; i < given.size(); ++i) {
    if (given[i] != a && given[i] != b) continue;
    std::string other = given;
    other[i] = given[i] == a ? b : a;
    if (const auto meant = text.read(other))
      out.push_back({*meant, kDigit, std::string("a ") + other[i] + " read as a " + given[i]});
  }
}

void add_swaps(const Text& text, std::vector<Slip>& out) {
  const std::string& given = text.reading.given;
  const auto digit = [&](std::size_t i) {
    return std::isdigit(static_cast<unsigned char>(given[i]));
  };
  for (std::size_t i = 0; i + 1 < given.size(); ++i) {
    if (!digit(i) || !digit(i + 1) || given[i] == given[i + 1]) continue;
    std::string other = given;
    std::swap(other[i], other[i + 1]);
    if (const auto meant = text.read(other))
      out.push_back({*meant, kSwapped, "two digits swapped (" + other + ")"});
  }
}

// A metric unit behind a figure that was read in inches, or the other way round.
void add_units(const Text& text, std::vector<Slip>& out) {
  const std::string& given = text.reading.given;
  const std::string figure = given.substr(0, given.find_last_of("0123456789") + 1);
  const bool metric = text.survey.units != Unit::inch;
  if (text.metric() == metric || figure.empty()) return;
  if (const auto meant = text.read(figure))
    out.push_back({*meant, kUnit, "the unit mistyped (" + figure + ")"});
}

void add_ends(const Observation& reading, std::vector<Slip>& out) {
  if (reading.two_ended && reading.value != 0)
    out.push_back({-reading.value, kGapEnd, "the gap is at the other end"});
  if (reading.counted_from > 0)
    out.push_back({reading.counted_from - reading.value, kOtherEnd,
                   "counted from the other end of the wall"});
  if (reading.board > 0)
    out.push_back({reading.value + reading.board, kBoard, "taken on the baseboard"});
}

}  // namespace

std::vector<Slip> slips(const Survey& survey, const Observation& reading) {
  std::vector<Slip> out;
  if (reading.blade > 0) return out;
  const Text text{survey, reading};
  add_sizes(reading.value, text.metric(), out);
  add_lookalikes(text, '6', '9', out);
  add_lookalikes(text, '1', '7', out);
  add_swaps(text, out);
  add_units(text, out);
  out.push_back({reading.value * 10, kPoint, "the decimal point slipped"});
  out.push_back({reading.value / 10, kPoint, "the decimal point slipped"});
  add_ends(reading, out);
  return out;
}

}  // namespace nook

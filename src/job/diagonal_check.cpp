// Refuses a diagonal that no corner can have, and names the slip it likely is.
#include <fmt/format.h>

#include <cmath>

#include "job/room_file.h"

namespace nook {
namespace {

// A figure as it may have been meant.
struct Meant {
  Length value;
  std::string how;
};

// Every figure that one slip of the pencil makes into the typed one.
std::vector<std::string> other_digits(const std::string& typed) {
  std::vector<std::string> others;
  for (std::size_t i = 0; i < typed.size(); ++i) {
    const auto digit = [&](std::size_t k) { return k < typed.size() && std::isdigit(typed[k]); };
    if (!digit(i)) continue;
    std::string other = typed;
    if (typed[i] == '6' || typed[i] == '9') {
      other[i] = typed[i] == '6' ? '9' : '6';
      others.push_back(other);
    }
    if (digit(i + 1)) {
      other = typed;
      std::swap(other[i], other[i + 1]);
      others.push_back(other);
    }
    others.push_back(typed.substr(0, i) + typed.substr(i + 1));
  }
  return others;
}

std::vector<Meant> meant(const Reading& reading, Unit units) {
  const bool inch = units == Unit::inch;
  const Length mark = inch ? inches(1) : millimetres(100);
  std::vector<Meant> all = {{reading.value - mark, inch ? "the burned inch is still in it"
                                                        : "the burned 10 cm are still in it"},
                            {reading.value + mark, "it was taken for burned"},
                            {reading.value * 10, "a decimal point slipped"},
                            {reading.value / 10, "a decimal point slipped"}};
  if (inch) {
    all.push_back({reading.value - inches(12), "a foot too much"});
    all.push_back({reading.value + inches(12), "a foot too little"});
  }
  for (const std::string& digits : other_digits(reading.given))
    if (const auto read = read_length(digits, units, reading.smallest_mark))
      all.push_back({read->value, fmt::format("'{}' typed for '{}'", reading.given, digits)});
  return all;
}

// Corners of rooms lie within some 6 degrees of square (chosen): the diagonal is within 5 % then.
constexpr double kNearSquare = 0.05;

// The slip that makes the three figures most nearly a square corner; empty where none comes near. A
// slip of the straight tape comes before one of a mark, whose other diagonals would show it too.
std::string likely_slip(const Diagonal& diagonal, const Reading& straight, Unit units) {
  const double a = diagonal.first.value.mm, b = diagonal.second.value.mm, c = straight.value.mm;
  std::string best;
  double least = kNearSquare;
  const auto offer = [&](double stray, const std::string& text) {
    if (stray < least) least = stray, best = text;
  };
  for (const Meant& m : meant(straight, units))
    offer(std::abs(m.value.mm / std::hypot(a, b) - 1), "the straight tape: " + m.how);
  if (!best.empty()) return best;
  for (const Meant& m : meant(diagonal.first, units))
    offer(std::abs(c / std::hypot(m.value.mm, b) - 1), "the first mark: " + m.how);
  for (const Meant& m : meant(diagonal.second, units))
    offer(std::abs(c / std::hypot(a, m.value.mm) - 1), "the second mark: " + m.how);
  return best;
}

}  // namespace

void check_diagonal(RoomFile& file, const Diagonal& diagonal) {
  if (diagonal.first.struck || diagonal.second.struck) return;
  const Length a = diagonal.first.value, b = diagonal.second.value;
  for (const Reading& straight : diagonal.straight) {
    const bool too_long = straight.value >= a + b;
    const bool too_short = straight.value.mm <= std::abs(a.mm - b.mm);
    if (straight.struck || (!too_long && !too_short)) continue;
    const std::string slip = likely_slip(diagonal, straight, file.survey.units);
    const std::string about =
        with_unit(millimetres(std::hypot(a.mm, b.mm)), usual_rounding(file.survey.units));
    file.source.fault(straight.place,
                      too_long ? "longer than its two marks together"
                               : "shorter than the difference of its two marks",
                      too_long ? "diagonal-too-long" : "diagonal-too-short",
                      fmt::format("in a square corner it would be about {}; {}", about,
                                  slip.empty() ? "take it again" : "likely " + slip));
  }
}

}  // namespace nook

// Reads a length as it is said on site.
#include "base/notation.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "base/diagnostic.h"
#include "base/number_text.h"

namespace nook {
namespace {

using Kind = Token::Kind;
template <class T>
using Read = tl::expected<T, NotationFault>;

constexpr const char* kHowTo = "write it like 41 3/8, 3' 5 3/8\", 41.375, 104.2 cm or 1042 mm";

enum class Scale { none, feet, inches, mm, cm, m };

constexpr double mm_per(Scale scale) {
  switch (scale) {
    case Scale::feet:
      return 12 * kMillimetresPerInch;
    case Scale::inches:
      return kMillimetresPerInch;
    case Scale::cm:
      return 10;
    case Scale::m:
      return 1000;
    default:
      return 1;
  }
}
bool is_metric(Scale scale) {
  return scale == Scale::mm || scale == Scale::cm || scale == Scale::m;
}
Scale scale_of(Unit unit) {
  return unit == Unit::inch ? Scale::inches : unit == Unit::cm ? Scale::cm : Scale::mm;
}

Scale scale_of(const Token& token) {
  if (token.kind == Kind::prime) return Scale::feet;
  if (token.kind == Kind::double_prime) return Scale::inches;
  if (token.kind != Kind::word) return Scale::none;
  const auto is = [&](std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), token.text) != words.end();
  };
  if (is({"ft", "foot", "feet"})) return Scale::feet;
  if (is({"in", "inch", "inches"})) return Scale::inches;
  if (is({"mm"})) return Scale::mm;
  if (is({"cm"})) return Scale::cm;
  return is({"m"}) ? Scale::m : Scale::none;
}

enum class Remark { none, strong, shy, burned };
Remark remark_of(const Token& token) {
  if (token.kind != Kind::word) return Remark::none;
  for (const std::string_view word : {"strong", "heavy", "full"})
    if (token.text == word) return Remark::strong;
  for (const std::string_view word : {"shy", "light", "scant"})
    if (token.text == word) return Remark::shy;
  return token.text == "burned" ? Remark::burned : Remark::none;
}

class LengthReader {
 public:
  LengthReader(std::vector<Token> all, Unit unit, Length smallest_mark)
      : walk_(std::move(all)), unit_(unit), smallest_mark_(smallest_mark) {}

  Read<Notation> read() {
    if (walk_.done()) return fault(walk_.peek(), "the reading is empty", "empty-reading", kHowTo);
    const bool minus = sign();
    Read<double> amount = this->amount();
    if (!amount) return tl::unexpected(amount.error());
    Read<Notation> notation = remarks(*amount);
    if (!notation) return notation;
    if (minus) notation->value = -notation->value;
    notation->value.mm += 0.0;  // -0 becomes 0
    if (!(std::abs(notation->value.mm) <= kLongestMm))
      return tl::unexpected(NotationFault{0, walk_.peek().at,
                                          "this is over a hundred kilometers long", "absurd-length",
                                          "check the figure and its unit"});
    return notation;
  }

 private:
  static tl::unexpected<NotationFault> fault(const Token& token, std::string what, std::string code,
                                             std::string help) {
    return tl::unexpected(fault_at(token, std::move(what), std::move(code), std::move(help)));
  }

  bool sign() {
    const Kind kind = walk_.peek().kind;
    if (kind == Kind::plus || kind == Kind::minus) walk_.next();
    return kind == Kind::minus;
  }

  // The unit typed here, or none; a number without one is in the file's unit.
  Scale scale() {
    const Scale found = nook::scale_of(walk_.peek());
    if (found != Scale::none) walk_.next();
    return found;
  }

  Read<double> in_millimetres(const MixedNumber& number, Scale scale) const {
    if (number.fraction && is_metric(scale))
      return tl::unexpected(NotationFault{number.at, number.width, "a fraction in a metric reading",
                                          "fraction-in-metric",
                                          "write 41.5 mm, or say inches: 41 1/2 in"});
    return number.value * mm_per(scale);
  }

  Read<double> amount() {
    const Read<MixedNumber> number = walk_.mixed_number();
    if (!number) return tl::unexpected(number.error());
    const bool stroke = walk_.peek().kind == Kind::prime;
    typed_ = scale();
    if (typed_ == Scale::feet && inches_follow()) return feet_and_inches(*number);
    if (stroke && number->fraction)  // 24 1/8' for 24 1/8"
      return tl::unexpected(
          NotationFault{number->at, number->width, "a fraction of a foot by a single stroke",
                        "fraction-of-foot", "for inches write 24 1/8\", for feet 24 1/8 ft"});
    return in_millimetres(*number, typed_ == Scale::none ? nook::scale_of(unit_) : typed_);
  }

  // 3' 5, 3'-5, 3' - 5
  bool inches_follow() {
    if (walk_.peek().kind == Kind::minus) {
      walk_.next();
      return true;
    }
    return walk_.at_number();
  }

  Read<double> feet_and_inches(const MixedNumber& feet) {
    if (feet.fraction || feet.decimal)
      return tl::unexpected(NotationFault{feet.at, feet.width, "feet with inches must be whole",
                                          "not-a-reading", "write it like 3' 5 3/8\""});
    const Read<MixedNumber> inches = walk_.mixed_number();
    if (!inches) return tl::unexpected(inches.error());
    if (inches->value >= 12)
      return tl::unexpected(NotationFault{inches->at, inches->width,
                                          "twelve inches or more beside the feet", "not-a-reading",
                                          "a foot has 12 in: check the feet"});
    const Token unit = walk_.peek();
    const Scale scale = this->scale();
    if (scale != Scale::none && scale != Scale::inches)
      return fault(unit, "feet go with inches", "unknown-unit", "write it like 3' 5 3/8\"");
    return (feet.value * 12 + inches->value) * kMillimetresPerInch;
  }

  Read<Notation> remarks(double amount) {
    Notation notation;
    notation.metric = typed_ == Scale::none ? unit_ != Unit::inch : is_metric(typed_);
    double halves = 0, burned = 0;
    while (!walk_.done()) {
      const Token token = walk_.next();
      const Remark remark = remark_of(token);
      if (remark == Remark::none) return tl::unexpected(stray(token));
      const bool again = remark == Remark::burned ? notation.burned : halves != 0;
      if (again) return fault(token, "said twice", "not-a-reading", "say strong or shy once");
      if (remark == Remark::burned) {
        const Read<double> mark = burned_mark(token);
        if (!mark) return tl::unexpected(mark.error());
        if (*mark > amount)
          return fault(token, "the reading lies before the burned mark", "burned-mark",
                       "give the reading as the tape shows it, the burned part included");
        burned = *mark;
        notation.burned = true;
      } else {
        halves = remark == Remark::strong ? 1 : -1;
      }
    }
    notation.value.mm = amount + halves * 0.5 * mark(notation.metric).mm - burned;
    return notation;
  }

  // A bare burned mark is in the reading's own unit (feet count as inches).
  Read<double> burned_mark(const Token& word) {
    if (!walk_.at_number())
      return fault(word, "burned says at which mark", "burned-mark",
                   "write burned 1, or burned 10 cm");
    const Read<MixedNumber> number = walk_.mixed_number();
    if (!number) return tl::unexpected(number.error());
    Scale scale = this->scale();
    if (scale == Scale::none) scale = typed_ == Scale::feet ? Scale::inches : typed_;
    return in_millimetres(*number, scale == Scale::none ? nook::scale_of(unit_) : scale);
  }

  Length mark(bool metric) const {
    if (metric == (unit_ != Unit::inch)) return smallest_mark_;
    return metric ? millimetres(1) : inches(1.0 / 16);
  }

  NotationFault stray(const Token& token) const {
    static const std::vector<std::string_view> kWords = {
        "in", "inch",   "inches", "ft",   "foot", "feet",  "mm",    "cm",
        "m",  "strong", "heavy",  "full", "shy",  "light", "scant", "burned"};
    if (token.kind == Kind::word) {
      if (std::find(kWords.begin(), kWords.end(), token.text) != kWords.end())
        return fault_at(token, "'" + std::string(token.text) + "' does not belong here",
                        "not-a-reading", "one unit, behind the number, then its remark");
      const std::string_view near = nearest(token.text, kWords);
      return fault_at(token, "'" + token.text + "' is no unit and no remark", "unknown-unit",
                      near.empty() ? "units are in, ft, mm, cm, m; remarks strong, shy, burned 1"
                                   : "did you mean '" + std::string(near) + "'?");
    }
    if (token.kind == Kind::number)
      return fault_at(token, "a second number without a meaning", "not-a-reading", kHowTo);
    if (token.kind == Kind::minus || token.kind == Kind::plus)
      return fault_at(token, "a sign inside the reading", "not-a-reading",
                      "write 41-3/8 without spaces, or 41 3/8");
    return fault_at(token, "this does not belong in a reading", "not-a-reading", kHowTo);
  }

  TokenWalk walk_;
  Unit unit_;
  Length smallest_mark_;
  Scale typed_ = Scale::none;
};

}  // namespace

tl::expected<Notation, NotationFault> read_length(std::string_view text, Unit unit,
                                                  Length smallest_mark) {
  auto all = tokens(text);
  if (!all) return tl::unexpected(all.error());
  for (const Token& token : *all)
    if (token.kind == Kind::comma)
      return tl::unexpected(
          fault_at(token, "a comma in a reading", "decimal-comma",
                   "decimals take a point: 41.375; thousands take nothing: 1042"));
  return LengthReader(std::move(*all), unit, smallest_mark).read();
}

}  // namespace nook

// Tokens of a reading, and whole numbers joined with their fractions.
#include "base/number_text.h"

#include <algorithm>
#include <charconv>
#include <limits>

#include "base/utf8.h"

namespace nook {
namespace {

using Kind = Token::Kind;

struct Vulgar {
  char32_t sign;
  int top, bottom;
};
// Unicode 15, Latin-1 Supplement and Number Forms: every vulgar fraction.
constexpr Vulgar kVulgar[] = {
    {U'\u00BC', 1, 4},  {U'\u00BD', 1, 2}, {U'\u00BE', 3, 4}, {U'\u2150', 1, 7}, {U'\u2151', 1, 9},
    {U'\u2152', 1, 10}, {U'\u2153', 1, 3}, {U'\u2154', 2, 3}, {U'\u2155', 1, 5}, {U'\u2156', 2, 5},
    {U'\u2157', 3, 5},  {U'\u2158', 4, 5}, {U'\u2159', 1, 6}, {U'\u215A', 5, 6}, {U'\u215B', 1, 8},
    {U'\u215C', 3, 8},  {U'\u215D', 5, 8}, {U'\u215E', 7, 8}, {U'\u2189', 0, 3}};

bool any_of(std::u32string_view set, char32_t x) {
  return set.find(x) != std::u32string_view::npos;
}
bool is_space(char32_t x) {
  return any_of(U" \t\u00A0\u2007\u2009\u200A\u202F\u2002\u2003\u2005\u2006\u2008", x);
}
bool is_digit(char32_t x) {
  return x >= U'0' && x <= U'9';
}
bool is_letter(char32_t x) {
  return (x >= U'a' && x <= U'z') || (x >= U'A' && x <= U'Z') || x >= 0xC0;
}
constexpr char32_t kNumeratorOne = U'\u215F';  // its slash is part of the sign
constexpr std::u32string_view kRaised =
    U"\u2070\u00B9\u00B2\u00B3\u2074\u2075\u2076\u2077\u2078\u2079";
constexpr std::u32string_view kLowered =
    U"\u2080\u2081\u2082\u2083\u2084\u2085\u2086\u2087\u2088\u2089";

Kind sign_kind(char32_t x) {
  if (any_of(U"/\u2044\u2215", x)) return Kind::slash;
  if (x == U'+') return Kind::plus;
  if (any_of(U"-\u2010\u2011\u2012\u2013\u2212", x)) return Kind::minus;
  if (any_of(U"'\u2018\u2019\u2032\u02B9\u00B4", x)) return Kind::prime;
  if (any_of(U"\"\u201C\u201D\u2033\u02BA", x)) return Kind::double_prime;
  if (any_of(U",\u201A\uFF0C", x)) return Kind::comma;
  return Kind::other;
}

class Tokenizer {
 public:
  explicit Tokenizer(std::u32string_view text) : text_(text) {}

  std::vector<Token> all() {
    std::vector<Token> found;
    while (true) {
      const bool spaced = skip_spaces();
      Token token = at_ < text_.size() ? one() : Token{};
      token.spaced = spaced;
      if (token.kind == Kind::end) token.at = static_cast<int>(text_.size());
      found.push_back(std::move(token));
      if (found.back().kind == Kind::end) return found;
      if (text_[at_ - 1] == kNumeratorOne) found.push_back(slash_after(found.back()));
    }
  }

 private:
  char32_t here(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : U'\0';
  }
  bool skip_spaces() {
    const std::size_t from = at_;
    while (is_space(here())) ++at_;
    return at_ > from;
  }
  Token taken(Kind kind, std::size_t from) const {
    Token token;
    token.kind = kind;
    token.at = static_cast<int>(from);
    token.width = static_cast<int>(at_ - from);
    return token;
  }

  static Token slash_after(const Token& top) {
    Token token;
    token.kind = Kind::slash;
    token.at = top.at;
    return token;
  }

  Token one() {
    if (is_digit(here()) || (here() == U'.' && is_digit(here(1)))) return number();
    if (here() == kNumeratorOne || any_of(kRaised, here())) return small_digits(Kind::raised);
    if (any_of(kLowered, here())) return small_digits(Kind::lowered);
    for (const Vulgar& v : kVulgar)
      if (v.sign == here()) return vulgar(v);
    if (sign_kind(here()) != Kind::other) return sign();
    return word();
  }

  Token number() {
    const std::size_t from = at_;
    while (is_digit(here())) ++at_;
    bool decimal = false;
    if (here() == U'.' && is_digit(here(1))) {
      decimal = true;
      ++at_;
      while (is_digit(here())) ++at_;
    }
    Token token = taken(Kind::number, from);
    token.decimal = decimal;
    token.value = value(utf8(text_.substr(from, at_ - from)));
    return token;
  }

  Token small_digits(Kind kind) {
    const std::size_t from = at_;
    const std::u32string_view set = kind == Kind::raised ? kRaised : kLowered;
    if (here() == kNumeratorOne) {  // "fraction numerator one": its slash is part of the sign
      ++at_;
      Token token = taken(kind, from);
      token.value = 1;
      return token;
    }
    std::string digits;
    for (; any_of(set, here()); ++at_) digits += char('0' + set.find(here()));
    Token token = taken(kind, from);
    token.value = value(digits);
    return token;
  }

  Token vulgar(const Vulgar& v) {
    const std::size_t from = at_++;
    Token token = taken(Kind::vulgar, from);
    token.value = v.top;
    token.bottom = v.bottom;
    return token;
  }

  Token sign() {
    const std::size_t from = at_;
    const Kind kind = sign_kind(text_[at_++]);
    const bool twice = kind == Kind::prime && sign_kind(here()) == Kind::prime;
    if (twice) ++at_;
    return taken(twice ? Kind::double_prime : kind, from);
  }

  Token word() {
    const std::size_t from = at_;
    while (is_letter(here())) ++at_;
    const bool letters = at_ > from;
    if (letters && here() == U'.' && !is_digit(here(1))) ++at_;  // "in."
    if (!letters) ++at_;
    Token token = taken(letters ? Kind::word : Kind::other, from);
    token.text = utf8(text_.substr(from, at_ - from));
    for (char& c : token.text)
      if (c >= 'A' && c <= 'Z') c = char(c - 'A' + 'a');
    if (letters && token.text.back() == '.') token.text.pop_back();
    return token;
  }

  static double value(const std::string& digits) {
    double x = 0;
    const auto end = digits.data() + digits.size();
    const auto result = std::from_chars(digits.data(), end, x);
    return result.ec == std::errc() ? x : std::numeric_limits<double>::infinity();
  }

  std::u32string_view text_;
  std::size_t at_ = 0;
};

// The divisions that rules and arithmetic have (chosen): halves down to 128ths, thirds, fifths and
// what they make up to twelfths, hundredths, thousandths. Others are slips, such as 3/61 for 3/16
// and 3/7 for 3/8.
bool is_division(double bottom) {
  for (const double d : {2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64, 128, 100, 1000})
    if (bottom == d) return true;
  return false;
}

}  // namespace

tl::expected<std::vector<Token>, NotationFault> tokens(std::string_view text) {
  const auto points = code_points(text);
  if (!points)
    return tl::unexpected(
        NotationFault{0, 1, "this is not UTF-8 text", "not-utf8", "save the file as UTF-8"});
  return Tokenizer(*points).all();
}

NotationFault fault_at(const Token& token, std::string what, std::string code, std::string help) {
  return {token.at, token.width, std::move(what), std::move(code), std::move(help)};
}

const Token& TokenWalk::peek(int ahead) const {
  return all_[std::min(at_ + ahead, all_.size() - 1)];
}

const Token& TokenWalk::next() {
  const Token& token = peek();
  if (at_ + 1 < all_.size()) ++at_;
  return token;
}

bool TokenWalk::at_fraction(int ahead) const {
  const Token& top = peek(ahead);
  if (top.kind == Kind::vulgar) return true;
  const bool number = top.kind == Kind::number || top.kind == Kind::raised;
  return number && peek(ahead + 1).kind == Kind::slash;
}

bool TokenWalk::at_number() const {
  return peek().kind == Kind::number || at_fraction();
}

TokenWalk::Number TokenWalk::fraction() {
  const Token top = next();
  Token bottom = top;
  double denominator = top.bottom;
  if (top.kind != Kind::vulgar) {
    next();  // the slash
    bottom = next();
    denominator = bottom.value;
    if (bottom.kind != Kind::number && bottom.kind != Kind::lowered)
      return tl::unexpected(fault_at(bottom, "a fraction needs a number below its slash",
                                     "bad-fraction", "write it like 3/8"));
  }
  const int width = bottom.at + bottom.width - top.at;
  const auto bad = [&](std::string what, std::string help) {
    return tl::unexpected(
        NotationFault{top.at, width, std::move(what), "bad-fraction", std::move(help)});
  };
  if (top.decimal || bottom.decimal)
    return bad("a fraction is made of whole numbers", "write 41 3/8 or 41.375");
  if (top.kind != Kind::vulgar && !is_division(denominator))
    return bad("no rule is divided like this fraction",
               "fractions go down to 128ths by halves, or are thirds, fifths, sixths, tenths, "
               "twelfths, hundredths or thousandths");
  if (top.value >= denominator)
    return bad("the top of a fraction must be smaller than its bottom",
               "write the whole part before it, as in 1 1/4");
  return MixedNumber{top.value / denominator, true, false, top.at, width};
}

TokenWalk::Number TokenWalk::mixed_number() {
  if (at_fraction()) return fraction();
  if (peek().kind != Kind::number)
    return tl::unexpected(fault_at(peek(), done() ? "a number is missing" : "this is not a number",
                                   "not-a-reading", "write it like 41 3/8, 41.375 or 104.2 cm"));
  const Token whole = next();
  MixedNumber number{whole.value, false, whole.decimal, whole.at, whole.width};
  const bool joined =
      peek().kind == Kind::minus && !peek().spaced && !peek(1).spaced && at_fraction(1);
  if (!joined && !at_fraction()) return number;
  if (joined) next();
  if (whole.decimal)
    return tl::unexpected(fault_at(peek(), "a decimal number and a fraction together",
                                   "bad-fraction", "write 41 3/8 or 41.375"));
  const Number part = fraction();
  if (!part) return part;
  number.value += part->value;
  number.fraction = true;
  number.width = part->at + part->width - number.at;
  return number;
}

}  // namespace nook

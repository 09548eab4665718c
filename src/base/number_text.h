// The numbers of the trade inside a text: `41 3/8`, `41-3/8`, `15/16`, `41.375`, fractions in
// Unicode too.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/notation.h"

namespace nook {

/// A piece of a text: a number, a sign or a word. `at` and `width` count characters.
struct Token {
  enum class Kind {
    number,
    raised,
    lowered,
    vulgar,
    slash,
    plus,
    minus,
    prime,
    double_prime,
    comma,
    word,
    other,
    end
  };
  Kind kind = Kind::end;
  int at = 0, width = 1;
  bool spaced = false;   // a space stands before it
  double value = 0;      // number, raised, lowered; vulgar: the top
  double bottom = 1;     // vulgar
  bool decimal = false;  // number: typed with a point
  std::string text;      // word (in lower case) and other
};

/// The tokens of a text, closed by one of kind `end`; a fault where the text is not UTF-8.
tl::expected<std::vector<Token>, NotationFault> tokens(std::string_view text);

/// A number as typed: whole, decimal, fraction, or whole and fraction.
struct MixedNumber {
  double value = 0;
  bool fraction = false, decimal = false;
  int at = 0, width = 1;
};

/// Walks over the tokens of one text.
class TokenWalk {
 public:
  explicit TokenWalk(std::vector<Token> all) : all_(std::move(all)) {}

  const Token& peek(int ahead = 0) const;
  const Token& next();
  bool done() const { return peek().kind == Token::Kind::end; }
  /// True where a number (or a fraction) starts.
  bool at_number() const;
  /// The number that starts here; a fault where none does or where it makes no sense.
  tl::expected<MixedNumber, NotationFault> mixed_number();

 private:
  using Number = tl::expected<MixedNumber, NotationFault>;
  bool at_fraction(int ahead = 0) const;
  Number fraction();

  std::vector<Token> all_;
  std::size_t at_ = 0;
};

/// A fault at a token.
NotationFault fault_at(const Token& token, std::string what, std::string code, std::string help);

}  // namespace nook

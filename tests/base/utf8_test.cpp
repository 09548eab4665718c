// UTF-8 in, the same UTF-8 out; what is not UTF-8 is found.
#include "base/utf8.h"

#include <catch2/catch.hpp>

using namespace nook;

TEST_CASE("utf8: text of one to four bytes a letter comes back the same") {
  const std::string text = "a é ⅜ 𝄞";
  REQUIRE(code_points(text));
  CHECK(code_points(text)->size() == 7);
  CHECK(utf8(*code_points(text)) == text);
}

TEST_CASE("utf8: the first byte that is wrong is named") {
  CHECK_FALSE(first_bad_byte("41 ⅜"));
  CHECK(first_bad_byte("ab\xff") == 2u);
  CHECK(first_bad_byte("\xC0\xAF") == 0u);           // overlong
  CHECK(first_bad_byte("a\xED\xA0\x80") == 1u);      // surrogate
  CHECK(first_bad_byte("a\xF4\x90\x80\x80") == 1u);  // beyond Unicode
  CHECK(first_bad_byte("a\xE2\x85") == 1u);          // cut off
}

TEST_CASE("utf8: columns on a terminal") {
  CHECK(terminal_columns(U'a') == 1);
  CHECK(terminal_columns(U'漢') == 2);
  CHECK(terminal_columns(U'\u0301') == 0);
}

// Text from outside: what is drawable, and how the rest is shown.
#include "purgewright/files/text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace purgewright::files;

TEST_CASE("well-formed UTF-8 alone has a length", "[unit][files]") {
  // Well-formed and ill-formed sequences of RFC 3629, sections 3, 4 and 10.
  CHECK(utf8_length("A") == 1);
  CHECK(utf8_length("\xC3\xA9") == 2);
  CHECK(utf8_length("\xE2\x89\xA2") == 3);
  CHECK(utf8_length("\xF0\xA3\x8E\xB4") == 4);
  for (const char *bad : {"", "\xC0\x80", "\xC1\xBF", "\xE0\x80\xAF", "\xED\xA0\x8C", "\xF4\x90\x80\x80",
                          "\xF8\x88\x80\x80", "\x80", "\xE2\x89", "\xFF"}) {
    CHECK(utf8_length(bad) == 0);
  }
  CHECK(code_point("\xE2\x89\xA2") == 0x2262);
  CHECK(code_point("\xF0\xA3\x8E\xB4") == 0x233B4);
}

TEST_CASE("controls, turns of direction and noncharacters cannot be drawn", "[unit][files]") {
  for (const char32_t c : {0x00, 0x1B, 0x7F, 0x85, 0x9B, 0x2028, 0x202E, 0x2066, 0xFDD0, 0xFDEF, 0xFFFE,
                           0xFFFF, 0x1FFFE, 0x10FFFF}) {
    CHECK(is_undrawable(c));
  }
  for (const char32_t c : {0x20, 0x41, 0xA0, 0xE9, 0x2300, 0x2212, 0xFFFD, 0x1F600}) {
    CHECK_FALSE(is_undrawable(c));
  }
  CHECK(has_undrawable("a\xFF"));
  CHECK(has_undrawable("a\n"));
  CHECK_FALSE(has_undrawable("Größe ⌀25"));
}

TEST_CASE("what is shown moves no terminal and is never half a character", "[unit][files]") {
  CHECK(printable("a\tb\nc") == "a b c");
  CHECK(printable("\x1b[31m") == "\\x1b[31m");
  CHECK(printable("\xff") == "\\xff");
  CHECK(printable("\xEF\xBF\xBF") == "\\u{ffff}");
  CHECK(printable("\xC2\x9B"
                  "1m") == "\\u{9b}1m");
  CHECK(shown(std::string(1000, 'x')) == std::string(60, 'x') + "...");
  CHECK(shown(std::string(59, 'x') + "\xC3\xA9") == std::string(59, 'x') + "...");
  CHECK(shown(std::string(60, 'x')) == std::string(60, 'x'));
}

#include "exchange/part21_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <stdexcept>

namespace purgewright::exchange {

namespace {

[[noreturn]] void refuse(char const *why) {
  throw std::invalid_argument(std::string("text for a file ") + why);
}

unsigned char byte(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]);
}

// How many bytes a character takes, by its first byte.
std::size_t length_of(unsigned char first) {
  if (first < 0x80)
    return 1;
  if (first >= 0xC2 && first < 0xE0)
    return 2;
  if (first >= 0xE0 && first < 0xF0)
    return 3;
  if (first >= 0xF0 && first < 0xF5)
    return 4;
  refuse("is not UTF-8");
}

std::uint32_t code_point(std::string_view text, std::size_t at, std::size_t length) {
  if (length == 1)
    return byte(text, at);
  if (at + length > text.size())
    refuse("is not UTF-8");
  std::uint32_t code = byte(text, at) & (0x7FU >> length);
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(text, at + i) & 0xC0U) != 0x80U)
      refuse("is not UTF-8");
    code = (code << 6U) | (byte(text, at + i) & 0x3FU);
  }
  constexpr std::uint32_t least[] = {0, 0, 0x80, 0x800, 0x10000}; // shorter forms exist below
  if (code < least[length] || code > 0x10FFFF || (code >= 0xD800 && code < 0xE000))
    refuse("is not UTF-8");
  return code;
}

std::string encoded(std::uint32_t code) {
  if (code < 0x20 || (code >= 0x7F && code < 0xA0))
    refuse("holds a control character");
  if (code < 0x7F)
    return {static_cast<char>(code)};
  std::string const digits = code < 0x10000 ? fmt::format("{:04X}", code) : fmt::format("{:08X}", code);
  return fmt::format("{0}X{1}{0}{2}{0}X0{0}", escape_mark, code < 0x10000 ? '2' : '4', digits);
}

} // namespace

std::string part21_text(std::string_view utf8) {
  std::string result;
  for (std::size_t at = 0; at < utf8.size();) {
    std::size_t const length = length_of(byte(utf8, at));
    result += encoded(code_point(utf8, at, length));
    at += length;
  }
  return result;
}

std::string with_escapes(std::string file_text) {
  std::replace(file_text.begin(), file_text.end(), escape_mark, '\\');
  return file_text;
}

} // namespace purgewright::exchange

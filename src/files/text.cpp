#include "purgewright/files/text.hpp"

#include <fmt/format.h>

#include <array>

namespace purgewright::files {
namespace {

constexpr std::size_t shown_length_most = 60; // bytes

} // namespace

std::size_t utf8_length(std::string_view s) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(i < s.size() ? s[i] : 0); };
  const auto tail = [&](std::size_t i) { return (byte(i) & 0xC0) == 0x80; };
  const unsigned first = byte(0);
  if (s.empty()) {
    return 0;
  }
  if (first < 0x80) {
    return 1;
  }
  if (first >= 0xC2 && first <= 0xDF) {
    return tail(1) ? 2 : 0;
  }
  if (first >= 0xE0 && first <= 0xEF) {
    const bool overlong = first == 0xE0 && byte(1) < 0xA0;
    const bool surrogate = first == 0xED && byte(1) > 0x9F;
    return tail(1) && tail(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const bool overlong = first == 0xF0 && byte(1) < 0x90;
    const bool beyond = first == 0xF4 && byte(1) > 0x8F;
    return tail(1) && tail(2) && tail(3) && !overlong && !beyond ? 4 : 0;
  }
  return 0;
}

char32_t code_point(std::string_view s) {
  const std::size_t length = utf8_length(s);
  const auto first = static_cast<unsigned char>(s[0]);
  constexpr std::array<unsigned, 5> masks{0, 0x7F, 0x1F, 0x0F, 0x07};
  char32_t code = first & masks.at(length);
  for (std::size_t i = 1; i < length; ++i) {
    code = (code << 6) | (static_cast<unsigned char>(s[i]) & 0x3F);
  }
  return code;
}

bool is_undrawable(char32_t c) {
  const auto within = [c](char32_t from, char32_t to) { return c >= from && c <= to; };
  const bool control = c < 0x20 || within(0x7F, 0x9F);
  const bool separator = within(0x2028, 0x2029);
  const bool direction =
      within(0x200E, 0x200F) || within(0x202A, 0x202E) || within(0x2066, 0x2069) || c == 0x061C;
  const bool invisible = c == 0xAD || c == 0x180E || c == 0x200B || within(0x2060, 0x2064) || c == 0xFEFF ||
                         within(0xFFF9, 0xFFFB) || within(0xE0000, 0xE007F);
  const bool noncharacter = within(0xFDD0, 0xFDEF) || (c & 0xFFFE) == 0xFFFE;
  return control || separator || direction || invisible || noncharacter;
}

bool has_undrawable(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0 || is_undrawable(code_point(text))) {
      return true;
    }
    text.remove_prefix(length);
  }
  return false;
}

std::string code_text(char32_t c) {
  return fmt::format("U+{:04X}", static_cast<unsigned>(c));
}

std::string printable(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const char first = text.front();
    if (length == 0) {
      result += fmt::format("\\x{:02x}", static_cast<unsigned char>(first));
    } else if (first == '\n' || first == '\t' || first == '\r') {
      result += ' ';
    } else if (const char32_t c = code_point(text); !is_undrawable(c)) {
      result += text.substr(0, length);
    } else {
      result += c < 0x80 ? fmt::format("\\x{:02x}", static_cast<unsigned>(c))
                         : fmt::format("\\u{{{:x}}}", static_cast<unsigned>(c));
    }
    text.remove_prefix(length == 0 ? 1 : length);
  }
  return result;
}

std::string shown(std::string_view text) {
  std::string_view kept = text.substr(0, shown_length_most);
  if (text.size() > shown_length_most) {
    while (!kept.empty() && (text[kept.size()] & 0xC0) == 0x80) {
      kept.remove_suffix(1); // never half a character
    }
  }
  return printable(kept) + (kept.size() < text.size() ? "..." : "");
}

} // namespace purgewright::files

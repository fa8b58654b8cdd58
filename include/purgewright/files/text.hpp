// Text from outside: what of it is UTF-8, what no file of ours may hold, and how it is shown in messages.
//
// Units: bytes. Frame: none. Range and errors: any bytes; nothing is thrown.
// Guarantee: what printable() and shown() return is UTF-8 and moves no terminal: no control character of
// ASCII or Latin-1, no sign that turns the direction of reading.
// Source: RFC 3629, section 4 (UTF-8); Unicode 15.0, sections 23.1 to 23.7 (controls, noncharacters,
// directional formatting).
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace purgewright::files {

// Length of the well-formed character at the front; 0 when there is none.
std::size_t utf8_length(std::string_view);

// The character at the front, which must be well-formed.
char32_t code_point(std::string_view);

// A control character, a separator of lines, a sign that turns the direction of reading, or a noncharacter:
// nothing that can be drawn.
bool is_undrawable(char32_t);

// Whether a text holds one of these, or is not UTF-8.
bool has_undrawable(std::string_view);

// "U+FFFF"
std::string code_text(char32_t);

// The text with everything undrawable replaced: a blank for white space, "\x1b" or "\u{ffff}" for the rest.
std::string printable(std::string_view);

// The same, cut to what a message has room for.
std::string shown(std::string_view);

} // namespace purgewright::files

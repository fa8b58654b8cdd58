// A UTF-8 text as a STEP file's string holds it.
//
// Units: none. Frame: none.
// Range and errors: std::invalid_argument for control characters and for bytes that are no UTF-8.
// Guarantee: printable ASCII stays as it is; everything else becomes X2 or X4 sequences whose backslashes
// are written as escape_mark, because the kernel's writer doubles every backslash. Plain backslashes and
// apostrophes are left for the writer to double. with_escapes() puts the marks right in the finished text.
// Source: ISO 10303-21, clause 6.4.3 (encoding of strings).
#pragma once

#include <string>
#include <string_view>

namespace purgewright::exchange {

// A control byte, which no accepted text can hold.
inline constexpr char escape_mark = '\x1A';

std::string part21_text(std::string_view utf8);

std::string with_escapes(std::string file_text);

} // namespace purgewright::exchange

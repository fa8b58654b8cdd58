// Whether the fonts installed here have every letter that is to be drawn. Lettering without a font comes out
// as boxes, or as nothing, and no library calls that an error.
//
// Units, frame: none.
// Range and errors: any UTF-8 text; FontError names the character and the font that is missing.
// Guarantee: a text that passes is drawn whole. One thread.
// Source: pango 1.50, fontconfig. Fonts: osifont (ISO 3098 letters; Debian fonts-osifont) on drawings, DejaVu
// Sans Condensed (Debian fonts-dejavu-extra) on pages; where one lacks a letter any other may stand in.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

// pango's own name, so that no header of it is needed here
extern "C" {
typedef struct _PangoLayout PangoLayout; // NOLINT
}

namespace purgewright::letters {

struct FontError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

inline constexpr const char *drawing_font = "osifont", *page_font = "DejaVu Sans Condensed";

// FontError when no font has a character of the layout's text.
void require_drawn(PangoLayout *, std::string_view font);

// The first character of the text that no font has.
std::optional<char32_t> missing_in(std::string_view text, std::string_view font);

} // namespace purgewright::letters

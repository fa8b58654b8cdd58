#include "purgewright/letters/fonts.hpp"

#include "purgewright/files/text.hpp"

#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <memory>

namespace purgewright::letters {
namespace {

struct Release {
  void operator()(void *object) const { g_object_unref(object); }
};
template <class T> using Held = std::unique_ptr<T, Release>;

std::optional<char32_t> first_missing(PangoLayout *layout, std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = files::utf8_length(text);
    pango_layout_set_text(layout, text.data(), static_cast<int>(length));
    if (length == 0 || pango_layout_get_unknown_glyphs_count(layout) > 0) {
      return length == 0 ? U'\uFFFD' : files::code_point(text);
    }
    text.remove_prefix(length);
  }
  return std::nullopt;
}

} // namespace

std::optional<char32_t> missing_in(std::string_view text, std::string_view font) {
  const Held<PangoFontMap> map(pango_cairo_font_map_new());
  const Held<PangoContext> context(pango_font_map_create_context(map.get()));
  const Held<PangoLayout> layout(pango_layout_new(context.get()));
  PangoFontDescription *description = pango_font_description_from_string(std::string(font).c_str());
  pango_layout_set_font_description(layout.get(), description);
  pango_font_description_free(description);
  if (first_missing(layout.get(), "A")) { // fontconfig names families even where no font is installed
    throw FontError(fmt::format("no font with letters is installed; install {}", font));
  }
  return first_missing(layout.get(), text);
}

void require_drawn(PangoLayout *layout, std::string_view font) {
  if (pango_layout_get_unknown_glyphs_count(layout) == 0) {
    return;
  }
  const std::string text = pango_layout_get_text(layout);
  const auto missing = missing_in(text, font);
  throw FontError(fmt::format("no installed font has the {} of '{}'; install {}",
                              missing ? files::code_text(*missing) : "letters", files::shown(text), font));
}

} // namespace purgewright::letters

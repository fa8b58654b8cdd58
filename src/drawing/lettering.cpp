#include "purgewright/drawing/lettering.hpp"
#include "purgewright/letters/fonts.hpp"

#include "pango_context.hpp" // after the project's headers: it brings the macro I of complex.h

#include <map>
#include <memory>
#include <string>

namespace purgewright::drawing {
namespace {

constexpr double trial_size = 100.0; // pango units are fine enough at this size

struct Release {
  void operator()(void *object) const { g_object_unref(object); }
};

} // namespace

void prepare(PangoContext *context) {
  cairo_font_options_t *options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context, FALSE);
}

namespace {

class Ruler {
 public:
  Ruler() {
    map_.reset(pango_cairo_font_map_new());
    context_.reset(pango_font_map_create_context(PANGO_FONT_MAP(map_.get())));
    layout_.reset(pango_layout_new(PANGO_CONTEXT(context_.get())));
    prepare(PANGO_CONTEXT(context_.get()));
    PangoFontDescription *font = pango_font_description_from_string(font_family());
    pango_font_description_set_absolute_size(font, trial_size * PANGO_SCALE);
    pango_layout_set_font_description(PANGO_LAYOUT(layout_.get()), font);
    pango_font_description_free(font);
    PangoRectangle ink;
    pango_layout_set_text(PANGO_LAYOUT(layout_.get()), "H", -1);
    letters::require_drawn(PANGO_LAYOUT(layout_.get()), letters::drawing_font);
    pango_layout_get_extents(PANGO_LAYOUT(layout_.get()), &ink, nullptr);
    capital_ = double(ink.height) / PANGO_SCALE / trial_size;
  }
  double capital() const { return capital_; } // of the em
  double width(std::string_view text) {
    const auto found = known_.find(text);
    if (found != known_.end()) {
      return found->second;
    }
    PangoRectangle logical;
    pango_layout_set_text(PANGO_LAYOUT(layout_.get()), text.data(), static_cast<int>(text.size()));
    letters::require_drawn(PANGO_LAYOUT(layout_.get()), letters::drawing_font);
    pango_layout_get_extents(PANGO_LAYOUT(layout_.get()), nullptr, &logical);
    return known_.emplace(std::string(text), double(logical.width) / PANGO_SCALE / trial_size).first->second;
  }

 private:
  std::unique_ptr<void, Release> map_, context_, layout_;
  double capital_ = 0.0;
  std::map<std::string, double, std::less<>> known_;
};

Ruler &ruler() {
  static Ruler one;
  return one;
}

} // namespace

const char *font_family() {
  static const std::string family = std::string(letters::drawing_font) + ", sans-serif";
  return family.c_str();
}

double font_size(double height) {
  return height / ruler().capital();
}

double text_width(std::string_view text, double height) {
  return ruler().width(text) * font_size(height);
}

Box text_box(const Text &text) {
  constexpr double below = 0.3, above = 1.15; // of the height: descenders, brackets and accents
  const double width = text_width(text.content, text.height);
  if (text.upright) {
    return {{text.at.x - above * text.height, text.at.y},
            {text.at.x + below * text.height, text.at.y + width}};
  }
  return {{text.at.x, text.at.y - below * text.height}, {text.at.x + width, text.at.y + above * text.height}};
}

} // namespace purgewright::drawing

#include "canvas.hpp"

#include "purgewright/letters/fonts.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <pango/pangocairo.h>

#include <stdexcept>
#include <utility>

namespace purgewright::pages {
namespace {

constexpr double points_per_mm = 72.0 / 25.4;
constexpr double capital_share = 0.729, line_share = 1.164; // of the size: the font's own

std::string font_family() {
  return std::string(letters::page_font) + ", sans-serif";
}

struct Release {
  void operator()(cairo_surface_t *surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t *pen) const { cairo_destroy(pen); }
  void operator()(PangoLayout *layout) const { g_object_unref(layout); }
};

cairo_status_t append(void *bytes, const unsigned char *data, unsigned int size) {
  static_cast<std::string *>(bytes)->append(reinterpret_cast<const char *>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

void require(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS) {
    throw std::runtime_error(std::string("page: ") + cairo_status_to_string(status));
  }
}

PangoAlignment pango_align(Align align) {
  return align == Align::left    ? PANGO_ALIGN_LEFT
         : align == Align::right ? PANGO_ALIGN_RIGHT
                                 : PANGO_ALIGN_CENTER;
}

} // namespace

double capital_height(double points) {
  return capital_share * points / points_per_mm;
}
double line_height(double points) {
  return line_share * points / points_per_mm;
}

struct Canvas::State {
  Format format = Format::pdf;
  std::string bytes;
  std::unique_ptr<cairo_surface_t, Release> surface;
  std::unique_ptr<cairo_t, Release> pen;

  using Layout = std::unique_ptr<PangoLayout, Release>;
  Layout layout(std::string_view text, const Letters &letters) const {
    Layout made(pango_cairo_create_layout(pen.get()));
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    PangoContext *context = pango_layout_get_context(made.get());
    pango_cairo_context_set_font_options(context, options);
    cairo_font_options_destroy(options);
    pango_context_set_round_glyph_positions(context, FALSE);
    PangoFontDescription *font = pango_font_description_from_string(font_family().c_str());
    pango_font_description_set_absolute_size(font, letters.points / points_per_mm * PANGO_SCALE);
    pango_font_description_set_weight(font, letters.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(made.get(), font);
    pango_font_description_free(font);
    pango_layout_set_text(made.get(), text.data(), static_cast<int>(text.size()));
    letters::require_drawn(made.get(), letters::page_font);
    return made;
  }
  Layout wrapped(double width, std::string_view text, const Letters &letters) const {
    Layout made = layout(text, letters);
    pango_layout_set_width(made.get(), static_cast<int>(width * PANGO_SCALE));
    pango_layout_set_wrap(made.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_alignment(made.get(), pango_align(letters.align));
    return made;
  }
  void colour(const Colour &c) { cairo_set_source_rgba(pen.get(), c.red, c.green, c.blue, c.alpha); }
  void stroke(const Pen &with) {
    colour(with.colour);
    cairo_set_line_width(pen.get(), with.width);
    cairo_set_dash(pen.get(), with.dashes.data(), static_cast<int>(with.dashes.size()), 0.0);
    cairo_stroke(pen.get());
  }
};

namespace {

Point size_of(PangoLayout *layout) {
  PangoRectangle logical;
  pango_layout_get_extents(layout, nullptr, &logical);
  return {double(logical.width) / PANGO_SCALE, double(logical.height) / PANGO_SCALE};
}

} // namespace

Canvas::Canvas(Format format, double width, double height, std::string title)
    : state_(std::make_unique<State>()) {
  State &s = *state_;
  s.format = format;
  if (format == Format::pdf) {
    s.surface.reset(
        cairo_pdf_surface_create_for_stream(append, &s.bytes, width * points_per_mm, height * points_per_mm));
    cairo_pdf_surface_restrict_to_version(s.surface.get(), CAIRO_PDF_VERSION_1_5);
    // A fixed date keeps the bytes the same.
    cairo_pdf_surface_set_metadata(s.surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "1970-01-01T00:00:00Z");
    cairo_pdf_surface_set_metadata(s.surface.get(), CAIRO_PDF_METADATA_TITLE, title.c_str());
  } else {
    s.surface.reset(cairo_svg_surface_create_for_stream(append, &s.bytes, width, height));
    cairo_svg_surface_set_document_unit(s.surface.get(), CAIRO_SVG_UNIT_MM);
  }
  s.pen.reset(cairo_create(s.surface.get()));
  require(cairo_status(s.pen.get()));
  if (format == Format::pdf) {
    cairo_scale(s.pen.get(), points_per_mm, points_per_mm);
  }
  cairo_set_line_join(s.pen.get(), CAIRO_LINE_JOIN_ROUND);
}

Canvas::~Canvas() = default;

double Canvas::text(Point at, std::string_view text, const Letters &letters) {
  State &s = *state_;
  const auto layout = s.layout(text, letters);
  const double width = size_of(layout.get()).x;
  const double left = letters.align == Align::left    ? at.x
                      : letters.align == Align::right ? at.x - width
                                                      : at.x - 0.5 * width;
  s.colour(letters.colour);
  cairo_move_to(s.pen.get(), left, at.y - double(pango_layout_get_baseline(layout.get())) / PANGO_SCALE);
  pango_cairo_show_layout(s.pen.get(), layout.get());
  return width;
}

double Canvas::text_width(std::string_view text, const Letters &letters) const {
  return size_of(state_->layout(text, letters).get()).x;
}

double Canvas::wrapped(Point at, double width, std::string_view text, const Letters &letters) {
  State &s = *state_;
  const auto layout = s.wrapped(width, text, letters);
  s.colour(letters.colour);
  cairo_move_to(s.pen.get(), at.x, at.y);
  pango_cairo_show_layout(s.pen.get(), layout.get());
  return size_of(layout.get()).y;
}

double Canvas::wrapped_height(double width, std::string_view text, const Letters &letters) const {
  return size_of(state_->wrapped(width, text, letters).get()).y;
}

void Canvas::line(Point a, Point b, const Pen &pen) {
  path({a, b}, pen);
}

void Canvas::path(const std::vector<Point> &points, const Pen &pen) {
  cairo_new_path(state_->pen.get()); // lettering leaves a point behind
  for (const Point &p : points) {
    cairo_line_to(state_->pen.get(), p.x, p.y);
  }
  state_->stroke(pen);
}

void Canvas::arc(Point centre, double radius, double from, double to, const Pen &pen) {
  cairo_new_path(state_->pen.get());
  cairo_arc(state_->pen.get(), centre.x, centre.y, radius, from, to);
  state_->stroke(pen);
}

void Canvas::fill(const Box &box, Colour colour) {
  cairo_new_path(state_->pen.get());
  cairo_rectangle(state_->pen.get(), box.x, box.y, box.width, box.height);
  state_->colour(colour);
  cairo_fill(state_->pen.get());
}

void Canvas::fill(const std::vector<Point> &points, Colour colour) {
  cairo_new_path(state_->pen.get());
  for (const Point &p : points) {
    cairo_line_to(state_->pen.get(), p.x, p.y);
  }
  cairo_close_path(state_->pen.get());
  state_->colour(colour);
  cairo_fill(state_->pen.get());
}

void Canvas::frame(const Box &box, const Pen &pen) {
  cairo_new_path(state_->pen.get());
  cairo_rectangle(state_->pen.get(), box.x, box.y, box.width, box.height);
  state_->stroke(pen);
}

void Canvas::disc(Point centre, double radius, Colour colour) {
  cairo_new_path(state_->pen.get());
  cairo_arc(state_->pen.get(), centre.x, centre.y, radius, 0.0, 6.283185307179586);
  state_->colour(colour);
  cairo_fill(state_->pen.get());
}

void Canvas::clip(const Box &box) {
  cairo_save(state_->pen.get());
  cairo_new_path(state_->pen.get());
  cairo_rectangle(state_->pen.get(), box.x, box.y, box.width, box.height);
  cairo_clip(state_->pen.get());
}

void Canvas::unclip() {
  cairo_restore(state_->pen.get());
}

namespace {

// cairo counts its surfaces through the life of the program and names the SVG's group by the count.
std::string without_count(std::string svg) {
  constexpr std::string_view name = "id=\"surface";
  if (const auto at = svg.find(name); at != std::string::npos) {
    const auto from = at + name.size();
    svg.erase(from, svg.find('"', from) - from);
  }
  return svg;
}

} // namespace

void Canvas::new_page() {
  cairo_show_page(state_->pen.get());
}

std::string Canvas::finish() {
  cairo_show_page(state_->pen.get());
  require(cairo_status(state_->pen.get()));
  cairo_surface_finish(state_->surface.get());
  require(cairo_surface_status(state_->surface.get()));
  return state_->format == Format::svg ? without_count(std::move(state_->bytes)) : std::move(state_->bytes);
}

} // namespace purgewright::pages

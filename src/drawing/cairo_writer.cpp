// PDF, SVG and PNG by cairo and pango.
#include "purgewright/drawing/lettering.hpp"
#include "purgewright/drawing/writers.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/letters/fonts.hpp"

#include "pango_context.hpp" // after the project's headers: it brings the macro I of complex.h

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include <cmath>
#include <memory>
#include <string>

namespace purgewright::drawing {
namespace {

constexpr double points_per_mm = 72.0 / 25.4, dots_per_mm = 150.0 / 25.4;

struct Close {
  void operator()(cairo_surface_t *surface) const { cairo_surface_destroy(surface); }
  void operator()(cairo_t *pen) const { cairo_destroy(pen); }
};
using Surface = std::unique_ptr<cairo_surface_t, Close>;
using Pen = std::unique_ptr<cairo_t, Close>;

cairo_status_t append(void *bytes, const unsigned char *data, unsigned int size) {
  static_cast<std::string *>(bytes)->append(reinterpret_cast<const char *>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

// Sheet coordinates: millimetres, Y up from the lower left corner.
void set_frame(cairo_t *pen, const Sheet &sheet, double unit) {
  cairo_identity_matrix(pen);
  cairo_scale(pen, unit, -unit);
  cairo_translate(pen, 0.0, -sheet.height);
}

void draw(cairo_t *pen, const Stroke &stroke) {
  const LineStyle &style = style_of(stroke.line);
  cairo_set_line_width(pen, style.width);
  auto dashes = style.dashes;
  for (double &dash : dashes) {
    dash *= dash_factor(style, length_of(stroke.curve));
  }
  cairo_set_dash(pen, dashes.data(), style.dash_count, 0.0);
  if (const auto *s = std::get_if<Segment>(&stroke.curve)) {
    cairo_move_to(pen, s->a.x, s->a.y);
    cairo_line_to(pen, s->b.x, s->b.y);
  } else {
    const Arc &arc = std::get<Arc>(stroke.curve);
    cairo_new_sub_path(pen);
    cairo_arc(pen, arc.centre.x, arc.centre.y, arc.radius, arc.start, arc.start + arc.sweep);
  }
  cairo_stroke(pen);
}

void draw(cairo_t *pen, const Arrow &arrow) {
  const Point foot = arrow.tip - arrow_length * arrow.direction;
  const Point side = (arrow_length * std::tan(arrow_half_angle)) * turned_left(arrow.direction);
  cairo_move_to(pen, arrow.tip.x, arrow.tip.y);
  cairo_line_to(pen, (foot + side).x, (foot + side).y);
  cairo_line_to(pen, (foot - side).x, (foot - side).y);
  cairo_close_path(pen);
  cairo_fill(pen);
}

void draw(cairo_t *pen, const Text &text) {
  PangoLayout *layout = pango_cairo_create_layout(pen);
  prepare(pango_layout_get_context(layout));
  PangoFontDescription *font = pango_font_description_from_string(font_family());
  pango_font_description_set_absolute_size(font, font_size(text.height) * PANGO_SCALE);
  pango_layout_set_font_description(layout, font);
  pango_font_description_free(font);
  pango_layout_set_text(layout, text.content.data(), static_cast<int>(text.content.size()));
  letters::require_drawn(layout, letters::drawing_font);
  cairo_save(pen);
  cairo_translate(pen, text.at.x, text.at.y);
  if (text.upright) {
    cairo_rotate(pen, 0.5 * std::numbers::pi);
  }
  cairo_scale(pen, 1.0, -1.0); // letters stand upright in a frame whose Y points down
  const double up = double(pango_layout_get_baseline(layout)) / PANGO_SCALE;
  cairo_move_to(pen, 0.0, -up);
  pango_cairo_show_layout(pen, layout);
  cairo_restore(pen);
  g_object_unref(layout);
}

void draw(cairo_t *pen, const Sheet &sheet) {
  cairo_set_line_cap(pen, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(pen, CAIRO_LINE_JOIN_ROUND);
  cairo_set_source_rgb(pen, 0.0, 0.0, 0.0);
  for (const View &view : sheet.views) {
    for (const Stroke &stroke : view.strokes) {
      draw(pen, stroke);
    }
  }
  const auto all = [pen](const auto &items) {
    for (const auto &item : items) {
      draw(pen, item);
    }
  };
  all(sheet.strokes);
  all(sheet.arrows);
  all(sheet.texts);
  for (const Dimension &dimension : sheet.dimensions) {
    all(dimension.strokes);
    all(dimension.arrows);
    all(dimension.texts);
  }
}

void require(cairo_status_t status, const std::filesystem::path &path) {
  if (status != CAIRO_STATUS_SUCCESS) {
    throw files::FileError(path, cairo_status_to_string(status));
  }
}

} // namespace

void write_pdf(const std::filesystem::path &path, std::span<const Sheet> sheets) {
  std::string bytes;
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &bytes, 1.0, 1.0));
  cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
  // A fixed date keeps the bytes the same; the sheet's own date stands in its title block.
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "1970-01-01T00:00:00Z");
  if (!sheets.empty()) {
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, sheets.front().title.c_str());
  }
  {
    const Pen pen(cairo_create(surface.get()));
    for (const Sheet &sheet : sheets) {
      cairo_pdf_surface_set_size(surface.get(), sheet.width * points_per_mm, sheet.height * points_per_mm);
      set_frame(pen.get(), sheet, points_per_mm);
      draw(pen.get(), sheet);
      cairo_show_page(pen.get());
    }
    require(cairo_status(pen.get()), path);
  }
  cairo_surface_finish(surface.get());
  require(cairo_surface_status(surface.get()), path);
  files::write(path, bytes);
}

void write_svg(const std::filesystem::path &path, const Sheet &sheet) {
  std::string bytes;
  const Surface surface(cairo_svg_surface_create_for_stream(append, &bytes, sheet.width, sheet.height));
  cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_MM);
  {
    const Pen pen(cairo_create(surface.get()));
    set_frame(pen.get(), sheet, 1.0);
    draw(pen.get(), sheet);
    require(cairo_status(pen.get()), path);
  }
  cairo_surface_finish(surface.get());
  require(cairo_surface_status(surface.get()), path);
  files::write(path, bytes);
}

void write_png(const std::filesystem::path &path, const Sheet &sheet) {
  const auto dots = [](double size) { return static_cast<int>(std::lround(size * dots_per_mm)); };
  const Surface surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, dots(sheet.width), dots(sheet.height)));
  {
    const Pen pen(cairo_create(surface.get()));
    cairo_set_source_rgb(pen.get(), 1.0, 1.0, 1.0);
    cairo_paint(pen.get());
    set_frame(pen.get(), sheet, dots_per_mm);
    draw(pen.get(), sheet);
    require(cairo_status(pen.get()), path);
  }
  std::string bytes;
  require(cairo_surface_write_to_png_stream(surface.get(), append, &bytes), path);
  files::write(path, bytes);
}

} // namespace purgewright::drawing

#include "purgewright/drawing/sheet.hpp"

namespace purgewright::drawing {
namespace {

constexpr double wide = 0.5, narrow = 0.25; // ISO 128-2, group 0.5

// Dash 12 d, gap 3 d, long dash 24 d, dot 0.5 d (ISO 128-2); hidden lines keep their dashes at 12 d of the
// narrow line.
constexpr LineStyle styles[] = {
    {"VISIBLE", "01.2", wide, {}, 0},
    {"HIDDEN", "02.1", narrow, {12 * narrow, 3 * narrow}, 2},
    {"CENTRE", "04.1", narrow, {24 * narrow, 3 * narrow, 0.5 * narrow, 3 * narrow}, 4},
    {"CUTTING", "04.2", wide, {}, 0}, // only the ends are drawn
    {"HATCH", "01.1", narrow * 0.72, {}, 0},
    {"DIMENSION", "01.1", narrow, {}, 0},
    {"THREAD", "01.1", narrow, {}, 0},
    {"PHANTOM",
     "05.1",
     narrow,
     {24 * narrow, 3 * narrow, 0.5 * narrow, 3 * narrow, 0.5 * narrow, 3 * narrow},
     6},
    {"FRAME", "01.2", 0.7, {}, 0},
};

} // namespace

const LineStyle &style_of(Line line) {
  return styles[static_cast<std::size_t>(line)];
}

double dash_factor(const LineStyle &style, double length) {
  double period = 0.0;
  for (const double part : style.dashes) {
    period += part;
  }
  if (style.dash_count == 0 || length <= 0.0) {
    return 1.0;
  }
  const double count = std::max(1.0, std::round((length - style.dashes[0]) / period));
  return length / (count * period + style.dashes[0]);
}

double length_of(const Curve &curve) {
  if (const auto *s = std::get_if<Segment>(&curve)) {
    return length(s->b - s->a);
  }
  const Arc &arc = std::get<Arc>(curve);
  return arc.radius * arc.sweep;
}

} // namespace purgewright::drawing

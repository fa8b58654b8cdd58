#include "linear_shape.hpp"

#include "purgewright/drawing/lettering.hpp"

namespace purgewright::drawing {
namespace {

constexpr double first_distance = 8.5, level_distance = 7.0; // outline to first line, line to line
constexpr double gap = 0.8, overrun = 2.0;                   // of extension lines; 8 line widths
constexpr double text_gap = 1.4;                             // base line above the dimension line
constexpr double line_height = 1.5 * letter_height;          // brackets and air included
constexpr double beside_text = 1.2;                          // to the extension lines
constexpr double outside = 6.0;                              // tail of an outside arrow

// Work along the measured direction (t) and across it (n), then map to the sheet.
struct Across {
  bool upright;
  Point operator()(double t, double n) const { return upright ? Point{n, t} : Point{t, n}; }
  double t(Point p) const { return upright ? p.y : p.x; }
  double n(Point p) const { return upright ? p.x : p.y; }
};

double line_place(const Box &box, Side side, int level) {
  const double distance = first_distance + level * level_distance;
  switch (side) {
  case Side::below:
    return box.least.y - distance;
  case Side::above:
    return box.greatest.y + distance;
  case Side::left:
    return box.least.x - distance;
  default:
    return box.greatest.x + distance;
  }
}

void extension(Dimension &out, const Across &map, double t, double from, double to) {
  const double way = to > from ? 1.0 : -1.0;
  out.strokes.push_back({Line::dimension, Segment{map(t, from + way * gap), map(t, to + way * overrun)}});
}

// The frame of a theoretically exact dimension keeps clear of its line.
void box_in(Dimension &out) {
  constexpr double beside = 0.7;
  Box frame = out.box;
  (out.upright ? frame.least.y : frame.least.x) -= beside;
  (out.upright ? frame.greatest.y : frame.greatest.x) += beside;
  const Point a = frame.least, c = frame.greatest, b{c.x, a.y}, d{a.x, c.y};
  for (const Segment &side : {Segment{a, b}, Segment{b, c}, Segment{c, d}, Segment{d, a}}) {
    out.strokes.push_back({Line::dimension, side});
  }
  out.box = frame;
}

Dimension unplaced(const Linear &wish, const Stand &stand, const Across &map) {
  Dimension out = described(wish.feature, wish.label, wish.probe);
  out.from = position(wish.a);
  out.to = position(wish.b);
  const Vec along = map.upright ? stand.plan->looking.up : stand.plan->looking.right;
  out.along = {along.x, along.y, along.z};
  out.upright = map.upright;
  out.scale = stand.scale;
  return out;
}

} // namespace

std::array<Segment, 2> extension_lines(const Linear &wish, const Stand &stand, int level) {
  const Across map{wish.side == Side::left || wish.side == Side::right};
  const Point a = stand.paper(wish.a), b = stand.paper(wish.b);
  const double n = line_place(stand.box, wish.side, level);
  return {Segment{a, map(map.t(a), n)}, Segment{b, map(map.t(b), n)}};
}

double room_of(std::size_t lines) {
  return lines == 0 ? 0.0 : first_distance + double(lines - 1) * level_distance + text_gap + line_height;
}

std::optional<LinearShape> linear_shape(const Linear &wish, const Stand &stand, int level, TextPlace place) {
  const Across map{wish.side == Side::left || wish.side == Side::right};
  const Point a = stand.paper(wish.a), b = stand.paper(wish.b);
  const double n = line_place(stand.box, wish.side, level);
  const double low = std::min(map.t(a), map.t(b)), high = std::max(map.t(a), map.t(b));
  const double width = text_width(wish.label.lines[0], letter_height);
  if (place.side == TextSide::middle && width + 2.0 * beside_text > high - low) {
    return std::nullopt;
  }
  LinearShape shape{unplaced(wish, stand, map), {}};
  Dimension &out = shape.dimension;
  out.first = a;
  out.second = b;
  extension(out, map, map.t(a), map.n(a), n);
  extension(out, map, map.t(b), map.n(b), n);
  const bool arrows_outside = high - low < 3.0 * arrow_length;
  double start = arrows_outside ? low - outside : low, end = arrows_outside ? high + outside : high;
  double text_at = 0.5 * (low + high - width);
  if (place.side == TextSide::after) {
    text_at = std::max(end, high + arrow_length) + 0.5 + place.away;
    end = text_at + width;
  } else if (place.side == TextSide::before) {
    text_at = std::min(start, low - arrow_length) - 0.5 - place.away - width;
    start = text_at;
  }
  shape.line = {map(start, n), map(end, n)};
  out.line_at = map(0.5 * (low + high), n);
  out.strokes.push_back({Line::dimension, shape.line});
  const double inward = arrows_outside ? -1.0 : 1.0;
  out.arrows.push_back({map(low, n), map(-inward, 0.0)});
  out.arrows.push_back({map(high, n), map(inward, 0.0)});
  // Upright text stands to the left of its line, its foot to the right.
  const Point at = map(text_at, map.upright ? n - text_gap : n + text_gap);
  out.texts.push_back({at, letter_height, map.upright, wish.label.lines[0]});
  out.box = text_box(out.texts[0]);
  if (wish.exact) {
    box_in(out);
  }
  return shape;
}

} // namespace purgewright::drawing

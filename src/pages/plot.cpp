#include "plot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace purgewright::pages {
namespace {

constexpr Pen thin{0.15, {0.8, 0.8, 0.8}, {}};

// The axes in their frame on the paper.
class Field {
 public:
  Field(const Plot &plot, const Box &frame) : plot_(plot), frame_(frame) {}
  double x(double value) const { return frame_.x + share(plot_.x, value) * frame_.width; }
  double y(double value) const { return frame_.bottom() - share(plot_.y, value) * frame_.height; }
  const Box &frame() const { return frame_; }

 private:
  static double share(const Axis &axis, double value) {
    if (!axis.logarithmic) {
      return (value - axis.least) / (axis.most - axis.least);
    }
    const double held = std::max(value, 1e-3 * axis.least);
    return std::log(held / axis.least) / std::log(axis.most / axis.least);
  }
  const Plot &plot_;
  Box frame_;
};

std::string tick_text(double value) {
  return fmt::format("{:.6g}", value + 0.0);
}

void draw_spans(Canvas &canvas, const Plot &plot, const Field &field) {
  for (const Span &span : plot.spans) {
    const double left = field.x(span.from);
    canvas.fill(Box{left, field.frame().y, field.x(span.to) - left, field.frame().height}, span.colour);
  }
}

// Over the grid, whose lines would strike them through.
void name_spans(Canvas &canvas, const Plot &plot, const Field &field) {
  constexpr double edge = 0.4; // mm
  const Letters small{.points = plot.points - 1.0, .colour = grey, .align = Align::centre};
  const double line = line_height(plot.points), top = field.frame().y;
  double taken = 0.0; // right end of the last name
  for (const Span &span : plot.spans) {
    const double half = 0.5 * canvas.text_width(span.name, small);
    const double middle = std::max(0.5 * (field.x(span.from) + field.x(span.to)),
                                   field.frame().x + half + edge); // clear of the axis' numbers
    if (middle - half > taken) {
      canvas.fill(Box{middle - half - 0.5 * edge, top, 2.0 * half + edge, 1.3 * line}, white);
      canvas.text({middle, top + line}, span.name, small);
      taken = middle + half + edge;
    }
  }
}

void draw_axes(Canvas &canvas, const Plot &plot, const Field &field) {
  const Box &frame = field.frame();
  const double under = frame.bottom() + line_height(plot.points);
  for (const double value : ticks(plot.x, std::max(2, int(frame.width / 12.0)))) {
    canvas.line({field.x(value), frame.y}, {field.x(value), frame.bottom()}, thin);
    canvas.text({field.x(value), under}, tick_text(value), {.points = plot.points, .align = Align::centre});
  }
  for (const double value : ticks(plot.y, std::max(2, int(frame.height / 7.0)))) {
    canvas.line({frame.x, field.y(value)}, {frame.right(), field.y(value)}, thin);
    canvas.text({frame.x - 0.8, field.y(value) + 0.5 * capital_height(plot.points)}, tick_text(value),
                {.points = plot.points, .align = Align::right});
  }
  canvas.text({frame.right(), under + line_height(plot.points)}, plot.x.title,
              {.points = plot.points, .align = Align::right});
}

std::vector<std::vector<Point>> on_paper(const Plot &plot, const Field &field) {
  std::vector<std::vector<Point>> curves;
  for (const Curve &curve : plot.curves) {
    auto &points = curves.emplace_back();
    points.reserve(curve.points.size());
    for (const Point &p : curve.points) {
      points.push_back({field.x(p.x), field.y(p.y)});
    }
  }
  return curves;
}

// A limit's line with its name over or under it, where no curve runs through the name if there is such a
// place.
void draw_levels(Canvas &canvas, const Plot &plot, const Field &field,
                 const std::vector<std::vector<Point>> &curves) {
  constexpr double gap = 0.8; // mm, name to the frame and to its line
  const Box &frame = field.frame();
  for (const Level &level : plot.levels) {
    const double at = field.y(level.value);
    canvas.line({frame.x, at}, {frame.right(), at}, level.pen);
    const Letters letters{.points = plot.points - 0.5, .colour = level.pen.colour};
    const Box size{0.0, 0.0, canvas.text_width(level.name, letters), line_height(letters.points)};
    const Box place = free_place(size, {frame.x + gap, at, frame.width - 2.0 * gap, 0.0}, frame, curves);
    canvas.fill(place, {1, 1, 1, 0.75});
    canvas.text({place.x, place.bottom() - 0.25 * place.height}, level.name, letters);
  }
}

void draw_names(Canvas &canvas, const Plot &plot, const Box &box) {
  double at = box.x;
  const double base = box.y + capital_height(plot.points) + 0.2;
  at += canvas.text({at, base}, plot.title, {.points = plot.points, .bold = true}) + 3.0;
  for (const Curve &curve : plot.curves) {
    if (curve.name.empty()) {
      continue;
    }
    const double middle = base - 0.5 * capital_height(plot.points);
    canvas.line({at, middle}, {at + 5.0, middle}, curve.pen);
    at += 6.0;
    at += canvas.text({at, base}, curve.name, {.points = plot.points}) + 3.0;
  }
}

// Length of the part of a straight line that lies in the box, by Liang and Barsky's clipping.
double length_inside(const Box &box, const Point &from, const Point &to) {
  double enter = 0.0, leave = 1.0;
  const double dx = to.x - from.x, dy = to.y - from.y;
  const auto clip = [&](double along, double room) { // keeps along * t <= room
    if (along == 0.0) {
      leave = room < 0.0 ? enter - 1.0 : leave;
    } else {
      (along < 0.0 ? enter : leave) =
          along < 0.0 ? std::max(enter, room / along) : std::min(leave, room / along);
    }
  };
  clip(-dx, from.x - box.x), clip(dx, box.right() - from.x);
  clip(-dy, from.y - box.y), clip(dy, box.bottom() - from.y);
  return leave > enter ? (leave - enter) * std::hypot(dx, dy) : 0.0;
}

} // namespace

Box free_place(const Box &size, const Box &line, const Box &frame,
               const std::vector<std::vector<Point>> &curves) {
  constexpr int steps = 24;
  constexpr double off_line = 0.3; // mm
  Box best = size;
  double least = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= steps; ++i) {
    const double left = line.right() - size.width - i * (line.width - size.width) / steps;
    for (const double top : {line.y - off_line - size.height, line.y + off_line}) {
      const Box place{left, top, size.width, size.height};
      double covered = place.y < frame.y || place.bottom() > frame.bottom() ? frame.width : 0.0;
      for (const auto &curve : curves) {
        for (std::size_t k = 1; k < curve.size(); ++k) {
          covered += length_inside(place, curve[k - 1], curve[k]);
        }
      }
      if (covered < least) {
        least = covered;
        best = place;
      }
    }
  }
  return best;
}

std::vector<double> ticks(const Axis &axis, int wished) {
  std::vector<double> values;
  if (axis.logarithmic) {
    for (double power = std::ceil(std::log10(axis.least) - 1e-9); power <= std::log10(axis.most) + 1e-9;
         power += 1.0) {
      values.push_back(std::pow(10.0, power));
    }
    return values;
  }
  const double rough = (axis.most - axis.least) / wished;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  double step = 10.0 * power;
  for (const double times : {5.0, 2.0, 1.0}) {
    step = times * power >= rough ? times * power : step;
  }
  const double first = std::ceil(axis.least / step - 1e-9);
  for (double i = first; i * step <= axis.most + 1e-9 * step; i += 1.0) {
    values.push_back(i * step);
  }
  return values;
}

void draw(Canvas &canvas, const Box &box, const Plot &plot) {
  const double letters = line_height(plot.points);
  double widest = 0.0;
  for (const double value : ticks(plot.y, std::max(2, int(box.height / 7.0)))) {
    widest = std::max(widest, canvas.text_width(tick_text(value), {.points = plot.points}));
  }
  const double left = widest + 1.2, above = letters + 1.0, below = 2.0 * letters + 0.6, right = 1.5;
  const Field field(plot,
                    {box.x + left, box.y + above, box.width - left - right, box.height - above - below});
  draw_spans(canvas, plot, field);
  draw_axes(canvas, plot, field);
  name_spans(canvas, plot, field);
  const auto curves = on_paper(plot, field);
  canvas.clip(field.frame());
  for (std::size_t i = 0; i < curves.size(); ++i) {
    canvas.path(curves[i], plot.curves[i].pen);
  }
  canvas.unclip();
  draw_levels(canvas, plot, field, curves);
  canvas.frame(field.frame(), {.width = 0.25});
  draw_names(canvas, plot, box);
}

} // namespace purgewright::pages

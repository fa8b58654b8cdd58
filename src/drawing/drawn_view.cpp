#include "drawn_view.hpp"

#include "hatch.hpp"
#include "spacing.hpp"

namespace purgewright::drawing {
namespace {

constexpr double axis_overrun = 3.0;
// Hatching at 45 degrees across a wall whose two sides would print as one line: the wall is that line.
constexpr double thin_wall = std::numbers::sqrt2 * least_line_distance;
constexpr double small_form = 1.0;   // mm at full size: edge breaks and thin walls, said in words
constexpr double much_reduced = 0.5; // scales under this tell no two lines apart that are nearer than may be

Curve on_paper(const Curve &curve, const Stand &stand) {
  if (const auto *s = std::get_if<Segment>(&curve)) {
    return Segment{stand.paper(s->a), stand.paper(s->b)};
  }
  Arc arc = std::get<Arc>(curve);
  arc.centre = stand.paper(arc.centre);
  arc.radius *= stand.scale;
  return arc;
}

void add_curve(View &view, Line line, const Curve &paper, const std::optional<Arc> &clip) {
  if (!clip) {
    view.strokes.push_back({line, paper});
    return;
  }
  for (const Segment &chord : chords(paper, 0.02)) {
    for (const Segment &piece : clipped(chord, *clip)) {
      view.strokes.push_back({line, piece});
    }
  }
}

} // namespace

View drawn(const Stand &stand) {
  const ViewPlan &plan = *stand.plan;
  View view{plan.name, stand.box, stand.scale, {}};
  std::optional<Arc> clip;
  if (plan.clip) {
    clip = std::get<Arc>(on_paper(*plan.clip, stand));
    view.strokes.push_back({Line::dimension, *clip});
  }
  for (const Hatching &hatching : plan.hatched) {
    std::vector<Loop> loops = hatching.loops;
    for (Loop &loop : loops) {
      for (Point &p : loop) {
        p = stand.paper(p);
      }
    }
    for (const Segment &s : hatch(loops, hatching.spacing, hatching.angle)) {
      if (length(s.b - s.a) > thin_wall) {
        add_curve(view, Line::hatch, s, clip);
      }
    }
  }
  for (const Stroke &stroke : plan.strokes) {
    add_curve(view, stroke.line, on_paper(stroke.curve, stand), clip);
  }
  for (const auto &[a, b] : plan.axes) {
    const Point p = stand.paper(a), q = stand.paper(b);
    const Point more = axis_overrun * unit(q - p);
    add_curve(view, Line::centre, Segment{p - more, q + more}, clip);
  }
  const bool simple = plan.simplified || stand.scale < much_reduced;
  leave_out_close_lines(view.strokes, simple ? least_line_distance : small_form * stand.scale);
  return view;
}

} // namespace purgewright::drawing

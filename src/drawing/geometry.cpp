#include "purgewright/drawing/geometry.hpp"

namespace purgewright::drawing {

std::vector<Segment> chords(const Curve &curve, double deviation) {
  if (const auto *segment = std::get_if<Segment>(&curve)) {
    return {*segment};
  }
  const Arc &arc = std::get<Arc>(curve);
  const double step =
      arc.radius > deviation ? 2.0 * std::acos(1.0 - deviation / arc.radius) : full_turn / 8.0;
  const int count = std::max(1, static_cast<int>(std::ceil(arc.sweep / step)));
  std::vector<Segment> out;
  for (int i = 0; i < count; ++i) {
    out.push_back({arc.at(double(i) / count), arc.at(double(i + 1) / count)});
  }
  return out;
}

Box box_of(const Curve &curve) {
  Box box;
  if (const auto *segment = std::get_if<Segment>(&curve)) {
    box.include(segment->a);
    box.include(segment->b);
    return box;
  }
  const Arc &arc = std::get<Arc>(curve);
  box.include(arc.at(0.0));
  box.include(arc.at(1.0));
  // Where the arc runs along an axis.
  constexpr double quarter = 0.25 * full_turn;
  for (double angle = quarter * std::ceil(arc.start / quarter); angle < arc.start + arc.sweep;
       angle += quarter) {
    box.include(arc.centre + polar(arc.radius, angle));
  }
  return box;
}

bool crosses(const Segment &s, const Box &box) {
  // Clip the segment's parameter range by the four sides.
  double low = 0.0, high = 1.0;
  const auto clip = [&](double start, double step, double least, double greatest) {
    if (std::abs(step) < 1e-12) {
      return start > least && start < greatest;
    }
    const double a = (least - start) / step, b = (greatest - start) / step;
    low = std::max(low, std::min(a, b));
    high = std::min(high, std::max(a, b));
    return low < high;
  };
  return clip(s.a.x, s.b.x - s.a.x, box.least.x, box.greatest.x) &&
         clip(s.a.y, s.b.y - s.a.y, box.least.y, box.greatest.y);
}

bool cross(const Segment &s, const Segment &t) {
  const auto side = [](Point a, Point b, Point p) {
    const double area = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    return std::abs(area) < 1e-9 ? 0 : (area > 0.0 ? 1 : -1);
  };
  return side(s.a, s.b, t.a) * side(s.a, s.b, t.b) < 0 && side(t.a, t.b, s.a) * side(t.a, t.b, s.b) < 0;
}

} // namespace purgewright::drawing

#include "view.hpp"

namespace purgewright::drawing {

void ViewPlan::line(Line type, Vec a, Vec b) {
  const Point p = looking(a), q = looking(b);
  constexpr double nothing = 1e-6;
  if (length(q - p) > nothing) {
    strokes.push_back({type, Segment{p, q}});
  }
}

void ViewPlan::outline(Line type, const std::vector<Vec> &corners, bool closed) {
  for (std::size_t i = 0; i + 1 < corners.size(); ++i) {
    line(type, corners[i], corners[i + 1]);
  }
  if (closed && corners.size() > 2) {
    line(type, corners.back(), corners.front());
  }
}

void ViewPlan::circle(Line type, Vec centre, double radius, double start, double sweep) {
  strokes.push_back({type, Arc{looking(centre), radius, start, sweep}});
}

void ViewPlan::axis(Vec a, Vec b) {
  axes.emplace_back(looking(a), looking(b));
}

void ViewPlan::centre_mark(Vec centre, double radius) {
  const Point c = looking(centre);
  axes.emplace_back(c - Point{radius, 0.0}, c + Point{radius, 0.0});
  axes.emplace_back(c - Point{0.0, radius}, c + Point{0.0, radius});
}

Box ViewPlan::box() const {
  Box out;
  for (const Stroke &stroke : strokes) {
    out.include(box_of(stroke.curve));
  }
  if (clip) {
    const Point r{clip->radius, clip->radius};
    out = {clip->centre - r, clip->centre + r};
  }
  return out;
}

fixture::Position position(Vec v) {
  return {units::millimetres(v.x), units::millimetres(v.y), units::millimetres(v.z)};
}

void Label::put_before(const std::string &text) {
  lines.front().insert(0, text);
  number_at += text.size();
}

Dimension described(const std::string &feature, const Label &label, Probe probe) {
  Dimension out;
  out.feature = feature;
  out.probe = probe;
  out.value = label.value;
  out.shown = label.shown;
  out.last_digit = label.last_digit;
  out.lines = label.lines;
  out.number_at = label.number_at;
  out.number_size = label.number_size;
  return out;
}

} // namespace purgewright::drawing

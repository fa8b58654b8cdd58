#include "spacing.hpp"

#include <algorithm>

namespace purgewright::drawing {
namespace {

constexpr double same_line = 0.02, short_line = 1.0; // mm
constexpr double good_part = 0.5;                    // of the shorter line, beside the other
constexpr double alike = 0.8;                        // as long: shorter / longer

struct Beside {
  double distance, along;
};

Beside beside(const Segment &a, const Segment &b) {
  constexpr double slant = 0.02; // sine of the angle between them
  const Point u = unit(a.b - a.a), v = unit(b.b - b.a);
  if (std::abs(u.x * v.y - u.y * v.x) > slant) {
    return {};
  }
  const double from = dot(b.a - a.a, u), to = dot(b.b - a.a, u);
  return {std::abs(dot(b.a - a.a, turned_left(u))),
          std::min(length(a.b - a.a), std::max(from, to)) - std::max(0.0, std::min(from, to))};
}

// Of the angle that both sweep, by small steps.
Beside beside(const Arc &a, const Arc &b) {
  constexpr int steps = 72;
  if (length(a.centre - b.centre) > same_line) {
    return {};
  }
  const auto holds = [](const Arc &arc, double angle) {
    return arc.is_circle() || std::fmod(angle - arc.start + 4.0 * full_turn, full_turn) <= arc.sweep;
  };
  int shared = 0;
  for (int i = 0; i < steps; ++i) {
    const double angle = full_turn * i / steps;
    shared += holds(a, angle) && holds(b, angle) ? 1 : 0;
  }
  return {std::abs(a.radius - b.radius), full_turn * shared / steps * std::min(a.radius, b.radius)};
}

Beside beside(const Curve &a, const Curve &b) {
  if (const auto *s = std::get_if<Segment>(&a)) {
    const auto *t = std::get_if<Segment>(&b);
    return t == nullptr ? Beside{} : beside(*s, *t);
  }
  const auto *arc = std::get_if<Arc>(&b);
  return arc == nullptr ? Beside{} : beside(std::get<Arc>(a), *arc);
}

struct Measured {
  std::size_t at;
  double length;
  Box box;
};

// Visible ones that are long enough to be told apart, longest first, as they come where they are as long.
std::vector<Measured> longest_first(const std::vector<Stroke> &strokes) {
  std::vector<Measured> out;
  for (std::size_t i = 0; i < strokes.size(); ++i) {
    const double size = length_of(strokes[i].curve);
    if (strokes[i].line == Line::visible && size > short_line) {
      out.push_back({i, size, box_of(strokes[i].curve).grown(least_line_distance)});
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Measured &a, const Measured &b) { return a.length > b.length; });
  return out;
}

// What is left of b beyond the stretch that runs beside a: the longer end of it.
Segment beyond(const Segment &a, const Segment &b) {
  const double whole = length(b.b - b.a);
  const Point v = unit(b.b - b.a);
  const double one = dot(a.a - b.a, v), other = dot(a.b - b.a, v);
  const double from = std::max(0.0, std::min(one, other)), to = std::min(whole, std::max(one, other));
  return from > whole - to ? Segment{b.a, b.a + from * v} : Segment{b.a + to * v, b.b};
}

// Of two long lines that run beside each other for a stretch, the shorter begins or ends there.
void cut_back_close_lines(std::vector<Stroke> &strokes, double most) {
  const auto lines = longest_first(strokes);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (std::size_t j = i + 1; j < lines.size(); ++j) {
      const auto *longer = std::get_if<Segment>(&strokes[lines[i].at].curve);
      auto *shorter = std::get_if<Segment>(&strokes[lines[j].at].curve);
      if (longer == nullptr || shorter == nullptr || !overlap(lines[i].box, lines[j].box)) {
        continue;
      }
      const Beside found = beside(*longer, *shorter);
      if (found.distance > same_line && found.distance < most && found.along >= short_line) {
        *shorter = beyond(*longer, *shorter);
      }
    }
  }
}

} // namespace

void leave_out_close_lines(std::vector<Stroke> &strokes, double small) {
  const double most = std::min(small, least_line_distance);
  const auto lines = longest_first(strokes);
  std::vector<bool> out(strokes.size(), false);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (std::size_t j = i + 1; j < lines.size() && !out[lines[i].at]; ++j) {
      if (out[lines[j].at] || !overlap(lines[i].box, lines[j].box)) {
        continue;
      }
      const Curve &shorter = strokes[lines[j].at].curve;
      const Beside found = beside(strokes[lines[i].at].curve, shorter);
      // Of arcs that run so for a stretch alone none is cut back.
      const double part = std::holds_alternative<Arc>(shorter) ? 0.0 : good_part * lines[j].length;
      if (found.distance <= same_line || found.distance >= most || found.along < std::max(short_line, part)) {
        continue;
      }
      const bool as_long = lines[j].length > alike * lines[i].length;
      out[as_long ? std::max(lines[i].at, lines[j].at) : lines[j].at] = true;
    }
  }
  std::size_t at = 0;
  std::erase_if(strokes, [&](const Stroke &) { return out[at++]; });
  cut_back_close_lines(strokes, most);
}

} // namespace purgewright::drawing

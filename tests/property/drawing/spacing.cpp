#include "sheet_faults.hpp"

#include <fmt/format.h>

namespace purgewright::test {

using namespace drawing;

namespace {

struct Gap {
  double distance, along; // between the lines' middles; length over which they run beside each other
};

// Two segments that run in one direction; the distance is that of the shorter one from the longer one's line.
Gap gap_between(const Segment &one, const Segment &other) {
  const bool first = length(one.b - one.a) >= length(other.b - other.a);
  const Segment &a = first ? one : other, &b = first ? other : one;
  const Point u = unit(a.b - a.a);
  const double from = dot(b.a - a.a, u), to = dot(b.b - a.a, u);
  const double along = std::min(length(a.b - a.a), std::max(from, to)) - std::max(0.0, std::min(from, to));
  return {std::abs(dot(b.a - a.a, turned_left(u))), along};
}

// Concentric arcs, by the angle that both sweep.
Gap gap_between(const Arc &a, const Arc &b) {
  constexpr int steps = 72;
  int shared = 0;
  for (int i = 0; i < steps; ++i) {
    const double angle = full_turn * i / steps;
    const auto holds = [&](const Arc &arc) {
      return arc.is_circle() || std::fmod(angle - arc.start + 4.0 * full_turn, full_turn) <= arc.sweep;
    };
    shared += holds(a) && holds(b) ? 1 : 0;
  }
  return {std::abs(a.radius - b.radius), full_turn * shared / steps * std::min(a.radius, b.radius)};
}

bool parallel(const Segment &a, const Segment &b) {
  constexpr double slant = 0.02; // of a right angle's sine
  const Point u = unit(a.b - a.a), v = unit(b.b - b.a);
  return std::abs(u.x * v.y - u.y * v.x) < slant;
}

} // namespace

std::vector<std::string> close_lines(const Sheet &sheet) {
  // Lines a fifth of their own width apart (0.5 mm) lie on each other and print as one.
  constexpr double least_length = 1.0, same_line = 0.1, one_centre = 0.02; // mm
  std::vector<std::string> faults;
  for (const View &view : sheet.views) {
    std::vector<Segment> segments;
    std::vector<Arc> arcs;
    for (const Stroke &stroke : view.strokes) {
      if (stroke.line != Line::visible) {
        continue;
      }
      if (const auto *s = std::get_if<Segment>(&stroke.curve);
          s != nullptr && length(s->b - s->a) > least_length) {
        segments.push_back(*s);
      } else if (const auto *arc = std::get_if<Arc>(&stroke.curve);
                 arc != nullptr && arc->radius * arc->sweep > least_length) {
        arcs.push_back(*arc);
      }
    }
    const auto judge = [&](const Gap &gap, Point at) {
      if (gap.along > least_length && gap.distance > same_line && gap.distance < line_distance) {
        faults.push_back(fmt::format("{}: {} ({:g}): {:.2f} mm over {:.1f} at {:.0f}, {:.0f}", sheet.name,
                                     view.name, view.scale, gap.distance, gap.along, at.x, at.y));
      }
    };
    for (std::size_t i = 0; i < segments.size(); ++i) {
      for (std::size_t j = i + 1; j < segments.size(); ++j) {
        if (parallel(segments[i], segments[j])) {
          judge(gap_between(segments[i], segments[j]), segments[i].a);
        }
      }
    }
    for (std::size_t i = 0; i < arcs.size(); ++i) {
      for (std::size_t j = i + 1; j < arcs.size(); ++j) {
        if (length(arcs[i].centre - arcs[j].centre) < one_centre) {
          judge(gap_between(arcs[i], arcs[j]), arcs[i].centre);
        }
      }
    }
  }
  return faults;
}

} // namespace purgewright::test

#include "feature_views.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {

using fixture::BoreStep;
using fixture::Hole;
using fixture::HoleEnd;
using fixture::Length;

Vec vec(const fixture::Position &p) {
  return {in_mm(p.x), in_mm(p.y), in_mm(p.z)};
}
Vec vec(const fixture::Direction &d) {
  return {d.x, d.y, d.z};
}

namespace {

struct Sized {
  const Labels &labels;
  Length size;
  bool diameter;
  std::string before, after;

  Label plain() const {
    return diameter ? labels.diameter(0.5 * size, before, after) : labels.size(size, before, after);
  }
  Label operator()(const fixture::General &) const { return plain(); }
  Label operator()(const fixture::Fit &fit) const {
    Label label = labels.fitted(0.5 * size, fit.letter, fit.grade);
    label.put_before(before);
    label.lines[0] += after;
    return label;
  }
  Label operator()(const fixture::PlusMinus &limit) const {
    return labels.plus_minus(size, limit.by, diameter ? before + "⌀" : before);
  }
  Label operator()(const fixture::SizeLimits &limits) const {
    Label label = labels.limited(size, limits.most, limits.least, diameter ? "⌀" : "");
    label.put_before(before);
    label.lines[0] += after;
    return label;
  }
};

std::string times(int count) {
  return count > 1 ? fmt::format("{}× ", count) : "";
}

std::string thread_name(const fixture::Thread &thread, std::string_view grade) {
  return thread.callout.empty()
             ? fmt::format("M{:g}×{:g}-{}", in_mm(thread.major), in_mm(thread.pitch), grade)
             : std::string(thread.callout);
}

double cone(Length large, Length small) {
  return in_mm(fixture::drill_cone(large, small));
}

} // namespace

Label diameter_label(const Labels &labels, Length radius, const fixture::Tolerance &tolerance,
                     std::string before, std::string after) {
  return std::visit(Sized{labels, 2.0 * radius, true, std::move(before), std::move(after)}, tolerance);
}

Label length_label(const Labels &labels, Length length, const fixture::Tolerance &tolerance,
                   std::string before) {
  return std::visit(Sized{labels, length, false, std::move(before), {}}, tolerance);
}

std::string_view drilled_or_bored(Length radius) {
  constexpr Length widest = units::millimetres(14.0); // jobber drills end there, ISO 235; from memory
  return 2.0 * radius > widest ? "bore" : "drill";
}

std::vector<std::string> thread_lines(const Labels &n, const Hole &hole, int count) {
  std::vector<std::string> lines;
  const bool through = hole.end == HoleEnd::open && hole.steps.size() == 1;
  lines.push_back(times(count) + thread_name(hole.thread, "6H") +
                  (through ? " through" : " ↧" + n.number(hole.thread.depth)));
  for (const BoreStep &step : hole.steps) {
    if (step.name == hole.threaded) {
      lines.push_back(fmt::format("{} ⌀{}", drilled_or_bored(step.radius), n.number(2.0 * step.radius)) +
                      (step.drilled ? " ↧" + n.number(step.depth - (&step == &hole.steps.front()
                                                                        ? Length{}
                                                                        : hole.steps.front().depth))
                                    : ""));
    }
  }
  if (hole.steps.front().name == "spot") {
    const BoreStep &spot = hole.steps.front();
    lines.push_back(fmt::format("spot face ⌀{} ↧{}", n.number(2.0 * spot.radius), n.number(spot.depth)));
  }
  return lines;
}

std::string external_thread(const Labels &n, const fixture::Thread &thread) {
  return fmt::format("{}, {} long", thread_name(thread, "6g"), n.number(thread.depth));
}

namespace {

// Edges and thread from one mouth inwards, up to the step that reaches the other.
void steps_cut(ViewPlan &view, const Hole &hole, Vec mouth, Vec in) {
  const Vec across = std::abs(in.x) > 0.5 ? Vec{0, 0, 1} : Vec{1, 0, 0};
  const auto edge = [&](double depth, double r) {
    const Vec c = mouth + depth * in;
    view.line(Line::visible, c - r * across, c + r * across);
  };
  double from = 0.0;
  for (std::size_t i = 0; i < hole.steps.size(); ++i) {
    const BoreStep &step = hole.steps[i];
    const double depth = in_mm(step.depth), r = in_mm(step.radius);
    const bool threaded = step.name == hole.threaded && !hole.threaded.empty();
    if (threaded && hole.end == HoleEnd::open && hole.steps.size() == 1) {
      for (const double side : {-0.5, 0.5}) {
        const Vec major = side * in_mm(hole.thread.major) * across;
        view.line(Line::thread, mouth + major, mouth + depth * in + major);
      }
    } else if (threaded && in_mm(hole.thread.depth) < depth - from) {
      thread_cut(view, mouth + from * in, in, across, 0.5 * in_mm(hole.thread.major),
                 in_mm(hole.thread.depth), r);
    }
    if (i + 1 < hole.steps.size()) {
      const double next = in_mm(hole.steps[i + 1].radius);
      edge(depth, std::max(r, next));
      if (step.drilled) {
        edge(depth + cone(step.radius, hole.steps[i + 1].radius), next);
      }
    } else if (hole.end == HoleEnd::point) {
      edge(depth, r);
    }
    from = depth;
  }
}

} // namespace

void hole_cut(ViewPlan &view, const Hole &hole, const fixture::HoleAt &at) {
  const Vec mouth = vec(at.mouth), in = vec(at.into);
  const Vec end = mouth + in_mm(hole.steps.back().depth) * in;
  steps_cut(view, hole, mouth, in);
  if (hole.end == HoleEnd::alike) {
    steps_cut(view, hole, end, -1.0 * in);
  }
  view.axis(mouth, end);
}

void hole_end_on(ViewPlan &view, const Hole &hole, const fixture::HoleAt &at) {
  const Vec centre = vec(at.mouth);
  for (const BoreStep &step : hole.steps) {
    view.circle(Line::visible, centre, in_mm(step.radius));
  }
  if (!hole.threaded.empty()) {
    thread_end_on(view, centre, 0.5 * in_mm(hole.thread.major));
  }
  view.centre_mark(centre, std::max(in_mm(hole.steps.front().radius), 0.5 * in_mm(hole.thread.major)));
}

} // namespace purgewright::drawing

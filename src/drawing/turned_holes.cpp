// Holes of a turned part on its section.
#include "turned_part.hpp"

#include <algorithm>

namespace purgewright::drawing {

using fixture::Hole;
using fixture::HoleEnd;
using fixture::Length;
using fixture::Part;
using fixture::TurnedBody;

const TurnedBody &body_of(const Part &part) {
  return std::get<TurnedBody>(part.features.front());
}

std::string name(const Part &part, std::string_view feature, std::string_view size) {
  return fmt::format("{}.{}{}", part.id, feature, size);
}

// Where lengths start.
Length datum_x(const TurnedBody &body) {
  const bool stop = std::ranges::any_of(body.steps, [](const auto &step) { return step.end_x == Length{}; });
  return stop ? Length{} : body.start_x;
}

std::vector<Span> spans(const TurnedBody &body) {
  std::vector<Span> out;
  Length from = body.start_x;
  for (const auto &step : body.steps) {
    out.push_back({step, from});
    from = step.end_x;
  }
  return out;
}

double foot(const TurnedBody &body, Length x) {
  double radius = 0.0;
  for (const auto &[step, from] : spans(body)) {
    if (x == from || x == step.end_x) {
      radius = std::max(radius, in_mm(step.radius - (x == step.end_x ? step.chamfer : Length{})));
    }
  }
  return radius;
}

namespace {

bool along_axis(const Hole &hole) {
  return std::abs(hole.into.x) > 0.5;
}

// A hole in line with an earlier one has its place from that.
bool said_before(const Part &part, const Hole &hole) {
  for (const auto &feature : part.features) {
    if (const auto *other = std::get_if<Hole>(&feature); other != nullptr && along_axis(*other)) {
      if (other->name == hole.name) {
        return false;
      }
      if (other->mouth.z == hole.mouth.z) {
        return true;
      }
    }
  }
  return false;
}

// The same thread in a drilling of the same size.
bool same_port(const Hole &a, const Hole &b) {
  const auto drilling = [](const Hole &hole) {
    return std::ranges::find(hole.steps, hole.threaded, &fixture::BoreStep::name);
  };
  if (a.threaded.empty() || b.threaded.empty() || a.thread.callout != b.thread.callout) {
    return false;
  }
  const auto one = drilling(a), other = drilling(b);
  return one->radius == other->radius && one->depth == other->depth;
}

// How many ports of this face are like this hole's; 0 when an earlier one speaks for it.
int ports_alike(const Part &part, const Hole &hole) {
  int count = 0;
  bool earlier = true, said = false;
  each<Hole>(part, [&](const Hole &other) {
    earlier = earlier && other.name != hole.name;
    if (other.into.x == hole.into.x && same_port(other, hole)) {
      ++count;
      said = said || earlier;
    }
  });
  return said ? 0 : count;
}

bool is_crossed(const Part &part, fixture::Length radius) {
  bool found = false;
  each<Hole>(part, [&](const Hole &hole) {
    found = found || (hole.end == HoleEnd::crossing && !along_axis(hole) && hole.crossed_radius == radius);
  });
  return found;
}

// Steps of a hole along X: diameters on leaders, depths above the view.
void axial_hole(ViewPlan &view, const Inputs &in, const Part &part, const Hole &hole) {
  const auto &n = in.labels;
  const double mouth = in_mm(hole.mouth.x), z = in_mm(hole.mouth.z), into = hole.into.x;
  const double reach = foot(body_of(part), hole.mouth.x);
  double from = 0.0;
  const auto prefix = fmt::format("{}.", hole.name);
  for (const auto &step : hole.steps) {
    const bool last = &step == &hole.steps.back();
    const double r = in_mm(step.radius), depth = in_mm(step.depth);
    if (step.name == hole.threaded) {
      const int alike = ports_alike(part, hole);
      if (alike == 0) {
        from = depth;
        continue;
      }
      Callout port = note(name(part, prefix, step.name), {mouth + into * (from + 1.5), 0, z - r},
                          thread_lines(n, hole, alike));
      port.towards = into > 0.0 ? down_left : down_right;
      view.callouts.push_back(std::move(port));
    } else {
      const bool through = last && hole.end == HoleEnd::open,
                 crossing = last && hole.end == HoleEnd::crossing;
      const bool drilled = step.drilled || !hole.threaded.empty();
      Label label = diameter_label(n, step.radius, step.diameter,
                                   drilled ? fmt::format("{} ", drilled_or_bored(step.radius)) : "",
                                   through    ? " through"
                                   : crossing ? " to cross drilling"
                                              : "");
      // Ways from the rear above the axis are named above it: no leader crosses the bore. What a drilling
      // from above meets is named below it.
      const double side = (into > 0.0 && !(z > 0.0)) || is_crossed(part, step.radius) ? -1.0 : 1.0;
      view.callouts.push_back(bore(name(part, prefix, fmt::format("{}_radius", step.name)), std::move(label),
                                   {mouth + into * (0.35 * from + 0.65 * depth), 0, z + side * r}, {1, 0, 0},
                                   side < 0.0   ? down_right
                                   : into > 0.0 ? up_left
                                                : up_right));
      if (step.datum) {
        view.callouts.push_back(datum(
            {in_mm(fixture::wall_middle(part, hole, std::size_t(&step - &hole.steps.front())).x), 0, z - r},
            "A", downwards));
      }
      if (step.roughness > 0.0) {
        view.callouts.push_back(roughness(name(part, prefix, fmt::format("{}.roughness", step.name)),
                                          {mouth + into * (0.8 * in_mm(hole.lead_in) + 0.2), 0, z - r}, n,
                                          step.roughness));
        view.callouts.back().towards = into > 0.0 ? down_left : down_right;
      }
      if (step.runout > Length{}) {
        view.callouts.push_back(frame(name(part, prefix, fmt::format("{}.runout", step.name)),
                                      {mouth + into * (0.2 * from + 0.8 * depth), 0, z - r},
                                      fmt::format("↗|{}|A", n.zone(step.runout))));
        view.callouts.back().towards = down_right;
      }
      if (!through && !crossing) {
        const double end = mouth + into * depth;
        view.linears.push_back({name(part, prefix, fmt::format("{}_depth", step.name)),
                                {std::min(mouth, end), 0, into > 0.0 ? reach : z + r},
                                {std::max(mouth, end), 0, into > 0.0 ? z + r : reach},
                                Side::above,
                                n.size(step.depth)});
      }
    }
    from = depth;
  }
  if (hole.mouth.z != Length{} && !said_before(part, hole)) {
    view.linears.push_back({name(part, prefix, "z"),
                            {mouth, 0, std::min(0.0, z)},
                            {mouth, 0, std::max(0.0, z)},
                            into > 0.0 ? Side::left : Side::right,
                            n.size(z > 0.0 ? hole.mouth.z : -hole.mouth.z),
                            Probe::axes});
  }
}

// Drilled square to the axis: place along it, size, how many and where they end.
void radial_hole(ViewPlan &view, const Inputs &in, const Part &part, const Hole &hole) {
  const auto &n = in.labels;
  const TurnedBody &body = body_of(part);
  const Length datum = datum_x(body);
  const auto &p = hole.pattern;
  const double x = in_mm(hole.mouth.x), top = in_mm(hole.mouth.z), from = in_mm(datum);
  const double reach = foot(body, datum);
  view.linears.push_back({name(part, hole.name, ".x"),
                          {std::min(x, from), 0, x < from ? top : reach},
                          {std::max(x, from), 0, x < from ? reach : top},
                          Side::above,
                          n.size(x < from ? datum - hole.mouth.x : hole.mouth.x - datum),
                          Probe::offset});
  if (p.columns > 1) {
    view.linears.push_back({name(part, hole.name, ".pitch"),
                            {x, 0, top},
                            {x + in_mm(p.column_step.x), 0, top},
                            Side::above,
                            n.size(p.column_step.x, fmt::format("{}× ", p.columns - 1)),
                            Probe::axes});
  }
  const auto &step = hole.steps.front();
  const double last = x + double(p.columns - 1) * in_mm(p.column_step.x), r = in_mm(step.radius);
  const double side = p.around % 2 == 0 && p.around > 1 ? -1.0 : 1.0;
  Callout out = note(name(part, hole.name, "_radius"), {last + r, 0, side * (top - 1.0)}, {});
  if (!hole.threaded.empty()) {
    out.label = Labels::text(thread_lines(n, hole, p.count()));
    for (auto further = hole.steps.begin() + 1; further != hole.steps.end(); ++further) {
      out.label.lines.push_back(fmt::format("drill ⌀{}", n.number(2.0 * further->radius)));
    }
    out.label.lines.back() += hole.end == HoleEnd::crossing ? " to bore" : "";
  } else {
    out.label = n.diameter(step.radius, p.count() > 1 ? fmt::format("{}× ", p.count()) : "");
    out.label.lines[0] += hole.end == HoleEnd::crossing ? " to bore" : "";
    out.probe = Probe::diameter;
    out.surface = out.tip;
    out.axis = {0, 0, 1};
  }
  if (p.around > 1) {
    out.label.lines.push_back(
        p.columns > 1 ? fmt::format("{} rows of {}, {:g}° apart", p.columns, p.around, 360.0 / p.around)
                      : fmt::format("{:g}° apart", 360.0 / p.around));
  }
  out.towards = side < 0.0 ? down_right : up_right;
  view.callouts.push_back(std::move(out));
}

// Its mouth in a flat face, with the edge that leads in; where it comes out, the circle seen beyond the cut.
void mouth_edges(ViewPlan &view, const Inputs &in, const Part &part, const Hole &hole) {
  const double mouth = in_mm(hole.mouth.x), z = in_mm(hole.mouth.z), leg = in_mm(hole.lead_in);
  const double first = in_mm(hole.steps.front().radius), last = in_mm(hole.steps.back().radius);
  const auto edge = [&](double depth, double r) {
    const double x = mouth + hole.into.x * depth;
    view.line(Line::visible, {x, 0, z - r}, {x, 0, z + r});
  };
  edge(0.0, first + leg);
  if (leg > 0.0) {
    edge(leg, first);
    view.callouts.push_back(chamfer(name(part, hole.name, ".lead_in"), in.labels, hole.lead_in,
                                    {mouth + 0.5 * hole.into.x * leg, 0, z + first + 0.5 * leg},
                                    hole.into.x > 0.0 ? up_left : up_right));
  }
  if (hole.end == HoleEnd::open) {
    edge(in_mm(hole.steps.back().depth), last);
  }
}

// Mouths of radial holes in the far wall of the bore they cross.
void far_mouths(ViewPlan &view, const Hole &hole) {
  const double bore = in_mm(hole.crossed_radius), r = in_mm(hole.steps.back().radius);
  constexpr int pieces = 48;
  for (int i = 0; i < hole.pattern.count(); ++i) {
    const auto at = fixture::copy_of(hole, i);
    constexpr double cut_through = 0.1; // sine: those are cut, or on the near side
    if (-at.into.y < cut_through) {
      continue;
    }
    std::vector<Vec> rim;
    for (int k = 0; k < pieces; ++k) {
      const double t = full_turn * k / pieces, across = r * std::sin(t);
      const double along = std::sqrt(bore * bore - across * across);
      rim.push_back({in_mm(at.mouth.x) + r * std::cos(t), 0, -along * at.into.z + across * at.into.y});
    }
    view.outline(Line::visible, rim);
  }
}

} // namespace

void turned_holes(ViewPlan &view, const Inputs &in, const Part &part) {
  each<Hole>(part, [&](const Hole &hole) {
    for (int i = 0; i < hole.pattern.count(); ++i) {
      const auto at = fixture::copy_of(hole, i);
      if (std::abs(in_mm(at.mouth.y)) < 1e-6 && std::abs(at.into.y) < 1e-9) {
        hole_cut(view, hole, at);
      }
    }
    if (hole.pattern.around > 1 && hole.end == HoleEnd::crossing) {
      far_mouths(view, hole);
    }
    if (along_axis(hole)) {
      mouth_edges(view, in, part, hole);
      axial_hole(view, in, part, hole);
    } else {
      radial_hole(view, in, part, hole);
    }
  });
}

} // namespace purgewright::drawing

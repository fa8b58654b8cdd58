// Sheet of a part turned about X, from its features alone. Lengths run from its stop face (x = 0, where its
// body has a shoulder there) or else from its rear face; diameters stand at the section's ends and on
// leaders.
#include "feature_views.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::drawing {
namespace {

using fixture::Hole;
using fixture::HoleEnd;
using fixture::Length;
using fixture::Part;
using fixture::RadialGroove;
using fixture::TurnedBody;

const TurnedBody &body_of(const Part &part) {
  return std::get<TurnedBody>(part.features.front());
}

template <class Kind, class Do> void each(const Part &part, Do &&on) {
  for (const auto &feature : part.features) {
    if (const auto *found = std::get_if<Kind>(&feature)) {
      on(*found);
    }
  }
}

std::string name(const Part &part, std::string_view feature, std::string_view size) {
  return fmt::format("{}.{}{}", part.id, feature, size);
}

bool along_axis(const Hole &hole) {
  return std::abs(hole.into.x) > 0.5;
}

// Where lengths start.
Length datum_x(const TurnedBody &body) {
  const bool stop = std::ranges::any_of(body.steps, [](const auto &step) { return step.end_x == Length{}; });
  return stop ? Length{} : body.start_x;
}

struct Span {
  const fixture::TurnedStep &step;
  Length from;
};
std::vector<Span> spans(const TurnedBody &body) {
  std::vector<Span> out;
  Length from = body.start_x;
  for (const auto &step : body.steps) {
    out.push_back({step, from});
    from = step.end_x;
  }
  return out;
}

// Radius of the contour's outermost metal at a face, for the foot of a dimension.
double foot(const TurnedBody &body, Length x) {
  double radius = 0.0;
  for (const auto &[step, from] : spans(body)) {
    if (x == from || x == step.end_x) {
      radius = std::max(radius, in_mm(step.radius - (x == step.end_x ? step.chamfer : Length{})));
    }
  }
  return radius;
}

void contour_lengths(ViewPlan &view, const Inputs &in, const Part &part) {
  const TurnedBody &body = body_of(part);
  const Length datum = datum_x(body);
  const auto add = [&](std::string_view step, Length x) {
    if (x != datum) {
      const Length low = std::min(x, datum), high = std::max(x, datum);
      view.linears.push_back({name(part, step, "_length"),
                              {in_mm(low), 0, -foot(body, low)},
                              {in_mm(high), 0, -foot(body, high)},
                              Side::below,
                              in.labels.size(high - low)});
    }
  };
  add(body.steps.front().name, body.start_x);
  for (const auto &step : body.steps) {
    add(step.name, step.end_x);
  }
}

void contour_diameters(ViewPlan &view, const Inputs &in, const Part &part) {
  const TurnedBody &body = body_of(part);
  bool first = true;
  for (const Span &span : spans(body)) {
    const auto &step = span.step;
    const double r = in_mm(step.radius), x = first ? in_mm(span.from) : in_mm(step.end_x - step.chamfer);
    view.linears.push_back({name(part, step.name, "_radius"),
                            {x, 0, -r},
                            {x, 0, r},
                            first ? Side::left : Side::right,
                            diameter_label(in.labels, step.radius, step.diameter)});
    first = false;
    const double middle = in_mm(fixture::land_middle(part, step, span.from));
    if (step.name == body.datum) {
      view.callouts.push_back(datum({middle, 0, -r}, "A", downwards));
    }
    if (step.roughness > 0.0) {
      view.callouts.push_back(
          roughness(name(part, step.name, "_radius.roughness"), {middle, 0, r}, in.labels, step.roughness));
      view.callouts.back().towards = upwards;
    }
    if (step.chamfer > Length{}) {
      const double half = 0.5 * in_mm(step.chamfer);
      view.callouts.push_back(chamfer(name(part, step.name, ".edge_break"), in.labels, step.chamfer,
                                      {in_mm(step.end_x) - half, 0, r - half}, up_right));
    }
    if (step.thread.depth > Length{}) {
      const double end = in_mm(span.from + step.thread.depth), minor = r - 0.6134 * in_mm(step.thread.pitch);
      for (const double side : {-1.0, 1.0}) {
        view.line(Line::thread, {in_mm(span.from), 0, side * minor}, {end, 0, side * minor});
        view.line(Line::visible, {end, 0, side * minor}, {end, 0, side * r});
      }
      view.callouts.push_back(note(name(part, step.name, ".thread"), {0.5 * (in_mm(span.from) + end), 0, r},
                                   {external_thread(in.labels, step.thread)}));
      view.callouts.back().towards = up_left;
    }
  }
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
      Callout port = note(name(part, prefix, step.name), {mouth + into * (from + 1.5), 0, z - r},
                          thread_lines(n, hole, 1));
      port.towards = into > 0.0 ? down_left : down_right;
      view.callouts.push_back(std::move(port));
    } else {
      const bool through = last && hole.end == HoleEnd::open;
      Label label =
          diameter_label(n, step.radius, step.diameter, step.drilled || hole.threaded != "" ? "drill " : "",
                         through ? " through" : "");
      view.callouts.push_back(
          bore(name(part, prefix, fmt::format("{}_radius", step.name)), std::move(label),
               {mouth + into * (0.35 * from + 0.65 * depth), 0, z + (into > 0.0 ? -r : r)}, {1, 0, 0},
               into > 0.0 ? down_right : up_right));
      if (!through) {
        const double end = mouth + into * depth;
        view.linears.push_back({name(part, prefix, fmt::format("{}_depth", step.name)),
                                {std::min(mouth, end), 0, into > 0.0 ? reach : z + r},
                                {std::max(mouth, end), 0, into > 0.0 ? z + r : reach},
                                Side::above,
                                n.size(step.depth),
                                hole.end == HoleEnd::crossing ? Probe::none : Probe::distance});
      }
    }
    from = depth;
  }
  if (hole.mouth.z != Length{}) {
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

void holes(ViewPlan &view, const Inputs &in, const Part &part) {
  each<Hole>(part, [&](const Hole &hole) {
    for (int i = 0; i < hole.pattern.count(); ++i) {
      const auto at = fixture::copy_of(hole, i);
      if (std::abs(in_mm(at.mouth.y)) < 1e-6 && std::abs(at.into.y) < 1e-9) {
        hole_cut(view, hole, at);
      }
    }
    along_axis(hole) ? axial_hole(view, in, part, hole) : radial_hole(view, in, part, hole);
  });
}

ViewPlan section(const Inputs &in, const Part &part, const CutFace &cut) {
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = from_front;
  view.room = {36, 46, 46, 36};
  add_cut(view, cut);
  const TurnedBody &body = body_of(part);
  view.axis({in_mm(body.start_x), 0, 0}, {in_mm(body.steps.back().end_x), 0, 0});
  contour_lengths(view, in, part);
  contour_diameters(view, in, part);
  holes(view, in, part);
  return view;
}

// Seen from the front end: every diameter, bores and the directions of radial holes.
ViewPlan end_view(const Part &part) {
  ViewPlan view;
  view.name = "from-right";
  view.moved_caption = "View from the right";
  view.looking = from_right;
  view.room = {8, 8, 14, 14};
  double reach = 0.0;
  for (const auto &step : body_of(part).steps) {
    view.circle(Line::visible, {}, in_mm(step.radius));
    if (step.chamfer > Length{}) {
      view.circle(Line::visible, {}, in_mm(step.radius - step.chamfer));
    }
    reach = std::max(reach, in_mm(step.radius));
  }
  view.marks.push_back({Mark::Kind::cut, "A", {0, 0, -reach}, {0, 0, reach}, {0, 1, 0}});
  view.centre_mark({}, reach);
  each<Hole>(part, [&](const Hole &hole) {
    const bool to_front = hole.into.x < -0.5 || (hole.into.x > 0.5 && hole.end == HoleEnd::open);
    if (to_front) {
      const Vec centre{0, 0, in_mm(hole.mouth.z)};
      for (const auto &step : hole.steps) {
        if (hole.into.x < 0.0 || &step == &hole.steps.back()) {
          view.circle(Line::visible, centre, in_mm(step.radius));
        }
      }
      if (hole.mouth.z != Length{}) {
        const double r = in_mm(hole.steps.back().radius);
        view.axis({0, -r, centre.z}, {0, r, centre.z});
      }
    }
    for (int i = 0; i < hole.pattern.around && hole.pattern.around > 1; ++i) {
      const Vec rim = vec(fixture::copy_of(hole, i).mouth);
      view.axis({0, 0.5 * rim.y, 0.5 * rim.z}, {0, rim.y, rim.z});
    }
  });
  return view;
}

// Holds the groove's walls and, where it is near, the face its place is measured from.
struct DetailCircle {
  Vec centre;
  double radius;
};
DetailCircle detail_circle(const RadialGroove &groove) {
  constexpr double beyond = 1.2;
  const double end = in_mm(groove.start_x + groove.width);
  return {{0.5 * end, 0, 0.5 * in_mm(groove.bottom_radius + groove.surface_radius)}, 0.5 * end + beyond};
}

ViewPlan groove_detail(const Inputs &in, const Part &part, const RadialGroove &groove, const CutFace &cut) {
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "groove";
  view.caption = std::string(1, 'C');
  view.looking = from_front;
  view.floating = true;
  view.scale = 5.0;
  view.room = {34, 44, 18, 14};
  add_cut(view, cut);
  const double start = in_mm(groove.start_x), width = in_mm(groove.width);
  const double bottom = in_mm(groove.bottom_radius), land = in_mm(groove.surface_radius);
  const DetailCircle circle = detail_circle(groove);
  view.clip = Arc{view.looking(circle.centre), circle.radius};
  const auto feature = [&](std::string_view size) { return name(part, groove.name, size); };
  view.linears.push_back({feature(".groove_start"),
                          {0, 0, land},
                          {start, 0, land},
                          Side::below,
                          length_label(n, groove.start_x, groove.place)});
  view.linears.push_back({feature(".groove_width"),
                          {start, 0, land},
                          {start + width, 0, land},
                          Side::above,
                          length_label(n, groove.width, groove.across)});
  view.callouts.push_back(bore(feature(".groove_radius"),
                               diameter_label(n, groove.bottom_radius, groove.bottom),
                               {start + 0.25 * width, 0, bottom}, {1, 0, 0}, 0.65 * std::numbers::pi));
  const auto rough = [&](std::string_view where, Vec tip, double ra, double towards) {
    view.callouts.push_back(roughness(feature(where), tip, n, ra));
    view.callouts.back().towards = towards;
  };
  rough(".bottom.roughness", {start + 0.5 * width, 0, bottom}, groove.bottom_roughness, up_right);
  rough(".flank.roughness", {start, 0, 0.5 * (bottom + land)}, groove.flank_roughness,
        0.6 * std::numbers::pi);
  if (groove.runout > Length{}) {
    view.callouts.push_back(frame(feature(".runout"), {start + 0.75 * width, 0, bottom},
                                  fmt::format("↗|{}|A", n.number(groove.runout, 3))));
    view.callouts.back().towards = 0.2 * std::numbers::pi;
  }
  view.callouts.push_back(
      note(feature(".corner_radius"), {start, 0, bottom},
           {fmt::format("2× R{} to {}", n.number(groove.corner_least), n.number(groove.corner_most))}));
  view.callouts.back().towards = down_left;
  return view;
}

void mark_detail(ViewPlan &view, const RadialGroove &groove) {
  const DetailCircle circle = detail_circle(groove);
  view.marks.push_back(
      {Mark::Kind::detail, "C", circle.centre, circle.centre + Vec{circle.radius, 0, 0}, {}});
  Callout letter = note("detail.C", circle.centre, {"C"});
  letter.radius = circle.radius;
  letter.towards = up_left;
  view.callouts.push_back(letter);
}

} // namespace

PartPlan plan_turned(const Inputs &in, const Part &part) {
  PartPlan plan = started_plan(in, part.id);
  const CutFace cut = cut_of(in, part.id, from_front);
  ViewPlan main = section(in, part, cut);
  std::vector<ViewPlan> details;
  each<RadialGroove>(part, [&](const RadialGroove &groove) {
    mark_detail(main, groove);
    details.push_back(groove_detail(in, part, groove, cut));
    if (groove.ring != nullptr) {
      plan.notes.push_back(
          fmt::format("O-ring AS568 {}; no tool marks across the groove.", groove.ring->dash));
    }
  });
  std::vector<ViewPlan> row{std::move(main)};
  add_right_view(in, row, end_view(part));
  plan.rows.push_back(std::move(row));
  if (!details.empty()) {
    plan.rows.push_back(std::move(details));
  }
  plan.notes.push_back("Drill points 118°. Countersink thread mouths 90° to the major diameter.");
  return plan;
}

} // namespace purgewright::drawing

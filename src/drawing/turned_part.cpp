// Sheet of a part turned about X, from its features alone. Lengths run from its stop face (x = 0, where its
// body has a shoulder there) or else from its rear face; diameters stand at the section's ends and on
// leaders.
#include "turned_part.hpp"

#include "purgewright/fixture/tolerances.hpp"

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

// A port's fitting seals on the rear face where the port has no spot face of its own.
void sealing_face(ViewPlan &view, const Inputs &in, const Part &part) {
  const TurnedBody &body = body_of(part);
  double top = 0.0;
  each<Hole>(part, [&](const Hole &hole) {
    if (hole.into.x > 0.5 && !hole.threaded.empty() && hole.thread.pitch == Length{}) {
      top = std::max(top, in_mm(hole.mouth.z + hole.steps.front().radius));
    }
  });
  if (top > 0.0) {
    view.callouts.push_back(
        roughness(name(part, "rear_face", ".roughness"),
                  {in_mm(body.start_x), 0, 0.5 * (top + in_mm(body.steps.front().radius))}, in.labels,
                  fixture::finish::sealing));
    view.callouts.back().towards = leftwards;
  }
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
  sealing_face(view, in, part);
  turned_holes(view, in, part);
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

// Sheet of a part turned about X, from its features alone. Lengths run from its stop face (x = 0, where its
// body has a shoulder there) or else from its rear face; diameters stand at the section's ends and on
// leaders.
#include "turned_part.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::drawing {
namespace {

using fixture::Flat;
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
    if (step.runout > Length{}) {
      view.callouts.push_back(frame(name(part, step.name, "_radius.runout"), {middle, 0, -r},
                                    fmt::format("↗|{}|A", in.labels.zone(step.runout))));
      view.callouts.back().towards = down_left;
    }
    if (step.knurl > Length{}) {
      view.callouts.push_back(note(name(part, step.name, ".knurl"), {middle, 0, r},
                                   {fmt::format("knurl ISO 13444-RGE {:g}", in_mm(step.knurl))}));
      view.callouts.back().towards = up_right;
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

// What the steps show to a viewer at one end: edges of those that no wider one before them hides.
double step_edges(ViewPlan &view, const TurnedBody &body, bool from_the_front) {
  double reach = 0.0;
  const auto show = [&](const fixture::TurnedStep &step) {
    const double r = in_mm(step.radius), near = r - (from_the_front ? in_mm(step.chamfer) : 0.0);
    if (near > reach) {
      view.circle(Line::visible, {}, near);
    }
    if (r > near && r > reach) {
      view.circle(Line::visible, {}, r);
    }
    reach = std::max(reach, r);
  };
  if (from_the_front) {
    std::for_each(body.steps.rbegin(), body.steps.rend(), show);
  } else {
    std::ranges::for_each(body.steps, show);
  }
  return reach;
}

// Seen from the rear end: ports and flats.
ViewPlan rear_view(const Inputs &in, const Part &part) {
  ViewPlan view;
  view.name = "from-left";
  view.moved_caption = "View from the left";
  view.looking = from_left;
  view.room = {30, 12, 18, 18};
  const double reach = step_edges(view, body_of(part), false);
  view.centre_mark({}, reach);
  each<Hole>(part, [&](const Hole &hole) {
    if (hole.into.x > 0.5) {
      const Vec centre = vec(hole.mouth);
      view.circle(Line::visible, centre, in_mm(hole.steps.front().radius));
      view.circle(Line::visible, centre, in_mm(hole.steps.back().radius));
      if (!hole.threaded.empty()) {
        thread_end_on(view, centre, 0.5 * in_mm(hole.thread.major));
      }
      if (hole.mouth.z != Length{}) {
        const double r = 0.5 * in_mm(hole.thread.major);
        view.axis({centre.x, -r, centre.z}, {centre.x, r, centre.z});
      }
    }
  });
  const Flat *flat = nullptr;
  each<Flat>(part, [&](const Flat &each_flat) {
    flat = &each_flat;
    const double y = each_flat.toward.y * in_mm(each_flat.from_axis), r = in_mm(each_flat.round_radius);
    const double half = std::sqrt(r * r - y * y);
    view.line(Line::visible, {0, y, -half}, {0, y, half});
  });
  if (flat != nullptr) {
    const auto &n = in.labels;
    view.callouts.push_back(note(name(part, flat->name, ""),
                                 {0, in_mm(flat->from_axis), 0.3 * in_mm(flat->from_axis)},
                                 {fmt::format("2 flats, {} across", n.number(2.0 * flat->from_axis)),
                                  fmt::format("{} long", n.number(flat->to_x - flat->from_x))}));
    view.callouts.back().towards = up_left;
  }
  return view;
}

// Seen from the front end: every diameter, bores and the directions of radial holes.
ViewPlan end_view(const Part &part) {
  ViewPlan view;
  view.name = "from-right";
  view.moved_caption = "View from the right";
  view.looking = from_right;
  view.room = {8, 8, 14, 14};
  const double reach = step_edges(view, body_of(part), true);
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
      if (hole.lead_in > Length{}) {
        view.circle(Line::visible, centre, in_mm(hole.steps.front().radius + hole.lead_in));
      }
      if (hole.into.x > 0.0 && hole.steps.back().name == hole.threaded && !hole.threaded.empty()) {
        thread_end_on(view, centre, 0.5 * in_mm(hole.thread.major));
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
                                  fmt::format("↗|{}|A", n.zone(groove.runout))));
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

// A diameter that the bar has already.
void note_stock(PartPlan &plan, const Inputs &in, const Part &part) {
  for (const auto &row : fixture::part_metals(in.job, in.layout, in.volumes)) {
    if (row.name == part.id && part.cut_from == fixture::CutFrom::solid_stock &&
        row.stock.thickness == fixture::envelope(part).a) {
      plan.notes.push_back(fmt::format("⌀{} as bought.", in.labels.number(row.stock.thickness)));
    }
  }
}

// The knob of an expanding plug: how far it is turned, and what holds the plug meanwhile.
std::string tightening(const Inputs &in) {
  const auto &plug = in.layout.plug;
  constexpr double pound_inches = 8.8507; // in a newton metre
  const double torque = plug.seal.hand;
  return fmt::format(
      "Tighten {:.1f} to {:.1f} turns from finger-tight, {} at most; hold the plug by its flats, {} across.",
      plug.knob_turns(plug.seal.squeeze_least), plug.knob_turns(plug.seal.squeeze_most),
      in.labels.unit() == Unit::inch ? fmt::format("{:.0f} lbf in", pound_inches * torque)
                                     : fmt::format("{:.1f} N m", torque),
      in.labels.number(plug.flats_across));
}

void note_features(PartPlan &plan, const Inputs &in, const Part &part) {
  note_stock(plan, in, part);
  each<Hole>(part, [&](const Hole &hole) {
    if (hole.set_screw > Length{}) {
      const bool inch = in.labels.unit() == Unit::inch;
      plan.notes.push_back(fmt::format("Cross drilling closed by set screw {} {} × {}, {} below the rim, in "
                                       "thread sealant free of oil.",
                                       inch ? "ASME B18.3" : "ISO 4026", hole.thread.name,
                                       in.labels.number(hole.set_screw),
                                       in.labels.number(hole.set_screw_below)));
    }
  });
  if (part.id == ids::plug_knob) {
    plan.notes.push_back(tightening(in));
  }
  plan.notes.insert(plan.notes.end(), part.notes.begin(), part.notes.end());
}

bool has_holes(const Part &part) {
  return part.cut_from == fixture::CutFrom::solid_stock &&
         std::ranges::any_of(part.features, [](const auto &f) { return std::holds_alternative<Hole>(f); });
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
  if (std::ranges::any_of(part.features, [](const auto &f) { return std::holds_alternative<Flat>(f); })) {
    add_left_view(in, row, rear_view(in, part));
  }
  plan.rows.push_back(std::move(row));
  if (!details.empty()) {
    plan.rows.push_back(std::move(details));
  }
  note_features(plan, in, part);
  if (has_holes(part)) {
    plan.notes.push_back("Drill points 118°. Countersink thread mouths 90° to the major diameter.");
  }
  return plan;
}

} // namespace purgewright::drawing

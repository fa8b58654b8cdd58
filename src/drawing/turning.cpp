// index-collar and axial-stop. The collar's lengths run from its rear face, its marks from the front one, its
// angles from the mark at 0 degrees; the stop's heights from its foot, because its rods lie at the height of
// the tube's axis.
#include "footed_plate.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::AxialStop;
using fixture::IndexCollar;
using fixture::Length;

constexpr double far = 2.0; // mm, a centre line's overrun at full size

Vec radial(double angle) {
  return {0.0, std::cos(angle), std::sin(angle)};
}

// Seen from the cap's side with the slit on top.
Looking slit_up(const IndexCollar &collar) {
  const double angle = collar.slit_angle.value();
  return {radial(angle - 0.5 * std::numbers::pi), radial(angle)};
}

// ---- index-collar: the front face with its marks ----
void draw_mark(ViewPlan &view, const IndexCollar &collar, const fixture::IndexMark &mark) {
  const double half = 0.5 * in_mm(collar.mark_width), r = in_mm(collar.outer_radius);
  const double floor = r - in_mm(collar.mark_depth), rim = std::sqrt(r * r - half * half);
  const Vec out = radial(mark.angle.value()), side = radial(mark.angle.value() + 0.5 * std::numbers::pi);
  view.outline(Line::visible,
               {rim * out - half * side, floor * out - half * side, floor * out + half * side,
                rim * out + half * side},
               false);
}

ViewPlan collar_front(const Inputs &in) {
  const auto &collar = in.layout.collar;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-right";
  view.caption = "View on the front face";
  view.looking = from_right;
  view.room = {46, 14, 22, 10};
  const double outer = in_mm(collar.outer_radius), inner = in_mm(collar.inner_radius),
               half = 0.5 * in_mm(collar.slit);
  view.circle(Line::visible, {}, outer);
  view.circle(Line::visible, {}, inner);
  view.centre_mark({}, outer);
  const Vec out = radial(collar.slit_angle.value()),
            side = radial(collar.slit_angle.value() + 0.5 * std::numbers::pi);
  for (const double s : {-half, half}) {
    view.line(Line::visible, std::sqrt(inner * inner - s * s) * out + s * side,
              std::sqrt(outer * outer - s * s) * out + s * side);
  }
  for (std::size_t i = 0; i < collar.mark_count; ++i) {
    draw_mark(view, collar, collar.marks[i]);
  }
  const Vec lead = radial(collar.lead_angle.value()),
            beside = radial(collar.lead_angle.value() + 0.5 * std::numbers::pi);
  const double tap = in_mm(collar.lead_tap_radius);
  for (const double s : {-tap, tap}) {
    view.line(Line::hidden, std::sqrt(inner * inner - s * s) * lead + s * beside,
              std::sqrt(outer * outer - s * s) * lead + s * beside);
  }
  view.axis(inner * lead, outer * lead);
  Callout terminal = note("index-collar.lead_screw", outer * lead,
                          {fmt::format("{} to bore, at {:.4g}°", collar.lead_screw->callout,
                                       units::to_degrees(collar.lead_angle)),
                           fmt::format("drill ⌀{}, {} from the rear face",
                                       n.number(2.0 * collar.lead_tap_radius), n.number(collar.lead_x)),
                           "work lead"});
  terminal.towards = collar.lead_angle.value();
  view.callouts.push_back(terminal);
  Callout zero = note("index-collar.marks", outer * radial(0.0),
                      {fmt::format("0° mark, {}× mark {} wide {} deep", collar.mark_count,
                                   n.number(collar.mark_width), n.number(collar.mark_depth)),
                       "angles and lengths: see notes"});
  zero.towards = up_right;
  view.callouts.push_back(zero);
  return view;
}

// ---- through the clamp screw ----
ViewPlan collar_section(const Inputs &in) {
  const auto &collar = in.layout.collar;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A turned";
  view.looking = slit_up(collar);
  view.room = {44, 52, 30, 22};
  const double x = in_mm(collar.clamp_x), outer = in_mm(collar.outer_radius),
               inner = in_mm(collar.inner_radius);
  add_cut(view, cut_of(in, ids::index_collar, view.looking, {x, 0, 0}));
  const Vec up = view.looking.up, right = view.looking.right;
  const double screw = in_mm(collar.clamp_from_axis), half = 0.5 * in_mm(collar.slit),
               seat = in_mm(collar.seat);
  const auto at = [&](double across, double high) { return across * right + high * up + Vec{x, 0, 0}; };
  view.axis(at(-outer, 0), at(outer, 0));
  view.axis(at(0, -outer), at(0, outer));
  view.axis(at(-outer, screw), at(outer, screw));
  view.linears = {
      {"index-collar.outer_radius", at(-outer, 0), at(outer, 0), Side::below,
       n.diameter(collar.outer_radius)},
      {"index-collar.slit", at(-half, outer - 0.5), at(half, outer - 0.5), Side::above, n.size(collar.slit)},
      {"index-collar.clamp_from_axis", at(outer, 0), at(outer, screw), Side::right,
       n.size(collar.clamp_from_axis), Probe::none},
  };
  // The head's side is the one that the counterbore opens: against `right`, since the slit's tools turn with
  // it.
  const double head = -seat, wide = in_mm(collar.counterbore_radius),
               clear = in_mm(collar.clamp_clearance_radius);
  view.linears.push_back({"index-collar.seat", at(head, screw + wide), at(0, outer), Side::above,
                          n.size(collar.seat), Probe::none});
  view.callouts.push_back(bore("index-collar.inner_radius",
                               n.plus_minus(2.0 * collar.inner_radius, fixture::tolerances::collar_bore, "⌀"),
                               at(0, -inner), {1, 0, 0}, down_right));
  Callout clearance = note("index-collar.clamp_clearance_radius", at(0.5 * (head - half), screw - clear), {});
  clearance.label = n.diameter(collar.clamp_clearance_radius, "", " to slit");
  clearance.label.lines.push_back(fmt::format("⌴⌀{} to seat", n.number(2.0 * collar.counterbore_radius)));
  clearance.towards = up_left;
  view.callouts.push_back(clearance);
  Callout thread = note("index-collar.clamp_screw", at(half + 2.0, screw + in_mm(collar.clamp_tap_radius)),
                        {fmt::format("{} through", collar.clamp_screw->callout),
                         fmt::format("drill ⌀{}", n.number(2.0 * collar.clamp_tap_radius))});
  thread.towards = up_right;
  view.callouts.push_back(thread);
  return view;
}

// ---- from the side of the slit ----
ViewPlan collar_side(const Inputs &in) {
  const auto &collar = in.layout.collar;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "side";
  view.looking = {{1, 0, 0}, radial(collar.slit_angle.value() - 0.5 * std::numbers::pi)};
  view.room = {26, 20, 30, 22};
  const double outer = in_mm(collar.outer_radius), inner = in_mm(collar.inner_radius),
               half = 0.5 * in_mm(collar.slit);
  const double width = in_mm(collar.width), x = in_mm(collar.clamp_x);
  const Vec up = view.looking.up;
  const auto at = [&](double along, double high) { return Vec{along, 0, 0} + high * up; };
  view.outline(Line::visible, {at(0, -outer), at(width, -outer), at(width, outer), at(0, outer)});
  for (const double s : {-half, half}) {
    view.line(Line::visible, at(0, s), at(width, s));
  }
  for (const double s : {-inner, inner}) {
    view.line(Line::hidden, at(0, s), at(width, s));
  }
  view.axis(at(0, 0), at(width, 0));
  view.axis(at(x, -outer), at(x, outer));
  view.linears = {
      {"index-collar.clamp_x", at(0, -outer), at(x, -outer), Side::below, n.size(collar.clamp_x),
       Probe::none},
      {"index-collar.width", at(0, -inner), at(width, -inner), Side::below, n.size(collar.width)},
  };
  view.marks.push_back({Mark::Kind::cut, "A", at(x, -outer), at(x, outer), {-1, 0, 0}});
  return view;
}

// Lines of a note, a handful of angles each.
void list_marks(const Inputs &in, PartPlan &plan, bool runs) {
  constexpr std::size_t a_line = 10;
  const auto &collar = in.layout.collar;
  std::vector<std::string> angles;
  for (std::size_t i = 0; i < collar.mark_count; ++i) {
    if (collar.marks[i].run == runs) {
      angles.push_back(fmt::format("{:.4g}°", units::to_degrees(collar.marks[i].angle)));
    }
  }
  for (std::size_t i = 0; i < angles.size(); i += a_line) {
    const auto first = angles.begin() + static_cast<std::ptrdiff_t>(i);
    const auto last = angles.begin() + static_cast<std::ptrdiff_t>(std::min(angles.size(), i + a_line));
    plan.notes.push_back(fmt::format("{} marks, {} long from the front face: {}", runs ? "Run" : "Tack",
                                     in.labels.number(runs ? collar.run_mark : collar.tack_mark),
                                     fmt::join(first, last, ", ")));
  }
}

// ---- axial-stop ----
FootedPlate footed(const AxialStop &stop) {
  return {ids::axial_stop, stop.thickness, stop.width, stop.z_min, stop.z_max, stop.foot};
}

void stop_outline(ViewPlan &view, const AxialStop &stop) {
  const double half = 0.5 * in_mm(stop.width), z1 = in_mm(stop.z_max), r = in_mm(stop.notch_radius);
  foot_outline(view, footed(stop));
  for (const double side : {-1.0, 1.0}) {
    view.outline(Line::visible, {{0, side * r, 0}, {0, side * r, z1}, {0, side * half, z1}}, false);
    hole_end_on(view, {0, side * in_mm(stop.rod_y), 0}, stop.rod_radius);
  }
  view.circle(Line::visible, {}, r, std::numbers::pi, std::numbers::pi);
}

void stop_callouts(ViewPlan &view, const Inputs &in) {
  const auto &stop = in.layout.stop;
  const auto &n = in.labels;
  Label bores = n.fitted(stop.rod_radius, 'H', fixture::tolerances::rod_bore);
  bores.put_before("2× ream ");
  bores.lines[0] += " through";
  view.callouts.push_back(hole_note("axial-stop.rod_radius", std::move(bores), {0, in_mm(stop.rod_y), 0},
                                    stop.rod_radius, {1, 0, 0}, up_right));
  const double r = in_mm(stop.notch_radius);
  Callout notch = note("axial-stop.notch_radius", {0, 0, -r}, {});
  notch.label = n.size(stop.notch_radius, "R");
  notch.probe = Probe::radius;
  notch.surface = {-0.5 * in_mm(stop.thickness), 0, -r};
  notch.axis = {1, 0, 0};
  notch.towards = upwards;
  view.callouts.push_back(notch);
}

ViewPlan stop_face(const Inputs &in) {
  const auto &stop = in.layout.stop;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-right";
  view.moved_caption = "View from the right";
  view.looking = from_right;
  view.room = {34, 40, 34, 34};
  stop_outline(view, stop);
  const double lugs = 0.5 * in_mm(stop.foot.width), half = 0.5 * in_mm(stop.width), z0 = in_mm(stop.z_min),
               z1 = in_mm(stop.z_max), y = in_mm(stop.rod_y);
  view.axis({0, 0, z0}, {0, 0, z1 + far});
  view.linears = {
      {"axial-stop.rod_y", {0, -y, 0}, {0, y, 0}, Side::above, n.size(2.0 * stop.rod_y), Probe::axes},
      {"axial-stop.z_min",
       {0, -lugs, z0},
       {0, -y, 0},
       Side::left,
       n.plus_minus(-stop.z_min, fixture::tolerances::axle_height),
       Probe::none},
      {"axial-stop.z_max", {0, lugs, z0}, {0, half, z1}, Side::right, n.size(stop.z_max - stop.z_min)},
  };
  foot_wishes(view, n, footed(stop));
  stop_callouts(view, in);
  return view;
}

} // namespace

PartPlan plan_index_collar(const Inputs &in) {
  const auto &collar = in.layout.collar;
  PartPlan plan = started_plan(in, ids::index_collar);
  plan.rows.emplace_back();
  plan.rows.back().push_back(collar_side(in));
  plan.rows.back().push_back(collar_section(in));
  plan.rows.emplace_back();
  plan.rows.back().push_back(collar_front(in));
  plan.rows.back().push_back(pictorial_view(in, ids::index_collar));
  plan.notes.push_back(
      fmt::format("Slit at {:.4g}°. Angles counterclockwise seen on the front face, from 0° at its right.",
                  units::to_degrees(collar.slit_angle)));
  plan.notes.emplace_back("Side view: rear face on the left, front face with the marks on the right.");
  plan.notes.push_back(fmt::format("Engrave each mark's degrees behind it, {} high; where the clamp screw's "
                                   "counterbore or the lead's washer is, on the front face.",
                                   in.labels.number(units::millimetres(2.5))));
  list_marks(in, plan, true);
  list_marks(in, plan, false);
  return plan;
}

PartPlan plan_axial_stop(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::axial_stop);
  plan.rows.emplace_back();
  plan.rows.back().push_back(stop_face(in));
  add_left_view(in, plan.rows.back(), footed_side(in.labels, footed(in.layout.stop)));
  plan.notes.push_back("Faces as rolled where the stock is that thick. Symmetric about the notch. Both rods "
                       "slide freely in their bores and by their springs alone.");
  return plan;
}

} // namespace purgewright::drawing

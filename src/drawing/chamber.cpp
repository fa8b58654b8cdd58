// chamber-body: section through the gas passages (y = 0), the front face, the top and the underside. Lengths
// run from the front face (+X), heights from the underside (datum A) to the axis of the bores and from there
// on. Soft gaskets seal, so faces stay as milled.
#include "part_plans.hpp"

#include "purgewright/fixture/screw_joint.hpp"
#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <tuple>

namespace purgewright::drawing {
namespace {

using fixture::ChamberBody;
using fixture::Length;
namespace tolerances = fixture::tolerances;

constexpr double gasketed = 3.2; // under a soft sheet

// Rim of a hole along Z in the wall of a cylinder along X, far half.
std::vector<Vec> rim(double x, double hole, double axis_z, double wall, double sign) {
  constexpr int pieces = 24;
  std::vector<Vec> out;
  for (int i = 0; i <= pieces; ++i) {
    const double t = std::numbers::pi * i / pieces, y = hole * std::sin(t);
    out.push_back({x + hole * std::cos(t), y, axis_z + sign * std::sqrt(wall * wall - y * y)});
  }
  return out;
}

// The plenum's corners beyond the cut, and its mouth.
void plenum_beyond(ViewPlan &view, const fixture::Plenum &plenum, double bottom) {
  const double x0 = in_mm(plenum.x_min), x1 = in_mm(plenum.x_max), r = in_mm(plenum.corner_radius);
  const double top = in_mm(plenum.ceiling);
  for (const double x : {x0 + r, x1 - r}) {
    view.line(Line::visible, {x, 0, bottom}, {x, 0, top});
  }
  view.line(Line::visible, {x0, 0, bottom}, {x1, 0, bottom});
}

// Where the far half of the slot meets the cavity's wall, and its broken edge.
void slot_beyond(ViewPlan &view, const ChamberBody &body) {
  const auto &slot = body.slot;
  const double x0 = in_mm(slot.x_min), x1 = in_mm(slot.x_max), half = 0.5 * in_mm(slot.width);
  const double corner = in_mm(slot.corner_radius), wall = in_mm(body.cavity_radius), top = in_mm(body.z_max);
  constexpr int pieces = 16;
  std::vector<Vec> foot;
  const auto at = [&](double x, double y) { foot.push_back({x, y, std::sqrt(wall * wall - y * y)}); };
  at(x0, 0.0);
  for (int i = 0; i <= pieces; ++i) {
    const double t = 0.5 * std::numbers::pi * i / pieces;
    at(x0 + corner * (1.0 - std::cos(t)), half - corner * (1.0 - std::sin(t)));
  }
  for (int i = pieces; i >= 0; --i) {
    const double t = 0.5 * std::numbers::pi * i / pieces;
    at(x1 - corner * (1.0 - std::cos(t)), half - corner * (1.0 - std::sin(t)));
  }
  at(x1, 0.0);
  view.outline(Line::visible, foot, false);
  const double edge = in_mm(slot.edge_break);
  view.line(Line::visible, {x0, 0, top - edge}, {x1, 0, top - edge});
  view.line(Line::visible, {x0 - edge, 0, top}, {x1 + edge, 0, top});
}

void beyond_section(ViewPlan &view, const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const double opening = in_mm(body.opening_radius), cavity = in_mm(body.cavity_radius);
  const auto edge = [&](double x, double z, double r) {
    view.line(Line::visible, {x, 0, z - r}, {x, 0, z + r});
  };
  edge(in_mm(body.x_min), 0, opening);
  edge(in_mm(body.cavity_start), 0, cavity);
  plenum_beyond(view, body.plenum, in_mm(body.bottom));
  slot_beyond(view, body);
  for (int column = 0; column < body.diffuser.columns; ++column) {
    const double x = in_mm(body.diffuser.x_of(column)), r = in_mm(body.diffuser.hole_radius);
    view.outline(Line::visible, rim(x, r, 0, cavity, -1), false);
  }
  const double inlet = in_mm(body.inlet_radius), port_z = in_mm(body.inlet_z);
  edge(in_mm(body.plenum.x_max), port_z, inlet);
  const auto &port = *in.job.gas.port_thread;
  const double depth = std::min(in_mm(port.full_thread), in_mm(body.x_max - body.plenum.x_max));
  thread_cut(view, {in_mm(body.x_max), 0, port_z}, {-1, 0, 0}, {0, 0, 1}, 0.5 * in_mm(port.major), depth,
             inlet);
}

void section_axes(ViewPlan &view, const ChamberBody &body) {
  const double x1 = in_mm(body.x_max), port_z = in_mm(body.inlet_z);
  view.axis({in_mm(body.x_min), 0, 0}, {x1, 0, 0});
  view.axis({in_mm(body.plenum.x_max) - 2.0, 0, port_z}, {x1, 0, port_z});
}

void section_lengths(ViewPlan &view, const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &n = in.labels;
  const auto &slot = body.slot;
  const double x0 = in_mm(body.x_min), x1 = in_mm(body.x_max), z0 = in_mm(body.bottom),
               z1 = in_mm(body.z_max);
  const double cavity = in_mm(body.cavity_radius), broken = z1 - in_mm(slot.edge_break);
  const Vec face{x1, 0, z0}, top{x1, 0, z1}, mouth{in_mm(body.plenum.x_max), 0, z0};
  view.linears = {
      {"chamber-body.length", {x0, 0, z0}, face, Side::below, n.size(body.length())},
      {"chamber-body.plenum.x_max", mouth, face, Side::below, n.size(body.x_max - body.plenum.x_max)},
      {"chamber-body.plenum.length",
       {in_mm(body.plenum.x_min), 0, z0},
       mouth,
       Side::below,
       n.size(body.plenum.length())},
      {"chamber-body.slot.x_max",
       {in_mm(slot.x_max), 0, broken},
       top,
       Side::above,
       n.size(body.x_max - slot.x_max)},
      {"chamber-body.slot.length",
       {in_mm(slot.x_min), 0, broken},
       {in_mm(slot.x_max), 0, broken},
       Side::above,
       n.size(slot.length())},
      {"chamber-body.cavity_start",
       {in_mm(body.cavity_start), 0, cavity},
       top,
       Side::above,
       n.size(body.x_max - body.cavity_start)},
      {"chamber-body.bottom",
       {x0, 0, z0},
       {x0, 0, 0},
       Side::left,
       n.plus_minus(-body.bottom, tolerances::opening_height),
       Probe::offset},
      {"chamber-body.height", {x0, 0, z0}, {x0, 0, z1}, Side::left, n.size(body.height())},
      {"chamber-body.inlet_z",
       {x1, 0, in_mm(body.inlet_z)},
       {x1, 0, 0},
       Side::right,
       n.size(-body.inlet_z),
       Probe::axes},
      {"chamber-body.plenum.ceiling",
       {in_mm(body.plenum.x_min), 0, z0},
       {in_mm(body.plenum.x_min), 0, in_mm(body.plenum.ceiling)},
       Side::left,
       n.size(body.plenum.ceiling - body.bottom)},
  };
}

void section_callouts(ViewPlan &view, const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &n = in.labels;
  const double x0 = in_mm(body.x_min), x1 = in_mm(body.x_max), z0 = in_mm(body.bottom);
  const double opening = in_mm(body.opening_radius), wall = 0.5 * (x0 + in_mm(body.cavity_start));
  const Vec along{1, 0, 0};
  Label size = n.plus_minus(2.0 * body.opening_radius, 2.0 * tolerances::opening_radius, "⌀");
  size.lines[0] += " through";
  view.callouts.push_back(
      bore("chamber-body.opening_radius", std::move(size), {wall, 0, opening}, along, up_left));
  view.callouts.push_back(frame("chamber-body.opening.position", {0.5 * (x0 + wall), 0, opening},
                                position_cells(n, 2.0 * tolerances::opening_to_dowels, "B")));
  view.callouts.back().towards = leftwards;
  const double last = in_mm(body.slot.x_max);
  view.callouts.push_back(bore("chamber-body.cavity_radius", n.diameter(body.cavity_radius),
                               {0.5 * (x1 + last), 0, -in_mm(body.cavity_radius)}, along, rightwards));
  for (const auto &[feature, tip, towards] :
       {std::tuple{"chamber-body.face.roughness", Vec{x1, 0, in_mm(body.z_max) - 3.0}, rightwards},
        {"chamber-body.rear.roughness", {x0, 0, in_mm(body.z_max) - 3.0}, leftwards},
        {"chamber-body.underside.roughness", {x0 + 2.0, 0, z0}, down_left}}) {
    view.callouts.push_back(roughness(feature, tip, n, gasketed));
    view.callouts.back().towards = towards;
  }
  const auto &port = *in.job.gas.port_thread;
  view.callouts.push_back(note("chamber-body.inlet_radius", {x1, 0, in_mm(body.inlet_z - body.inlet_radius)},
                               {fmt::format("{} ↧{}", port.callout, n.number(port.full_thread)),
                                fmt::format("drill ⌀{} into plenum", n.number(2.0 * body.inlet_radius))}));
  view.callouts.back().towards = down_right;
}

ViewPlan section(const Inputs &in) {
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = from_front;
  view.room = {34, 40, 40, 40};
  add_cut(view, cut_of(in, ids::chamber_body, view.looking));
  beyond_section(view, in);
  section_axes(view, in.layout.body);
  section_lengths(view, in);
  section_callouts(view, in);
  return view;
}

ViewPlan sealing_face(const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-right";
  view.moved_caption = "View from the right";
  view.looking = from_right;
  view.room = {20, 32, 34, 24};
  const double half = 0.5 * in_mm(body.width), z0 = in_mm(body.bottom), z1 = in_mm(body.z_max),
               x = in_mm(body.x_max);
  view.outline(Line::visible, {{x, -half, z0}, {x, half, z0}, {x, half, z1}, {x, -half, z1}});
  view.circle(Line::visible, {}, in_mm(body.cavity_radius));
  view.circle(Line::visible, {}, in_mm(body.opening_radius));
  const Vec port{x, 0, in_mm(body.inlet_z)};
  view.circle(Line::visible, port, in_mm(body.inlet_radius));
  thread_end_on(view, port, 0.5 * in_mm(in.job.gas.port_thread->major));
  view.axis({0, -half, 0}, {0, half, 0});
  view.axis({0, 0, z0}, {0, 0, z1});
  const double port_axis = 0.5 * in_mm(in.job.gas.port_thread->major);
  view.axis(port - Vec{0, port_axis, 0}, port + Vec{0, port_axis, 0});
  for (const auto &at : body.end_screws) {
    tapped_end_on(view, {x, in_mm(at.y), in_mm(at.z)}, body.end_screw->major, body.end_tapping.radius);
  }
  const auto hole = [&](std::size_t i) {
    return Vec{x, in_mm(body.end_screws[i].y), in_mm(body.end_screws[i].z)};
  };
  view.linears = {
      {"chamber-body.end_screws.y", hole(2), hole(3), Side::below,
       n.size(body.end_screws[3].y - body.end_screws[2].y), Probe::axes},
      {"chamber-body.end_screws.z.top",
       {x, 0, 0},
       hole(1),
       Side::right,
       n.size(body.end_screws[1].z),
       Probe::axes},
      {"chamber-body.end_screws.z.bottom",
       hole(3),
       {x, 0, 0},
       Side::right,
       n.size(-body.end_screws[3].z),
       Probe::axes},
  };
  Callout screws =
      note("chamber-body.end_screws", hole(1),
           n.tapped(*body.end_screw, 4, body.end_tapping.depth - fixture::tap_lead * body.end_screw->major,
                    body.end_tapping));
  screws.label.lines.push_back("and 4 alike in the rear face");
  screws.radius = 0.5 * in_mm(body.end_screw->major);
  screws.towards = up_right;
  view.callouts.push_back(screws);
  view.marks.push_back({Mark::Kind::cut, "A", {x, 0, z0}, {x, 0, z1}, {0, 1, 0}});
  return view;
}

ViewPlan top_view(const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &slot = body.slot;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-above";
  view.caption = "View from above";
  view.looking = from_above;
  view.room = {34, 46, 30, 26};
  const double half = 0.5 * in_mm(body.width), x0 = in_mm(body.x_min), x1 = in_mm(body.x_max),
               top = in_mm(body.z_max);
  view.outline(Line::visible, {{x0, -half, 0}, {x1, -half, 0}, {x1, half, 0}, {x0, half, 0}});
  const double s0 = in_mm(slot.x_min), s1 = in_mm(slot.x_max), w = 0.5 * in_mm(slot.width),
               r = in_mm(slot.corner_radius);
  const double e = in_mm(slot.edge_break);
  rounded_outline(view, {s0, s1, w, r});
  rounded_outline(view, {s0 - e, s1 + e, w + e, r + e});
  view.axis({x0, 0, 0}, {x1, 0, 0});
  const double wall = top - 2.0 * e; // height of a point of the slot's straight wall
  view.linears = {
      {"chamber-body.width",
       {x1, -half, top},
       {x1, half, top},
       Side::right,
       n.plus_minus(body.width, tolerances::cover_seat)},
      {"chamber-body.slot.width", {s1 - r, -w, wall}, {s1 - r, w, wall}, Side::right, n.size(slot.width)},
  };
  Callout corner = note("chamber-body.slot.corner_radius",
                        {s0 + r * (1.0 - std::sqrt(0.5)), w - r * (1.0 - std::sqrt(0.5)), wall}, {});
  corner.label = n.size(slot.corner_radius, "4× R");
  corner.probe = Probe::radius;
  corner.surface = corner.tip;
  corner.axis = {0, 0, 1};
  corner.towards = up_left;
  view.callouts.push_back(corner);
  view.callouts.push_back(chamfer("chamber-body.slot.edge_break", n, slot.edge_break,
                                  {0.5 * (s0 + s1), w + 0.5 * e, 0}, up_left));
  view.callouts.back().label.lines[0] += " all round";
  return view;
}

} // namespace

PartPlan plan_chamber_body(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::chamber_body);
  plan.rows.emplace_back();
  plan.rows.back().push_back(section(in));
  add_right_view(in, plan.rows.back(), sealing_face(in));
  add_top_row(in, plan, {top_view(in), chamber_base_view(in), pictorial_view(in, ids::chamber_body)});
  plan.notes.push_back(
      "Symmetric about the plane through axis and slot: hole patterns, slot, plenum and diffuser.");
  plan.notes.push_back("Datum B is the plane amid the two dowel holes: the opening's axis lies in it.");
  plan.notes.push_back("Drill points 118°. Countersink thread mouths 90° to the major diameter.");
  return plan;
}

} // namespace purgewright::drawing

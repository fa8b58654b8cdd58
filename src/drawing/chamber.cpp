// chamber-body: section through the gas passages (y = 0), the sealing face, the top and the base. Lengths run
// from the sealing face (+X), heights from the base (datum A) to the tube's axis and from there on: they set
// where the joint lies. Roughness: sealing face and tube bore 1.6.
#include "part_plans.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::ChamberBody;
using fixture::Length;
using units::millimetres;

constexpr int bore_grade = 9; // running bore H9
constexpr double sealing = 1.6;
constexpr Length face_flatness = millimetres(0.05), bore_position = millimetres(0.1);

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
  const double tube = in_mm(body.tube_bore_radius), cavity = in_mm(body.cavity_radius);
  const auto edge = [&](double x, double z, double r) {
    view.line(Line::visible, {x, 0, z - r}, {x, 0, z + r});
  };
  edge(in_mm(body.x_min + body.lead_in), 0, tube);
  edge(in_mm(body.cavity_start), 0, cavity);
  edge(in_mm(body.plenum.x_end), in_mm(body.plenum.axis_z), in_mm(body.plenum.radius));
  slot_beyond(view, body);
  const double plenum = in_mm(body.plenum.radius), axis_z = in_mm(body.plenum.axis_z);
  for (int column = 0; column < body.diffuser.columns; ++column) {
    const double x = in_mm(body.diffuser.x_of(column)), r = in_mm(body.diffuser.hole_radius);
    view.outline(Line::visible, rim(x, r, 0, cavity, -1), false);
    view.outline(Line::visible, rim(x, r, axis_z, plenum, 1), false);
  }
  const double inlet_x = in_mm(body.inlet_x), inlet = in_mm(body.inlet_radius);
  view.outline(Line::visible, rim(inlet_x, inlet, axis_z, plenum, -1), false);
  const auto &port = *in.job.gas.port_thread;
  const double depth = std::min(in_mm(port.full_thread), axis_z - plenum - in_mm(body.z_min));
  thread_cut(view, {inlet_x, 0, in_mm(body.z_min)}, {0, 0, 1}, {1, 0, 0}, 0.5 * in_mm(port.major), depth,
             inlet);
}

void section_axes(ViewPlan &view, const ChamberBody &body) {
  const double x1 = in_mm(body.x_max), axis_z = in_mm(body.plenum.axis_z);
  view.axis({in_mm(body.x_min), 0, 0}, {x1, 0, 0});
  view.axis({in_mm(body.plenum.x_end - body.plenum.radius), 0, axis_z}, {x1, 0, axis_z});
  const double inlet_x = in_mm(body.inlet_x);
  view.axis({inlet_x, 0, in_mm(body.z_min)}, {inlet_x, 0, axis_z});
}

void section_lengths(ViewPlan &view, const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &n = in.labels;
  const double x0 = in_mm(body.x_min), x1 = in_mm(body.x_max), z0 = in_mm(body.z_min), z1 = in_mm(body.z_max);
  const double axis_z = in_mm(body.plenum.axis_z), cavity = in_mm(body.cavity_radius);
  const Vec face{x1, 0, z0}, top{x1, 0, z1};
  const auto &slot = body.slot;
  const double broken = z1 - in_mm(slot.edge_break);
  view.linears = {
      {"chamber-body.length", {x0, 0, z0}, face, Side::below, n.size(body.length())},
      {"chamber-body.inlet_x",
       {in_mm(body.inlet_x), 0, z0},
       face,
       Side::below,
       n.size(body.x_max - body.inlet_x),
       Probe::offset},
      {"chamber-body.plenum.x_end",
       {in_mm(body.plenum.x_end), 0, axis_z - in_mm(body.plenum.radius)},
       face,
       Side::below,
       n.size(body.x_max - body.plenum.x_end)},
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
      {"chamber-body.z_min", {x0, 0, z0}, {x0, 0, 0}, Side::left, n.size(-body.z_min), Probe::offset, true},
      {"chamber-body.height", {x0, 0, z0}, {x0, 0, z1}, Side::left, n.size(body.height())},
      {"chamber-body.plenum.axis_z",
       {x1, 0, axis_z},
       {x1, 0, 0},
       Side::right,
       n.size(-body.plenum.axis_z),
       Probe::axes},
  };
}

void section_callouts(ViewPlan &view, const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &n = in.labels;
  const double x0 = in_mm(body.x_min), x1 = in_mm(body.x_max), z0 = in_mm(body.z_min);
  const double tube = in_mm(body.tube_bore_radius), guide = 0.5 * (x0 + in_mm(body.cavity_start));
  const double half_lead = 0.5 * in_mm(body.lead_in);
  const Vec along{1, 0, 0};
  view.callouts.push_back(
      chamfer("chamber-body.lead_in", n, body.lead_in, {x0 + half_lead, 0, tube + half_lead}, leftwards));
  view.callouts.push_back(bore("chamber-body.tube_bore_radius",
                               n.fitted(body.tube_bore_radius, 'H', bore_grade), {guide, 0, -tube}, along,
                               down_left));
  view.callouts.push_back(roughness("chamber-body.tube_bore.roughness", {guide + 2.0, 0, tube}, n, sealing));
  view.callouts.back().towards = upwards;
  view.callouts.push_back(frame("chamber-body.tube_bore.position", {guide - 1.0, 0, -tube},
                                fmt::format("⌖|{}|A", n.number(bore_position, 3))));
  view.callouts.back().towards = down_left;
  const double last = in_mm(body.slot.x_max);
  view.callouts.push_back(bore("chamber-body.cavity_radius", n.diameter(body.cavity_radius),
                               {0.5 * (x1 + last), 0, -in_mm(body.cavity_radius)}, along, rightwards));
  view.callouts.push_back(bore("chamber-body.plenum.radius", n.diameter(body.plenum.radius, "drill "),
                               {x1 - 2.0, 0, in_mm(body.plenum.axis_z - body.plenum.radius)}, along,
                               down_right));
  view.callouts.push_back(
      roughness("chamber-body.face.roughness", {x1, 0, in_mm(body.z_max) - 3.0}, n, sealing));
  view.callouts.back().towards = rightwards;
  view.callouts.push_back(frame("chamber-body.face.flatness", {x1, 0, in_mm(body.z_max) - 6.0},
                                fmt::format("⏥|{}", n.number(face_flatness, 3))));
  view.callouts.back().towards = rightwards;
  const auto &port = *in.job.gas.port_thread;
  const double inlet = in_mm(body.inlet_x - body.inlet_radius);
  view.callouts.push_back(note("chamber-body.inlet_radius", {inlet, 0, z0 + 1.5},
                               {fmt::format("{} ↧{}", port.callout, n.number(port.full_thread)),
                                fmt::format("drill ⌀{} into plenum", n.number(2.0 * body.inlet_radius))}));
  view.callouts.back().towards = down_left;
  view.callouts.push_back(datum({x0 + 4.0, 0, z0}, "A", downwards));
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
  const double half = 0.5 * in_mm(body.width), z0 = in_mm(body.z_min), z1 = in_mm(body.z_max),
               x = in_mm(body.x_max);
  view.outline(Line::visible, {{x, -half, z0}, {x, half, z0}, {x, half, z1}, {x, -half, z1}});
  view.circle(Line::visible, {}, in_mm(body.cavity_radius));
  view.circle(Line::visible, {}, in_mm(body.tube_bore_radius));
  view.circle(Line::visible, {0, 0, in_mm(body.plenum.axis_z)}, in_mm(body.plenum.radius));
  view.axis({0, -half, 0}, {0, half, 0});
  view.axis({0, 0, z0}, {0, 0, z1});
  view.axis({0, -in_mm(body.plenum.radius), in_mm(body.plenum.axis_z)},
            {0, in_mm(body.plenum.radius), in_mm(body.plenum.axis_z)});
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
  Callout screws = note("chamber-body.end_screws", hole(1),
                        n.tapped(*body.end_screw, 4, 2.0 * body.end_screw->major, body.end_tapping));
  screws.radius = 0.5 * in_mm(body.end_screw->major);
  screws.towards = up_right;
  view.callouts.push_back(screws);
  view.marks.push_back({Mark::Kind::cut, "A", {x, 0, z0}, {x, 0, z1}, {0, 1, 0}});
  return view;
}

void rounded(ViewPlan &view, double x0, double x1, double half, double r) {
  view.line(Line::visible, {x0 + r, -half, 0}, {x1 - r, -half, 0});
  view.line(Line::visible, {x0 + r, half, 0}, {x1 - r, half, 0});
  view.line(Line::visible, {x0, -half + r, 0}, {x0, half - r, 0});
  view.line(Line::visible, {x1, -half + r, 0}, {x1, half - r, 0});
  constexpr double quarter = 0.25 * full_turn;
  view.circle(Line::visible, {x1 - r, half - r, 0}, r, 0, quarter);
  view.circle(Line::visible, {x0 + r, half - r, 0}, r, quarter, quarter);
  view.circle(Line::visible, {x0 + r, -half + r, 0}, r, 2 * quarter, quarter);
  view.circle(Line::visible, {x1 - r, -half + r, 0}, r, 3 * quarter, quarter);
}

void diffuser_wishes(ViewPlan &view, const Inputs &in) {
  const auto &body = in.layout.body;
  const auto &field = body.diffuser;
  const auto &n = in.labels;
  const auto hole = [&](int column, int row) {
    return Vec{in_mm(field.x_of(column)), in_mm(field.y_of(row)),
               in_mm(body.plenum.axis_z + body.plenum.radius) + 1.0};
  };
  for (int column = 0; column < field.columns; ++column) {
    for (int row = 0; row < field.rows; ++row) {
      view.circle(Line::visible, hole(column, row), in_mm(field.hole_radius));
    }
  }
  const int last = field.columns - 1;
  const double reach = 2.0 * in_mm(field.hole_radius);
  for (int row = 0; row < field.rows; ++row) {
    view.axis(hole(0, row) - Vec{reach - 2.0, 0, 0}, hole(last, row) + Vec{reach - 2.0, 0, 0});
  }
  view.linears.push_back({"chamber-body.diffuser.x_first",
                          hole(last, 0),
                          {in_mm(body.x_max), -0.5 * in_mm(body.width), 0},
                          Side::below,
                          n.size(body.x_max - field.x_of(last)),
                          Probe::offset});
  if (last > 0) {
    view.linears.push_back({"chamber-body.diffuser.x_pitch", hole(last - 1, 0), hole(last, 0), Side::below,
                            n.size(field.x_pitch, last > 1 ? fmt::format("{}× ", last) : ""), Probe::axes});
  }
  if (field.rows > 1) {
    view.linears.push_back({"chamber-body.diffuser.y_pitch", hole(0, 0), hole(0, 1), Side::left,
                            n.size(field.y_pitch, fmt::format("{}× ", field.rows - 1)), Probe::axes});
  }
  Callout holes = bore("chamber-body.diffuser.hole_radius",
                       n.diameter(field.hole_radius, fmt::format("{}× ", field.holes())),
                       hole(last, field.rows - 1), {0, 0, 1}, up_right);
  holes.surface = hole(last, field.rows - 1) + Vec{in_mm(field.hole_radius), 0, 0};
  holes.radius = in_mm(field.hole_radius);
  holes.label.lines[0] += " into plenum";
  holes.label.lines.push_back("through the slot");
  view.callouts.push_back(holes);
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
  rounded(view, s0, s1, w, r);
  rounded(view, s0 - e, s1 + e, w + e, r + e);
  view.axis({x0, 0, 0}, {x1, 0, 0});
  const double wall = top - 2.0 * e; // height of a point of the slot's straight wall
  view.linears = {
      {"chamber-body.width", {x1, -half, top}, {x1, half, top}, Side::right, n.size(body.width)},
      {"chamber-body.slot.width", {s1 - r, -w, wall}, {s1 - r, w, wall}, Side::right, n.size(slot.width)},
  };
  diffuser_wishes(view, in);
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
  plan.rows.emplace_back();
  plan.rows.back().push_back(top_view(in));
  plan.rows.back().push_back(chamber_base_view(in));
  plan.rows.back().push_back(pictorial_view(in, ids::chamber_body));
  plan.notes.push_back("Symmetric about the plane through axis and slot: hole patterns, slot and diffuser.");
  plan.notes.push_back("Drill points 118°. Countersink thread mouths 90° to the major diameter.");
  return plan;
}

} // namespace purgewright::drawing

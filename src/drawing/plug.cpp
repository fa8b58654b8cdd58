// end-plug: full section along the axis, end view, groove detail. Lengths run from the stop face of the
// shoulder, diameters from the axis of the spigot (datum A): these two seat the plug in the tube. Roughness:
// O-ring groove bottom 1.6, flanks 3.2, gas-tight land 1.6 (ISO 3601-2, handbook practice).
#include "part_plans.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::EndPlug;
using fixture::Length;
using fixture::PlugPassage;
using units::millimetres;
namespace tolerances = fixture::tolerances;

constexpr double ground = 1.6, turned = 3.2; // Ra in micrometres

double step(double large, double small) {
  return (large - small) / std::tan(0.5 * standards::machining_rules().drill_point.value());
}

// Edges of the bores seen on edge beyond the cut.
void passage_edges(ViewPlan &view, const EndPlug &plug, const PlugPassage &way) {
  const double z = in_mm(way.z), port = in_mm(way.port_radius), r = in_mm(way.radius);
  const double port_end = in_mm(plug.rear_x() + way.port_depth);
  const auto edge = [&](double x, double radius) {
    view.line(Line::visible, {x, 0, z - radius}, {x, 0, z + radius});
  };
  edge(port_end + step(port, r), r);
  if (way.blind) {
    edge(in_mm(way.end_x), r);
  }
  if (way.seat_depth > Length{}) {
    edge(in_mm(plug.spigot_length - way.seat_depth), r);
  }
}

// Mouths of the side holes in the far wall of the passage.
void side_hole_mouths(ViewPlan &view, const EndPlug &plug) {
  const double bore = in_mm(plug.inlet.radius), r = in_mm(plug.side_hole_radius);
  constexpr int pieces = 48;
  for (int row = 0; row < plug.side_rows; ++row) {
    const double x = in_mm(plug.side_first_x + double(row) * plug.side_pitch);
    for (int hole = 0; hole < plug.side_holes_per_row; ++hole) {
      const double angle = full_turn * hole / plug.side_holes_per_row;
      if (std::sin(angle) < 0.1) {
        continue; // cut through, or on the near side
      }
      std::vector<Vec> rim;
      for (int i = 0; i < pieces; ++i) {
        const double t = full_turn * i / pieces, across = r * std::sin(t);
        const double along = std::sqrt(bore * bore - across * across);
        rim.push_back({x + r * std::cos(t), 0, along * std::cos(angle) - across * std::sin(angle)});
      }
      view.outline(Line::visible, rim);
    }
  }
}

std::vector<std::string> port_lines(const Inputs &in, const PlugPassage &way, int count) {
  const auto &port = *in.job.gas.port_thread;
  return {fmt::format("{}{} ↧{}", count > 1 ? "2× " : "", port.callout, in.labels.number(port.full_thread)),
          fmt::format("drill ⌀{} ↧{}", in.labels.number(2.0 * way.port_radius),
                      in.labels.number(way.port_depth))};
}

void draw_passage(ViewPlan &view, const Inputs &in, const PlugPassage &way) {
  const auto &plug = in.layout.plug;
  const auto &port = *in.job.gas.port_thread;
  passage_edges(view, plug, way);
  thread_cut(view, {in_mm(plug.rear_x()), 0, in_mm(way.z)}, {1, 0, 0}, {0, 0, 1}, 0.5 * in_mm(port.major),
             in_mm(port.full_thread), in_mm(way.port_radius));
  if (plug.has_exhaust) {
    view.axis({in_mm(plug.rear_x()), 0, in_mm(way.z)}, {in_mm(plug.spigot_length), 0, in_mm(way.z)});
  }
}

void spigot_lengths(ViewPlan &view, const Inputs &in) {
  const auto &plug = in.layout.plug;
  const auto &n = in.labels;
  const double rear = in_mm(plug.rear_x()), shoulder = in_mm(plug.shoulder_radius),
               spigot = in_mm(plug.spigot_radius);
  const double end = in_mm(plug.spigot_length), brk = in_mm(plug.edge_break);
  const Vec stop{0, 0, -shoulder};
  view.linears = {
      {"end-plug.shoulder_length", {rear, 0, -shoulder}, stop, Side::below, n.size(plug.shoulder_length)},
      {"end-plug.spigot_length", stop, {end, 0, -(spigot - brk)}, Side::below, n.size(plug.spigot_length)},
      {"end-plug.shoulder_radius",
       {rear, 0, -shoulder},
       {rear, 0, shoulder},
       Side::left,
       n.diameter(plug.shoulder_radius)},
      {"end-plug.spigot_radius",
       {end - brk, 0, -spigot},
       {end - brk, 0, spigot},
       Side::right,
       n.fitted(plug.spigot_radius, 'h', tolerances::plug_spigot)},
  };
}

Callout end_chamfer(const Inputs &in, std::string feature, double end, double radius) {
  const double half = 0.5 * in_mm(in.layout.plug.edge_break);
  return chamfer(std::move(feature), in.labels, in.layout.plug.edge_break, {end - half, 0, radius - half},
                 up_right);
}

void spigot_callouts(ViewPlan &view, const Inputs &in) {
  const auto &plug = in.layout.plug;
  const double end = in_mm(plug.spigot_length), spigot = in_mm(plug.spigot_radius);
  const double groove_end = in_mm(plug.seal.groove_start + plug.seal.groove_width);
  const double land = 0.5 * (groove_end + end - in_mm(plug.edge_break));
  view.callouts.push_back(end_chamfer(in, "end-plug.edge_break", end, spigot));
  view.callouts.push_back(datum({land, 0, -spigot}, "A", downwards));
  view.callouts.push_back(
      roughness("end-plug.spigot_radius.roughness", {land, 0, spigot}, in.labels, ground));
  view.callouts.back().towards = upwards;
  if (in.job.gas.port_thread->spot_face > Length{}) { // the fitting seals on the rear face
    const double z = 0.5 * (in_mm(plug.shoulder_radius) + in_mm(plug.inlet.z + plug.inlet.port_radius));
    view.callouts.push_back(
        roughness("end-plug.rear_face.roughness", {in_mm(plug.rear_x()), 0, z}, in.labels, ground));
    view.callouts.back().towards = leftwards;
  }
}

Callout side_holes(const Inputs &in) {
  const auto &plug = in.layout.plug;
  const double last = in_mm(plug.side_first_x + double(plug.side_rows - 1) * plug.side_pitch);
  Callout out = note("end-plug.side_hole_radius",
                     {last + in_mm(plug.side_hole_radius), 0, -in_mm(plug.nose_radius) + 1.0}, {});
  out.label = in.labels.diameter(plug.side_hole_radius, fmt::format("{}× ", plug.side_holes()));
  out.label.lines[0] += " to bore";
  out.label.lines.push_back(fmt::format("{} rows of {}, {}° apart", plug.side_rows, plug.side_holes_per_row,
                                        360 / plug.side_holes_per_row));
  out.probe = Probe::diameter;
  out.surface = out.tip;
  out.axis = {0, 0, 1};
  out.towards = down_right;
  return out;
}

void nose_wishes(ViewPlan &view, const Inputs &in) {
  const auto &plug = in.layout.plug;
  const auto &n = in.labels;
  const double tip = in_mm(plug.spigot_length + plug.nose_length), nose = in_mm(plug.nose_radius);
  const double brk = in_mm(plug.edge_break), shoulder = in_mm(plug.shoulder_radius);
  const double first = in_mm(plug.side_first_x), pitch = in_mm(plug.side_pitch), rear = in_mm(plug.rear_x());
  const double r = in_mm(plug.inlet.radius), end = in_mm(plug.inlet.end_x);
  view.linears.insert(view.linears.end(), {
                                              {"end-plug.nose_length",
                                               {0, 0, -shoulder},
                                               {tip, 0, -(nose - brk)},
                                               Side::below,
                                               n.size(plug.spigot_length + plug.nose_length)},
                                              {"end-plug.nose_radius",
                                               {tip - brk, 0, -nose},
                                               {tip - brk, 0, nose},
                                               Side::right,
                                               n.diameter(plug.nose_radius)},
                                              {"end-plug.side_first_x",
                                               {0, 0, shoulder},
                                               {first, 0, nose},
                                               Side::above,
                                               n.size(plug.side_first_x),
                                               Probe::offset},
                                              {"end-plug.inlet.end_x",
                                               {rear, 0, shoulder},
                                               {end, 0, r},
                                               Side::above,
                                               n.size(plug.inlet.end_x - plug.rear_x())},
                                          });
  if (plug.side_rows > 1) {
    view.linears.push_back({"end-plug.side_pitch",
                            {first, 0, nose},
                            {first + pitch, 0, nose},
                            Side::above,
                            n.size(plug.side_pitch, fmt::format("{}× ", plug.side_rows - 1)),
                            Probe::axes});
  }
  view.callouts.push_back(end_chamfer(in, "end-plug.nose.edge_break", tip, nose));
  const double middle = 0.5 * (in_mm(plug.rear_x() + plug.inlet.port_depth) + first);
  view.callouts.push_back(bore("end-plug.inlet.radius", n.diameter(plug.inlet.radius, "drill "),
                               {middle, 0, -r}, {1, 0, 0}, down_right));
  view.callouts.push_back(side_holes(in));
}

void two_way_wishes(ViewPlan &view, const Inputs &in) {
  const auto &plug = in.layout.plug;
  const auto &n = in.labels;
  const double rear = in_mm(plug.rear_x()), end = in_mm(plug.spigot_length);
  const double z = in_mm(plug.inlet.z), seat = in_mm(plug.inlet.seat_radius);
  view.linears.push_back({"end-plug.inlet.seat_depth",
                          {end - in_mm(plug.inlet.seat_depth), 0, z + seat},
                          {end, 0, z + seat},
                          Side::above,
                          n.size(plug.inlet.seat_depth)});
  view.linears.push_back({"end-plug.inlet.z",
                          {rear, 0, in_mm(plug.exhaust.z)},
                          {rear, 0, z},
                          Side::left,
                          n.size(plug.inlet.z - plug.exhaust.z),
                          Probe::axes});
  const auto add = [&](std::string feature, Label label, double x, double at, double towards) {
    view.callouts.push_back(bore(std::move(feature), std::move(label), {x, 0, at}, {1, 0, 0}, towards));
  };
  add("end-plug.inlet.seat_radius", n.fitted(plug.inlet.seat_radius, 'H', tolerances::lance_seat),
      end - 0.4 * in_mm(plug.inlet.seat_depth), z + seat, up_right);
  const double middle =
      0.5 * (in_mm(plug.rear_x() + plug.inlet.port_depth) + end - in_mm(plug.inlet.seat_depth));
  add("end-plug.inlet.radius", n.diameter(plug.inlet.radius, "drill ", " through"), middle,
      z - in_mm(plug.inlet.radius), down_right);
  add("end-plug.exhaust.radius", n.diameter(plug.exhaust.radius, "drill ", " through"), 0.5 * end,
      in_mm(plug.exhaust.z - plug.exhaust.radius), down_right);
}

ViewPlan section(const Inputs &in, const CutFace &cut) {
  const auto &plug = in.layout.plug;
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = from_front;
  view.room = {34, 46, plug.has_exhaust ? 36.0 : 46.0, 34};
  add_cut(view, cut);
  view.axis({in_mm(plug.rear_x()), 0, 0}, {in_mm(plug.spigot_length + plug.nose_length), 0, 0});
  draw_passage(view, in, plug.inlet);
  spigot_lengths(view, in);
  if (plug.has_exhaust) {
    draw_passage(view, in, plug.exhaust);
    two_way_wishes(view, in);
  } else {
    side_hole_mouths(view, plug);
    nose_wishes(view, in);
  }
  spigot_callouts(view, in);
  Callout port = note("end-plug.inlet.port",
                      {in_mm(plug.rear_x()) + 2.0, 0, in_mm(plug.inlet.z - plug.inlet.port_radius)},
                      port_lines(in, plug.inlet, plug.has_exhaust ? 2 : 1));
  port.towards = down_left;
  view.callouts.push_back(port);
  return view;
}

// End view from the tube's side: spigot, nose with the directions of its side holes, or lance seat and
// exhaust.
ViewPlan front_view(const Inputs &in) {
  const auto &plug = in.layout.plug;
  ViewPlan view;
  view.name = "from-right";
  view.moved_caption = "View from the right";
  view.looking = from_right;
  view.room = {8, 8, 14, 14};
  const double reach = in_mm(plug.shoulder_radius);
  view.marks.push_back({Mark::Kind::cut, "A", {0, 0, -reach}, {0, 0, reach}, {0, 1, 0}});
  const auto ring = [&](Vec centre, Length radius) { view.circle(Line::visible, centre, in_mm(radius)); };
  ring({}, plug.shoulder_radius);
  ring({}, plug.spigot_radius);
  ring({}, plug.spigot_radius - plug.edge_break);
  view.centre_mark({}, in_mm(plug.shoulder_radius));
  if (plug.has_exhaust) {
    ring({0, 0, in_mm(plug.inlet.z)}, plug.inlet.seat_radius);
    ring({0, 0, in_mm(plug.inlet.z)}, plug.inlet.radius);
    ring({0, 0, in_mm(plug.exhaust.z)}, plug.exhaust.radius);
    for (const Length &z : {plug.inlet.z, plug.exhaust.z}) {
      view.axis({0, -in_mm(plug.inlet.seat_radius), in_mm(z)}, {0, in_mm(plug.inlet.seat_radius), in_mm(z)});
    }
    return view;
  }
  ring({}, plug.nose_radius);
  ring({}, plug.nose_radius - plug.edge_break);
  for (int hole = 0; hole < plug.side_holes_per_row; ++hole) {
    const double angle = full_turn * hole / plug.side_holes_per_row, r = in_mm(plug.nose_radius);
    view.axis({0, 0.5 * r * std::sin(angle), 0.5 * r * std::cos(angle)},
              {0, r * std::sin(angle), r * std::cos(angle)});
  }
  return view;
}

// Holds the corner of the stop face and both walls of the groove.
struct DetailCircle {
  Vec centre;
  double radius;
};
DetailCircle groove_circle(const EndPlug &plug) {
  constexpr double beyond = 1.2;
  const double end = in_mm(plug.seal.groove_start + plug.seal.groove_width);
  return {{0.5 * end, 0, 0.5 * in_mm(plug.seal.groove_radius + plug.spigot_radius)}, 0.5 * end + beyond};
}

ViewPlan groove_detail(const Inputs &in, const CutFace &cut) {
  const auto &plug = in.layout.plug;
  const auto &seal = plug.seal;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "groove";
  view.caption = std::string(1, 'C');
  view.looking = from_front;
  view.floating = true;
  view.scale = 5.0;
  view.room = {34, 44, 18, 14};
  add_cut(view, cut);
  const double start = in_mm(seal.groove_start), width = in_mm(seal.groove_width);
  const double bottom = in_mm(seal.groove_radius), land = in_mm(plug.spigot_radius);
  const DetailCircle circle = groove_circle(plug);
  view.clip = Arc{view.looking(circle.centre), circle.radius};
  view.linears.push_back({"end-plug.seal.groove_start",
                          {0, 0, land},
                          {start, 0, land},
                          Side::below,
                          n.plus_minus(seal.groove_start, millimetres(0.1))});
  view.linears.push_back({"end-plug.seal.groove_width",
                          {start, 0, land},
                          {start + width, 0, land},
                          Side::above,
                          n.plus_minus(seal.groove_width, seal.gland->width_tolerance)});
  view.callouts.push_back(bore("end-plug.seal.groove_radius",
                               n.fitted(seal.groove_radius, 'h', tolerances::plug_groove),
                               {start + 0.25 * width, 0, bottom}, {1, 0, 0}, 0.65 * std::numbers::pi));
  view.callouts.push_back(
      roughness("end-plug.seal.bottom.roughness", {start + 0.5 * width, 0, bottom}, n, ground));
  view.callouts.back().towards = up_right;
  view.callouts.push_back(frame("end-plug.seal.runout", {start + 0.75 * width, 0, bottom},
                                fmt::format("↗|{}|A", n.number(tolerances::plug_groove_runout, 3))));
  view.callouts.back().towards = 0.2 * std::numbers::pi;
  view.callouts.push_back(
      roughness("end-plug.seal.flank.roughness", {start, 0, 0.5 * (bottom + land)}, n, turned));
  view.callouts.back().towards = 0.6 * std::numbers::pi;
  view.callouts.push_back(note("end-plug.seal.corner_radius", {start, 0, bottom},
                               {fmt::format("2× R{} to {}", n.number(seal.gland->corner_radius_min),
                                            n.number(seal.gland->corner_radius_max))}));
  view.callouts.back().towards = down_left;
  return view;
}

void mark_section(ViewPlan &view, const EndPlug &plug) {
  const DetailCircle circle = groove_circle(plug);
  view.marks.push_back(
      {Mark::Kind::detail, "C", circle.centre, circle.centre + Vec{circle.radius, 0, 0}, {}});
  Callout letter = note("detail.C", circle.centre, {"C"});
  letter.radius = circle.radius;
  letter.towards = up_left;
  view.callouts.push_back(letter);
}

} // namespace

PartPlan plan_end_plug(const Inputs &in) {
  const auto &plug = in.layout.plug;
  PartPlan plan = started_plan(in, ids::end_plug);
  const CutFace cut = cut_of(in, ids::end_plug, from_front);
  ViewPlan main = section(in, cut);
  mark_section(main, plug);
  std::vector<ViewPlan> row{std::move(main)};
  add_right_view(in, row, front_view(in));
  plan.rows.push_back(std::move(row));
  plan.rows.emplace_back();
  plan.rows.back().push_back(groove_detail(in, cut));
  plan.notes.push_back(
      fmt::format("O-ring AS568 {}; no tool marks across the groove.", plug.seal.ring->dash));
  if (plug.has_exhaust) {
    plan.notes.push_back("The two gas ways lie symmetric about the axis, in plane A-A.");
  }
  plan.notes.push_back("Drill points 118°. Countersink thread mouths 90° to the major diameter.");
  return plan;
}

} // namespace purgewright::drawing

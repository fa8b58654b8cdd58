// chamber-end-plate: section through pin bore and clamp screw, and the inner face. Lengths run from the inner
// face (under the gasket, datum A), the rest from the pin bore's axis.
#include "part_plans.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::EndPlate;
using fixture::Length;
using units::millimetres;

// A hand tap M4 is 53 mm long (ISO 529, from memory), of which a holder takes some 13 mm.
constexpr Length usual_tap_reach = millimetres(40.0);

void beyond_section(ViewPlan &view, const EndPlate &plate) {
  const double x1 = in_mm(plate.thickness), bore_radius = in_mm(plate.pin_bore_radius);
  const auto across = [&](double x, double z0, double z1) {
    view.line(Line::visible, {x, 0, z0}, {x, 0, z1});
  };
  across(0, -bore_radius, bore_radius);
  across(x1, -bore_radius, bore_radius);
  const double clamp = in_mm(plate.clamp_x), wide = in_mm(plate.clamp_clearance_radius),
               tap = in_mm(plate.clamp_tap_radius);
  const double step = in_mm(plate.clamp_tap_top_z);
  view.line(Line::visible, {clamp - wide, 0, step}, {clamp + wide, 0, step});
  const double major = 0.5 * in_mm(plate.clamp_screw->major);
  if (tap < major) {
    for (const double side : {-1.0, 1.0}) {
      view.line(Line::thread, {clamp + side * major, 0, bore_radius}, {clamp + side * major, 0, step});
    }
  }
}

ViewPlan section(const Inputs &in) {
  const auto &plate = in.layout.end_plate;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = from_front;
  view.room = {44, 44, 34, 26};
  add_cut(view, cut_of(in, ids::chamber_end_plate, from_front));
  beyond_section(view, plate);
  const double z0 = in_mm(plate.z_min), z1 = in_mm(plate.z_max), x1 = in_mm(plate.thickness),
               clamp = in_mm(plate.clamp_x);
  view.axis({0, 0, 0}, {x1, 0, 0});
  view.axis({clamp, 0, 0}, {clamp, 0, z1});
  view.linears = {
      {"chamber-end-plate.thickness", {0, 0, z0}, {x1, 0, z0}, Side::below, n.size(plate.thickness)},
      {"chamber-end-plate.clamp_x",
       {0, 0, z1},
       {clamp, 0, z1},
       Side::above,
       n.size(plate.clamp_x),
       Probe::offset},
      {"chamber-end-plate.clamp_tap_top_z",
       {x1, 0, 0},
       {clamp + in_mm(plate.clamp_tap_radius), 0, in_mm(plate.clamp_tap_top_z)},
       Side::right,
       n.size(plate.clamp_tap_top_z),
       Probe::offset},
  };
  const double bore_radius = in_mm(plate.pin_bore_radius);
  view.callouts.push_back(bore("chamber-end-plate.pin_bore_radius",
                               n.fitted(plate.pin_bore_radius, 'H', fixture::tolerances::pin_bore),
                               {0.75 * x1, 0, -bore_radius}, {1, 0, 0}, rightwards));
  view.callouts.push_back(frame("chamber-end-plate.pin_bore.squareness", {0.85 * x1, 0, -bore_radius},
                                fmt::format("⟂|⌀{}|A", n.zone(fixture::tolerances::pin_bore_squareness))));
  view.callouts.back().towards = down_right;
  const auto &screw = *plate.clamp_screw;
  view.callouts.push_back(
      note("chamber-end-plate.clamp_screw",
           {clamp + in_mm(plate.clamp_tap_radius), 0, 0.5 * (bore_radius + in_mm(plate.clamp_tap_top_z))},
           {fmt::format("{} into bore", screw.callout),
            fmt::format("drill ⌀{}", n.number(2.0 * plate.clamp_tap_radius))}));
  view.callouts.back().towards = rightwards;
  view.callouts.push_back(
      bore("chamber-end-plate.clamp_clearance_radius", n.diameter(plate.clamp_clearance_radius),
           {clamp + in_mm(plate.clamp_clearance_radius), 0, 0.8 * z1}, {0, 0, 1}, up_right));
  view.callouts.push_back(datum({0, 0, z0 + 4.0}, "A", leftwards));
  return view;
}

ViewPlan inner_face(const Inputs &in) {
  const auto &plate = in.layout.end_plate;
  const auto &n = in.labels;
  const double half = 0.5 * in_mm(plate.width), z0 = in_mm(plate.z_min), z1 = in_mm(plate.z_max);
  ViewPlan view = face_from_left({-half, half, z0, z1});
  view.room = {34, 46, 34, 26};
  hole_end_on(view, {}, plate.pin_bore_radius);
  view.axis({0, -half, 0}, {0, half, 0});
  const Vec meter{0, in_mm(plate.meter.at.y), in_mm(plate.meter.at.z)};
  view.circle(Line::visible, meter, in_mm(plate.meter.radius));
  thread_end_on(view, meter, 0.5 * in_mm(plate.meter.thread->major));
  view.axis(meter - Vec{0, 0, in_mm(plate.meter.thread->major)},
            meter + Vec{0, 0, in_mm(plate.meter.thread->major)});
  for (const auto &at : plate.screws) {
    hole_end_on(view, {0, in_mm(at.y), in_mm(at.z)}, plate.screw_clearance_radius);
  }
  const auto hole = [&](std::size_t i) { return Vec{0, in_mm(plate.screws[i].y), in_mm(plate.screws[i].z)}; };
  view.linears = {
      {"chamber-end-plate.screws.y", hole(2), hole(3), Side::below,
       n.size(plate.screws[3].y - plate.screws[2].y), Probe::axes},
      {"chamber-end-plate.width", {0, -half, z0}, {0, half, z0}, Side::below, n.size(plate.width)},
      {"chamber-end-plate.screws.z.top",
       {0, 0, 0},
       hole(0),
       Side::right,
       n.size(plate.screws[0].z),
       Probe::axes},
      {"chamber-end-plate.screws.z.bottom",
       hole(2),
       {0, 0, 0},
       Side::right,
       n.size(-plate.screws[2].z),
       Probe::axes},
      {"chamber-end-plate.z_max",
       {0, half, 0},
       {0, half, z1},
       Side::left,
       n.size(plate.z_max),
       Probe::offset},
      {"chamber-end-plate.z_min",
       {0, half, z0},
       {0, half, 0},
       Side::left,
       n.size(-plate.z_min),
       Probe::offset},
      {"chamber-end-plate.meter.y", {0, 0, 0}, meter, Side::above, n.size(plate.meter.at.y), Probe::axes},
  };
  view.callouts.push_back(hole_note(
      "chamber-end-plate.screws",
      counterbored(n, 4, plate.screw_clearance_radius, plate.counterbore_radius, plate.counterbore_depth),
      hole(0), plate.screw_clearance_radius, {1, 0, 0}, up_right));
  view.callouts.back().label.lines[1] += " from the outside";
  Callout port = note("chamber-end-plate.meter", meter,
                      {fmt::format("{} through", plate.meter.thread->callout),
                       fmt::format("drill ⌀{}", n.number(2.0 * plate.meter.radius)), "oxygen meter"});
  port.radius = 0.5 * in_mm(plate.meter.thread->major);
  port.towards = down_left;
  view.callouts.push_back(port);
  view.marks.push_back({Mark::Kind::cut, "A", {0, 0, z0}, {0, 0, z1}, {0, 1, 0}});
  return view;
}

} // namespace

PartPlan plan_end_plate(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::chamber_end_plate);
  plan.rows.emplace_back();
  plan.rows.back().push_back(section(in));
  add_left_view(in, plan.rows.back(), inner_face(in));
  plan.rows.emplace_back();
  plan.rows.back().push_back(pictorial_view(in, ids::chamber_end_plate));
  plan.notes.push_back("Thickness and faces as bought where the stock is that thick.");
  plan.notes.push_back("Clamp screw drilled before the pin bore is finished.");
  const auto &plate = in.layout.end_plate;
  if (const fixture::Length reach = plate.z_max - plate.pin_bore_radius; reach > usual_tap_reach) {
    plan.notes.push_back(
        fmt::format("Clamp screw: a tap that reaches {} below its holder.", in.labels.number(reach)));
  }
  plan.notes.push_back("Symmetric about the plane A-A but for the meter's port.");
  return plan;
}

} // namespace purgewright::drawing

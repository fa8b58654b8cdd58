// chamber-end-plate: section through pin bore and clamp screw, inner face with the O-ring groove, groove
// detail. Lengths run from the inner face (the seal, datum A), the rest from the pin bore's axis.
#include "part_plans.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::EndPlate;
using fixture::Length;
using units::millimetres;

constexpr int pin_bore_grade = 8; // H8 for the pin f7
constexpr double sealing = 1.6, flank = 3.2;
constexpr Length face_flatness = millimetres(0.05), bore_squareness = millimetres(0.05);

void beyond_section(ViewPlan &view, const EndPlate &plate) {
  const double x1 = in_mm(plate.thickness), bore_radius = in_mm(plate.pin_bore_radius);
  const auto across = [&](double x, double z0, double z1) {
    view.line(Line::visible, {x, 0, z0}, {x, 0, z1});
  };
  across(0, -bore_radius, bore_radius);
  across(x1, -bore_radius, bore_radius);
  // The groove's floor beyond the cut, and its mouth.
  const double top = in_mm(plate.groove.outer_radius()), low = in_mm(plate.groove.lower_centre_z) - top;
  across(0, low, top);
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

ViewPlan section(const Inputs &in, const CutFace &cut) {
  const auto &plate = in.layout.end_plate;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "section";
  view.caption = "A-A";
  view.looking = from_front;
  view.room = {44, 44, 34, 26};
  add_cut(view, cut);
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
                               n.fitted(plate.pin_bore_radius, 'H', pin_bore_grade),
                               {0.75 * x1, 0, -bore_radius}, {1, 0, 0}, rightwards));
  view.callouts.push_back(frame("chamber-end-plate.pin_bore.squareness", {0.85 * x1, 0, -bore_radius},
                                fmt::format("⟂|⌀{}|A", n.number(bore_squareness, 3))));
  view.callouts.back().towards = down_right;
  const auto &screw = *plate.clamp_screw;
  view.callouts.push_back(
      note("chamber-end-plate.clamp_screw",
           {clamp + in_mm(plate.clamp_tap_radius), 0, 0.5 * (bore_radius + in_mm(plate.clamp_tap_top_z))},
           {fmt::format("{}×{:g}-6H into bore", screw.name, in_mm(screw.pitch)),
            fmt::format("drill ⌀{}", n.number(2.0 * plate.clamp_tap_radius))}));
  view.callouts.back().towards = rightwards;
  view.callouts.push_back(
      bore("chamber-end-plate.clamp_clearance_radius", n.diameter(plate.clamp_clearance_radius),
           {clamp + in_mm(plate.clamp_clearance_radius), 0, 0.8 * z1}, {0, 0, 1}, up_right));
  view.callouts.push_back(datum({0, 0, z0 + 4.0}, "A", leftwards));
  view.callouts.push_back(roughness("chamber-end-plate.face.roughness", {0, 0, z0 + 2.0}, n, sealing));
  view.callouts.back().towards = down_left;
  view.callouts.push_back(frame("chamber-end-plate.face.flatness", {0, 0, z1 - 2.0},
                                fmt::format("⏥|{}", n.number(face_flatness, 3))));
  view.callouts.back().towards = leftwards;
  return view;
}

// The groove's two walls as obrounds, on the inner face.
void obround(ViewPlan &view, double radius, double lower_z) {
  view.circle(Line::visible, {0, 0, 0}, radius, 0, 0.5 * full_turn);
  view.circle(Line::visible, {0, 0, lower_z}, radius, 0.5 * full_turn, 0.5 * full_turn);
  for (const double side : {-1.0, 1.0}) {
    view.line(Line::visible, {0, side * radius, 0}, {0, side * radius, lower_z});
  }
}

ViewPlan inner_face(const Inputs &in) {
  const auto &plate = in.layout.end_plate;
  const auto &groove = plate.groove;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-left";
  view.moved_caption = "View from the left";
  view.looking = from_left;
  view.room = {34, 46, 34, 26};
  const double half = 0.5 * in_mm(plate.width), z0 = in_mm(plate.z_min), z1 = in_mm(plate.z_max);
  view.outline(Line::visible, {{0, -half, z0}, {0, half, z0}, {0, half, z1}, {0, -half, z1}});
  const double inner = in_mm(groove.inner_radius), outer = in_mm(groove.outer_radius()),
               low = in_mm(groove.lower_centre_z);
  obround(view, inner, low);
  obround(view, outer, low);
  hole_end_on(view, {}, plate.pin_bore_radius);
  view.axis({0, 0, z0}, {0, 0, z1});
  view.axis({0, -half, 0}, {0, half, 0});
  view.axis({0, -outer, low}, {0, outer, low});
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
      {"chamber-end-plate.groove.lower_centre_z",
       {0, inner, low},
       {0, inner, 0},
       Side::left,
       n.size(groove.straight()),
       Probe::none},
  };
  view.callouts.push_back(hole_note(
      "chamber-end-plate.screws",
      counterbored(n, 4, plate.screw_clearance_radius, plate.counterbore_radius, plate.counterbore_depth),
      hole(0), plate.screw_clearance_radius, {1, 0, 0}, up_right));
  view.callouts.back().label.lines[1] += " from the outside";
  Callout ring =
      note("chamber-end-plate.groove.inner_radius", {0, inner * std::sin(0.6), inner * std::cos(0.6)}, {});
  ring.label = n.size(groove.inner_radius, "2× R");
  ring.probe = Probe::radius;
  ring.surface = {0.5 * in_mm(groove.depth), inner * std::sin(0.6), inner * std::cos(0.6)};
  ring.axis = {1, 0, 0};
  ring.towards = up_left;
  view.callouts.push_back(ring);
  view.marks.push_back({Mark::Kind::cut, "A", {0, 0, z0}, {0, 0, z1}, {0, 1, 0}});
  return view;
}

struct DetailCircle {
  Vec centre;
  double radius;
};
DetailCircle groove_circle(const EndPlate &plate) {
  const double width = in_mm(plate.groove.width), depth = in_mm(plate.groove.depth);
  return {{0.5 * depth, 0, in_mm(plate.groove.inner_radius) + 0.5 * width}, 0.5 * width + 1.2};
}

ViewPlan groove_detail(const Inputs &in, const CutFace &cut) {
  const auto &plate = in.layout.end_plate;
  const auto &groove = plate.groove;
  const auto &n = in.labels;
  const auto *gland = standards::static_radial_gland(groove.ring->section);
  ViewPlan view;
  view.name = "groove";
  view.caption = std::string(1, 'B');
  view.looking = from_front;
  view.floating = true;
  view.scale = 5.0;
  view.room = {40, 44, 18, 22};
  add_cut(view, cut);
  const DetailCircle circle = groove_circle(plate);
  view.clip = Arc{view.looking(circle.centre), circle.radius};
  const double inner = in_mm(groove.inner_radius), outer = in_mm(groove.outer_radius()),
               depth = in_mm(groove.depth);
  view.linears = {
      {"chamber-end-plate.groove.width",
       {0, 0, inner},
       {0, 0, outer},
       Side::left,
       n.plus_minus(groove.width, gland->width_tolerance)},
      {"chamber-end-plate.groove.depth",
       {0, 0, inner},
       {depth, 0, inner},
       Side::below,
       n.plus_minus(groove.depth, 0.5 * (gland->depth_max - gland->depth_min))},
  };
  const double middle = 0.5 * (inner + outer);
  view.callouts.push_back(
      roughness("chamber-end-plate.groove.bottom.roughness", {depth, 0, middle}, n, sealing));
  view.callouts.back().towards = rightwards;
  view.callouts.push_back(
      roughness("chamber-end-plate.groove.flank.roughness", {0.5 * depth, 0, outer}, n, flank));
  view.callouts.back().towards = up_right;
  view.callouts.push_back(note(
      "chamber-end-plate.groove.corner_radius", {depth, 0, inner},
      {fmt::format("2× R{} to {}", n.number(gland->corner_radius_min), n.number(gland->corner_radius_max))}));
  view.callouts.back().towards = down_right;
  return view;
}

} // namespace

PartPlan plan_end_plate(const Inputs &in) {
  const auto &plate = in.layout.end_plate;
  PartPlan plan = started_plan(in, ids::chamber_end_plate);
  const CutFace cut = cut_of(in, ids::chamber_end_plate, from_front);
  ViewPlan main = section(in, cut);
  const DetailCircle circle = groove_circle(plate);
  main.marks.push_back(
      {Mark::Kind::detail, "B", circle.centre, circle.centre + Vec{0, 0, circle.radius}, {}});
  Callout letter = note("detail.B", circle.centre, {"B"});
  letter.radius = circle.radius;
  letter.towards = up_left;
  main.callouts.push_back(letter);
  plan.rows.emplace_back();
  plan.rows.back().push_back(std::move(main));
  add_left_view(in, plan.rows.back(), inner_face(in));
  plan.rows.emplace_back();
  plan.rows.back().push_back(groove_detail(in, cut));
  plan.rows.back().push_back(pictorial_view(in, ids::chamber_end_plate));
  plan.notes.push_back(fmt::format("O-ring AS568 {}; no tool marks across the groove. Clamp screw drilled "
                                   "before the pin bore is finished.",
                                   plate.groove.ring->dash));
  plan.notes.push_back("Symmetric about the plane A-A.");
  return plan;
}

} // namespace purgewright::drawing

// cradle-stand and slot-cover: an upright plate and a channel, each from its outer edges or its own symmetry.
#include "footed_plate.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <numbers>

namespace purgewright::drawing {
namespace {

using fixture::Length;
namespace tolerances = fixture::tolerances;

// ---- cradle-stand: seen from the rollers' side (+X) ----
FootedPlate footed(const fixture::CradleStand &stand) {
  return {ids::cradle_stand, stand.thickness, stand.width, stand.z_min, stand.z_max, stand.foot};
}

void stand_outline(ViewPlan &view, const fixture::CradleStand &stand) {
  const double half = 0.5 * in_mm(stand.width), z1 = in_mm(stand.z_max),
               notch = 0.5 * in_mm(stand.notch_width), floor = in_mm(stand.notch_floor),
               corner = in_mm(stand.notch_corner);
  foot_outline(view, footed(stand));
  for (const double side : {-1.0, 1.0}) {
    const Vec inner{0, side * notch, z1}, outer{0, side * half, z1};
    view.line(Line::visible, inner, outer);
    if (z1 - floor > corner) {
      view.line(Line::visible, inner, {0, side * notch, floor + corner});
    }
    const double start = side > 0.0 ? 1.5 * units::pi : units::pi;
    view.circle(Line::visible, {0, side * (notch - corner), floor + corner}, corner, start, 0.5 * units::pi);
  }
  view.line(Line::visible, {0, corner - notch, floor}, {0, notch - corner, floor});
}

ViewPlan stand_face(const Inputs &in) {
  const auto &stand = in.layout.stand;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-right";
  view.moved_caption = "View from the right";
  view.looking = from_right;
  view.room = {40, 46, 34, 34};
  stand_outline(view, stand);
  const double lugs = 0.5 * in_mm(stand.foot.width), half = 0.5 * in_mm(stand.width), z0 = in_mm(stand.z_min),
               y = in_mm(stand.roller_y), z = in_mm(stand.roller_z);
  const double z1 = in_mm(stand.z_max), notch = 0.5 * in_mm(stand.notch_width),
               floor = in_mm(stand.notch_floor);
  view.axis({0, 0, z0}, {0, 0, z1});
  for (const double side : {-1.0, 1.0}) {
    tapped_end_on(view, {0, side * y, z}, stand.axle->thread, stand.axle_radius);
  }
  const double pin = in_mm(stand.dowel.radius), pin_end = z0 + in_mm(stand.dowel.depth);
  view.outline(Line::hidden, {{0, -pin, z0}, {0, -pin, pin_end}, {0, pin, pin_end}, {0, pin, z0}}, false);
  Callout dowel = note("cradle-stand.dowel", {0, pin, z0 + 2.0}, {});
  dowel.label = reamed(n, 1, stand.dowel.radius);
  dowel.label.lines.push_back(fmt::format("↧{}", n.number(stand.dowel.depth)));
  dowel.probe = Probe::diameter;
  dowel.surface = {-0.5 * in_mm(stand.thickness), pin, z0 + 2.0};
  dowel.axis = {0, 0, 1};
  dowel.towards = down_right;
  view.callouts.push_back(dowel);
  view.callouts.push_back(frame("cradle-stand.dowel.position", {0, -pin, z0 + 2.0},
                                position_cells(n, 2.0 * tolerances::dowel_to_axles, "B")));
  view.callouts.back().towards = down_left;
  view.linears = {
      {"cradle-stand.roller_y",
       {0, -y, z},
       {0, y, z},
       Side::above,
       n.plus_minus(2.0 * stand.roller_y, tolerances::roller_distance),
       Probe::axes},
      {"cradle-stand.axle_height",
       {0, lugs, z0},
       {0, y, z},
       Side::right,
       n.plus_minus(stand.axle_height(), tolerances::axle_height),
       Probe::none},
      {"cradle-stand.notch_floor",
       {0, -lugs, z0},
       {0, 0, floor},
       Side::left,
       n.size(stand.notch_floor - stand.z_min)},
      {"cradle-stand.notch_width", {0, -notch, z1}, {0, notch, z1}, Side::above, n.size(stand.notch_width)},
      {"cradle-stand.z_max", {0, -lugs, z0}, {0, -half, z1}, Side::left, n.size(stand.z_max - stand.z_min)},
  };
  view.callouts.push_back(note("cradle-stand.axle", {0, y, z},
                               {fmt::format("2× {} through", stand.axle->callout),
                                fmt::format("drill ⌀{}", n.number(2.0 * stand.axle_radius))}));
  view.callouts.back().radius = 0.5 * in_mm(stand.axle->thread);
  view.callouts.back().towards = rightwards;
  view.callouts.push_back(datum_of_pair({0, -y, z}, 0.5 * stand.axle->thread, "B", leftwards));
  foot_wishes(view, n, footed(stand));
  const double corner = in_mm(stand.notch_corner), diagonal = (1.0 - 1.0 / std::numbers::sqrt2) * corner;
  Callout round = note("cradle-stand.notch_corner", {0, diagonal - notch, floor + diagonal}, {});
  round.label = n.size(stand.notch_corner, "2× R");
  round.probe = Probe::radius;
  round.surface = {-0.5 * in_mm(stand.thickness), diagonal - notch, floor + diagonal};
  round.axis = {1, 0, 0};
  round.towards = upwards;
  view.callouts.push_back(round);
  return view;
}

// ---- slot-cover ----
ViewPlan cover_end(const Inputs &in) {
  const auto &cover = in.layout.cover;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-right";
  view.moved_caption = "View from the right";
  view.looking = from_right;
  view.room = {30, 30, 26, 26};
  const double half = 0.5 * in_mm(cover.width), inner = 0.5 * in_mm(cover.channel_width),
               top = in_mm(cover.thickness), lip = -in_mm(cover.lip);
  const double x = 0.5 * in_mm(cover.length);
  view.outline(Line::visible, {{x, -half, lip},
                               {x, -inner, lip},
                               {x, -inner, 0},
                               {x, inner, 0},
                               {x, inner, lip},
                               {x, half, lip},
                               {x, half, top},
                               {x, -half, top}});
  view.axis({x, 0, lip}, {x, 0, top});
  view.linears = {
      {"slot-cover.channel_width",
       {x, -inner, lip},
       {x, inner, lip},
       Side::below,
       n.size(cover.channel_width, "", n.unit() == Unit::inch ? " +.004/0" : " +0.1/0")},
      {"slot-cover.width", {x, -half, lip}, {x, half, lip}, Side::below, n.size(cover.width)},
      {"slot-cover.thickness",
       {x, half, 0},
       {x, half, top},
       Side::right,
       n.size(cover.thickness),
       Probe::none},
      {"slot-cover.lip", {x, -half, lip}, {x, -inner, 0}, Side::left, n.size(cover.lip)},
  };
  return view;
}

ViewPlan cover_top(const Inputs &in) {
  const auto &cover = in.layout.cover;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-above";
  view.caption = "View from above";
  view.looking = from_above;
  view.room = {30, 40, 26, 26};
  const double x = 0.5 * in_mm(cover.length), half = 0.5 * in_mm(cover.width),
               inner = 0.5 * in_mm(cover.channel_width), top = in_mm(cover.thickness);
  view.outline(Line::visible, {{-x, -half, top}, {x, -half, top}, {x, half, top}, {-x, half, top}});
  for (const double side : {-inner, inner}) {
    view.line(Line::hidden, {-x, side, top}, {x, side, top});
  }
  view.axis({-x, 0, top}, {x, 0, top});
  const auto exit_at = [&](int i) {
    return Vec{(i - 0.5 * (cover.exits - 1)) * in_mm(cover.exit_pitch), 0, top};
  };
  for (int i = 0; i < cover.exits; ++i) {
    hole_end_on(view, exit_at(i), cover.exit_radius);
  }
  view.linears = {
      {"slot-cover.length", {-x, -half, top}, {x, -half, top}, Side::below, n.size(cover.length)}};
  if (cover.exits > 0) {
    view.linears.push_back({"slot-cover.exit_first",
                            {-x, half, top},
                            exit_at(0),
                            Side::above,
                            n.size(0.5 * cover.length - 0.5 * (cover.exits - 1) * cover.exit_pitch),
                            Probe::offset});
    Callout exits = hole_note("slot-cover.exit_radius",
                              n.diameter(cover.exit_radius, fmt::format("{}× ", cover.exits), " through"),
                              exit_at(cover.exits - 1), cover.exit_radius, {0, 0, 1}, up_right);
    view.callouts.push_back(exits);
  }
  if (cover.exits > 1) {
    view.linears.push_back(
        {"slot-cover.exit_pitch", exit_at(0), exit_at(1), Side::above,
         n.size(cover.exit_pitch, cover.exits > 2 ? fmt::format("{}× ", cover.exits - 1) : ""), Probe::axes});
  }
  return view;
}

} // namespace

PartPlan plan_cradle_stand(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::cradle_stand);
  plan.rows.emplace_back();
  plan.rows.back().push_back(stand_face(in));
  add_left_view(in, plan.rows.back(), footed_side(in.labels, footed(in.layout.stand)));
  plan.notes.push_back(fmt::format(
      "Make {}, all alike; a dowel in each of the two on the base plate. Symmetric about its middle.",
      in.layout.stand.count));
  plan.notes.emplace_back("Datum B is the plane amid the two axle holes.");
  plan.notes.emplace_back("Faces as rolled where the stock is that thick.");
  plan.notes.emplace_back("Upper edges of the ears sharp, deburred: the collar is read against them.");
  return plan;
}

PartPlan plan_slot_cover(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::slot_cover);
  plan.rows.emplace_back();
  plan.rows.back().push_back(cover_end(in));
  plan.rows.emplace_back();
  plan.rows.back().push_back(cover_top(in));
  plan.rows.back().push_back(pictorial_view(in, ids::slot_cover));
  plan.notes.push_back("Symmetric about its long axis; slides on the chamber's sides by hand.");
  return plan;
}

} // namespace purgewright::drawing

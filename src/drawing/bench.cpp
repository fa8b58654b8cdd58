// cradle-stand, base-plate and slot-cover: plates and a channel, each from its outer edges or its own
// symmetry.
#include "part_plans.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::Length;

std::string through_thread(const standards::Screw &screw, int count) {
  return fmt::format("{}× {}×{:g}-6H through", count, screw.name, in_mm(screw.pitch));
}

// ---- cradle-stand: seen from the rollers' side (+X) ----
void stand_outline(ViewPlan &view, const fixture::CradleStand &stand) {
  const double half = 0.5 * in_mm(stand.width), z0 = in_mm(stand.z_min), z1 = in_mm(stand.z_max),
               r = in_mm(stand.notch_radius);
  view.line(Line::visible, {0, -half, z1}, {0, -half, z0});
  view.line(Line::visible, {0, -half, z0}, {0, half, z0});
  view.line(Line::visible, {0, half, z0}, {0, half, z1});
  if (-z1 >= r) {
    view.line(Line::visible, {0, -half, z1}, {0, half, z1});
    return;
  }
  const double edge = std::sqrt(r * r - z1 * z1);
  view.line(Line::visible, {0, -half, z1}, {0, -edge, z1});
  view.line(Line::visible, {0, edge, z1}, {0, half, z1});
  const double start = std::atan2(z1, -edge) + full_turn, end = std::atan2(z1, edge) + full_turn;
  view.circle(Line::visible, {}, r, start, end - start);
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
  const double half = 0.5 * in_mm(stand.width), z0 = in_mm(stand.z_min), y = in_mm(stand.roller_y),
               z = in_mm(stand.roller_z);
  view.axis({0, 0, z0}, {0, 0, 2.0});
  view.axis({0, -6.0, 0}, {0, 6.0, 0});
  for (const double side : {-1.0, 1.0}) {
    tapped_end_on(view, {0, side * y, z}, *stand.axle_screw, stand.axle_radius);
    const double foot = side * in_mm(stand.foot_y), r = in_mm(stand.foot_tapping.radius),
                 depth = in_mm(stand.foot_tapping.depth);
    for (const double wall : {-r, r}) {
      view.line(Line::hidden, {0, foot + wall, z0}, {0, foot + wall, z0 + depth});
    }
    view.line(Line::hidden, {0, foot - r, z0 + depth}, {0, foot + r, z0 + depth});
    view.axis({0, foot, z0}, {0, foot, z0 + depth});
  }
  view.linears = {
      {"cradle-stand.foot_y",
       {0, -in_mm(stand.foot_y), z0},
       {0, in_mm(stand.foot_y), z0},
       Side::below,
       n.size(2.0 * stand.foot_y),
       Probe::axes},
      {"cradle-stand.width", {0, -half, z0}, {0, half, z0}, Side::below, n.size(stand.width)},
      {"cradle-stand.roller_y",
       {0, -y, z},
       {0, y, z},
       Side::above,
       n.plus_minus(2.0 * stand.roller_y, units::millimetres(0.05)),
       Probe::axes},
      {"cradle-stand.z_min",
       {0, half, z0},
       {0, 0, 0},
       Side::right,
       n.plus_minus(-stand.z_min, units::millimetres(0.05)),
       Probe::none},
      {"cradle-stand.roller_z",
       {0, y, z},
       {0, 0, 0},
       Side::right,
       n.plus_minus(-stand.roller_z, units::millimetres(0.05)),
       Probe::none},
      {"cradle-stand.z_max",
       {0, -half, z0},
       {0, -half, in_mm(stand.z_max)},
       Side::left,
       n.size(stand.z_max - stand.z_min)},
  };
  view.callouts.push_back(note(
      "cradle-stand.axle_screw", {0, y, z},
      {through_thread(*stand.axle_screw, 2), fmt::format("drill ⌀{}", n.number(2.0 * stand.axle_radius))}));
  view.callouts.back().radius = 0.5 * in_mm(stand.axle_screw->major);
  view.callouts.back().towards = rightwards;
  view.callouts.push_back(
      note("cradle-stand.foot_tapping", {0, -in_mm(stand.foot_y + stand.foot_tapping.radius), z0 + 3.0},
           n.tapped(*stand.foot_screw, 2, 2.0 * stand.foot_screw->major, stand.foot_tapping.depth)));
  view.callouts.back().towards = leftwards;
  if (-stand.z_max < stand.notch_radius) {
    const double r = in_mm(stand.notch_radius);
    Callout notch = note("cradle-stand.notch_radius", {0, 0, -r}, {});
    notch.label = n.size(stand.notch_radius, "R");
    notch.probe = Probe::radius;
    notch.surface = {-0.5 * in_mm(stand.thickness), 0, -r};
    notch.axis = {1, 0, 0};
    notch.towards = upwards;
    view.callouts.push_back(notch);
  }
  return view;
}

ViewPlan stand_side(const Inputs &in) {
  const auto &stand = in.layout.stand;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-front";
  view.looking = from_front;
  view.room = {20, 20, 26, 26};
  const double x = -in_mm(stand.thickness), z0 = in_mm(stand.z_min), z1 = in_mm(stand.z_max);
  view.outline(Line::visible, {{x, 0, z0}, {0, 0, z0}, {0, 0, z1}, {x, 0, z1}});
  view.axis({0.5 * x, 0, z0}, {0.5 * x, 0, z0 + in_mm(stand.foot_tapping.depth)});
  view.linears = {
      {"cradle-stand.thickness", {x, 0, z0}, {0, 0, z0}, Side::below, n.size(stand.thickness)},
      {"cradle-stand.foot_x",
       {0.5 * x, in_mm(stand.foot_y), z1},
       {0, 0, z0},
       Side::above,
       n.size(0.5 * stand.thickness),
       Probe::offset},
  };
  return view;
}

// ---- base-plate: from above; holes by coordinates from the left edge and from the tube's plane ----
Vec on_plate(const fixture::Position &at) {
  return {in_mm(at.x), in_mm(at.y), 0};
}

void base_holes(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const double slot = in_mm(base.stand_slot_radius), half_travel = 0.5 * in_mm(base.rear_travel);
  for (const auto &at : base.chamber_screws) {
    hole_end_on(view, on_plate(at), base.chamber_screw_radius);
  }
  hole_end_on(view, {in_mm(base.inlet_x), 0, 0}, base.inlet_radius);
  for (const auto &at : base.block_screws) {
    tapped_end_on(view, on_plate(at), *in.layout.block.mount_screw, base.block_tap_radius);
  }
  for (const auto &at : base.feet) {
    tapped_end_on(view, on_plate(at), *base.foot_screw, base.foot_tap_radius);
  }
  for (std::size_t i = 0; i < base.stand_screws.size(); ++i) {
    const Vec c = on_plate(base.stand_screws[i]);
    if (i >= base.stand_screws.size() / 2) {
      hole_end_on(view, c, base.stand_slot_radius);
      continue;
    }
    const Vec end{half_travel, 0, 0};
    view.circle(Line::visible, c + end, slot, -0.25 * full_turn, 0.5 * full_turn);
    view.circle(Line::visible, c - end, slot, 0.25 * full_turn, 0.5 * full_turn);
    for (const double side : {-slot, slot}) {
      view.line(Line::visible, c - end + Vec{0, side, 0}, c + end + Vec{0, side, 0});
    }
    view.axis(c - end - Vec{slot, 0, 0}, c + end + Vec{slot, 0, 0});
    view.axis(c - Vec{0, slot, 0}, c + Vec{0, slot, 0});
  }
}

// Distances from the left edge below the view for the chamber's and the stands' holes, above it for the rest.
void base_lengths(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  const double x0 = in_mm(base.x_min), y0 = in_mm(base.y_min), y1 = in_mm(base.y_max);
  const auto x = [&](const char *feature, const fixture::Position &at, Side side) {
    view.linears.push_back({feature,
                            {x0, side == Side::below ? y0 : y1, 0},
                            on_plate(at),
                            side,
                            n.size(at.x - base.x_min),
                            Probe::offset});
  };
  x("base-plate.stand_screws.rear.x", base.stand_screws[0], Side::below);
  x("base-plate.stand_screws.front.x", base.stand_screws[2], Side::below);
  x("base-plate.chamber_screws.rear.x", base.chamber_screws[0], Side::below);
  x("base-plate.inlet_x", {base.inlet_x, {}, {}}, Side::below);
  x("base-plate.chamber_screws.front.x", base.chamber_screws[2], Side::below);
  view.linears.push_back(
      {"base-plate.length", {x0, y0, 0}, {in_mm(base.x_max), y0, 0}, Side::below, n.size(base.length())});
  const auto [near_foot, far_foot] = std::minmax_element(
      base.feet.begin(), base.feet.end(), [](const auto &a, const auto &b) { return a.x < b.x; });
  x("base-plate.feet.near.x", *near_foot, Side::above);
  x("base-plate.feet.far.x", *far_foot, Side::above);
  x("base-plate.block_screws.x", base.block_screws[0], Side::above);
  if (base.block_screws[1].x != base.block_screws[0].x) {
    x("base-plate.block_screws.second.x", base.block_screws[1], Side::above);
  }
  const double slot = in_mm(base.stand_slot_radius), half_travel = 0.5 * in_mm(base.rear_travel);
  const Vec rear = on_plate(base.stand_screws[1]);
  view.linears.push_back({"base-plate.rear_travel", rear - Vec{half_travel, 0, 0},
                          rear + Vec{half_travel, 0, 0}, Side::above, n.size(base.rear_travel), Probe::axes});
  (void)slot;
}

// Pairs about the tube's plane stand on the right, distances from that plane on the left: a text amid a pair would
// lie on the plane's extension line.
void base_widths(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  const double x0 = in_mm(base.x_min), x1 = in_mm(base.x_max);
  const auto pair = [&](const char *feature, const auto &a, const auto &b, Side side) {
    view.linears.push_back({feature, on_plate(a), on_plate(b), side,
                            n.size(units::metres(std::abs((b.y - a.y).value()))), Probe::axes});
  };
  pair("base-plate.stand_screws.y", base.stand_screws[2], base.stand_screws[3], Side::right);
  pair("base-plate.chamber_screws.y", base.chamber_screws[2], base.chamber_screws[3], Side::right);
  const auto from_axis = [&](const char *feature, const fixture::Position &at, Side side) {
    const double edge = side == Side::left ? x0 : x1;
    view.linears.push_back({feature,
                            {edge, 0, 0},
                            on_plate(at),
                            side,
                            n.size(units::metres(std::abs(at.y.value()))),
                            Probe::none});
  };
  const auto [low, high] = std::minmax_element(base.feet.begin(), base.feet.end(),
                                               [](const auto &a, const auto &b) { return a.y < b.y; });
  from_axis("base-plate.feet.low.y", *low, Side::left);
  from_axis("base-plate.feet.high.y", *high, Side::left);
  from_axis("base-plate.block_screws.first.y", base.block_screws[0], Side::left);
  if (base.block_screws[1].y != base.block_screws[0].y) {
    from_axis("base-plate.block_screws.second.y", base.block_screws[1], Side::left);
  }
  view.linears.push_back({"base-plate.y_min",
                          {x0, in_mm(base.y_min), 0},
                          {x0, 0, 0},
                          Side::left,
                          n.size(-base.y_min),
                          Probe::none});
  view.linears.push_back({"base-plate.width",
                          {x0, in_mm(base.y_min), 0},
                          {x0, in_mm(base.y_max), 0},
                          Side::left,
                          n.size(base.width())});
}

void base_callouts(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  const Vec up{0, 0, 1};
  view.callouts.push_back(
      hole_note("base-plate.chamber_screws", n.diameter(base.chamber_screw_radius, "4× ", " through"),
                on_plate(base.chamber_screws[3]), base.chamber_screw_radius, up, up_right));
  view.callouts.push_back(hole_note("base-plate.inlet_radius", n.diameter(base.inlet_radius, "", " through"),
                                    {in_mm(base.inlet_x), 0, 0}, base.inlet_radius, up, up_right));
  view.callouts.push_back(hole_note("base-plate.stand_screws.front",
                                    n.diameter(base.stand_slot_radius, "2× ", " through"),
                                    on_plate(base.stand_screws[3]), base.stand_slot_radius, up, up_right));
  const Vec rear = on_plate(base.stand_screws[0]) - Vec{0.5 * in_mm(base.rear_travel), 0, 0};
  Callout slots = note("base-plate.stand_screws.rear", rear, {});
  slots.label = n.size(base.stand_slot_radius, "2 slots through, R");
  slots.probe = Probe::radius;
  slots.surface = rear - Vec{in_mm(base.stand_slot_radius), 0, 0};
  slots.axis = up;
  slots.radius = in_mm(base.stand_slot_radius);
  slots.towards = down_left;
  view.callouts.push_back(slots);
  const auto tapped = [&](const char *feature, const standards::Screw &screw, int count,
                          const fixture::Position &at, Length drill) {
    Callout out = note(feature, on_plate(at),
                       {through_thread(screw, count), fmt::format("drill ⌀{}", n.number(2.0 * drill))});
    out.radius = 0.5 * in_mm(screw.major);
    view.callouts.push_back(out);
  };
  tapped("base-plate.block_screws.thread", *in.layout.block.mount_screw, 2, base.block_screws[0],
         base.block_tap_radius);
  tapped("base-plate.feet.thread", *base.foot_screw, 4, base.feet[0], base.foot_tap_radius);
}

ViewPlan base_top(const Inputs &in) {
  const auto &base = in.layout.base;
  ViewPlan view;
  view.name = "from-above";
  view.looking = from_above;
  view.room = {52, 50, 40, 60};
  const double x0 = in_mm(base.x_min), x1 = in_mm(base.x_max), y0 = in_mm(base.y_min), y1 = in_mm(base.y_max);
  view.outline(Line::visible, {{x0, y0, 0}, {x1, y0, 0}, {x1, y1, 0}, {x0, y1, 0}});
  view.axis({x0, 0, 0}, {x1, 0, 0});
  base_holes(view, in);
  base_lengths(view, in);
  base_widths(view, in);
  base_callouts(view, in);
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
  const auto &stand = in.layout.stand;
  PartPlan plan = started_plan(in, ids::cradle_stand,
                               block_stock(in, stand.thickness, stand.width, stand.z_max - stand.z_min));
  plan.rows.emplace_back();
  plan.rows.back().push_back(stand_face(in));
  plan.rows.back().push_back(stand_side(in));
  plan.notes.push_back("Make 2. Symmetric about the plane through the tube's axis (the cross).");
  return plan;
}

PartPlan plan_base_plate(const Inputs &in) {
  const auto &base = in.layout.base;
  PartPlan plan =
      started_plan(in, ids::base_plate, block_stock(in, base.length(), base.width(), base.thickness));
  plan.rows.emplace_back();
  plan.rows.back().push_back(base_top(in));
  plan.notes.push_back(fmt::format("Plate {} thick, both faces as rolled. Holes symmetric about the chain "
                                   "line where one distance is given.",
                                   in.labels.number(base.thickness)));
  return plan;
}

PartPlan plan_slot_cover(const Inputs &in) {
  const auto &cover = in.layout.cover;
  PartPlan plan = started_plan(in, ids::slot_cover,
                               block_stock(in, cover.length, cover.width, cover.thickness + cover.lip));
  plan.rows.emplace_back();
  plan.rows.back().push_back(cover_end(in));
  plan.rows.emplace_back();
  plan.rows.back().push_back(cover_top(in));
  plan.rows.back().push_back(pictorial_view(in, ids::slot_cover));
  plan.notes.push_back("Symmetric about its long axis; slides on the chamber's sides without shake.");
  return plan;
}

} // namespace purgewright::drawing

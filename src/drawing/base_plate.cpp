// base-plate: one view from above. Holes by coordinates from the left edge and from the plane of the tube's
// axis.
#include "part_plans.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::Length;

Vec on_plate(const fixture::Position &at) {
  return {in_mm(at.x), in_mm(at.y), 0};
}

// A slot along X, `travel` between the centres of its ends. Its centre line may run on to a hole at the same
// height, or be another's that does.
enum class CentreLine { own, of_row };
void slot_from_above(ViewPlan &view, Vec c, double radius, double travel, CentreLine line,
                     double run_on = 0.0) {
  const Vec end{0.5 * travel, 0, 0};
  view.circle(Line::visible, c + end, radius, -0.25 * full_turn, 0.5 * full_turn);
  view.circle(Line::visible, c - end, radius, 0.25 * full_turn, 0.5 * full_turn);
  for (const double side : {-radius, radius}) {
    view.line(Line::visible, c - end + Vec{0, side, 0}, c + end + Vec{0, side, 0});
  }
  if (line == CentreLine::own) {
    view.axis(c - end - Vec{radius, 0, 0}, c + Vec{std::max(end.x + radius, run_on), 0, 0});
  }
  view.axis(c - Vec{0, radius, 0}, c + Vec{0, radius, 0});
}

void base_holes(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const double slot = in_mm(base.stand_slot_radius);
  for (const auto &at : base.chamber_screws) {
    hole_end_on(view, on_plate(at), base.chamber_screw_radius);
  }
  for (const auto &at : base.block_screws) {
    tapped_end_on(view, on_plate(at), in.layout.block.mount_screw->major, base.block_tap_radius);
  }
  for (const auto &at : base.feet) {
    tapped_end_on(view, on_plate(at), base.foot_screw->major, base.foot_tap_radius);
  }
  for (std::size_t i = 0; i < base.stand_screws.size(); ++i) {
    const Vec c = on_plate(base.stand_screws[i]);
    if (i >= base.stand_screws.size() / 2) {
      tapped_end_on(view, c, in.layout.stand.foot.screw->major, base.stand_tap_radius);
      continue;
    }
    // The rear stand's screws stand at the heights of the front one's.
    const fixture::Position &front = base.stand_screws[i + base.stand_screws.size() / 2];
    const double run_on = in_line(base.stand_screws[i].y, front.y) ? in_mm(front.x) - c.x : 0.0;
    slot_from_above(view, c, slot, in_mm(base.rear_travel), CentreLine::own, run_on);
  }
  slot_from_above(view, on_plate(base.guide), in_mm(base.guide_radius), in_mm(base.rear_travel),
                  CentreLine::of_row);
  for (const auto &at : base.dowels) {
    hole_end_on(view, on_plate(at), base.dowel_radius);
  }
  if (base.stop_travel > Length{}) {
    for (const auto &at : base.stop_screws) {
      slot_from_above(view, on_plate(at), slot, in_mm(base.stop_travel), CentreLine::of_row);
    }
  }
}

// Distances from the left edge below the view for the chamber's and the stands' holes, above it for the rest.
void base_lengths(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  const double x0 = in_mm(base.x_min), y0 = in_mm(base.y_min), y1 = in_mm(base.y_max);
  const auto x = [&](const char *feature, const fixture::Position &at, Side side,
                     Probe probe = Probe::offset) {
    view.linears.push_back({feature,
                            {x0, side == Side::below ? y0 : y1, 0},
                            on_plate(at),
                            side,
                            n.size(at.x - base.x_min),
                            probe});
  };
  x("base-plate.stand_screws.rear.x", base.stand_screws[0], Side::below, Probe::none); // the middle of a slot
  if (!in_line(base.stand_screws[2].x, base.dowels[2].x)) {
    x("base-plate.stand_screws.front.x", base.stand_screws[2], Side::below);
  }
  x("base-plate.chamber_screws.rear.x", base.chamber_screws[0], Side::below);
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
  const double half_travel = 0.5 * in_mm(base.rear_travel);
  const Vec rear = on_plate(base.stand_screws[1]);
  view.linears.push_back({"base-plate.rear_travel", rear - Vec{half_travel, 0, 0},
                          rear + Vec{half_travel, 0, 0}, Side::above, n.size(base.rear_travel), Probe::axes});
}

// Pairs about the tube's plane stand on the right, distances from that plane on the left: a text amid a pair
// would lie on the plane's extension line.
void base_widths(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  const double x0 = in_mm(base.x_min), x1 = in_mm(base.x_max);
  const auto pair = [&](const char *feature, const auto &a, const auto &b, Side side) {
    view.linears.push_back({feature, on_plate(a), on_plate(b), side,
                            n.size(units::metres(std::abs((b.y - a.y).value()))), Probe::axes});
  };
  pair("base-plate.stand_screws.y", base.stand_screws[2], base.stand_screws[3], Side::right);
  if (!in_line(base.chamber_screws[3].y, base.dowels[1].y)) {
    pair("base-plate.chamber_screws.y", base.chamber_screws[2], base.chamber_screws[3], Side::right);
  }
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

// Dowels set chamber and front stand on the tube's plane; along it nothing fits nearer than the general
// tolerance.
void dowel_wishes(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  const double x0 = in_mm(base.x_min), y0 = in_mm(base.y_min);
  const auto x = [&](const char *feature, const fixture::Position &at) {
    view.linears.push_back(
        {feature, {x0, y0, 0}, on_plate(at), Side::below, n.size(at.x - base.x_min), Probe::offset});
  };
  x("base-plate.dowels.stand.x", base.dowels[2]);
  x("base-plate.dowels.chamber.x", base.dowels[0]);
  view.linears.push_back(
      {"base-plate.dowels.y", on_plate(base.dowels[0]), on_plate(base.dowels[1]), Side::right,
       n.plus_minus(base.dowels[1].y - base.dowels[0].y, fixture::tolerances::dowel_position), Probe::axes});
  Label label = reamed(n, 3, base.dowel_radius, Dowel::slides);
  label.lines[0] += " through";
  view.callouts.push_back(hole_note("base-plate.dowels", std::move(label), on_plate(base.dowels[1]),
                                    base.dowel_radius, {0, 0, 1}, up_right));
  view.callouts.push_back(datum_of_pair(on_plate(base.dowels[0]), base.dowel_radius, "B", downwards));
  Callout place = frame("base-plate.dowels.stand.position", on_plate(base.dowels[2]),
                        position_cells(n, 2.0 * fixture::tolerances::dowels_in_line, "B"));
  place.radius = in_mm(base.dowel_radius);
  place.towards = up_left;
  view.callouts.push_back(place);
}

// The rear stand's dowel slides in it, in line with the front one's.
void guide_wishes(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const Vec end = on_plate(base.guide) + Vec{0.5 * in_mm(base.rear_travel) + in_mm(base.guide_radius), 0, 0};
  Callout width =
      note("base-plate.guide_radius",
           on_plate(base.guide) + Vec{0.3 * in_mm(base.rear_travel), -in_mm(base.guide_radius), 0}, {});
  width.label = in.labels.plus_minus(2.0 * base.guide_radius, fixture::tolerances::guide_width);
  width.label.lines[0] += " wide, through";
  width.probe = Probe::diameter;
  width.surface = end - Vec{0, 0, 0.5 * in_mm(base.thickness)};
  width.axis = {0, 0, 1};
  width.towards = down_right;
  view.callouts.push_back(width);
  Callout place = frame("base-plate.guide.position", end,
                        position_cells(in.labels, 2.0 * fixture::tolerances::dowels_in_line, "B"));
  place.towards = up_right;
  view.callouts.push_back(place);
}

void stop_wishes(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  if (!(base.stop_travel > Length{})) {
    return;
  }
  const Vec low = on_plate(base.stop_screws[0]), high = on_plate(base.stop_screws[1]);
  const Vec half{0.5 * in_mm(base.stop_travel), 0, 0};
  view.linears.push_back({"base-plate.stop_screws.x",
                          {in_mm(base.x_min), in_mm(base.y_min), 0},
                          low,
                          Side::below,
                          n.size(base.stop_screws[0].x - base.x_min),
                          Probe::none});
  view.linears.push_back({"base-plate.stop_travel", high - half, high + half, Side::above,
                          n.size(base.stop_travel), Probe::axes});
}

void base_callouts(ViewPlan &view, const Inputs &in) {
  const auto &base = in.layout.base;
  const auto &n = in.labels;
  const Vec up{0, 0, 1};
  view.callouts.push_back(
      hole_note("base-plate.chamber_screws", n.diameter(base.chamber_screw_radius, "4× ", " through"),
                on_plate(base.chamber_screws[3]), base.chamber_screw_radius, up, up_right));
  const Vec rear = on_plate(base.stand_screws[0]) - Vec{0.5 * in_mm(base.rear_travel), 0, 0};
  Callout slots = note("base-plate.stand_screws.rear", rear, {});
  slots.label = n.size(base.stand_slot_radius,
                       base.stop_travel > Length{} ? "4 slots through, R" : "2 slots through, R");
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
  tapped("base-plate.stand_screws.front", *in.layout.stand.foot.screw, 2, base.stand_screws[3],
         base.stand_tap_radius);
  view.callouts.back().towards = up_right;
  tapped("base-plate.feet.thread", *base.foot_screw, 4, base.feet[0], base.foot_tap_radius);
}

ViewPlan base_top(const Inputs &in) {
  const auto &base = in.layout.base;
  ViewPlan view =
      face_from_above({in_mm(base.x_min), in_mm(base.x_max), in_mm(base.y_min), in_mm(base.y_max)});
  view.room = {52, 50, 40, 60};
  base_holes(view, in);
  base_lengths(view, in);
  base_widths(view, in);
  dowel_wishes(view, in);
  guide_wishes(view, in);
  stop_wishes(view, in);
  base_callouts(view, in);
  return view;
}

} // namespace

PartPlan plan_base_plate(const Inputs &in) {
  const auto &base = in.layout.base;
  PartPlan plan = started_plan(in, ids::base_plate);
  plan.rows.emplace_back();
  plan.rows.back().push_back(base_top(in));
  plan.notes.push_back(plate_note(in, base.thickness));
  plan.notes.push_back("Datum B is the plane amid the chamber's two dowel holes, the chain line.");
  plan.notes.push_back("Slot on the chain line as long as the two beside it.");
  plan.notes.push_back("Holes symmetric about the chain line from edge to edge where one distance is given.");
  return plan;
}

} // namespace purgewright::drawing

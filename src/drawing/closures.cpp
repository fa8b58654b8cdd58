// wiper-plate and plenum-cover: thin plates with through holes, one view each. Holes from the middle, where
// the chamber's own pattern has its origin.
#include "part_plans.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

ViewPlan wiper_view(const Inputs &in) {
  const auto &wiper = in.layout.wiper;
  const auto &n = in.labels;
  const double half = 0.5 * in_mm(wiper.width), z1 = in_mm(wiper.z_max);
  ViewPlan view = face_from_left({-half, half, -z1, z1});
  view.room = {34, 46, 34, 26};
  view.circle(Line::visible, {}, in_mm(wiper.plate_hole_radius));
  view.axis({0, -half, 0}, {0, half, 0});
  const auto hole = [&](std::size_t i) { return Vec{0, in_mm(wiper.knobs[i].y), in_mm(wiper.knobs[i].z)}; };
  for (std::size_t i = 0; i < wiper.knobs.size(); ++i) {
    hole_end_on(view, hole(i), wiper.clearance_radius);
  }
  view.linears = {
      {"wiper-plate.knobs.y", hole(2), hole(3), Side::below, n.size(wiper.knobs[3].y - wiper.knobs[2].y),
       Probe::axes},
      {"wiper-plate.width", {0, -half, -z1}, {0, half, -z1}, Side::below, n.size(wiper.width)},
      {"wiper-plate.knobs.z", hole(2), hole(0), Side::right, n.size(wiper.knobs[0].z - wiper.knobs[2].z),
       Probe::axes},
      {"wiper-plate.z_max", {0, half, -z1}, {0, half, z1}, Side::left, n.size(2.0 * wiper.z_max)},
  };
  view.callouts.push_back(hole_note("wiper-plate.hole", n.diameter(wiper.plate_hole_radius, "", " through"),
                                    {}, wiper.plate_hole_radius, {1, 0, 0}, down_right));
  view.callouts.push_back(hole_note("wiper-plate.knobs",
                                    n.diameter(wiper.clearance_radius, "4× ", " through"), hole(0),
                                    wiper.clearance_radius, {1, 0, 0}, up_right));
  return view;
}

ViewPlan cover_view(const Inputs &in) {
  const auto &cover = in.layout.plenum_cover;
  const auto &n = in.labels;
  const double half = 0.5 * in_mm(cover.width), x0 = in_mm(cover.x_min), x1 = in_mm(cover.x_max);
  ViewPlan view = face_from_above({x0, x1, -half, half});
  view.room = {40, 46, 34, 34};
  const auto at = [](const fixture::Position &p) { return Vec{in_mm(p.x), in_mm(p.y), 0}; };
  for (const auto &screw : cover.screws) {
    hole_end_on(view, at(screw), cover.screw_radius);
  }
  for (const auto &dowel : cover.dowels) {
    hole_end_on(view, at(dowel), cover.dowel_radius);
  }
  view.linears = {
      {"plenum-cover.length", {x0, -half, 0}, {x1, -half, 0}, Side::below, n.size(cover.length())},
      {"plenum-cover.screws.x.front",
       at(cover.screws[3]),
       {x1, half, 0},
       Side::above,
       n.size(cover.x_max - cover.screws[3].x),
       Probe::offset},
      {"plenum-cover.screws.x", at(cover.screws[1]), at(cover.screws[3]), Side::above,
       n.size(cover.screws[3].x - cover.screws[1].x), Probe::axes},
      {"plenum-cover.dowels.x",
       at(cover.dowels[0]),
       {x1, -half, 0},
       Side::below,
       n.size(cover.x_max - cover.dowels[0].x),
       Probe::offset},
      {"plenum-cover.width", {x1, -half, 0}, {x1, half, 0}, Side::right, n.size(cover.width)},
      {"plenum-cover.screws.y", at(cover.screws[0]), at(cover.screws[1]), Side::left,
       n.size(cover.screws[1].y - cover.screws[0].y), Probe::axes},
  };
  if (!in_line(cover.dowels[1].y, cover.screws[1].y)) {
    view.linears.push_back({"plenum-cover.dowels.y", at(cover.dowels[0]), at(cover.dowels[1]), Side::right,
                            n.size(cover.dowels[1].y - cover.dowels[0].y), Probe::axes});
  }
  view.callouts.push_back(hole_note("plenum-cover.screws", n.diameter(cover.screw_radius, "4× ", " through"),
                                    at(cover.screws[3]), cover.screw_radius, {0, 0, 1}, up_right));
  view.callouts.push_back(hole_note("plenum-cover.dowels", n.diameter(cover.dowel_radius, "2× ", " through"),
                                    at(cover.dowels[0]), cover.dowel_radius, {0, 0, 1}, down_right));
  return view;
}

} // namespace

PartPlan plan_wiper_plate(const Inputs &in) {
  const auto &wiper = in.layout.wiper;
  PartPlan plan = started_plan(in, ids::wiper_plate);
  plan.rows.emplace_back();
  plan.rows.back().push_back(wiper_view(in));
  plan.notes.push_back(plate_note(in, wiper.plate_thickness));
  plan.notes.push_back(
      fmt::format("Template for the wiper: silicone sheet {} thick, 40 Shore A, hole for the "
                  "tube ⌀{} cut in the middle.",
                  in.labels.number(wiper.thickness), in.labels.number(2.0 * wiper.hole_radius)));
  plan.notes.push_back("Symmetric about both centre lines.");
  return plan;
}

PartPlan plan_plenum_cover(const Inputs &in) {
  PartPlan plan = started_plan(in, ids::plenum_cover);
  plan.rows.emplace_back();
  plan.rows.back().push_back(cover_view(in));
  plan.notes.push_back(plate_note(in, in.layout.plenum_cover.thickness));
  plan.notes.push_back(
      fmt::format("Symmetric about the chain line. Template for the gasket on it, silicone sheet "
                  "{} thick, 60 Shore A.",
                  in.labels.number(in.layout.gasket)));
  return plan;
}

} // namespace purgewright::drawing

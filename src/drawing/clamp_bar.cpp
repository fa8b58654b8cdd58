// clamp-bar: one view from above, lying; both holes from its middle lines.
#include "part_plans.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {

PartPlan plan_clamp_bar(const Inputs &in) {
  const auto &bar = in.layout.clamp_bar;
  const auto &screw = *in.layout.stand.foot.screw;
  const auto &n = in.labels;
  const double x = 0.5 * in_mm(bar.width), y = 0.5 * in_mm(bar.length), pitch = in_mm(bar.screw_y);
  ViewPlan view;
  view.name = "from-above";
  view.looking = {{0, 1, 0}, {-1, 0, 0}};
  view.room = {26, 30, 26, 30};
  view.outline(Line::visible, {{-x, -y, 0}, {x, -y, 0}, {x, y, 0}, {-x, y, 0}});
  view.axis({0, -y, 0}, {0, y, 0});
  view.axis({-x, 0, 0}, {x, 0, 0});
  for (const double side : {-pitch, pitch}) {
    view.circle(Line::visible, {0, side, 0}, in_mm(bar.tap_radius));
    thread_end_on(view, {0, side, 0}, 0.5 * in_mm(screw.major));
    view.axis({-x, side, 0}, {x, side, 0});
  }
  view.linears = {
      {"clamp-bar.screw_y",
       {x, -pitch, 0},
       {x, pitch, 0},
       Side::below,
       n.size(2.0 * bar.screw_y),
       Probe::none},
      {"clamp-bar.length", {x, -y, 0}, {x, y, 0}, Side::below, n.size(bar.length)},
      {"clamp-bar.width", {-x, -y, 0}, {x, -y, 0}, Side::left, n.size(bar.width)},
  };
  Callout thread = note("clamp-bar.screws", {0, pitch, 0},
                        {through_thread(screw, 2), fmt::format("drill ⌀{}", n.number(2.0 * bar.tap_radius))});
  thread.radius = 0.5 * in_mm(screw.major);
  thread.towards = up_right;
  view.callouts.push_back(thread);
  PartPlan plan = started_plan(in, ids::clamp_bar);
  plan.rows.emplace_back();
  plan.rows.back().push_back(std::move(view));
  plan.notes.push_back(plate_note(in, bar.thickness) + " Holes symmetric about both chain lines.");
  if (bar.count > 1) {
    plan.notes.push_back(fmt::format("Make {}, all alike.", bar.count));
  }
  return plan;
}

} // namespace purgewright::drawing

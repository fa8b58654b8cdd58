// tail-foot: one view from above, every hole from the plate's own middle lines.
#include "part_plans.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::Length;

Vec on_foot(const fixture::Position &at) {
  return {in_mm(at.x), in_mm(at.y), 0};
}

void foot_sizes(ViewPlan &view, const Inputs &in) {
  const auto &foot = in.layout.tail_foot;
  const auto &n = in.labels;
  const double x = 0.5 * in_mm(foot.length), y = 0.5 * in_mm(foot.width);
  const Vec rear = on_foot(foot.feet[0]), single = on_foot(foot.feet[2]);
  view.linears = {
      {"tail-foot.length", {-x, -y, 0}, {x, -y, 0}, Side::below, n.size(foot.length)},
      {"tail-foot.width", {-x, -y, 0}, {-x, y, 0}, Side::left, n.size(foot.width)},
      {"tail-foot.feet.x", rear, single, Side::below, n.size(foot.feet[2].x - foot.feet[0].x), Probe::none},
      {"tail-foot.feet.y", rear, on_foot(foot.feet[1]), Side::left, n.size(foot.feet[1].y - foot.feet[0].y),
       Probe::axes},
      {"tail-foot.stand_screws", on_foot(foot.stand_screws[0]), on_foot(foot.stand_screws[1]), Side::right,
       n.size(foot.stand_screws[1].y - foot.stand_screws[0].y), Probe::axes},
  };
}

void foot_holes(ViewPlan &view, const Inputs &in) {
  const auto &foot = in.layout.tail_foot;
  const auto &n = in.labels;
  const auto &screw = *in.layout.base.foot_screw, &stand_screw = *in.layout.stand.foot.screw;
  for (const auto &at : foot.stand_screws) {
    tapped_end_on(view, on_foot(at), stand_screw.major, foot.stand_tap_radius);
  }
  for (const auto &at : foot.feet) {
    tapped_end_on(view, on_foot(at), screw.major, foot.foot_tap_radius);
  }
  const auto tapped = [&](const char *feature, const fixture::Position &at, const standards::Screw &size,
                          int count, Length drill_radius, double towards) {
    Callout thread =
        note(feature, on_foot(at),
             {through_thread(size, count), fmt::format("drill ⌀{}", n.number(2.0 * drill_radius))});
    thread.radius = 0.5 * in_mm(size.major);
    thread.towards = towards;
    view.callouts.push_back(thread);
  };
  tapped("tail-foot.stand_screws.thread", foot.stand_screws[1], stand_screw, 2, foot.stand_tap_radius,
         up_right);
  tapped("tail-foot.feet", foot.feet[2], screw, 3, foot.foot_tap_radius, down_right);
}

} // namespace

PartPlan plan_tail_foot(const Inputs &in) {
  const auto &foot = in.layout.tail_foot;
  const double x = 0.5 * in_mm(foot.length), y = 0.5 * in_mm(foot.width);
  ViewPlan view = face_from_above({-x, x, -y, y});
  view.room = {40, 40, 30, 30};
  view.axis({0, -y, 0}, {0, y, 0});
  foot_sizes(view, in);
  foot_holes(view, in);
  PartPlan plan = started_plan(in, ids::tail_foot);
  plan.rows.emplace_back();
  plan.rows.back().push_back(std::move(view));
  plan.notes.push_back(plate_note(in, foot.thickness) + " Holes symmetric about both chain lines.");
  return plan;
}

} // namespace purgewright::drawing

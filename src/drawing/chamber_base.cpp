// The chamber body's base: screws and dowels to the base plate, inlet port.
#include "part_plans.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::drawing {
namespace {

using fixture::ChamberBody;

void dowel_wishes(ViewPlan &view, const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &n = in.labels;
  const auto hole = [&](std::size_t i) {
    return Vec{in_mm(body.dowels[i].x), in_mm(body.dowels[i].y), in_mm(body.z_min)};
  };
  for (std::size_t i = 0; i < body.dowels.size(); ++i) {
    hole_end_on(view, hole(i), body.dowel.radius);
  }
  view.linears.push_back({"chamber-body.dowels.x",
                          hole(0),
                          {in_mm(body.x_max), -0.5 * in_mm(body.width), in_mm(body.z_min)},
                          Side::above,
                          n.plus_minus(body.x_max - body.dowels[0].x, fixture::tolerances::dowel_position),
                          Probe::offset});
  view.linears.push_back(
      {"chamber-body.dowels.y", hole(0), hole(1), Side::left,
       n.plus_minus(body.dowels[1].y - body.dowels[0].y, fixture::tolerances::dowel_position), Probe::axes});
  Callout pins = hole_note("chamber-body.dowel", reamed(n, 2, body.dowel.radius), hole(1), body.dowel.radius,
                           {0, 0, 1}, down_left);
  pins.label.lines.push_back(fmt::format("↧{}", n.number(body.dowel.depth)));
  pins.surface = hole(1) + Vec{in_mm(body.dowel.radius), 0, 0.5 * in_mm(body.dowel.depth)};
  view.callouts.push_back(pins);
}

} // namespace

ViewPlan chamber_base_view(const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &n = in.labels;
  ViewPlan view;
  view.name = "from-below";
  view.caption = "View from below";
  view.looking = from_below;
  view.room = {34, 26, 30, 26};
  const double half = 0.5 * in_mm(body.width), x0 = in_mm(body.x_min), x1 = in_mm(body.x_max),
               z0 = in_mm(body.z_min);
  view.outline(Line::visible, {{x0, -half, z0}, {x1, -half, z0}, {x1, half, z0}, {x0, half, z0}});
  view.axis({x0, 0, z0}, {x1, 0, z0});
  const Vec inlet{in_mm(body.inlet_x), 0, z0};
  view.circle(Line::visible, inlet, in_mm(body.inlet_radius));
  thread_end_on(view, inlet, 0.5 * in_mm(in.job.gas.port_thread->major));
  view.centre_mark(inlet, 0.5 * in_mm(in.job.gas.port_thread->major));
  for (const auto &at : body.base_screws) {
    tapped_end_on(view, {in_mm(at.x), in_mm(at.y), z0}, body.base_screw->major, body.base_tapping.radius);
  }
  const auto hole = [&](std::size_t i) {
    return Vec{in_mm(body.base_screws[i].x), in_mm(body.base_screws[i].y), z0};
  };
  view.linears = {
      {"chamber-body.base_screws.x.front",
       hole(3),
       {x1, half, z0},
       Side::below,
       n.size(body.x_max - body.base_screws[3].x),
       Probe::offset},
      {"chamber-body.base_screws.x", hole(1), hole(3), Side::below,
       n.size(body.base_screws[3].x - body.base_screws[1].x), Probe::axes},
  };
  if (!in_line(body.base_screws[3].y, body.dowels[1].y)) {
    view.linears.push_back({"chamber-body.base_screws.y", hole(2), hole(3), Side::right,
                            n.size(body.base_screws[3].y - body.base_screws[2].y), Probe::axes});
  }
  dowel_wishes(view, in);
  Callout screws = note("chamber-body.base_screws", hole(2),
                        n.tapped(*body.base_screw, 4, 2.0 * body.base_screw->major, body.base_tapping));
  screws.radius = 0.5 * in_mm(body.base_screw->major);
  screws.towards = up_right;
  view.callouts.push_back(screws);
  return view;
}

} // namespace purgewright::drawing

// The chamber body's underside: plenum with the diffuser in its ceiling, screws and dowels to the base plate.
#include "part_plans.hpp"

#include "purgewright/fixture/screw_joint.hpp"
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
    return Vec{in_mm(body.dowels[i].x), in_mm(body.dowels[i].y), in_mm(body.bottom)};
  };
  for (std::size_t i = 0; i < body.dowels.size(); ++i) {
    hole_end_on(view, hole(i), body.dowel.radius);
  }
  view.linears.push_back({"chamber-body.dowels.x",
                          hole(0),
                          {in_mm(body.x_max), -0.5 * in_mm(body.width), in_mm(body.bottom)},
                          Side::above,
                          n.size(body.x_max - body.dowels[0].x),
                          Probe::offset});
  view.linears.push_back(
      {"chamber-body.dowels.y", hole(0), hole(1), Side::left,
       n.plus_minus(body.dowels[1].y - body.dowels[0].y, fixture::tolerances::dowel_position), Probe::axes});
  Callout pins = hole_note("chamber-body.dowel", reamed(n, 2, body.dowel.radius), hole(1), body.dowel.radius,
                           {0, 0, 1}, down_left);
  pins.label.lines.push_back(fmt::format("↧{}", n.number(body.dowel.depth)));
  pins.surface = hole(1) + Vec{in_mm(body.dowel.radius), 0, 0.5 * in_mm(body.dowel.depth)};
  view.callouts.push_back(pins);
  view.callouts.push_back(datum_of_pair(hole(1), body.dowel.radius, "B", downwards));
}

void diffuser_wishes(ViewPlan &view, const Inputs &in) {
  const auto &body = in.layout.body;
  const auto &field = body.diffuser;
  const auto &n = in.labels;
  const auto hole = [&](int column, int row) {
    return Vec{in_mm(field.x_of(column)), in_mm(field.y_of(row)), in_mm(body.plenum.ceiling) + 1.0};
  };
  for (int column = 0; column < field.columns; ++column) {
    for (int row = 0; row < field.rows; ++row) {
      view.circle(Line::visible, hole(column, row), in_mm(field.hole_radius));
    }
  }
  const int last = field.columns - 1;
  const double reach = 2.0 * in_mm(field.hole_radius);
  for (int row = 0; row < field.rows; ++row) {
    view.axis(hole(0, row) - Vec{reach - 2.0, 0, 0}, hole(last, row) + Vec{reach - 2.0, 0, 0});
  }
  view.linears.push_back({"chamber-body.diffuser.x_first",
                          hole(last, 0),
                          {in_mm(body.x_max), -0.5 * in_mm(body.width), in_mm(body.bottom)},
                          Side::above,
                          n.size(body.x_max - field.x_of(last)),
                          Probe::offset});
  if (last > 0) {
    view.linears.push_back({"chamber-body.diffuser.x_pitch", hole(last - 1, 0), hole(last, 0), Side::above,
                            n.size(field.x_pitch, last > 1 ? fmt::format("{}× ", last) : ""), Probe::axes});
  }
  if (field.rows > 1) {
    view.linears.push_back({"chamber-body.diffuser.y_pitch", hole(0, 0), hole(0, 1), Side::left,
                            n.size(field.y_pitch, fmt::format("{}× ", field.rows - 1)), Probe::axes});
  }
  Callout holes = bore("chamber-body.diffuser.hole_radius",
                       n.diameter(field.hole_radius, fmt::format("{}× ", field.holes())),
                       hole(last, field.rows - 1), {0, 0, 1}, down_right);
  holes.surface = hole(last, field.rows - 1) + Vec{in_mm(field.hole_radius), 0, 0};
  holes.radius = in_mm(field.hole_radius);
  holes.label.lines[0] += " into cavity";
  view.callouts.push_back(holes);
}

// Outline, width and corners of the pocket.
void plenum_wishes(ViewPlan &view, const Inputs &in) {
  const ChamberBody &body = in.layout.body;
  const auto &plenum = body.plenum;
  const auto &n = in.labels;
  const double x0 = in_mm(plenum.x_min), x1 = in_mm(plenum.x_max), w = 0.5 * in_mm(plenum.width),
               r = in_mm(plenum.corner_radius), z = 0.5 * in_mm(body.bottom + plenum.ceiling);
  rounded_outline(view, {x0, x1, w, r});
  view.linears.push_back(
      {"chamber-body.plenum.width", {x0 + r, -w, z}, {x0 + r, w, z}, Side::left, n.size(plenum.width)});
  const double inwards = r * (1.0 - std::sqrt(0.5));
  Callout corner = note("chamber-body.plenum.corner_radius", {x0 + inwards, w - inwards, z}, {});
  corner.label = n.size(plenum.corner_radius, "4× R");
  corner.probe = Probe::radius;
  corner.surface = corner.tip;
  corner.axis = {0, 0, 1};
  corner.towards = down_left;
  view.callouts.push_back(corner);
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
               z0 = in_mm(body.bottom);
  view.outline(Line::visible, {{x0, -half, z0}, {x1, -half, z0}, {x1, half, z0}, {x0, half, z0}});
  view.axis({x0, 0, z0}, {x1, 0, z0});
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
  plenum_wishes(view, in);
  diffuser_wishes(view, in);
  Callout screws =
      note("chamber-body.base_screws", hole(2),
           n.tapped(*body.base_screw, 4, body.base_tapping.depth - fixture::tap_lead * body.base_screw->major,
                    body.base_tapping));
  screws.radius = 0.5 * in_mm(body.base_screw->major);
  screws.towards = up_right;
  view.callouts.push_back(screws);
  return view;
}

} // namespace purgewright::drawing

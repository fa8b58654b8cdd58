#include "footed_plate.hpp"

#include <fmt/format.h>

#include <numbers>

namespace purgewright::drawing {
namespace {

std::string feature(const FootedPlate &plate, std::string_view size) {
  return fmt::format("{}.{}", plate.part, size);
}

} // namespace

void foot_outline(ViewPlan &view, const FootedPlate &plate) {
  const auto &foot = plate.foot;
  const double half = 0.5 * in_mm(plate.width), lugs = 0.5 * in_mm(foot.width), z0 = in_mm(plate.z_min),
               z1 = in_mm(plate.z_max), top = z0 + in_mm(foot.height), corner = in_mm(foot.corner),
               hole = in_mm(foot.radius);
  for (const double side : {-1.0, 1.0}) {
    view.line(Line::visible, {0, side * half, z1}, {0, side * half, top + corner});
    view.circle(Line::visible, {0, side * (half + corner), top + corner}, corner,
                side > 0.0 ? units::pi : 1.5 * units::pi, 0.5 * units::pi);
    view.line(Line::visible, {0, side * (half + corner), top}, {0, side * lugs, top});
    view.line(Line::visible, {0, side * lugs, top}, {0, side * lugs, z0});
    const double y = side * in_mm(foot.y);
    for (const double wall : {-hole, hole}) {
      view.line(Line::hidden, {0, y + wall, z0}, {0, y + wall, top});
    }
    view.axis({0, y, z0}, {0, y, top});
  }
  view.line(Line::visible, {0, -lugs, z0}, {0, lugs, z0});
}

void foot_wishes(ViewPlan &view, const Labels &n, const FootedPlate &plate) {
  const auto &foot = plate.foot;
  const double half = 0.5 * in_mm(plate.width), lugs = 0.5 * in_mm(foot.width), z0 = in_mm(plate.z_min),
               z1 = in_mm(plate.z_max), top = z0 + in_mm(foot.height), y = in_mm(foot.y);
  view.linears.push_back(
      {feature(plate, "foot_y"), {0, -y, z0}, {0, y, z0}, Side::below, n.size(2.0 * foot.y), Probe::axes});
  view.linears.push_back(
      {feature(plate, "foot_width"), {0, -lugs, z0}, {0, lugs, z0}, Side::below, n.size(foot.width)});
  view.linears.push_back(
      {feature(plate, "width"), {0, -half, z1}, {0, half, z1}, Side::above, n.size(plate.width)});
  view.linears.push_back(
      {feature(plate, "foot_height"), {0, lugs, z0}, {0, lugs, top}, Side::right, n.size(foot.height)});
  const Vec wall{0, -y - in_mm(foot.radius), z0 + 0.3 * in_mm(foot.height)};
  Callout hole = note(feature(plate, "foot_radius"), wall, {});
  hole.label = n.diameter(foot.radius, "2× ", " through");
  hole.probe = Probe::diameter;
  hole.surface = wall - Vec{0.5 * in_mm(plate.thickness), 0, 0};
  hole.axis = {0, 0, 1};
  hole.towards = leftwards;
  view.callouts.push_back(hole);
  const double corner = in_mm(foot.corner), diagonal = (1.0 - 1.0 / std::numbers::sqrt2) * corner;
  Callout round = note(feature(plate, "foot_corner"), {0, half + diagonal, top + diagonal}, {});
  round.label = n.size(foot.corner, "2× R");
  round.probe = Probe::radius;
  round.surface = {-0.5 * in_mm(plate.thickness), half + diagonal, top + diagonal};
  round.axis = {1, 0, 0};
  round.towards = up_right;
  view.callouts.push_back(round);
}

ViewPlan footed_side(const Labels &n, const FootedPlate &plate) {
  const auto &foot = plate.foot;
  ViewPlan view;
  view.name = "from-front";
  view.moved_caption = "View from the front";
  view.looking = from_front;
  view.room = {10, 12, 12, 34};
  const double x = -in_mm(plate.thickness), z0 = in_mm(plate.z_min), z1 = in_mm(plate.z_max),
               top = z0 + in_mm(foot.height), y = in_mm(foot.y), hole = in_mm(foot.radius);
  view.outline(Line::visible, {{x, 0, z0}, {0, 0, z0}, {0, 0, z1}, {x, 0, z1}});
  view.line(Line::visible, {x, 0, top}, {0, 0, top});
  for (const double wall : {-hole, hole}) {
    view.line(Line::hidden, {0.5 * x + wall, 0, z0}, {0.5 * x + wall, 0, top});
  }
  view.axis({0.5 * x, 0, z0}, {0.5 * x, 0, top});
  view.linears = {
      {feature(plate, "foot_x"),
       {0.5 * x, y, z0},
       {0, y, z0},
       Side::below,
       n.size(0.5 * plate.thickness),
       Probe::offset},
      {feature(plate, "thickness"), {x, 0, z0}, {0, 0, z0}, Side::below, n.size(plate.thickness)},
  };
  return view;
}

} // namespace purgewright::drawing

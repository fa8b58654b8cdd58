#include "purgewright/solids/kernel/cutters.hpp"

#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "solids/kernel/guard.hpp"

#include <fmt/format.h>

#include <cmath>

namespace purgewright::solids::kernel {

Solid blind_cutter(Frame const &mouth, units::Length diameter, units::Length depth) {
  return cylinder(advanced(mouth, -cutter_overshoot), 0.5 * diameter, depth + cutter_overshoot);
}

Solid through_cutter(Frame const &mouth, units::Length diameter, units::Length thickness) {
  return cylinder(advanced(mouth, -cutter_overshoot), 0.5 * diameter, thickness + 2.0 * cutter_overshoot);
}

Solid drill_cutter(Frame const &mouth, units::Length diameter, units::Length depth,
                   units::Angle point_angle) {
  if (!(rad(point_angle) > 0.0 && rad(point_angle) < units::pi))
    fail({"drill cutter", text(mouth)}, fmt::format("the point angle is {} rad", rad(point_angle)));
  units::Length const radius = 0.5 * diameter;
  units::Length const point = radius / std::tan(0.5 * rad(point_angle));
  units::Length const axis{};
  return revolve(mouth, {{.axial = -cutter_overshoot, .radial = axis},
                         {.axial = -cutter_overshoot, .radial = radius},
                         {.axial = depth, .radial = radius},
                         {.axial = depth + point, .radial = axis}});
}

Solid box_cutter(Point const &least, Point const &greatest, Overshoot const &open) {
  auto const grown = [](bool asked) { return asked ? cutter_overshoot : units::Length{}; };
  return box({least.x - grown(open.least_x), least.y - grown(open.least_y), least.z - grown(open.least_z)},
             {greatest.x + grown(open.greatest_x), greatest.y + grown(open.greatest_y),
              greatest.z + grown(open.greatest_z)});
}

} // namespace purgewright::solids::kernel

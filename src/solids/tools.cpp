#include "tools.hpp"

#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/standards/tables.hpp"

#include <cmath>

namespace purgewright::solids {

using kernel::Frame;

Length step_length(Length large, Length small) {
  return (large - small) / std::tan(0.5 * standards::machining_rules().drill_point.value());
}

std::vector<ProfilePoint> port_profile(Length spot_radius, Length spot_depth, Length port_radius,
                                       Length port_depth, Length passage_radius, Length end) {
  const Length outside = -kernel::cutter_overshoot;
  const Length bottom = spot_depth + port_depth;
  std::vector<ProfilePoint> profile{{outside, Length{}}};
  if (spot_depth > Length{}) {
    profile.insert(profile.end(),
                   {{outside, spot_radius}, {spot_depth, spot_radius}, {spot_depth, port_radius}});
  } else {
    profile.push_back({outside, port_radius});
  }
  profile.insert(profile.end(), {{bottom, port_radius},
                                 {bottom + step_length(port_radius, passage_radius), passage_radius},
                                 {end, passage_radius}});
  return profile;
}

Solid chamber_stock(const fixture::ChamberBody &body) {
  const Length half = 0.5 * body.width;
  return kernel::box({body.x_min, -half, body.bottom}, {body.x_max, half, body.z_max});
}

Solid plenum_pocket(const fixture::Plenum &plenum, Length from, Length to) {
  return kernel::rounded_rectangle_prism(
      {{0.5 * (plenum.x_min + plenum.x_max), {}, from}, kernel::along_z, kernel::along_x},
      {plenum.length(), plenum.width, plenum.corner_radius}, to - from);
}

std::vector<Solid> chamber_spaces(const fixture::ChamberBody &body) {
  std::vector<Solid> spaces;
  const Length face = body.x_max + kernel::cutter_overshoot;
  spaces.push_back(kernel::cylinder({{body.cavity_start, {}, {}}, kernel::along_x}, body.cavity_radius,
                                    face - body.cavity_start));
  const auto &slot = body.slot;
  spaces.push_back(kernel::rounded_rectangle_prism(
      {{0.5 * (slot.x_min + slot.x_max), {}, {}}, kernel::along_z, kernel::along_x},
      {slot.length(), slot.width, slot.corner_radius}, body.z_max + kernel::cutter_overshoot));
  spaces.push_back(plenum_pocket(body.plenum, body.bottom - kernel::cutter_overshoot, body.plenum.ceiling));
  return spaces;
}

std::vector<Solid> diffuser_holes(const fixture::ChamberBody &body) {
  std::vector<Solid> holes;
  const auto &field = body.diffuser;
  for (int row = 0; row < field.rows; ++row) {
    for (int column = 0; column < field.columns; ++column) {
      // From the middle of the plenum to half way up the cavity's lower half.
      const Length from = 0.5 * (body.bottom + body.plenum.ceiling);
      holes.push_back(kernel::cylinder({{field.x_of(column), field.y_of(row), from}, kernel::along_z},
                                       field.hole_radius, -from - 0.5 * body.cavity_radius));
    }
  }
  return holes;
}

} // namespace purgewright::solids

#include "purgewright/standards/tables.hpp"

namespace purgewright::standards {

const MachiningRules &machining_rules() {
  static constexpr MachiningRules rules{
      .pocket_depth_per_corner_radius_max = 4.0,
      .drill_depth_per_diameter_best = 4.0,
      .drill_depth_per_diameter_max = 10.0,
      .wall_min = units::millimetres(1.5),
      .edge_distance_per_diameter = 1.5,
      .thread_engagement_per_diameter = 1.5,
      .end_mill_stickout_per_diameter_max = 5.0,
      .drill_point = units::degrees(118.0),
      .source = "common practice of machine shops, see tests/reference/standards/machining.yaml"};
  return rules;
}

} // namespace purgewright::standards

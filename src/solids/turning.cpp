// index-collar and axial-stop.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/solids/kernel/placed.hpp"

#include <cmath>

namespace purgewright::solids {
namespace {

using kernel::Frame;

Solid turned(const Solid &solid, units::Angle angle) {
  return kernel::placed(solid, {.axis = kernel::along_x, .angle = angle});
}

// The slit and the bores across it, built with the slit at +Y and turned to its angle.
void add_clamp(const fixture::IndexCollar &c, std::vector<Solid> &tools) {
  const Length over = kernel::cutter_overshoot;
  const Length half = 0.5 * c.slit;
  const auto across = [&](double side, Length radius, Length from) {
    const kernel::Direction away{0.0, 0.0, side};
    return kernel::cylinder({{c.clamp_x, c.clamp_from_axis, side * from}, away}, radius, c.outer_radius);
  };
  std::vector<Solid> clamp{
      kernel::box({-over, Length{}, -half}, {c.width + over, c.outer_radius + over, half}),
      across(1.0, c.clamp_clearance_radius, Length{}), across(1.0, c.counterbore_radius, c.seat),
      across(-1.0, c.clamp_tap_radius, Length{})};
  for (const Solid &tool : clamp) {
    tools.push_back(turned(tool, c.slit_angle));
  }
}

Solid mark_cutter(const fixture::IndexCollar &c, const fixture::IndexMark &mark) {
  const Length over = kernel::cutter_overshoot;
  const Length half = 0.5 * c.mark_width;
  const Length from = c.width - (mark.run ? c.run_mark : c.tack_mark);
  const Solid groove = kernel::box_cutter({from, c.outer_radius - c.mark_depth, -half},
                                          {c.width, c.outer_radius + over, half}, {.greatest_x = true});
  return turned(groove, mark.angle);
}

Solid lead_cutter(const fixture::IndexCollar &c) {
  const Solid hole = kernel::cylinder({{c.lead_x, {}, {}}, kernel::along_y}, c.lead_tap_radius,
                                      c.outer_radius + kernel::cutter_overshoot);
  return turned(hole, c.lead_angle);
}

} // namespace

Solid build_index_collar(const fixture::Layout &layout) {
  const auto &collar = layout.collar;
  return kernel::in_part("index-collar", [&] {
    std::vector<Solid> tools{
        kernel::through_cutter({{}, kernel::along_x}, 2.0 * collar.inner_radius, collar.width)};
    add_clamp(collar, tools);
    tools.push_back(lead_cutter(collar));
    for (std::size_t i = 0; i < collar.mark_count; ++i) {
      tools.push_back(mark_cutter(collar, collar.marks[i]));
    }
    return kernel::cut(kernel::cylinder({{}, kernel::along_x}, collar.outer_radius, collar.width), tools);
  });
}

Solid build_axial_stop(const fixture::Layout &layout) {
  const auto &stop = layout.stop;
  return kernel::in_part("axial-stop", [&] {
    const FootedPlate plate{stop.thickness, stop.width, stop.z_min, stop.z_max, stop.foot};
    const Length over = kernel::cutter_overshoot;
    std::vector<Solid> tools = foot_cutters(plate);
    // Its lower end is the notch's round, its middle stands in the plate's top edge.
    tools.push_back(kernel::rounded_rectangle_prism(
        {{-stop.thickness - over, {}, stop.z_max}, kernel::along_x, kernel::along_z},
        kernel::stadium(2.0 * (stop.z_max + stop.notch_radius), 2.0 * stop.notch_radius),
        stop.thickness + 2.0 * over));
    for (const double side : {-1.0, 1.0}) {
      tools.push_back(kernel::through_cutter({{Length{}, side * stop.rod_y, {}}, kernel::against_x},
                                             2.0 * stop.rod_radius, stop.thickness));
    }
    return kernel::cut(footed_blank(plate), tools);
  });
}

} // namespace purgewright::solids

// cradle-stand, base-plate and slot-cover.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"

namespace purgewright::solids {

using kernel::Frame;

Solid footed_blank(const FootedPlate &plate) {
  const Length half = 0.5 * plate.foot.width;
  return kernel::box({-plate.thickness, -half, plate.z_min}, {Length{}, half, plate.z_max});
}

// Rounded rectangles about the blank's upper corners: a quarter of each cuts a shoulder.
std::vector<Solid> foot_cutters(const FootedPlate &plate) {
  const fixture::ScrewedFoot &foot = plate.foot;
  const Length over = kernel::cutter_overshoot;
  std::vector<Solid> tools;
  for (const double side : {-1.0, 1.0}) {
    tools.push_back(kernel::rounded_rectangle_prism(
        {{-plate.thickness - over, 0.5 * side * foot.width, plate.z_max}, kernel::along_x, kernel::along_y},
        {.length = foot.width - plate.width,
         .width = 2.0 * (plate.z_max - plate.z_min - foot.height),
         .corner_radius = foot.corner},
        plate.thickness + 2.0 * over));
    tools.push_back(kernel::through_cutter(
        {{-0.5 * plate.thickness, side * foot.y, plate.z_min + foot.height}, kernel::against_z},
        2.0 * foot.radius, foot.height));
  }
  return tools;
}

Solid build_cradle_stand(const fixture::Layout &layout) {
  const auto &stand = layout.stand;
  return kernel::in_part("cradle-stand", [&] {
    const FootedPlate plate{stand.thickness, stand.width, stand.z_min, stand.z_max, stand.foot};
    const Length over = kernel::cutter_overshoot;
    std::vector<Solid> tools = foot_cutters(plate);
    tools.push_back(kernel::drill_cutter({{-0.5 * stand.thickness, {}, stand.z_min}, kernel::along_z},
                                         2.0 * stand.dowel.radius, stand.dowel.depth,
                                         standards::machining_rules().drill_point));
    // A rounded rectangle about the plate's top edge: its lower half cuts the notch.
    tools.push_back(kernel::rounded_rectangle_prism(
        {{-stand.thickness - over, {}, stand.z_max}, kernel::along_x, kernel::along_y},
        {.length = stand.notch_width,
         .width = 2.0 * (stand.z_max - stand.notch_floor),
         .corner_radius = stand.notch_corner},
        stand.thickness + 2.0 * over));
    for (const double side : {-1.0, 1.0}) {
      tools.push_back(
          kernel::through_cutter({{Length{}, side * stand.roller_y, stand.roller_z}, kernel::against_x},
                                 2.0 * stand.axle_radius, stand.thickness));
    }
    return kernel::cut(footed_blank(plate), tools);
  });
}

Solid build_base_plate(const fixture::Layout &layout) {
  const auto &base = layout.base;
  return kernel::in_part("base-plate", [&] {
    const auto through = [&](const fixture::Position &at, Length radius) {
      return kernel::through_cutter({{at.x, at.y, {}}, kernel::against_z}, 2.0 * radius, base.thickness);
    };
    std::vector<Solid> tools;
    for (const auto &at : base.chamber_screws) {
      tools.push_back(through(at, base.chamber_screw_radius));
    }
    for (const auto &at : base.block_screws) {
      tools.push_back(through(at, base.block_tap_radius));
    }
    for (const auto &at : base.feet) {
      tools.push_back(through(at, base.foot_tap_radius));
    }
    for (const auto &at : base.dowels) {
      tools.push_back(through(at, base.dowel_radius));
    }
    const auto slotted = [&](const fixture::Position &at, Length travel, Length radius) {
      return kernel::rounded_rectangle_prism(
          {{at.x, at.y, -base.thickness - kernel::cutter_overshoot}, kernel::along_z, kernel::along_x},
          kernel::stadium(travel + 2.0 * radius, 2.0 * radius),
          base.thickness + 2.0 * kernel::cutter_overshoot);
    };
    tools.push_back(slotted(base.guide, base.rear_travel, base.guide_radius));
    if (base.stop_travel > Length{}) {
      for (const auto &at : base.stop_screws) {
        tools.push_back(slotted(at, base.stop_travel, base.stand_slot_radius));
      }
    }
    for (std::size_t i = 0; i < base.stand_screws.size(); ++i) {
      const auto &at = base.stand_screws[i];
      const bool rear = i < base.stand_screws.size() / 2;
      tools.push_back(rear ? slotted(at, base.rear_travel, base.stand_slot_radius)
                           : through(at, base.stand_tap_radius));
    }
    return kernel::cut(
        kernel::box({base.x_min, base.y_min, -base.thickness}, {base.x_max, base.y_max, Length{}}), tools);
  });
}

Solid build_slot_mask(const fixture::Layout &layout) {
  const auto &mask = layout.mask;
  const auto &window = mask.window;
  return kernel::in_part("slot-mask", [&] {
    const Length from = layout.body.z_max, half = 0.5 * mask.width;
    const Length middle = 0.5 * (window.x_min + window.x_max);
    const kernel::Frame below{{middle, {}, from - kernel::cutter_overshoot}, kernel::along_z};
    const Solid opening =
        kernel::rounded_rectangle_prism(below, {window.length(), window.width, window.corner_radius},
                                        mask.thickness + 2.0 * kernel::cutter_overshoot);
    return kernel::cut(kernel::box({mask.x_min, -half, from}, {mask.x_max, half, from + mask.thickness}),
                       {opening});
  });
}

Solid build_slot_cover(const fixture::Layout &layout) {
  const auto &cover = layout.cover;
  return kernel::in_part("slot-cover", [&] {
    const Length x = 0.5 * cover.length;
    const Length y = 0.5 * cover.width;
    const Length channel = 0.5 * cover.channel_width;
    std::vector<Solid> tools{kernel::box_cutter({-x, -channel, -cover.lip}, {x, channel, Length{}},
                                                {.least_x = true, .greatest_x = true, .least_z = true})};
    for (int i = 0; i < cover.exits; ++i) {
      const Length at = (double(i) - 0.5 * (cover.exits - 1)) * cover.exit_pitch;
      tools.push_back(kernel::through_cutter({{at, {}, cover.thickness}, kernel::against_z},
                                             2.0 * cover.exit_radius, cover.thickness));
    }
    return kernel::cut(kernel::box({-x, -y, -cover.lip}, {x, y, cover.thickness}), tools);
  });
}

} // namespace purgewright::solids

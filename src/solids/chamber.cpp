// chamber-body, chamber-end-plate and backing-pin.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/chamfer.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/units/ids.hpp"

namespace purgewright::solids {
namespace {

using kernel::Frame;

// Tube bore with its lead-in, from the -X face into the cavity.
Solid tube_bore(const fixture::ChamberBody &body) {
  const Length over = kernel::cutter_overshoot;
  const Length guide = body.cavity_start - body.x_min;
  return kernel::revolve({{body.x_min, {}, {}}, kernel::along_x},
                         {{-over, Length{}},
                          {-over, body.tube_bore_radius + body.lead_in + over},
                          {body.lead_in, body.tube_bore_radius},
                          {guide + over, body.tube_bore_radius},
                          {guide + over, Length{}}});
}

std::vector<Solid> body_holes(const fixture::ChamberBody &body) {
  std::vector<Solid> tools;
  tools.push_back(
      kernel::cylinder({{body.inlet_x, {}, body.z_min - kernel::cutter_overshoot}, kernel::along_z},
                       body.inlet_radius, body.plenum.axis_z - body.z_min + kernel::cutter_overshoot));
  const auto point = standards::machining_rules().drill_point;
  for (const auto &at : body.end_screws) {
    tools.push_back(kernel::drill_cutter({{body.x_max, at.y, at.z}, kernel::against_x},
                                         2.0 * body.end_tapping.radius, body.end_tapping.depth, point));
  }
  for (const auto &at : body.base_screws) {
    tools.push_back(kernel::drill_cutter({{at.x, at.y, body.z_min}, kernel::along_z},
                                         2.0 * body.base_tapping.radius, body.base_tapping.depth, point));
  }
  for (const auto &at : body.dowels) {
    tools.push_back(kernel::drill_cutter({{at.x, at.y, body.z_min}, kernel::along_z}, 2.0 * body.dowel.radius,
                                         body.dowel.depth, point));
  }
  return tools;
}

Solid break_slot_edge(const fixture::ChamberBody &body, const Solid &bored) {
  const auto &slot = body.slot;
  const Length slack = kernel::selection_slack;
  return kernel::chamfer_edges(bored,
                               {{slot.x_min - slack, -0.5 * slot.width - slack, body.z_max},
                                {slot.x_max + slack, 0.5 * slot.width + slack, body.z_max}},
                               slot.edge_break);
}

Solid strip(const fixture::BackingPin &pin, bool upright) {
  const Length reach = pin.contact_outer_radius + kernel::cutter_overshoot;
  const Length half = 0.5 * pin.groove_width;
  const Point least{-kernel::cutter_overshoot, upright ? -half : -reach, upright ? -reach : -half};
  const Point greatest{pin.relief_depth, upright ? half : reach, upright ? reach : half};
  return kernel::box(least, greatest);
}

} // namespace

Solid build_chamber_body(const fixture::Layout &layout) {
  const auto &body = layout.body;
  return kernel::in_part(std::string(ids::chamber_body), [&] {
    std::vector<Solid> tools = chamber_spaces(body);
    tools.push_back(tube_bore(body));
    for (auto &hole : body_holes(body)) {
      tools.push_back(std::move(hole));
    }
    // The diffuser comes last: the kernel is quicker with a field of holes when they alone remain, and the
    // slot's edge is then chosen and broken on a plain shape.
    const Solid bored = kernel::cut(chamber_stock(body), tools);
    return kernel::cut(break_slot_edge(body, bored), diffuser_holes(body));
  });
}

Solid build_end_plate(const fixture::Layout &layout) {
  const auto &plate = layout.end_plate;
  return kernel::in_part(std::string(ids::chamber_end_plate), [&] {
    const Length half = 0.5 * plate.width;
    const Length over = kernel::cutter_overshoot;
    std::vector<Solid> tools;
    tools.push_back(
        kernel::through_cutter({{}, kernel::along_x}, 2.0 * plate.pin_bore_radius, plate.thickness));
    const auto &groove = plate.groove;
    tools.push_back(kernel::stadium_ring_prism(
        {{-over, {}, 0.5 * groove.lower_centre_z}, kernel::along_x, kernel::along_z},
        groove.straight() + 2.0 * groove.outer_radius(), 2.0 * groove.outer_radius(), groove.width,
        groove.depth + over));
    for (const auto &at : plate.screws) {
      tools.push_back(kernel::revolve({{plate.thickness, at.y, at.z}, kernel::against_x},
                                      {{-over, Length{}},
                                       {-over, plate.counterbore_radius},
                                       {plate.counterbore_depth, plate.counterbore_radius},
                                       {plate.counterbore_depth, plate.screw_clearance_radius},
                                       {plate.thickness + over, plate.screw_clearance_radius},
                                       {plate.thickness + over, Length{}}}));
    }
    const Length to_thread = plate.z_max - plate.clamp_tap_top_z;
    tools.push_back(kernel::revolve({{plate.clamp_x, {}, plate.z_max}, kernel::against_z},
                                    {{-over, Length{}},
                                     {-over, plate.clamp_clearance_radius},
                                     {to_thread, plate.clamp_clearance_radius},
                                     {to_thread, plate.clamp_tap_radius},
                                     {plate.z_max, plate.clamp_tap_radius},
                                     {plate.z_max, Length{}}}));
    return kernel::cut(kernel::box({{}, -half, plate.z_min}, {plate.thickness, half, plate.z_max}), tools);
  });
}

Solid build_backing_pin(const fixture::Layout &layout) {
  const auto &pin = layout.pin;
  return kernel::in_part(std::string(ids::backing_pin), [&] {
    std::vector<ProfilePoint> profile{{pin.relief_depth, Length{}},
                                      {pin.relief_depth, pin.contact_inner_radius},
                                      {Length{}, pin.contact_inner_radius},
                                      {Length{}, pin.contact_outer_radius}};
    if (pin.head_length > Length{}) {
      profile.push_back({pin.head_length, pin.contact_outer_radius});
      profile.push_back({pin.head_length, pin.shank_radius});
    }
    profile.push_back({pin.length, pin.shank_radius});
    profile.push_back({pin.length, Length{}});
    return kernel::cut(kernel::revolve({{}, kernel::along_x}, profile),
                       {strip(pin, true), strip(pin, false)});
  });
}

} // namespace purgewright::solids

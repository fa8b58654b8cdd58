// chamber-body, chamber-end-plate and backing-pin.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/chamfer.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/units/ids.hpp"

namespace purgewright::solids {
namespace {

using kernel::Frame;

// From the -X face into the cavity.
Solid rear_opening(const fixture::ChamberBody &body) {
  return kernel::cylinder({{body.x_min - kernel::cutter_overshoot, {}, {}}, kernel::along_x},
                          body.opening_radius,
                          body.cavity_start - body.x_min + 2.0 * kernel::cutter_overshoot);
}

std::vector<Solid> body_holes(const fixture::ChamberBody &body) {
  std::vector<Solid> tools;
  // Into the middle of the plenum, whose end wall is flat there.
  const Length middle = 0.5 * (body.plenum.x_min + body.plenum.x_max);
  tools.push_back(kernel::cylinder({{middle, {}, body.inlet_z}, kernel::along_x}, body.inlet_radius,
                                   body.x_max - middle + kernel::cutter_overshoot));
  const auto point = standards::machining_rules().drill_point;
  for (const auto &at : body.end_screws) {
    tools.push_back(kernel::drill_cutter({{body.x_max, at.y, at.z}, kernel::against_x},
                                         2.0 * body.end_tapping.radius, body.end_tapping.depth, point));
    tools.push_back(kernel::drill_cutter({{body.x_min, at.y, at.z}, kernel::along_x},
                                         2.0 * body.end_tapping.radius, body.end_tapping.depth, point));
  }
  for (const auto &at : body.base_screws) {
    tools.push_back(kernel::drill_cutter({{at.x, at.y, body.bottom}, kernel::along_z},
                                         2.0 * body.base_tapping.radius, body.base_tapping.depth, point));
  }
  for (const auto &at : body.dowels) {
    tools.push_back(kernel::drill_cutter({{at.x, at.y, body.bottom}, kernel::along_z},
                                         2.0 * body.dowel.radius, body.dowel.depth, point));
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

// Of the wiper and its plate: outline, hole round the tube, the knobs' holes.
Solid drilled_sheet(const fixture::Wiper &wiper, Length from, Length to, Length hole_radius) {
  const Length half = 0.5 * wiper.width;
  std::vector<Solid> tools{
      kernel::through_cutter({{from, {}, {}}, kernel::along_x}, 2.0 * hole_radius, to - from)};
  for (const auto &at : wiper.knobs) {
    tools.push_back(kernel::through_cutter({{from, at.y, at.z}, kernel::along_x},
                                           2.0 * wiper.clearance_radius, to - from));
  }
  return kernel::cut(kernel::box({from, -half, -wiper.z_max}, {to, half, wiper.z_max}), tools);
}

// Of the plenum's cover and its gasket.
Solid footprint(const fixture::PlenumCover &cover, Length from, Length to) {
  const Length half = 0.5 * cover.width;
  return kernel::box({cover.x_min, -half, from}, {cover.x_max, half, to});
}

std::vector<Solid> footprint_holes(const fixture::PlenumCover &cover, Length thickness) {
  std::vector<Solid> tools;
  const auto through = [&](const fixture::Position &at, Length radius) {
    tools.push_back(kernel::through_cutter({{at.x, at.y, {}}, kernel::along_z}, 2.0 * radius, thickness));
  };
  for (const auto &at : cover.screws) {
    through(at, cover.screw_radius);
  }
  for (const auto &at : cover.dowels) {
    through(at, cover.dowel_radius);
  }
  return tools;
}

// Through a gasket round the cavity, from x = 0.
Solid cavity_cutter(const fixture::ChamberBody &body, Length thickness) {
  switch (body.kind) {
  case fixture::ChamberKind::block:
    return kernel::through_cutter({{}, kernel::along_x}, 2.0 * body.cavity_radius, thickness);
  case fixture::ChamberKind::plates:
    break;
  }
  const Length half = between_sides(body), over = kernel::cutter_overshoot;
  return kernel::box({-over, -half, -body.cavity_radius}, {thickness + over, half, under_top(body)});
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
    tools.push_back(rear_opening(body));
    for (auto &hole : body_holes(body)) {
      tools.push_back(std::move(hole));
    }
    // The diffuser comes last: the kernel is quicker with a field of holes when they alone remain, and the
    // slot's edge is then chosen and broken on a plain shape.
    const Solid bored = kernel::cut(chamber_stock(body), tools);
    return kernel::cut(break_slot_edge(body, bored), diffuser_holes(body));
  });
}

Solid build_wiper_plate(const fixture::Layout &layout) {
  const auto &wiper = layout.wiper;
  return kernel::in_part(std::string(ids::wiper_plate), [&] {
    return drilled_sheet(wiper, -wiper.plate_thickness, Length{}, wiper.plate_hole_radius);
  });
}

Solid build_wiper(const fixture::Layout &layout) {
  const auto &wiper = layout.wiper;
  return kernel::in_part("wiper", [&] {
    return drilled_sheet(wiper, Length{}, wiper.thickness, wiper.sealed_radius + fixture::wiper_leak);
  });
}

Solid build_plenum_cover(const fixture::Layout &layout) {
  const auto &cover = layout.plenum_cover;
  return kernel::in_part(std::string(ids::plenum_cover), [&] {
    return kernel::cut(footprint(cover, Length{}, cover.thickness), footprint_holes(cover, cover.thickness));
  });
}

Solid build_end_gasket(const fixture::Layout &layout) {
  const auto &plate = layout.end_plate;
  return kernel::in_part("end-gasket", [&] {
    const Length half = 0.5 * plate.width;
    std::vector<Solid> tools{cavity_cutter(layout.body, layout.gasket)};
    for (const auto &at : plate.screws) {
      tools.push_back(kernel::through_cutter({{{}, at.y, at.z}, kernel::along_x},
                                             2.0 * plate.screw_clearance_radius, layout.gasket));
    }
    return kernel::cut(kernel::box({{}, -half, plate.z_min}, {layout.gasket, half, plate.z_max}), tools);
  });
}

Solid build_side_gasket(const fixture::Layout &layout) {
  const auto &body = layout.body;
  const auto &screws = body.plates.sides;
  return kernel::in_part("side-gasket", [&] {
    const Length half = 0.5 * body.plates.thickness;
    std::vector<Solid> tools;
    for (int i = 0; i < screws.count; ++i) {
      tools.push_back(
          kernel::through_cutter({{screws.first.x + double(i) * screws.pitch, {}, {}}, kernel::along_z},
                                 body.end_screw->clearance, body.plates.gasket));
    }
    return kernel::cut(
        kernel::box({body.plates.walls_start, -half, {}}, {body.x_max, half, body.plates.gasket}), tools);
  });
}

Solid build_rear_gasket(const fixture::Layout &layout) {
  const auto &body = layout.body;
  const Length thickness = body.plates.gasket;
  return kernel::in_part("rear-gasket", [&] {
    std::vector<Solid> tools{cavity_cutter(body, thickness)};
    for (const auto &at : body.end_screws) {
      tools.push_back(
          kernel::through_cutter({{{}, at.y, at.z}, kernel::along_x}, body.end_screw->clearance, thickness));
    }
    for (const auto &at : body.plates.dowels) {
      tools.push_back(
          kernel::through_cutter({{{}, at.y, at.z}, kernel::along_x}, 2.0 * body.dowel.radius, thickness));
    }
    const Length half = 0.5 * body.width;
    return kernel::cut(kernel::box({{}, -half, body.bottom}, {thickness, half, body.z_max}), tools);
  });
}

Solid build_plenum_gasket(const fixture::Layout &layout) {
  const auto &cover = layout.plenum_cover;
  return kernel::in_part("plenum-gasket", [&] {
    std::vector<Solid> tools = footprint_holes(cover, layout.gasket);
    tools.push_back(plenum_pocket(layout.body.plenum, -kernel::cutter_overshoot,
                                  layout.gasket + kernel::cutter_overshoot));
    return kernel::cut(footprint(cover, Length{}, layout.gasket), tools);
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
    tools.push_back(kernel::through_cutter({{{}, plate.meter.at.y, plate.meter.at.z}, kernel::along_x},
                                           2.0 * plate.meter.radius, plate.thickness));
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
    if (pin.contact_outer_radius != pin.shank_radius) { // else the shank goes on from the tip
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

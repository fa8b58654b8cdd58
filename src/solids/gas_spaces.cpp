// The gas spaces, measured on the finished parts.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/fixture/cavity.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/kernel/pieces.hpp"
#include "purgewright/units/ids.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

namespace purgewright::solids {
namespace {

const Part &part(const Assembly &assembly, std::string_view name) {
  for (const Part &candidate : assembly.parts) {
    if (candidate.name == name) {
      return candidate;
    }
  }
  throw kernel::SolidError(std::string(name), "find part", "", "no such part in the assembly");
}

Solid in_place(const Assembly &assembly, std::string_view name) {
  const Part &found = part(assembly, name);
  return kernel::placed(found.solid, found.place);
}

// All that a part leaves of its plain block and that gas can reach: drilled holes are pieces of their own.
Solid open_space(const Solid &block, const std::vector<Solid> &metal, std::size_t drilled) {
  return kernel::largest_piece(kernel::cut(block, metal, 1 + static_cast<int>(drilled)));
}

// A tool of its own: caps may be wider or narrower than the tube by less than a turned tool can step.
Solid cap_outside(const job::Cap &cap) {
  const kernel::Frame frame{{}, kernel::along_x};
  return cap.shape == job::CapShape::domed
             ? kernel::sphere_segment(frame, fixture::dome_sphere(cap), cap.dome_height)
             : kernel::cylinder(frame, 0.5 * cap.diameter, cap.thickness);
}

// Up to the wiper, with its bore: that gas belongs to the other circuit. Where a short tube ends stand a cup
// over its end and the spindle.
Solid tube_in_chamber(const job::Job &job, const fixture::Layout &layout) {
  const Length tube = 0.5 * job.tube.outside_diameter;
  const Length end = -job.tube.length, bare = end + layout.plug.front_x();
  Length from = layout.body.x_min - kernel::cutter_overshoot;
  std::vector<kernel::ProfilePoint> contour{{from, Length{}}};
  const auto up_to = [&](Length x, Length radius) {
    if (x > from) {
      contour.push_back({from, radius});
      contour.push_back({x, radius});
      from = x;
    }
  };
  up_to(end, layout.spindle.radius);
  up_to(bare, layout.plug.shoulder_radius);
  contour.push_back({from, tube});
  contour.push_back({Length{}, tube});
  contour.push_back({});
  return kernel::revolve({{}, kernel::along_x}, contour);
}

// The inlet before the plenum counts as a line.
units::Volume inlet_port(const fixture::ChamberBody &body) {
  return kernel::volume(kernel::cylinder({{body.plenum.x_max, {}, body.inlet_z}, kernel::along_x},
                                         body.inlet_radius, body.x_max - body.plenum.x_max));
}

// Between the chamber's face and its end plate, pin through it; between underside and plenum cover.
units::Volume gasket_holes(const fixture::Layout &layout, const Assembly &assembly) {
  const auto &body = layout.body;
  const auto &cover = layout.plenum_cover;
  const Length half = 0.5 * body.width;
  const auto &plate = layout.end_plate;
  const Length plate_half = 0.5 * plate.width;
  const Solid end = open_space(kernel::box({body.x_max, -plate_half, plate.z_min},
                                           {body.x_max + layout.gasket, plate_half, plate.z_max}),
                               {in_place(assembly, "end-gasket")}, body.end_screws.size());
  const Solid under = open_space(
      kernel::box({body.x_min, -half, body.bottom - layout.gasket}, {body.x_max, half, body.bottom}),
      {in_place(assembly, "plenum-gasket")}, cover.screws.size() + cover.dowels.size());
  return kernel::volume(kernel::cut(end, {in_place(assembly, ids::backing_pin)})) + kernel::volume(under);
}

// Each wall and gasket where it stands, in all its places.
std::vector<Solid> standing(const Assembly &assembly, std::span<const std::string_view> names) {
  std::vector<Solid> solids;
  for (const std::string_view name : names) {
    const Part &found = part(assembly, name);
    solids.push_back(kernel::placed(found.solid, found.place));
    for (const auto &place : found.more_places) {
      solids.push_back(kernel::placed(found.solid, place));
    }
  }
  return solids;
}

Solid within_walls(const fixture::Layout &layout, const Assembly &assembly) {
  const auto &body = layout.body;
  const std::size_t below = body.base_screws.size() + body.dowels.size();
  switch (body.kind) {
  case fixture::ChamberKind::block:
    return open_space(chamber_stock(body), {part(assembly, ids::chamber_body).solid},
                      2 * body.end_screws.size() + below);
  case fixture::ChamberKind::plates:
    break;
  }
  const auto walls = fixture::chamber_walls(body.kind);
  std::vector<std::string_view> names(walls.begin(), walls.end());
  names.insert(names.end(), {"side-gasket", "rear-gasket"});
  const auto &plates = body.plates;
  const std::size_t sides = 4 * static_cast<std::size_t>(plates.sides.count);
  constexpr std::size_t beside_rear = 1; // the rear plate is lower and narrower than the others
  return open_space(chamber_stock(body), standing(assembly, names),
                    2 * body.end_screws.size() + below + sides + plates.knobs.size() + plates.dowels.size() +
                        beside_rear);
}

Solid chamber_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  return kernel::cut(within_walls(layout, assembly), {tube_in_chamber(job, layout), cap_outside(job.cap),
                                                      in_place(assembly, ids::backing_pin)});
}

Solid dome_hollow(const job::Cap &cap) {
  return kernel::sphere_segment({{}, kernel::along_x}, fixture::dome_sphere(cap) - cap.thickness,
                                cap.dome_height - cap.thickness);
}

// From the plane of the plug's spigot face to the cap, and the hollow of a domed one.
std::vector<Solid> bore_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  const Length start = layout.plug.spigot_length - job.tube.length;
  const Solid bore =
      kernel::cylinder({{start, {}, {}}, kernel::along_x}, 0.5 * job.tube.inside_diameter, -start);
  std::vector<Solid> standing;
  if (layout.lance.present) {
    standing.push_back(in_place(assembly, ids::purge_lance));
  }
  if (layout.plug.nose_length > Length{}) {
    standing.push_back(in_place(assembly, ids::end_plug));
  }
  if (job.cap.shape == job::CapShape::spigot) {
    standing.push_back(part(assembly, "cap").solid);
  }
  std::vector<Solid> bodies{standing.empty() ? bore : kernel::cut(bore, standing)};
  if (job.cap.shape == job::CapShape::domed) {
    bodies.push_back(dome_hollow(job.cap));
  }
  return bodies;
}

} // namespace

GasSpaces measure_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  GasSpaces gas;
  kernel::in_part("chamber gas", [&] {
    gas.chamber_bodies = {chamber_gas(job, layout, assembly)};
    gas.chamber =
        kernel::volume(gas.chamber_bodies.front()) - inlet_port(layout.body) + gasket_holes(layout, assembly);
  });
  kernel::in_part("bore gas", [&] {
    gas.bore_bodies = bore_gas(job, layout, assembly);
    for (const Solid &body : gas.bore_bodies) {
      gas.bore += kernel::volume(body);
    }
  });
  return gas;
}

} // namespace purgewright::solids

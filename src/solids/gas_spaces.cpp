// The gas spaces, measured on the finished parts.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/kernel/pieces.hpp"
#include "purgewright/units/ids.hpp"

#include <algorithm>
#include <cmath>

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

// All that the chamber's metal leaves of its envelope and that gas can reach: drilled holes are pieces of
// their own.
Solid open_space(const fixture::ChamberBody &body, const Solid &metal) {
  const int drilled = static_cast<int>(body.end_screws.size() + body.base_screws.size() + body.dowels.size());
  return kernel::largest_piece(kernel::cut(chamber_stock(body), {metal}, 1 + drilled));
}

// A tool of its own: caps may be wider or narrower than the tube by less than a turned tool can step.
Solid cap_outside(const job::Cap &cap) {
  const kernel::Frame frame{{}, kernel::along_x};
  return cap.shape == job::CapShape::domed
             ? kernel::sphere_segment(frame, fixture::dome_sphere(cap), cap.dome_height)
             : kernel::cylinder(frame, 0.5 * cap.diameter, cap.thickness);
}

// One turned tool of everything before the cavity's start (the gap round the tube is no chamber gas) and the
// tube with its bore (that gas belongs to the other circuit).
Solid guide_and_tube(const job::Job &job, const fixture::Layout &layout) {
  const auto &body = layout.body;
  const Length tube = 0.5 * job.tube.outside_diameter;
  const Length start = body.x_min - kernel::cutter_overshoot;
  // Wider than cavity and lead-in, and half way to the plenum at most.
  const Length to_plenum = -body.plenum.axis_z - body.plenum.radius - body.cavity_radius;
  const Length guide = std::max(body.cavity_radius, body.tube_bore_radius + body.lead_in) + 0.5 * to_plenum;
  std::vector<kernel::ProfilePoint> contour{{start, Length{}}, {start, guide}, {body.cavity_start, guide}};
  // Where a short tube ends stand a cup over its end and the spindle.
  const Length end = -job.tube.length, bare = end + layout.plug.front_x();
  Length from = body.cavity_start;
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

// The inlet below the plenum counts as a line. Measured on plain cylinders, it takes no cut along the
// plenum's wall.
units::Volume inlet_port(const fixture::ChamberBody &body) {
  const Length reach = 2.0 * body.inlet_radius;
  const Solid inlet = kernel::cylinder({{body.inlet_x, {}, body.z_min}, kernel::along_z}, body.inlet_radius,
                                       body.plenum.axis_z - body.z_min);
  const Solid plenum = kernel::cylinder({{body.inlet_x - reach, {}, body.plenum.axis_z}, kernel::along_x},
                                        body.plenum.radius, 2.0 * reach);
  return kernel::volume(kernel::cut(inlet, {plenum}));
}

units::Volume chamber_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  const Solid open = open_space(layout.body, part(assembly, ids::chamber_body).solid);
  const Solid gas = kernel::cut(
      open, {guide_and_tube(job, layout), cap_outside(job.cap), in_place(assembly, ids::backing_pin)});
  return kernel::volume(gas) - inlet_port(layout.body);
}

units::Volume dome_hollow(const job::Cap &cap) {
  if (cap.shape != job::CapShape::domed) {
    return {};
  }
  return kernel::volume(kernel::sphere_segment(
      {{}, kernel::along_x}, fixture::dome_sphere(cap) - cap.thickness, cap.dome_height - cap.thickness));
}

// From the plane of the plug's spigot face to the cap.
units::Volume bore_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
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
  return kernel::volume(standing.empty() ? bore : kernel::cut(bore, standing)) + dome_hollow(job.cap);
}

} // namespace

GasSpaces measure_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  return {
      kernel::in_part("chamber gas", [&] { return chamber_gas(job, layout, assembly); }),
      kernel::in_part("bore gas", [&] { return bore_gas(job, layout, assembly); }),
  };
}

} // namespace purgewright::solids

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

// All that the chamber's metal leaves of its envelope and that gas can reach: drilled holes are pieces of their own.
Solid open_space(const fixture::ChamberBody &body, const Solid &metal) {
  const int drilled =
      static_cast<int>(body.end_screws.size() + body.base_screws.size() + body.dowels.size());
  return kernel::largest_piece(kernel::cut(chamber_stock(body), {metal}, 1 + drilled));
}

Solid cap_outside(const job::Cap &cap) {
  const kernel::Frame frame{{}, kernel::along_x};
  return cap.shape == job::CapShape::domed ? kernel::sphere_segment(frame, fixture::dome_sphere(cap), cap.dome_height)
                                           : kernel::cylinder(frame, 0.5 * cap.diameter, cap.thickness);
}

// What stands in the cavity round the axis, as one turned tool: everything before the cavity's start (the gap round
// the tube is no chamber gas), the tube with its bore (that gas belongs to the other circuit), the cap's outside.
// A cap wider or narrower than the tube by less than a turned tool may step is a tool of its own.
std::vector<Solid> standing_core(const job::Job &job, const fixture::ChamberBody &body) {
  const Length tube = 0.5 * job.tube.outside_diameter;
  const Length start = body.x_min - kernel::cutter_overshoot;
  // Wider than cavity and lead-in, and half way to the plenum at most.
  const Length to_plenum = -body.plenum.axis_z - body.plenum.radius - body.cavity_radius;
  const Length guide = std::max(body.cavity_radius, body.tube_bore_radius + body.lead_in) + 0.5 * to_plenum;
  std::vector<ProfilePoint> profile{
      {start, Length{}}, {start, guide}, {body.cavity_start, guide}, {body.cavity_start, tube}, {Length{}, tube}};
  const Length cap = 0.5 * job.cap.diameter;
  const double step = std::abs(units::ratio(cap - tube, kernel::smallest_size));
  if (step < 1.0 && step > 0.1) { // below that the volume does not tell
    profile.push_back({});
    return {kernel::revolve({{}, kernel::along_x}, profile), cap_outside(job.cap)};
  }
  if (step >= 1.0) {
    profile.push_back({Length{}, cap});
  }
  if (job.cap.shape == job::CapShape::domed) {
    profile.back() = {Length{}, cap, dome_outside(job.cap).via};
    profile.push_back({job.cap.dome_height, Length{}});
  } else {
    profile.push_back({job.cap.thickness, cap});
    profile.push_back({job.cap.thickness, Length{}});
  }
  return {kernel::revolve({{}, kernel::along_x}, profile)};
}

// The inlet below the plenum counts as a line. Measured on plain cylinders, it takes no cut along the plenum's wall.
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
  std::vector<Solid> standing = standing_core(job, layout.body);
  standing.push_back(in_place(assembly, ids::backing_pin));
  return kernel::volume(kernel::cut(open, standing)) - inlet_port(layout.body);
}

units::Volume dome_hollow(const job::Cap &cap) {
  if (cap.shape != job::CapShape::domed) {
    return {};
  }
  return kernel::volume(kernel::sphere_segment({{}, kernel::along_x}, fixture::dome_sphere(cap) - cap.thickness,
                                               cap.dome_height - cap.thickness));
}

// From the plane of the plug's spigot face to the cap.
units::Volume bore_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  const Length start = layout.plug.spigot_length - job.tube.length;
  const Solid bore = kernel::cylinder({{start, {}, {}}, kernel::along_x}, 0.5 * job.tube.inside_diameter, -start);
  std::vector<Solid> standing{in_place(assembly, layout.lance.present ? ids::purge_lance : ids::end_plug)};
  if (job.cap.shape == job::CapShape::spigot) {
    standing.push_back(part(assembly, "cap").solid);
  }
  return kernel::volume(kernel::cut(bore, standing)) + dome_hollow(job.cap);
}

} // namespace

GasSpaces measure_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  return {
      kernel::in_part("chamber gas", [&] { return chamber_gas(job, layout, assembly); }),
      kernel::in_part("bore gas", [&] { return bore_gas(job, layout, assembly); }),
  };
}

} // namespace purgewright::solids

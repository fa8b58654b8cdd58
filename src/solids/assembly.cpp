#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

namespace purgewright::solids {
namespace {

kernel::Placement at(const fixture::Position &p) { return {.offset = {p.x, p.y, p.z}}; }

std::string tapped(std::size_t count, const standards::Screw &screw, std::string_view where) {
  return fmt::format("{} x {} x {:g}-6H tapped, tap drill {:.1f} mm: {}", count, screw.name,
                     units::to_millimetres(screw.pitch), units::to_millimetres(screw.tap_drill), where);
}

std::string port(const standards::PortThread &thread, std::string_view where) {
  return fmt::format("{}, tap drill {:.2f} mm: {}", thread.callout, units::to_millimetres(thread.drill), where);
}

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

// Bore from the plug's spigot face to the joint.
Solid bore_space(const job::Job &job, const fixture::Layout &layout) {
  const Length start = layout.plug.spigot_length - job.tube.length;
  return kernel::cylinder({{start, {}, {}}, kernel::along_x}, 0.5 * job.tube.inside_diameter, -start);
}

units::Volume dome_hollow(const job::Cap &cap) {
  if (cap.shape != job::CapShape::domed) {
    return {};
  }
  return kernel::volume(kernel::sphere_segment({{}, kernel::along_x}, fixture::dome_sphere(cap) - cap.thickness,
                                               cap.dome_height - cap.thickness));
}

} // namespace

Assembly build_assembly(const job::Job &job, const fixture::Layout &layout) {
  const auto &thread = *job.gas.port_thread;
  const ChamberBuild chamber = build_chamber_body(layout);
  Assembly assembly{{}, chamber.edge_break};
  const auto add = [&](std::string_view name, std::string title, Solid solid, kernel::Placement place,
                       std::vector<std::string> notes, bool made = true) {
    assembly.parts.push_back(
        {std::string(name), std::move(title), std::move(solid), place, std::move(notes), made});
  };
  add(ids::chamber_body, "Chamber body", chamber.body, {},
      {port(thread, "gas inlet"), tapped(4, *layout.body.end_screw, "end plate"),
       tapped(4, *layout.body.base_screw, "base")});
  add(ids::chamber_end_plate, "Chamber end plate", build_end_plate(layout), at(layout.end_plate.placement),
      {tapped(1, *layout.end_plate.clamp_screw, "clamp screw of the backing pin"),
       fmt::format("O-ring AS568 {} in the face groove", layout.end_plate.groove.ring->dash)});
  add(ids::backing_pin, "Backing pin", build_backing_pin(layout), at(layout.pin.placement), {});
  std::vector<std::string> plug_notes{port(thread, layout.plug.has_exhaust ? "inlet and exhaust" : "inlet"),
                                      fmt::format("O-ring AS568 {}", layout.plug.seal.ring->dash)};
  add(ids::end_plug, "End plug", build_end_plug(layout), at(layout.plug.placement), std::move(plug_notes));
  if (layout.lance.present) {
    add(ids::purge_lance, "Purge lance", build_lance(layout), at(layout.lance.placement), {});
  }
  add(ids::gas_port_block, "Gas-port block", build_port_block(layout), at(layout.block.placement),
      {port(thread, "inlet, gallery plug and every outlet")});
  add("tube", "Tube", build_tube(job), {}, {}, false);
  add("cap", "Cap", build_cap(job), {}, {}, false);
  return assembly;
}

GasSpaces measure_gas(const job::Job &job, const fixture::Layout &layout, const Assembly &assembly) {
  return kernel::in_part("gas spaces", [&]() -> GasSpaces {
    const Solid chamber = kernel::fuse(chamber_spaces(layout.body, layout.body.z_max, Length{}));
    // The tube counts with its bore: that gas belongs to the other circuit.
    const Solid tube = kernel::cylinder({{-job.tube.length, {}, {}}, kernel::along_x},
                                        0.5 * job.tube.outside_diameter, job.tube.length);
    std::vector<Solid> standing{tube, in_place(assembly, ids::backing_pin)};
    if (job.cap.shape == job::CapShape::domed) {
      standing.push_back(kernel::sphere_segment({{}, kernel::along_x}, fixture::dome_sphere(job.cap),
                                                job.cap.dome_height));
    } else {
      standing.push_back(kernel::cylinder({{}, kernel::along_x}, 0.5 * job.cap.diameter, job.cap.thickness));
    }
    std::vector<Solid> in_bore{in_place(assembly, ids::end_plug)};
    if (layout.lance.present) {
      in_bore = {in_place(assembly, ids::purge_lance)};
    }
    if (job.cap.shape == job::CapShape::spigot) {
      in_bore.push_back(part(assembly, "cap").solid);
    }
    return {kernel::volume(kernel::cut(chamber, standing)) + assembly.edge_break,
            kernel::volume(kernel::cut(bore_space(job, layout), in_bore)) + dome_hollow(job.cap)};
  });
}

} // namespace purgewright::solids

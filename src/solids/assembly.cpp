#include "purgewright/solids/parts.hpp"

#include "purgewright/fixture/tolerances.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <utility>

namespace purgewright::solids {
namespace {

using Notes = std::vector<std::string>;
namespace tolerances = fixture::tolerances;

kernel::Placement at(const fixture::Position &p) {
  return {.offset = {p.x, p.y, p.z}};
}

std::string tapped(std::size_t count, const standards::Screw &screw, std::string_view where) {
  return fmt::format("{} x {} tapped, tap drill {:.2f} mm: {}", count, screw.callout,
                     units::to_millimetres(screw.tap_drill), where);
}

std::string tapped(std::size_t count, const standards::ShoulderScrew &axle, std::string_view where) {
  return fmt::format("{} x {} tapped, tap drill {:.2f} mm: {}", count, axle.callout,
                     units::to_millimetres(axle.tap_drill), where);
}

std::string port(const standards::PortThread &thread, std::string_view where) {
  return fmt::format("{}, tap drill {:.2f} mm: {}", thread.callout, units::to_millimetres(thread.drill),
                     where);
}

std::string reamed(std::size_t count, units::Length radius, char fit, std::string_view where) {
  return fmt::format("{} x {:.4g} mm {}{} reamed: {}", count, 2.0 * units::to_millimetres(radius), fit,
                     tolerances::dowel_hole, where);
}

struct Builder {
  const OnPart &on_part;
  Assembly assembly{};

  template <class Build>
  void add(std::string_view name, std::string title, Build &&build, kernel::Placement place, Notes notes,
           PartKind kind = PartKind::made) {
    if (on_part) {
      on_part(name);
    }
    kernel::Solid solid = build();
    const units::Volume volume = kernel::volume(solid);
    assembly.parts.push_back(
        {std::string(name), std::move(title), std::move(solid), volume, place, std::move(notes), kind});
  }
};

void add_chamber(const job::Job &job, const fixture::Layout &layout, Builder &builder) {
  const auto &plate = layout.end_plate;
  if (layout.body.kind == fixture::ChamberKind::block) { // plates are lists of features
    builder.add(
        ids::chamber_body, "Chamber body", [&] { return build_chamber_body(layout); }, {},
        {port(*job.gas.port_thread, "gas inlet"),
         tapped(8, *layout.body.end_screw, "end plate and wiper plate"),
         tapped(4, *layout.body.base_screw, "base"),
         reamed(2, layout.body.dowel.radius, tolerances::dowel_tapped_in, "dowels to the base plate")});
  }
  builder.add(ids::chamber_end_plate, "Chamber end plate", [&] { return build_end_plate(layout); },
              at(plate.placement),
              {tapped(1, *plate.clamp_screw, "clamp screw of the backing pin"),
               port(*plate.meter.thread, "oxygen meter's hose; a screw closes it otherwise")});
  builder.add(ids::wiper_plate, "Wiper plate", [&] { return build_wiper_plate(layout); },
              at(layout.wiper.placement), {});
  builder.add(ids::plenum_cover, "Plenum cover", [&] { return build_plenum_cover(layout); },
              {.offset = {{}, {}, layout.body.z_min}}, {});
  builder.add(ids::backing_pin, "Backing pin", [&] { return build_backing_pin(layout); },
              at(layout.pin.placement), {});
}

std::string spelled(const fixture::Thread &thread) {
  return thread.callout.empty() ? fmt::format("M{:g}×{:g}-6H", units::to_millimetres(thread.major),
                                              units::to_millimetres(thread.pitch))
                                : std::string(thread.callout);
}

// What the list of features asks for beside its geometry: threads and seals, and the part's own notes.
Notes notes_of(const fixture::Part &part) {
  Notes notes;
  for (const auto &feature : part.features) {
    if (const auto *hole = std::get_if<fixture::Hole>(&feature); hole != nullptr && hole->threaded != "") {
      notes.push_back(fmt::format("{} x {}: {}",
                                  hole->pattern.count() * (hole->end == fixture::HoleEnd::alike ? 2 : 1),
                                  spelled(hole->thread), hole->name));
    }
    if (const auto *groove = std::get_if<fixture::RadialGroove>(&feature);
        groove != nullptr && groove->ring != nullptr) {
      notes.push_back(fmt::format("O-ring AS568 {}", groove->ring->dash));
    }
  }
  notes.insert(notes.end(), part.notes.begin(), part.notes.end());
  return notes;
}

void add_feature_parts(const fixture::Layout &layout, Builder &builder) {
  for (const fixture::PartRow &row : fixture::feature_parts()) {
    if (row.present(layout)) {
      const fixture::Part part = row.make(layout);
      builder.add(
          part.id, std::string(part.title), [&] { return build_part(part); }, at(part.placement),
          notes_of(part));
      for (const auto &place : part.more) {
        builder.assembly.parts.back().more_places.push_back(at(place));
      }
    }
  }
}

Notes collar_notes(const fixture::IndexCollar &collar) {
  Notes notes{tapped(1, *collar.clamp_screw, "clamp screw across the slit"),
              tapped(1, *collar.lead_screw, "work lead's terminal, from the rim to the bore")};
  for (std::size_t i = 0; i < collar.mark_count; ++i) {
    const auto &mark = collar.marks[i];
    notes.push_back(fmt::format("{} mark at {:.1f} deg, counterclockwise seen from the cap, engraved",
                                mark.run ? "run" : "tack", units::to_degrees(mark.angle)));
  }
  return notes;
}

void add_bench(const fixture::Layout &layout, Builder &builder) {
  const auto &stand = layout.stand;
  builder.add(ids::cradle_stand, "Cradle stand", [&] { return build_cradle_stand(layout); },
              at(stand.placements.front()),
              {tapped(2, *stand.axle, "roller axles"),
               reamed(1, stand.dowel.radius, tolerances::dowel_tapped_in,
                      "dowel of the front stand to the base plate"),
               fmt::format("2 ball bearings ISO 15 {}", stand.bearing->number)});
  for (const auto &place : stand.places().subspan(1)) {
    builder.assembly.parts.back().more_places.push_back(at(place));
  }
  const auto &collar = layout.collar;
  builder.add(
      ids::index_collar, "Index collar", [&] { return build_index_collar(layout); }, at(collar.placement),
      collar_notes(collar));
  if (layout.stop.present) {
    builder.add(ids::axial_stop, "Axial stop", [&] { return build_axial_stop(layout); },
                at(layout.stop.placement),
                {fmt::format("2 x {:.0f} H8 reamed: press rods",
                             2.0 * units::to_millimetres(layout.stop.rod_radius))});
  }
  const auto &base = layout.base;
  builder.add(ids::base_plate, "Base plate", [&] { return build_base_plate(layout); }, at(base.placement),
              {tapped(2, *layout.block.mount_screw, "gas-port block"), tapped(4, *base.foot_screw, "feet"),
               tapped(2, *stand.foot.screw, "front cradle stand"),
               reamed(base.dowels.size(), base.dowel_radius, tolerances::dowel_slides,
                      "dowels of chamber and front stand")});
  builder.add(ids::slot_cover, "Slot cover", [&] { return build_slot_cover(layout); },
              at(layout.cover.placement), {});
}

} // namespace

Assembly build_assembly(const job::Job &job, const fixture::Layout &layout, const OnPart &on_part) {
  Builder builder{on_part};
  add_chamber(job, layout, builder);
  add_feature_parts(layout, builder);
  add_bench(layout, builder);
  builder.add(
      "tube", "Tube", [&] { return build_tube(job); }, {}, {}, PartKind::workpiece);
  builder.add(
      "cap", "Cap", [&] { return build_cap(job); }, {}, {}, PartKind::workpiece);
  if (on_part) {
    on_part("bought parts");
  }
  for (Part &part : bought_parts(job, layout)) {
    builder.assembly.parts.push_back(std::move(part));
  }
  return std::move(builder.assembly);
}

} // namespace purgewright::solids

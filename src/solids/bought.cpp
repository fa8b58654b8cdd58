// Bought parts as the assembly shows them: their outer size where they sit, nothing of their inside.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/fixture/parts_list.hpp"
#include "purgewright/fixture/screw_joint.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <stdexcept>
#include <utility>

namespace purgewright::solids {
namespace {

using fixture::Position;
using kernel::Placement;
using units::millimetres;

constexpr double thread_share = 0.94; // a shank is drawn this much of its tap drill: no metal shared
constexpr double dowel_share = 0.98;
constexpr Length fitting_length = millimetres(22.0); // common practice: a push-in fitting outside its port
constexpr Length valve_length = millimetres(38.0);   // common practice: a small needle valve with its knob
constexpr Length foot_radius = millimetres(10.0), foot_height = millimetres(25.0); // common practice
// Thin nut of a foot's stud, ISO 4035 M6; a jam nut of 1/4 in is as large; from memory.
constexpr Length foot_nut_height = millimetres(3.2), foot_nut_radius = millimetres(5.0);
constexpr Length clear = millimetres(0.05); // faces that touch in fact stay apart in the picture

class List {
 public:
  explicit List(std::vector<fixture::Item> items) : items_(std::move(items)) {}
  void add(std::string_view name, Solid solid, std::vector<Placement> places) {
    if (places.empty()) {
      return;
    }
    const auto *item = fixture::find_item(items_, name);
    if (item == nullptr) {
      throw std::logic_error(fmt::format("{} stands in no parts list", name));
    }
    std::string title = fmt::format("{} {}", item->title, item->size);
    const units::Volume volume = kernel::volume(solid);
    Part part{std::string(name), std::move(title), std::move(solid), volume, places.front(), {},
              PartKind::bought};
    part.more_places.assign(places.begin() + 1, places.end());
    parts_.push_back(std::move(part));
  }
  std::vector<Part> take() { return std::move(parts_); }

 private:
  std::vector<fixture::Item> items_;
  std::vector<Part> parts_;
};

Placement at(Length x, Length y, Length z) {
  return {.offset = {x, y, z}};
}

// Socket head screw: the head's underside in the origin, its shank along `axis`.
Solid screw(const standards::Screw &size, kernel::Direction axis, Length grip) {
  const Length shank = fixture::screw_joint(size, grip).length;
  const Length radius = 0.5 * thread_share * size.tap_drill;
  return kernel::revolve({{}, axis}, {{-size.head_height, Length{}},
                                      {-size.head_height, 0.5 * size.head_diameter},
                                      {Length{}, 0.5 * size.head_diameter},
                                      {Length{}, radius},
                                      {shank, radius},
                                      {shank, Length{}}});
}

// Shoulder screw: the shoulder's end in the origin, its head towards +X, its thread against it.
Solid shoulder_screw(const standards::ShoulderScrew &size, Length length) {
  const Length shoulder = 0.5 * size.shoulder - clear, thread = 0.5 * thread_share * size.tap_drill;
  const Length end = length + size.head_height;
  return kernel::revolve({{}, kernel::along_x}, {{-size.thread_length, Length{}},
                                                 {-size.thread_length, thread},
                                                 {Length{}, thread},
                                                 {Length{}, shoulder},
                                                 {length, shoulder},
                                                 {length, 0.5 * size.head_diameter},
                                                 {end, 0.5 * size.head_diameter},
                                                 {end, Length{}}});
}

void add_chamber_screws(const fixture::Layout &l, List &list) {
  const auto &plate = l.end_plate;
  const Length seat = plate.placement.x + plate.thickness - plate.counterbore_depth;
  std::vector<Placement> places;
  for (const Position &p : plate.screws) {
    places.push_back(at(seat, p.y, p.z));
  }
  list.add("screw-end-plate",
           screw(*l.body.end_screw, kernel::against_x, plate.thickness - plate.counterbore_depth + l.gasket),
           places);
}

// Cut from sheet: the wiper, two gaskets, a wide slot's mask. Socket screws, turned by their knurl, hold the
// wiper's plate.
void add_closures(const fixture::Layout &l, List &list) {
  const auto &wiper = l.wiper;
  list.add("wiper", build_wiper(l), {at(wiper.placement.x, {}, {})});
  list.add("end-gasket", build_end_gasket(l), {at(l.body.x_max, {}, {})});
  list.add("plenum-gasket", build_plenum_gasket(l), {at({}, {}, l.body.bottom - l.gasket)});
  if (l.mask.present) {
    list.add(ids::slot_mask, build_slot_mask(l), {at({}, {}, {})});
  }
  std::vector<Placement> places;
  for (const Position &p : wiper.knobs) {
    places.push_back(at(wiper.placement.x - wiper.plate_thickness, p.y, p.z));
  }
  list.add("screw-wiper", screw(*wiper.knob, kernel::along_x, wiper.plate_thickness + wiper.thickness),
           places);
}

// What holds a chamber of plates together: screws down into the sides and up, gaskets, the rear plate's
// dowels.
void add_plates(const fixture::Layout &l, List &list) {
  const auto &body = l.body;
  if (body.kind != fixture::ChamberKind::plates) {
    return;
  }
  const auto &plates = body.plates;
  const auto &sides = plates.sides;
  const Length grip = fixture::plate_grip(body), head = plates.thickness - body.end_screw->counterbore_depth;
  const Length low = -body.cavity_radius, high = fixture::under_top(body);
  std::vector<Placement> down, rear, gaskets, dowels;
  for (const double side : {-1.0, 1.0}) {
    const Length y = side * sides.first.y;
    gaskets.push_back(at({}, y, low));
    gaskets.push_back(at({}, y, high - plates.gasket));
    for (int i = 0; i < sides.count; ++i) {
      const Length x = sides.first.x + double(i) * sides.pitch;
      down.push_back(at(x, y, high + head));
      // The same screw upside down.
      down.push_back({.offset = {x, y, low - head}, .axis = kernel::along_x, .angle = units::degrees(180.0)});
    }
  }
  for (const Position &p : body.end_screws) {
    rear.push_back(at(body.x_min + body.end_screw->counterbore_depth, p.y, p.z));
  }
  for (const Position &p : plates.dowels) {
    dowels.push_back(at(plates.walls_start + body.dowel.depth - fixture::rear_dowel_length(body), p.y, p.z));
  }
  list.add("screw-side", screw(*body.end_screw, kernel::against_z, grip), down);
  list.add("screw-rear", screw(*body.end_screw, kernel::along_x, grip), rear);
  list.add("side-gasket", build_side_gasket(l), gaskets);
  list.add("rear-gasket", build_rear_gasket(l), {at(body.cavity_start, {}, {})});
  list.add("dowel-rear",
           kernel::cylinder({{}, kernel::along_x}, dowel_share * body.dowel.radius,
                            fixture::rear_dowel_length(body)),
           dowels);
}

// Down through the lugs of stands and stop.
void add_foot_screws(const fixture::Layout &l, List &list) {
  const auto &foot = l.stand.foot;
  const auto feet = fixture::stand_feet(l.stand);
  const Length top = l.base.placement.z + foot.height;
  std::vector<Placement> front, clamped, tail;
  for (std::size_t i = 0; i < feet.size(); ++i) {
    (i < feet.size() / 2 ? clamped : front).push_back(at(feet[i].x, feet[i].y, top));
  }
  for (const Position &p : fixture::stop_feet(l.stop)) {
    if (l.stop.present) {
      clamped.push_back(at(p.x, p.y, top));
    }
  }
  for (const Position &p : l.tail_foot.stand_screws) {
    if (l.tail_foot.present) {
      tail.push_back(at(l.tail_foot.placement.x + p.x, p.y, top));
    }
  }
  const Solid into_plate = screw(*foot.screw, kernel::against_z, fixture::foot_joint(l).grip);
  list.add("screw-stand", into_plate, front);
  list.add("screw-clamp", screw(*foot.screw, kernel::against_z, fixture::clamp_joint(l).grip), clamped);
  list.add("screw-tail", into_plate, tail);
}

// From under the base plate up into what stands on it; dowels, feet, the gas-port block's screws.
void add_base_screws(const fixture::Layout &l, List &list) {
  const auto &base = l.base;
  const Length under = base.placement.z - base.thickness;
  const auto from_below = [&](std::string_view name, const standards::Screw &size, auto &&spots,
                              Length between = {}) {
    std::vector<Placement> places;
    for (const Position &p : spots) {
      places.push_back(at(p.x, p.y, under));
    }
    list.add(name, screw(size, kernel::along_z, base.thickness + between), places);
  };
  from_below("screw-chamber", *l.body.base_screw, base.chamber_screws, l.body.bottom - l.body.z_min);
  const auto &tail = l.tail_foot;
  const auto &block = l.block;
  std::vector<Placement> mounts;
  for (const Position &p : block.mounts) {
    mounts.push_back(at(block.placement.x + p.x, block.placement.y + p.y,
                        block.placement.z + block.height - block.mount_counterbore_depth));
  }
  list.add("screw-port-block",
           screw(*block.mount_screw, kernel::against_z, block.height - block.mount_counterbore_depth),
           mounts);
  std::vector<Placement> dowels, feet, nuts;
  const auto stand_on = [&](Length x, Length y, Length plate) {
    nuts.push_back(at(x, y, plate - foot_nut_height));
    feet.push_back(at(x, y, plate - foot_nut_height - foot_height));
  };
  for (const Position &p : l.body.dowels) {
    dowels.push_back(at(p.x, p.y, l.body.bottom + l.body.dowel.depth - fixture::dowel_length(l.body)));
  }
  list.add("dowel-chamber",
           kernel::cylinder({}, dowel_share * base.dowel_radius, fixture::dowel_length(l.body)), dowels);
  const Position &stand = base.dowels.back();
  const Length low = l.stand.z_min + l.stand.dowel.depth - fixture::dowel_length(l.stand);
  list.add("dowel", kernel::cylinder({}, dowel_share * base.dowel_radius, fixture::dowel_length(l.stand)),
           {at(stand.x, stand.y, low), at(fixture::stand_feet(l.stand)[0].x, base.guide.y, low)});
  for (const Position &p : base.feet) {
    stand_on(p.x, p.y, under);
  }
  for (const Position &p : tail.feet) {
    if (tail.present) {
      stand_on(tail.placement.x + p.x, p.y, tail.placement.z - tail.thickness);
    }
  }
  list.add("foot", kernel::cylinder({}, foot_radius, foot_height), feet);
  list.add("foot-nut", kernel::cylinder({}, foot_nut_radius, foot_nut_height - clear), nuts);
}

void add_rollers(const fixture::Layout &l, List &list) {
  const auto &stand = l.stand;
  const auto &bearing = *stand.bearing;
  std::vector<Placement> rings, axles;
  for (const Position &place : stand.places()) {
    for (const double side : {-1.0, 1.0}) {
      rings.push_back(at(place.x + stand.washer, side * stand.roller_y, stand.roller_z));
      axles.push_back(at(place.x, side * stand.roller_y, stand.roller_z));
    }
  }
  // A hair smaller than it is, so that it does not share the line on which it touches the tube.
  const Length outer = 0.5 * bearing.outside_diameter - clear, inner = 0.5 * bearing.bore;
  list.add(
      "ball-bearing",
      kernel::revolve({{}, kernel::along_x},
                      {{Length{}, inner}, {Length{}, outer}, {bearing.width, outer}, {bearing.width, inner}}),
      rings);
  list.add("screw-axle", shoulder_screw(*stand.axle, stand.axle->length), axles);
}

// Rods, their springs and their nuts, as they stand while welding.
void add_press(const fixture::Layout &l, List &list) {
  const auto &stop = l.stop;
  if (!stop.present) {
    return;
  }
  const Length head = l.collar.placement.x - clear - stop.rod->head_height; // its underside
  const Length shoulder_end = head - stop.rod_length;
  std::vector<Placement> rods, springs, nuts;
  for (const double side : {-1.0, 1.0}) {
    rods.push_back(at(shoulder_end, side * stop.rod_y, {}));
    springs.push_back(at(stop.placement.x + clear, side * stop.rod_y, {}));
    nuts.push_back(at(shoulder_end, side * stop.rod_y, {}));
  }
  list.add("press-rod", shoulder_screw(*stop.rod, stop.rod_length), rods);
  const Length length = head - clear - (stop.placement.x + clear);
  const auto ring = [](Length inner, Length outer, Length from, Length to) {
    return kernel::revolve({{}, kernel::along_x}, {{from, inner}, {from, outer}, {to, outer}, {to, inner}});
  };
  list.add("press-spring",
           ring(0.5 * (stop.spring_mean - stop.spring_wire), 0.5 * (stop.spring_mean + stop.spring_wire), {},
                length),
           springs);
  const Length thread = 0.5 * stop.rod->thread;
  list.add("press-nut", ring(thread, 1.8 * thread, -2.0 * thread, -clear), nuts);
}

// What is screwed into the ports, from the port's face outwards.
void add_gas_fittings(const job::Job &job, const fixture::Layout &l, List &list) {
  const Length radius = 0.5 * job.gas.port_thread->fitting_width;
  const auto &block = l.block;
  const auto outwards = [&](kernel::Direction axis, Length length) {
    return kernel::cylinder({{}, axis}, radius, length);
  };
  list.add(fitting, outwards(kernel::against_x, fitting_length),
           {at(block.placement.x, block.placement.y, block.placement.z + block.gallery_z)});
  list.add("gallery-plug", outwards(kernel::along_x, millimetres(5.0)),
           {at(block.placement.x + block.length, block.placement.y, block.placement.z + block.gallery_z)});
  std::vector<Placement> outlets;
  for (int i = 0; i < block.outlets; ++i) {
    outlets.push_back(at(block.placement.x + block.outlet_x[static_cast<std::size_t>(i)], block.placement.y,
                         block.placement.z + block.height));
  }
  list.add(valve, outwards(kernel::along_z, valve_length), outlets);
  list.add("fitting-chamber", outwards(kernel::along_x, fitting_length),
           {at(l.body.x_max, {}, l.body.inlet_z)});
  const auto &plug = l.plug;
  const Length rear = plug.placement.x + plug.rear_x();
  std::vector<Placement> ways{at(rear, {}, plug.placement.z + plug.inlet.z)};
  if (plug.has_exhaust) {
    ways.push_back(at(rear, {}, plug.placement.z + plug.exhaust.z));
  }
  list.add("fitting-plug",
           kernel::cylinder({{}, kernel::against_x}, 0.5 * plug.port->fitting_width, fitting_length), ways);
  if (plug.seal.ring == nullptr) { // as it fills the bore, a little clear of what it touches
    const auto &seal = plug.seal;
    const Length inner = seal.groove_radius + clear, outer = plug.spigot_radius;
    const Length start = seal.groove_start + clear, end = seal.groove_start + seal.groove_width - clear;
    list.add(
        "plug-sleeve",
        kernel::revolve({{}, kernel::along_x}, {{start, inner}, {start, outer}, {end, outer}, {end, inner}}),
        {at(plug.placement.x, {}, {})});
  }
}

} // namespace

std::vector<Part> bought_parts(const job::Job &job, const fixture::Layout &layout) {
  List list(fixture::bought_items(job, layout));
  add_rollers(layout, list);
  add_press(layout, list);
  add_chamber_screws(layout, list);
  add_closures(layout, list);
  add_plates(layout, list);
  add_base_screws(layout, list);
  add_foot_screws(layout, list);
  add_gas_fittings(job, layout, list);
  return list.take();
}

} // namespace purgewright::solids

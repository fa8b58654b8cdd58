#include "purgewright/report/parts_list.hpp"

#include "csv.hpp"
#include "text_parts.hpp"

#include "purgewright/checks/printing.hpp"
#include "purgewright/fixture/family.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/screw_joint.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace purgewright::report {
namespace {

using checks::Design;
using units::Dimension;
using units::Length;

std::string length(const Design &d, Length l) {
  return units::shop_text(l.value(), Dimension::length, d.job.shop.unit_system);
}

std::string stock_text(const Design &d, const fixture::PartMetal &part) {
  const auto &stock = part.stock;
  const std::string sawn = length(d, stock.length);
  const std::string_view note = stock.at_hand ? " (at hand)" : stock.listed ? "" : " (order to size)";
  if (part.name == ids::purge_lance) {
    return fmt::format("tube {} x {} wall, {} long", length(d, 2.0 * d.layout.lance.outside_radius),
                       length(d, d.layout.lance.outside_radius - d.layout.lance.inside_radius), sawn);
  }
  if (stock.shape == fixture::StockShape::round) {
    return fmt::format("round {}, {} long{}", length(d, stock.thickness), sawn, note);
  }
  return fmt::format("flat {} x {}, {} long{}", length(d, stock.thickness), length(d, stock.width), sawn,
                     note);
}

// Which tubes a made part serves, so that a new tube size costs the fewest new parts.
class Serves {
 public:
  explicit Serves(const Design &d) : design_(d), diameters_(parts::diameters_served(d)) {}

  std::string operator()(std::string_view part) const {
    if (part == ids::gas_port_block) {
      return "any tube" + with_family();
    }
    if (part == ids::base_plate || part == ids::cradle_stand || part == ids::tail_foot) {
      return "tubes " + diameters_ + with_family();
    }
    return part == ids::index_collar || part == ids::axial_stop ? "this tube's diameter"
                                                                : "this tube and cap";
  }

 private:
  std::string with_family() const {
    std::string text;
    for (const auto &member : design_.job.family) {
      text += (text.empty() ? "; common with " : ", ") + member->identity.name;
    }
    return text;
  }

  const Design &design_;
  std::string diameters_;
};

// "PETG" where a printed part bears its heat and nothing else stands against it; "no" otherwise.
std::string printed(const Design &d, const std::vector<checks::PartHeat> &heat, std::string_view part) {
  const auto found = std::ranges::find(heat, part, &checks::PartHeat::part);
  if (found == heat.end() || found->plastic.empty()) {
    return "no";
  }
  const bool others = !d.job.family.empty() && fixture::shared_in_family(part);
  return std::string(found->plastic) + (others ? " as far as this tube goes" : "");
}

class List {
 public:
  void buy(std::string name, int quantity, std::string size, std::string purpose) {
    parts_.push_back({std::move(name), "bought", quantity, "", std::move(size), 0.0, "", std::move(purpose)});
  }
  void make(ListedPart part) { parts_.push_back(std::move(part)); }
  std::vector<ListedPart> take() { return std::move(parts_); }

 private:
  std::vector<ListedPart> parts_;
};

// Of the shim washers of DIN 988 for these bores (8 x 14, 10 x 16), from memory: 6 mm wider than the bore.
Length shim_outside(const standards::Bearing &bearing) {
  return bearing.bore + units::millimetres(6.0);
}

void bought_fasteners(const Design &d, List &list) {
  const auto &l = d.layout;
  const auto screw = [&](std::string_view name, const standards::Screw &size, int quantity, Length grip,
                         std::string_view what) {
    const double listed = units::to_millimetres(fixture::screw_joint(size, grip).length);
    list.buy(std::string(name), quantity, fmt::format("ISO 4762 {} x {:.0f}", size.name, listed),
             std::string(what));
  };
  screw("socket screw", *l.body.end_screw, static_cast<int>(l.end_plate.screws.size()),
        l.end_plate.thickness - l.end_plate.counterbore_depth + l.gasket, "end plate to chamber body");
  screw("socket screw", *l.body.base_screw, static_cast<int>(l.body.base_screws.size()),
        l.base.thickness + l.body.bottom - l.body.z_min,
        "base plate and plenum cover to chamber body, from below");
  screw("socket screw", *l.block.mount_screw, static_cast<int>(l.block.mounts.size()),
        l.block.height - l.block.mount_counterbore_depth, "gas-port block to base plate");
  screw("socket screw", *l.stand.foot_screw, static_cast<int>(l.base.stand_screws.size()), l.base.thickness,
        "cradle stands to base plate, from below, with washers");
  const int rollers = 2 * static_cast<int>(l.stand.count);
  list.buy("shoulder screw", rollers, fmt::format("ISO 7379 {}", l.stand.axle->name), "roller axles");
  if (l.tail_foot.present) {
    screw("socket screw", *l.stand.foot_screw, static_cast<int>(l.tail_foot.stand_screws.size()),
          l.tail_foot.thickness, "tail stand to its foot, from below");
  }
  if (l.stop.present) {
    screw("socket screw", *l.stop.foot_screw, static_cast<int>(l.base.stop_screws.size()), l.base.thickness,
          "axial stop to base plate, from below, with washers");
  }
  screw("socket screw", *l.collar.clamp_screw, 1, 2.0 * l.collar.seat, "clamps the index collar on the tube");
  if (l.spindle.present) {
    list.buy("set screw", 2,
             fmt::format("ISO 4026 {} x {:.0f}, brass tip", l.spindle.screw->name,
                         std::floor(units::to_millimetres(l.spindle.radius - l.spindle.seat_radius))),
             "hold the plug's head in the spindle");
  }
  const double dowel = 2.0 * units::to_millimetres(l.base.dowel_radius);
  list.buy(
      "dowel pin", 2, fmt::format("ISO 8734 {:.0f} m6 x 24", dowel),
      "chamber body on the base plate through the plenum cover; grind a flat on either side of one, along "
      "the line to the other");
  list.buy("dowel pin", 1, fmt::format("ISO 8734 {:.0f} m6 x 16", dowel),
           "front cradle stand on the base plate");
  list.buy("set screw", 1, fmt::format("ISO 4026 {} x 10", l.end_plate.clamp_screw->name),
           "clamps the backing pin");
  list.buy("slug", 1, "brass, 3 mm diameter, 3 mm long", "under the set screw: it does not mar the pin");
  list.buy(
      "knurled screw", static_cast<int>(l.wiper.knobs.size()),
      fmt::format("{} x {:.0f}", l.wiper.knob->name, units::to_millimetres(fixture::wiper_joint(l).length)),
      "wiper plate to chamber body");
  list.buy("shim washer", 2 * rollers,
           fmt::format(
               "DIN 988 {:.0f} x {:.0f}, {:.1f} mm in all", units::to_millimetres(l.stand.bearing->bore),
               units::to_millimetres(shim_outside(*l.stand.bearing)), units::to_millimetres(l.stand.washer)),
           "on either side of a roller, on the axle's shoulder");
}

void bought_gas_parts(const Design &d, List &list) {
  const auto &l = d.layout;
  const auto &thread = d.job.gas.port_thread->name;
  if (l.stop.present) {
    const auto mm = [](Length v) { return units::to_millimetres(v); };
    list.buy("shoulder screw", 2,
             fmt::format("ISO 7379 {:g} x {:g} M{:g}", mm(l.stop.rod->shoulder), mm(l.stop.rod_length),
                         mm(l.stop.rod->thread)),
             "rods of the axial stop, press the collar at the height of the axis");
    list.buy("compression spring", 2,
             fmt::format("wire {:g}, coil {:g} outside, {:g} long, {:.2f} N/mm", mm(l.stop.spring_wire),
                         mm(l.stop.spring_mean + l.stop.spring_wire), mm(l.stop.spring_free),
                         0.5e-3 * l.stop.press / l.stop.preload.value()),
             "on the rods, under their heads");
    list.buy("lock nut", 2, fmt::format("ISO 10511 M{:g}, with washer", mm(l.stop.rod->thread)),
             "hold the rods in the stop");
  }
  list.buy("ball bearing", 2 * static_cast<int>(l.stand.count),
           fmt::format("ISO 15, {}", l.stand.bearing->number), "rollers under the tube");
  const auto &plug = l.plug;
  if (plug.seal.ring != nullptr) {
    list.buy("O-ring", 1, fmt::format("AS568 {}, silicone 50 Shore A", plug.seal.ring->dash), "end plug");
  } else {
    list.buy("rubber sleeve", 1,
             fmt::format("silicone 30 Shore A, {} x {} bore, {} long", length(d, 2.0 * plug.spigot_radius),
                         length(d, 2.0 * plug.hub_radius), length(d, plug.seal.groove_width)),
             "end plug: cut from tube or sheet, ends square");
  }
  if (plug.cross_screw != nullptr) {
    list.buy("set screw", 1, fmt::format("ISO 4026 {} x 5", plug.cross_screw->name),
             "closes the end plug's cross drilling; thread sealant free of oil");
  }
  const auto sheet = [&](Length a, Length b, Length thickness) {
    return fmt::format("{} x {}, {} thick", length(d, a), length(d, b), length(d, thickness));
  };
  list.buy(
      "wiper", 1, sheet(l.wiper.width, 2.0 * l.wiper.z_max, l.wiper.thickness),
      fmt::format("silicone sheet, 40 Shore A, cut with the wiper plate as template; hole for the tube {}",
                  length(d, 2.0 * l.wiper.hole_radius)));
  list.buy("gasket", 1, sheet(l.end_plate.width, l.end_plate.z_max - l.end_plate.z_min, l.gasket),
           fmt::format("silicone sheet, 60 Shore A, under the end plate; hole {}",
                       length(d, 2.0 * l.body.cavity_radius)));
  list.buy("gasket", 1, sheet(l.plenum_cover.length(), l.plenum_cover.width, l.gasket),
           fmt::format("silicone sheet, 60 Shore A, over the plenum cover; opening {} x {}",
                       length(d, l.body.plenum.length()), length(d, l.body.plenum.width)));
  list.buy("sealing screw", 1, std::string(l.end_plate.meter.thread->name),
           "closes the oxygen meter's port in the end plate");
  list.buy("fine-adjust needle valve", l.block.outlets, fmt::format("{} male", thread),
           "one each outlet of the block");
  list.buy("hose fitting", 2, fmt::format("{} male", thread), "block inlet, chamber inlet");
  list.buy("hose fitting", plug.has_exhaust ? 2 : 1, fmt::format("{} male", plug.port->name),
           "plug" + std::string(plug.has_exhaust ? " inlet and exhaust" : ""));
  list.buy("threaded plug", 1, fmt::format("{}", thread), "closes the drilling end of the gallery");
  list.buy("flowmeter", 2, "argon, 1 to 15 L/min (2 to 30 ft3/h)", "bore and chamber circuit");
  list.buy("foot", l.tail_foot.present ? 7 : 4,
           fmt::format("{} stud, 25 mm high at least", l.base.foot_screw->name),
           l.tail_foot.present
               ? "under base plate and tail foot: room for screw heads and keys; three set the "
                 "tail stand's height"
               : "under the base plate: room for screw heads and keys");
}

} // namespace

std::vector<ListedPart> list_parts(const checks::Design &d) {
  List list;
  const Serves serves(d);
  const auto heat = checks::part_heat(d);
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    if (part.volume > units::Volume{}) {
      list.make({std::string(part.name), "made", part.count, std::string(part.metal->title),
                 stock_text(d, part), part.mass().value(), printed(d, heat, part.name), serves(part.name)});
    }
  }
  bought_fasteners(d, list);
  bought_gas_parts(d, list);
  return list.take();
}

std::string parts_list_csv(const checks::Design &d) {
  std::string text =
      "item,name,kind,quantity,material,stock or size,mass a piece [kg],may be printed,serves\r\n";
  int item = 0;
  for (const ListedPart &part : list_parts(d)) {
    text += fmt::format("{},{},{},{},{},{},{},{},{}\r\n", ++item, csv_cell(part.name), part.kind,
                        part.quantity, csv_cell(part.material), csv_cell(part.size),
                        part.mass > 0.0 ? fmt::format("{:.3f}", part.mass) : "", part.printed,
                        csv_cell(part.serves));
  }
  return text;
}

} // namespace purgewright::report

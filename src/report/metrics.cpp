// The figures that people compare designs by.
#include "purgewright/report/compare.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/setups.hpp"
#include "purgewright/units/ids.hpp"

#include <array>
#include <cmath>
#include <limits>

namespace purgewright::report {
namespace {

using checks::Design;
using units::Dimension;

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

// Of all made parts.
template <class Value> double total(const Design &d, Value &&value) {
  double sum = 0.0;
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    sum += part.volume > units::Volume{} ? part.count * value(part) : 0.0;
  }
  return sum;
}

double total_mass(const Design &d) {
  return total(d, [](const fixture::PartMetal &part) { return part.mass().value(); });
}

double total_stock(const Design &d) {
  return total(d, [](const fixture::PartMetal &part) { return part.stock.volume().value(); });
}

double total_removed(const Design &d) {
  return total(d, [](const fixture::PartMetal &part) {
    return part.name == ids::purge_lance ? 0.0 : part.removed().value();
  });
}

double total_setups(const Design &d) {
  double sum = 0.0;
  for (const auto &part : fixture::count_setups(d.layout)) {
    sum += part.count();
  }
  return sum;
}

double total_hold(const Design &d) {
  double sum = 0.0;
  for (const auto *welds : {&d.heat.tacks, &d.heat.runs}) {
    for (const auto &weld : *welds) {
      sum += weld.reached ? weld.hold.value() : unknown;
    }
  }
  return sum;
}

double wait(const Design &d) {
  return d.purge.bore.reached && d.purge.chamber.reached ? d.purge.wait().value() : unknown;
}

// What is known from purge and heat alone.
template <double (*value)(const Design &)> double with_purge(const Design &d) {
  return d.purge_known ? value(d) : unknown;
}

constexpr std::array<Metric, metric_count> table{{
    {"volume.chamber_gas", "chamber gas", Dimension::volume, Better::smaller,
     [](const Design &d) { return d.volumes.chamber_gas.value(); }},
    {"volume.bore_gas", "bore gas", Dimension::volume, Better::smaller,
     [](const Design &d) { return d.volumes.bore_gas.value(); }},
    {"purge.wait", "wait", Dimension::time, Better::smaller, with_purge<wait>},
    {"purge.bore.welding.flow", "bore, welding", Dimension::flow, Better::neither,
     with_purge<[](const Design &d) { return d.purge.bore.welding.value(); }>},
    {"purge.chamber.welding.flow", "chamber, welding", Dimension::flow, Better::neither,
     with_purge<[](const Design &d) { return d.purge.chamber.welding.value(); }>},
    {"purge.bore.oxygen_floor", "oxygen in bore", Dimension::ratio, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.bore.welding_floor.oxygen; }>},
    {"purge.chamber.oxygen_floor", "oxygen, torch on", Dimension::ratio, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.chamber.welding_floor.oxygen; }>},
    {"purge.chamber.torch_away.oxygen_floor", "oxygen, torch away", Dimension::ratio, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.torch.away.best; }>},
    {"heat.hold.total", "all holds", Dimension::time, Better::smaller, with_purge<total_hold>},
    {"cycle.time", "time of a part", Dimension::time, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.use.cycle.value(); }>},
    {"gas.used.per_part", "gas of a part", Dimension::volume, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.use.per_part.value(); }>},
    {"gas.cost.per_part", "its cost", Dimension::cost, Better::smaller,
     with_purge<[](const Design &d) { return d.purge.use.cost; }>},
    {"gas.parts_per_bottle", "parts a bottle", Dimension::count, Better::larger,
     with_purge<[](const Design &d) { return std::floor(d.purge.use.parts_per_bottle); }>},
    {"heat.pin_contact.peak", "cap under the pin", Dimension::temperature, Better::smaller,
     with_purge<[](const Design &d) { return d.heat.pin_contact_peak.value(); }>},
    {"area.slot", "slot opening", Dimension::area, Better::smaller,
     [](const Design &d) { return d.areas.slot.value(); }},
    {"purge.bore.prepurge.flow", "bore flow", Dimension::flow, Better::neither,
     [](const Design &d) { return d.bounds.bore.flow.value(); }},
    {"purge.bore.prepurge.time_mixed", "bore time, mixed", Dimension::time, Better::smaller,
     [](const Design &d) { return d.bounds.bore.mixed.value(); }},
    {"purge.chamber.prepurge.flow", "chamber flow", Dimension::flow, Better::neither,
     [](const Design &d) { return d.bounds.chamber.flow.value(); }},
    {"purge.chamber.prepurge.time_mixed", "chamber time, mixed", Dimension::time, Better::smaller,
     [](const Design &d) { return d.bounds.chamber.mixed.value(); }},
    {"chamber.length", "body length", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.body.length().value(); }},
    {"chamber.width", "body width", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.body.width.value(); }},
    {"chamber.height", "body height", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.body.height().value(); }},
    {"port_block.length", "port block length", Dimension::length, Better::smaller,
     [](const Design &d) { return d.layout.block.length.value(); }},
    {"base_plate.length", "base plate length", Dimension::length, Better::smaller,
     [](const Design &d) { return (d.layout.base.x_max - d.layout.base.x_min).value(); }},
    {"heat.hot_zone", "hot tube", Dimension::length, Better::smaller,
     with_purge<[](const Design &d) { return d.heat.hot_zone.value(); }>},
    {"mass.total", "mass of all parts", Dimension::mass, Better::smaller, total_mass},
    {"setups.total", "set-ups", Dimension::count, Better::smaller, total_setups},
    {"stock.total", "stock", Dimension::volume, Better::smaller, total_stock},
    {"stock.total.removed", "chips removed", Dimension::volume, Better::smaller, total_removed},
}};

} // namespace

std::span<const Metric> metrics() {
  return table;
}

MetricValues measure(const Design &design) {
  MetricValues values;
  values.fill(std::numeric_limits<double>::quiet_NaN());
  for (std::size_t m = 0; m < table.size(); ++m) {
    if (design.layout.buildable()) {
      values[m] = table[m].value(design);
    }
  }
  return values;
}

} // namespace purgewright::report

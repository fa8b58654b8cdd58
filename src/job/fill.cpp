#include "job/filler.hpp"
#include "job/stock.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::job {

using enum Key;

void Filler::identity() {
  Identity &id = job_.identity;
  id.name = text(job_name, "", "required");
  id.title = text(job_title, id.name, "the job's name");
  id.revision = text(job_revision, "A", "first issue");
  id.prepared_by = text(job_prepared_by, "", "left blank");
}
void Filler::gas() {
  Gas &g = job_.gas;
  g.species = choice<GasSpecies>(gas_species);
  g.oxygen_in_supply = number(gas_oxygen_in_supply);
  g.oxygen_limit_bore = number(gas_oxygen_limit_bore);
  g.oxygen_limit_chamber = number(gas_oxygen_limit_chamber);
  g.supply_pressure = units::pascals(number(gas_supply_pressure));
  g.log = text(gas_log, "", "no measured readings are named");
  job_.log = draft_.log;
  g.log_use = choice<LogUse>(gas_log_use);
  g.log_response = units::seconds(number(gas_log_response));
  hose();
  port_thread();
}

void Filler::hose() {
  Hose &h = job_.gas.hose;
  h.material = name_of(gas_hose_material, number(gas_hose_material));
  constexpr std::string_view sold = "hose .170 in bore by 1/4 in, as inch dealers list it; common practice";
  h.inside_diameter = length(gas_hose_inside_diameter, units::inches(0.170), sold);
  h.wall = length(gas_hose_wall, units::inches(0.040), sold);
  h.supply_length = length(gas_hose_supply_length);
  h.bore_length = bore_hose_length();
  h.chamber_length = length(gas_hose_chamber_length);
}

// The plug lies at the far end of the tube, and is drawn away with it.
units::Length Filler::bore_hose_length() {
  constexpr double near = 0.3, slack = 1.0, step = 0.5; // m; common practice, no source
  const double tube = job_.tube.length.value();
  if (tube <= near) {
    return length(gas_hose_bore_length);
  }
  return units::metres(
      number(gas_hose_bore_length, step * std::ceil((tube + slack) / step), Basis::common_practice,
             "the tube's length and 1 m, in steps of 0.5 m: the plug lies at its far end, and turns "
             "and is drawn back with it; common practice"));
}

void Filler::port_thread() {
  const bool wide = job_.tube.inside_diameter >= units::millimetres(16);
  const double thread =
      wide ? by_units(gas_port_thread, "G1/8", "1/8 NPT", "G1/8, as most metric gas fittings",
                      "1/8 NPT, as most inch gas fittings")
           : by_units(gas_port_thread, "M5", "10-32 UNF", "M5, a bore under 16 mm leaves no room for G1/8",
                      "10-32 UNF, a bore under 16 mm leaves no room for 1/8 NPT");
  job_.gas.port_thread = standards::port_thread(name_of(gas_port_thread, thread));
}

void Filler::fixture() {
  FixtureWishes &f = job_.fixture;
  f.radial_clearance = length(fixture_radial_clearance);
  f.end_clearance = length(fixture_end_clearance);
  f.wall = length(fixture_wall);
  f.diffuser_hole =
      length(fixture_diffuser_hole, units::inches(0.081),
             "No. 46 drill, the smallest whose webs keep 1.5 mm, as many holes as slow the gas; "
             "common practice");
  f.circuits = count(fixture_circuits);
  f.plug = choice<PlugWish>(fixture_plug);
  f.cradle = choice<CradleWish>(fixture_cradle);
  f.chamber = choice<ChamberWish>(fixture_chamber);
  number(fixture_family, 0, Basis::fallback, "no other tube shares the bench");
  job_.family = draft_.family;
  const double slot_length = number(fixture_slot_length, 0, Basis::fallback, "absent: sized by the layout");
  const double slot_width = number(fixture_slot_width, 0, Basis::fallback, "absent: sized by the layout");
  f.slot_length = stated(fixture_slot_length) ? std::optional(units::metres(slot_length)) : std::nullopt;
  f.slot_width = stated(fixture_slot_width) ? std::optional(units::metres(slot_width)) : std::nullopt;
  const double material =
      by_units(fixture_material, "aluminium-6082", "aluminium-6061",
               "the usual machining bar of metric stockists", "the usual machining bar of inch stockists");
  f.material = standards::metal(name_of(fixture_material, material));
  constexpr double thick_share = 0.055; // of the diameter; common practice, no source
  const bool hot = little_metal() || job_.tube.wall > thick_share * job_.tube.outside_diameter;
  const double pin =
      hot ? number(fixture_pin_material, choice_index(fixture_pin_material, "titanium-grade-2"),
                   Basis::common_practice,
                   "a small cap, or one on a thick wall, gets hot under the pin: titanium forms "
                   "nothing that melts early with it; common practice")
          : number(fixture_pin_material, choice_index(fixture_pin_material, "stainless-304"),
                   Basis::common_practice,
                   "the pin's tip stands in the heat; stainless keeps its edge; common practice");
  f.pin_material = standards::metal(name_of(fixture_pin_material, pin));
}

void Filler::shop() {
  Shop &s = job_.shop;
  s.unit_system = choice<units::UnitSystem>(shop_units);
  s.sheet = static_cast<Sheet>(
      std::lround(by_units(shop_sheet, "A3", "Tabloid", "metric paper that holds a part on one sheet",
                           "inch paper that holds a part on one sheet")));
  s.projection = static_cast<Projection>(
      std::lround(by_units(shop_projection, "first", "third", "ISO 5456-2 practice of metric shops",
                           "ASME Y14.3 practice of inch shops")));
  s.argon_price = number(shop_argon_price);
  s.currency = stated(shop_argon_price) ? draft_[shop_argon_price].text : "EUR";
  s.bottle_water_volume = units::cubic_metres(number(shop_bottle_water_volume));
  s.bottle_pressure = units::pascals(number(shop_bottle_pressure));
  s.room_volume = units::cubic_metres(number(shop_room_volume));
  s.room_air_changes_per_hour = number(shop_room_air_changes_per_hour);
  s.draught = units::metres_per_second(number(shop_draught));
  number(shop_stock, 0, Basis::fallback, "no stock is listed");
  for (const std::string &text : draft_[shop_stock].list) {
    if (const auto item = parse_stock(text)) { // one that is not read is reported by conflicts()
      s.stock.push_back(*item);
    }
  }
}

void fill(const Draft &draft, Job &job) {
  Filler(draft, job).fill();
}

} // namespace purgewright::job

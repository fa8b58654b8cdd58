#include "purgewright/gas/figures.hpp"

#include "purgewright/units/ids.hpp"

#include <string>

namespace purgewright::gas {
namespace {

using units::Basis;
using units::Dimension;

struct CircuitIds {
  std::string_view flow, time, displaced, mixed, changes, velocity, volume, inlet, limit, name;
};

void list_circuit(const CircuitPurge &c, const CircuitIds &id, units::Figures &list) {
  const auto add = [&](std::string_view what, double value, Dimension dimension, std::string title,
                       std::string formula, std::vector<std::string> inputs, std::string source) {
    list.push_back({std::string(what), value, dimension, std::move(title), std::move(formula), std::move(inputs),
                    std::move(source), Basis::computed});
  };
  const std::string name(id.name);
  const std::string flow(id.flow), volume(id.volume), limit(id.limit), supply = "gas.oxygen_in_supply";
  add(id.flow, c.flow.value(), Dimension::flow, "Prepurge flow, " + name,
      "largest flow at which: " + std::string(c.bound), {std::string(id.inlet)},
      "McNaughton & Sinclair 1966 (jets); Turner 1966 (fountains); ceilings common practice, no source");
  add(id.velocity, c.inlet_velocity.value(), Dimension::velocity, "Speed of the gas where it enters, " + name,
      "flow / inlet area", {flow, std::string(id.inlet)}, "continuity");
  add(id.displaced, c.displaced.value(), Dimension::time, "Prepurge time if the gas displaces, " + name,
      "volume / flow", {volume, flow}, "Levenspiel, Chemical Reaction Engineering, plug flow");
  add(id.mixed, c.mixed.value(), Dimension::time, "Prepurge time if the gas mixes, " + name,
      "volume / flow x ln((0.2095 - supply) / (limit - supply))", {volume, flow, limit, supply},
      "NFPA 69 annex; Crowl & Louvar, sweep-through purging");
  add(id.time, c.time.value(), Dimension::time, "Prepurge time, " + name, "the mixed bound, on the safe side",
      {std::string(id.mixed)}, "NFPA 69 annex; Crowl & Louvar, sweep-through purging");
  add(id.changes, c.volume_changes, Dimension::ratio, "Volume changes in the prepurge, " + name,
      "flow x time / volume", {flow, std::string(id.time), volume}, "definition");
}

} // namespace

units::Figures figures(const Purge &purge) {
  units::Figures list;
  list_circuit(purge.bore,
               {ids::bore_prepurge_flow, ids::bore_prepurge_time, ids::bore_prepurge_time_displaced,
                ids::bore_prepurge_time_mixed, ids::bore_prepurge_volume_changes, ids::bore_inlet_velocity,
                ids::volume_bore_gas, ids::area_bore_inlet, "gas.oxygen_limit.bore", "bore circuit"},
               list);
  list_circuit(purge.chamber,
               {ids::chamber_prepurge_flow, ids::chamber_prepurge_time, ids::chamber_prepurge_time_displaced,
                ids::chamber_prepurge_time_mixed, ids::chamber_prepurge_volume_changes, ids::chamber_inlet_velocity,
                ids::volume_chamber_gas, ids::area_diffuser, "gas.oxygen_limit.chamber", "chamber circuit"},
               list);
  return list;
}

} // namespace purgewright::gas

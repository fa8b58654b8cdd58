#include "purgewright/gas/figures.hpp"

#include "purgewright/gas/hose.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <array>
#include <string>

namespace purgewright::gas {
namespace {

using units::Basis;
using units::Dimension;

constexpr std::string_view network_source =
    "network of stirred and swept zones; Levenspiel 1999 ch. 13-14, Taylor 1953, Aris 1956 (gas/network.hpp)";
constexpr std::string_view opening_source =
    "counter-flow diffusion, draught and hose permeation (gas/openings.hpp, gas/hose.hpp)";
constexpr std::string_view practice = "common practice, no source";

class List {
 public:
  void add(std::string id, double value, Dimension dimension, std::string title, std::string formula,
           std::vector<std::string> inputs, std::string_view source, Basis basis = Basis::computed) {
    list_.push_back({std::move(id), value, dimension, std::move(title), std::move(formula), std::move(inputs),
                     std::string(source), basis});
  }
  units::Figures take() { return std::move(list_); }

 private:
  units::Figures list_;
};

// What differs between the circuits.
struct Names {
  std::string prefix, words, volume, lines, inlet, limit, outlet, log_tanks;
  std::string covered, open;           // what gas leaves by, in the prepurge and while welding
  std::vector<std::string> openings;   // what lets oxygen in: hoses and holes
  std::string longest, longest_source; // how the bracket's upper end comes about
  std::string opening_source;          // of the laws, and of what is known of the hoses' walls
};

std::vector<std::string> floor_inputs(std::string flow, const Names &n, const std::string &outlet) {
  std::vector<std::string> inputs{std::move(flow), "gas.oxygen_in_supply", outlet};
  inputs.insert(inputs.end(), n.openings.begin(), n.openings.end());
  return inputs;
}

void list_prepurge(const CircuitBounds &b, const CircuitPlan &c, const Names &n, List &list) {
  const std::string flow = n.prefix + ".prepurge.flow";
  const std::string time = n.prefix + ".prepurge.time";
  const std::string supply = "gas.oxygen_in_supply";
  list.add(flow, b.flow.value(), Dimension::flow, "Prepurge flow, " + n.words,
           fmt::format("highest flow at which: {}", b.reason),
           {n.inlet, "gas.supply_pressure", "gas.hose.inside_diameter"},
           "jets laminar below Re 1000: McNaughton & Sinclair 1966; lines: Hagen-Poiseuille, Churchill 1977; "
           "ceiling: "
           "common practice, no source");
  list.add(n.prefix + ".prepurge.inlet_velocity", b.inlet_velocity.value(), Dimension::velocity,
           "Speed of the gas where it enters, " + n.words, "flow / inlet area", {flow, n.inlet},
           "continuity");
  list.add(n.prefix + ".prepurge.time_displaced", b.displaced.value(), Dimension::time,
           "Prepurge time if the gas displaces, " + n.words, "(lines + volume) / flow",
           {n.lines, n.volume, flow}, "Levenspiel 1999, plug flow");
  list.add(n.prefix + ".prepurge.time_mixed", b.mixed.value(), Dimension::time,
           "Prepurge time if the gas mixes, " + n.words,
           "lines / flow + volume / flow x ln((0.2095 - supply) / (limit - supply))",
           {n.lines, n.volume, flow, n.limit, supply},
           "NFPA 69 annex; Crowl & Louvar, sweep-through purging");
  list.add(time, c.time.value(), Dimension::time, "Prepurge time, " + n.words,
           c.reached
               ? fmt::format("first time the joint is under the limit; {}", c.regime)
               : "the limit is not reached at this flow, by the best network or by the stirred one: time to "
                 "within a tenth of the floor",
           {flow, n.volume, n.lines, n.limit, supply, n.prefix + ".tanks"}, network_source);
  list.add(n.prefix + ".prepurge.time_low", c.low.value(), Dimension::time,
           "Shortest the prepurge may take, " + n.words,
           "the same network with every space displaced (7 tanks), the pocket beyond a vent swept 1 bore "
           "diameter deep",
           {flow, n.volume, n.lines, n.limit, supply}, network_source);
  list.add(n.prefix + ".prepurge.time_high", c.high.value(), Dimension::time,
           "Longest the prepurge may take, " + n.words, n.longest, {flow, n.volume, n.lines, n.limit, supply},
           n.longest_source);
  list.add(n.prefix + ".prepurge.volume_changes", c.volume_changes, Dimension::ratio,
           "Volume changes in the prepurge, " + n.words, "flow x time / volume", {flow, time, n.volume},
           "definition");
  list.add(
      n.prefix + ".tanks", c.tanks, Dimension::ratio, "Equivalent stirred tanks, " + n.words,
      fmt::format("1 is well mixed, many is displaced; here: {}",
                  c.tanks_measured ? std::string_view("as the log shows, gas.log_use: apply") : c.regime),
      c.tanks_measured ? std::vector{n.log_tanks} : std::vector{flow, n.volume}, network_source);
  list.add(n.prefix + ".oxygen_after_thumb_rule", c.after_thumb_rule, Dimension::ratio,
           "Oxygen at the joint after three volume changes, " + n.words, "network after 3 x volume / flow",
           {n.volume, flow}, network_source);
  list.add(n.prefix + ".oxygen_after_thumb_rule_mixed", c.after_thumb_rule_mixed, Dimension::ratio,
           "The same if the space were well mixed, " + n.words, "0.2095 x exp(-3)", {}, "NFPA 69 annex");
  list.add(n.prefix + ".prepurge.oxygen_floor", c.prepurge_floor.oxygen, Dimension::ratio,
           "Oxygen floor at the prepurge flow, " + n.words,
           fmt::format("steady state of the network; {} brings {:.0f} % of it",
                       to_text(c.prepurge_floor.dominant), 100.0 * c.prepurge_floor.dominant_share),
           floor_inputs(flow, n, n.covered), n.opening_source);
  list.add(n.prefix + ".prepurge.line_drop", c.line_drop.value(), Dimension::pressure,
           "Pressure drop from regulator to the space, " + n.words, "hoses, passages and holes in series",
           {flow, "gas.hose.inside_diameter"}, "Churchill 1977; White, Fluid Mechanics; Sampson 1891");
  list.add(n.prefix + ".dead_volume_share", c.dead_volume_share, Dimension::ratio,
           "Lines over the space they fill, " + n.words, "lines / volume", {n.lines, n.volume}, "definition");
}

void list_welding(const CircuitPlan &c, const Names &n, List &list) {
  const std::string flow = n.prefix + ".welding.flow";
  list.add(flow, c.welding.value(), Dimension::flow, "Welding and postflow flow, " + n.words,
           std::string(c.welding_reason), {n.limit, "torch.gas_flow", n.outlet}, practice);
  list.add(n.prefix + ".oxygen_floor", c.welding_floor.oxygen, Dimension::ratio,
           "Oxygen floor at the welding flow, " + n.words,
           fmt::format("steady state of the network; {} brings {:.0f} % of it",
                       to_text(c.welding_floor.dominant), 100.0 * c.welding_floor.dominant_share),
           floor_inputs(flow, n, n.open), n.opening_source);
}

void list_bench(const Purge &p, List &list) {
  const std::string bore = "purge.bore.welding.flow";
  list.add("purge.bore.pressure", p.pressure.welding.value(), Dimension::pressure,
           "Bore pressure on the puddle while welding", "drop of the welding flow through the bore's outlet",
           {bore, std::string(ids::area_vent)}, "orifice, Cd 0.60; Sampson 1891 at small flow");
  list.add("purge.bore.pressure_prepurge", p.pressure.prepurge.value(), Dimension::pressure,
           "Bore pressure in the prepurge", "drop of the prepurge flow through the bore's outlet",
           {std::string(ids::bore_prepurge_flow), std::string(ids::area_vent)},
           "orifice, Cd 0.60; Sampson 1891");
  list.add("purge.bore.pressure_limit", p.pressure.limit.value(), Dimension::pressure,
           "Bore pressure allowed while welding",
           "least of 50 Pa and (2 gamma / (2 wall) - weight of the pool) / 4", {"tube.wall"},
           "Young-Laplace; gamma of liquid titanium: Paradis et al. 2002; safety factor 4 and 50 Pa: common "
           "practice");
  list.add(
      "purge.bore.trapped_rise", p.pressure.trapped.value(), Dimension::pressure,
      "Pressure rise in the bore if its outlet were shut during the last run",
      "p (1 / (1 - f + f T0/T1) - 1), f = (torch cup bore + tube bore) / 2 over the bore's length, T1 the "
      "shielding temperature",
      {"torch.cup_bore", "tube.inside_diameter", "tube.length", "weld.shielding_temperature"},
      "ideal gas law; reach of the heat common practice");
  list.add("purge.shield_ratio", p.bench.shield_ratio, Dimension::ratio,
           "Speed of the gas leaving the slot over the torch gas's",
           "((chamber flow + bore flow when its vent lies in the chamber) / open slot) / torch speed",
           {bore, "purge.chamber.welding.flow", std::string(ids::area_slot_welding), "torch.gas_flow",
            "torch.cup_bore"},
           practice);
  list.add("purge.torch_reynolds", p.bench.torch_reynolds, Dimension::ratio,
           "Reynolds number of the torch's gas in its cup", "4 flow / (pi bore kinematic viscosity)",
           {"torch.gas_flow", "torch.cup_bore"}, "definition; gas/properties.hpp");
  list.add(
      "purge.torch_core", p.bench.torch_core.value(), Dimension::length,
      "Radius of the torch's gas at the joint into which less air has mixed than the limit",
      "cup bore / 2 - 2 erfc^-1(2 limit / 0.2095) sqrt(D t), t = stickout / (torch speed / 2)",
      {"torch.cup_bore", "torch.gas_flow", "torch.stickout", "gas.oxygen_limit.chamber"},
      "Crank, The Mathematics of Diffusion, 2nd ed. (1975), eq. 2.14; half of the speed common practice");
  list.add("purge.draught_lying", p.bench.draught_lying.value(), Dimension::velocity,
           "Draught over the slot under which the argon lies still", "sqrt(g' H / 0.8)",
           {"chamber.cavity_radius", "chamber.height"}, "Uehara et al. 2000, bulk Richardson number 0.8");
  list.add("purge.draught_flushed", p.bench.draught_flushed.value(), Dimension::velocity,
           "Draught over the slot above which the chamber is swept", "sqrt(g' H / 0.4)",
           {"chamber.cavity_radius", "chamber.height"}, "Uehara et al. 2000, bulk Richardson number 0.4");
  if (p.bench.draught_warm > units::Velocity{}) {
    list.add("purge.draught_lying_warm", p.bench.draught_warm.value(), Dimension::velocity,
             "The same over a fixture that parts before have warmed",
             "sqrt(g' H / 0.8), g' of argon as warm as that",
             {"chamber.cavity_radius", "chamber.height", "heat.series.settled"},
             "Uehara et al. 2000, bulk Richardson number 0.8");
  }
  list.add("purge.start_of_day", p.bench.start_of_day.value(), Dimension::time,
           "Time to flush lines and block that stood idle, both circuits open at prepurge flow",
           "first time both lines' ends are under the stricter limit",
           {std::string(ids::volume_lines_supply), std::string(ids::volume_lines_bore),
            std::string(ids::volume_lines_chamber)},
           network_source);
}

constexpr std::string_view torch_source =
    "plume: Rouse, Yih & Humphreys 1952, heat by Churchill & Chu 1975; hot argon under the slot: Epstein "
    "1988; "
    "what an outflow leaves: Shaw & Whyte 1974 by analogy (gas/purge.hpp, Torch); not measured";

void list_range(const std::string &id, const OxygenRange &range, const std::string &title,
                const std::array<std::string, 3> &formulas, const std::vector<std::string> &inputs,
                List &list) {
  list.add(id, range.best, Dimension::ratio, title, formulas[0], inputs, torch_source);
  list.add(id + "_low", range.low, Dimension::ratio, title + ", least", formulas[1], inputs, torch_source);
  list.add(id + "_high", range.high, Dimension::ratio, title + ", most", formulas[2], inputs, torch_source);
}

void list_torch(const Purge &p, List &list) {
  const Torch &t = p.torch;
  const std::string slot(ids::area_slot_welding), away = "purge.chamber.torch_away.oxygen_floor",
                                                  open = "purge.chamber.cover_open.oxygen_floor";
  const std::vector<std::string> flows{"purge.bore.welding.flow", "purge.chamber.welding.flow", slot};
  list_range(open, t.cover_open, "Oxygen at the joint, cover open, torch not yet over the slot, joint cold",
             {"steady state of the network",
              "diffusion alone against the flow through the slot, nothing from the rear",
              "the network with the chamber stirred"},
             flows, list);
  std::vector<std::string> hot = flows;
  hot.insert(hot.end(), {"weld.shielding_temperature", "torch.cup_bore", "tube.outside_diameter"});
  list.add("purge.chamber.torch_away.drawn_in", t.drawn.value(), Dimension::flow,
           "Room air that the hot joint draws in, torch lifted when a hold ends",
           "plume of the tube's top ^ 3/8 x exchange of hot argon under the open slot ^ 5/8 x what half of "
           "the outflow leaves",
           hot, torch_source);
  std::vector<std::string> stirred = flows;
  stirred.emplace_back("purge.chamber.torch_away.drawn_in");
  list_range(away, t.away, "Oxygen at the joint, torch lifted when a hold ends, joint hot",
             {"the network stirred, with the air drawn in",
              "the same with the plume of the tube's top ^ 3/4 x the exchange ^ 1/4",
              "the same with argon as hot as the metal under the open slot"},
             stirred, list);
  std::vector<std::string> back{flows[0], flows[1], "torch.gas_flow"};
  list.add("purge.chamber.torch_back.oxygen_floor", t.back_floor, Dimension::ratio,
           "Oxygen at the joint at rest, torch back over it, before the arc",
           "the network with the torch's gas; hot argon beside the cup, mixed with it, as far as the outflow "
           "lets it",
           back, torch_source);
  back.insert(back.end(), {away + "_high", open + "_high", "purge.chamber.torch_back.oxygen_floor",
                           "gas.oxygen_limit.chamber", std::string(ids::volume_chamber_gas)});
  list.add(
      "purge.torch_preflow", t.preflow.value(), Dimension::time, "Torch over the joint before every arc",
      "volume / (circuits + torch / 2) x ln((most while away - floor) / (limit - floor)): stirred, half of "
      "the torch's gas turns back",
      back, "NFPA 69 annex; Crowl & Louvar, sweep-through purging; half: common practice, no source");
  back[3] = away;
  list.add("purge.torch_preflow_best", t.preflow_best.value(), Dimension::time,
           "The same with the best value and all of the torch's gas",
           "volume / (circuits + torch) x ln((while away - floor) / (limit - floor))", back,
           "NFPA 69 annex; Crowl & Louvar, sweep-through purging");
}

void list_hose(const job::Job &job, const HoseMaterial &hose, List &list) {
  list.add("gas.hose.permeability", hose.permeability / barrer, Dimension::ratio,
           "Oxygen that a hose's wall lets through, barrer",
           fmt::format("of {} (gas.hose.material); 1 barrer is 1e-10 cm3(STP) cm/(cm2 s cmHg)", hose.name),
           {}, hose.source, job.origin(job::Key::gas_hose_material).basis);
}

void list_use(const Purge &p, List &list) {
  list.add(std::string(ids::prepurge_wait), p.wait().value(), Dimension::time,
           "Prepurge to wait before the arc",
           "longer upper end of the circuits' brackets, 15 s at least for the oxygen meter to answer",
           {"purge.bore.prepurge.time_high", "purge.chamber.prepurge.time_high"}, practice);
  list.add(std::string(ids::cycle_time), p.use.cycle.value(), Dimension::time, "Time for one part",
           "wait + torch's preflow + first arc to the end of the last hold + 90 s handling",
           {std::string(ids::prepurge_wait), "purge.torch_preflow", std::string(ids::heat_cycle)}, practice);
  list.add(
      "gas.used.per_part", p.use.per_part.value(), Dimension::volume, "Gas for one part, torch included",
      "prepurge flows x wait + (welding flows + torch) x (preflow + first arc to the end of the last hold)",
      {std::string(ids::bore_prepurge_flow), std::string(ids::chamber_prepurge_flow),
       "purge.bore.welding.flow", "purge.chamber.welding.flow", "torch.gas_flow",
       std::string(ids::prepurge_wait), "purge.torch_preflow", std::string(ids::heat_cycle)},
      "sum over the cycle");
  list.add("gas.used.torch_preflow", p.use.preflow.value(), Dimension::volume,
           "Gas of one part for the torch's preflow before every arc",
           "(tacks + runs) x preflow x (welding flows + torch)",
           {"rotation.tacks", "rotation.runs", "purge.torch_preflow", "purge.bore.welding.flow",
            "purge.chamber.welding.flow", "torch.gas_flow"},
           "sum over the cycle");
  list.add("gas.used.start_of_day", p.use.start_of_day.value(), Dimension::volume,
           "Gas to flush the lines before the first part of a day", "(prepurge flows + torch) x 5 min",
           {std::string(ids::bore_prepurge_flow), std::string(ids::chamber_prepurge_flow), "torch.gas_flow"},
           practice);
  list.add("gas.cost.per_part", p.use.cost, Dimension::cost, "Gas cost of one part", "gas per part x price",
           {"gas.used.per_part", "shop.argon_price"}, "shop.argon_price");
  list.add("gas.parts_per_bottle", p.use.parts_per_bottle, Dimension::ratio,
           "Parts one bottle serves at best, without leaks and start of day",
           "bottle content from full to the pressure it is changed at / gas per part",
           {"shop.bottle.water_volume", "shop.bottle.pressure", "gas.used.per_part"},
           "real gas, Tegeler, Span & Wagner 1999; changed at 6895 kPa: AWS G2.4");
  list.add("room.oxygen", p.use.room_oxygen, Dimension::ratio,
           "Oxygen in the room after a working day, well mixed, at best: no leaks",
           "0.2095 (Q - R (1 - exp(-Q t / V))) / Q, R = gas per part / cycle + start of day / 8 h",
           {"shop.room.volume", "shop.room.air_changes_per_hour", "gas.used.per_part", "cycle.time",
            "gas.used.start_of_day"},
           "Fermilab ES&H, exhaust case; below 19.5 % leave: OSHA 29 CFR 1910.146");
  list.add("room.oxygen_after_bottle", p.use.room_after_bottle, Dimension::ratio,
           "Oxygen in the closed room when a full bottle has let out all its gas, well mixed",
           "0.2095 (V - gas of a full bottle) / V",
           {"shop.room.volume", "shop.bottle.water_volume", "shop.bottle.pressure"},
           "University of Nottingham; below 19.5 % leave: OSHA 29 CFR 1910.146");
}

} // namespace

units::Figures figures(const job::Job &job, const Bounds &bounds, const Purge &purge) {
  List list;
  const std::string outlet = job.tube.vent.count > 0 ? "tube.vent.diameter" : std::string(ids::area_vent);
  const HoseMaterial *hose = hose_material(job.gas.hose.material);
  const std::string openings =
      fmt::format("{}; hose of {}: {}", opening_source, job.gas.hose.material, hose->source);
  const Names bore{
      "purge.bore",
      "bore circuit",
      std::string(ids::volume_bore_gas),
      std::string(ids::volume_lines_bore),
      std::string(ids::area_bore_inlet),
      "gas.oxygen_limit.bore",
      outlet,
      "gas.log.bore.tanks",
      outlet,
      outlet,
      {"gas.hose.permeability", "gas.hose.inside_diameter", "gas.hose.wall", "gas.hose.supply_length",
       "gas.hose.bore_length"},
      "the network with every space stirred, and diffusion across the pocket beyond a vent once argon has "
      "turned it "
      "over; an outlet that does not "
      "stand uppermost keeps a layer of air: (4 / pi2) (D/2)2 / diffusivity x ln(0.2095 / level at which the "
      "stream outruns its weight) + stirred from there; a log's wait when applied",
      "gas/network.hpp; layers below Fr 1: Benjamin 1968, Lowe, Rottman & Linden 2005; pocket: Cormack, Leal "
      "& Imberger 1974; "
      "diffusion: Crank 1975",
      openings};
  const Names chamber{"purge.chamber",
                      "chamber circuit",
                      std::string(ids::volume_chamber_gas),
                      std::string(ids::volume_lines_chamber),
                      std::string(ids::area_diffuser),
                      "gas.oxygen_limit.chamber",
                      std::string(ids::area_slot_welding),
                      "gas.log.chamber.tanks",
                      std::string(ids::area_slot_covered),
                      std::string(ids::area_slot_welding),
                      {"gas.hose.permeability", "gas.hose.inside_diameter", "gas.hose.wall",
                       "gas.hose.supply_length", "gas.hose.chamber_length", std::string(ids::area_tube_gap),
                       "shop.draught"},
                      "the same network with every space stirred (1 tank); a log's wait when applied",
                      std::string(network_source),
                      openings};
  list_prepurge(bounds.bore, purge.bore, bore, list);
  list_prepurge(bounds.chamber, purge.chamber, chamber, list);
  list_welding(purge.bore, bore, list);
  list_welding(purge.chamber, chamber, list);
  list.add("purge.bore.layer_froude", purge.bore.layer_froude, Dimension::ratio,
           "Speed along the bore over sqrt(g' D): argon runs as a layer below 1",
           "flow / section / sqrt(g' D)", {std::string(ids::bore_prepurge_flow), "tube.inside_diameter"},
           "Benjamin 1968; Lowe, Rottman & Linden 2005; the limit of 1: common practice");
  list.add("purge.bore.prepurge.time_high_vent_above", purge.bore.high_vent_above.value(), Dimension::time,
           "Longest the prepurge may take, bore circuit, outlet uppermost",
           "the network with every space stirred, and diffusion across the pocket beyond a vent",
           {std::string(ids::bore_prepurge_flow), bore.volume, bore.lines, bore.limit}, network_source);
  list.add("purge.chamber.neutral_temperature", neutral_temperature(species_of(job)).value(),
           Dimension::temperature, "Temperature at which the purge gas weighs what room air weighs",
           "293 K x molar mass / that of air", {}, "ideal gas law");
  list_bench(purge, list);
  list_torch(purge, list);
  list_hose(job, *hose, list);
  list_use(purge, list);
  return list.take();
}

} // namespace purgewright::gas

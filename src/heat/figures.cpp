#include "purgewright/heat/figures.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <cmath>

namespace purgewright::heat {

namespace {

using units::Basis;
using units::Dimension;
using Ids = std::vector<std::string>;

constexpr std::string_view model_source = "transient conduction on wall and cap with moving Gaussian arc "
                                          "(heat/model.hpp); gas: heat/gas_film.hpp";
constexpr std::string_view practice = "common practice, no source";

class List {
 public:
  // `metals`: where the plan's metals are known from.
  explicit List(std::string_view metals = {})
      : source_(metals.empty() ? std::string(model_source) : fmt::format("{}; {}", model_source, metals)) {}
  void add(std::string id, double value, Dimension dimension, std::string title, std::string formula,
           Ids inputs, std::string_view source, Basis basis = Basis::computed) {
    list_.push_back({std::move(id), value, dimension, std::move(title), std::move(formula), std::move(inputs),
                     std::string(source), basis});
  }
  void time(std::string id, units::Time v, std::string title, std::string formula, Ids inputs,
            std::string_view source = {}) {
    add(std::move(id), v.value(), Dimension::time, std::move(title), std::move(formula), std::move(inputs),
        source.empty() ? std::string_view(source_) : source);
  }
  void temperature(std::string id, units::Temperature v, std::string title, std::string formula, Ids inputs) {
    add(std::move(id), v.value(), Dimension::temperature, std::move(title), std::move(formula),
        std::move(inputs), source_);
  }
  const std::string &source() const { return source_; }
  units::Figures take() { return std::move(list_); }

 private:
  std::string source_;
  units::Figures list_;
};

// What the temperatures of a plan follow from.
const Ids work{"heat.power", "heat.arc_radius", "heat.ambient", "weld.travel_speed", "tube.outside_diameter",
               "tube.wall",  "tube.length",     "cap.diameter", "cap.thickness"};

Ids work_and(Ids more) {
  more.insert(more.end(), work.begin(), work.end());
  return more;
}

double on_collar(units::Angle angle) {
  const double turn = 2.0 * units::pi;
  const double within = std::fmod(angle.value(), turn);
  return within < 0.0 ? within + turn : within;
}

void list_tack(const Weld &tack, std::size_t number, List &list) {
  const std::string id = fmt::format("heat.tack.{}", number), words = fmt::format("tack {}", number);
  const double middle = on_collar(0.5 * (tack.pass.start + tack.pass.end));
  list.add(id + ".angle", middle, Dimension::angle, fmt::format("Angle of {} on the index collar", words),
           "the first at the start angle, then the one opposite, then the farthest from all set",
           {"rotation.start_angle", "rotation.tacks"}, practice);
  list.time(id + ".time", tack.welding, fmt::format("Arc time of {}", words),
            "standing arc until both edges are 30 K above their melting, 0.5 s at least", work);
  list.time(id + ".hold", tack.hold, fmt::format("Hold under gas after {}", words),
            "until the hottest metal of the joint is below the shielding temperature",
            work_and({"heat.shielding_temperature", "torch.cup_bore"}));
  list.temperature(id + ".peak", tack.joint_peak, fmt::format("Peak at the joint, {}", words),
                   "highest mean through the metal, pool included", work);
  list.add(id + ".pool", tack.start_pool.value(), Dimension::length,
           fmt::format("Width of the pool, {}", words),
           "Gaussian of the heat that a standing arc has spread, above the liquidus", work, list.source());
  list.temperature(id + ".peak_cap", tack.cap_edge_peak, fmt::format("Peak of the cap's edge, {}", words),
                   "highest under the standing arc", work);
  list.temperature(id + ".peak_tube", tack.tube_edge_peak, fmt::format("Peak of the tube's edge, {}", words),
                   "highest under the standing arc", work);
}

void list_run_times(const Weld &run, const std::string &id, const std::string &words, const Ids &before,
                    List &list) {
  const double start = on_collar(run.pass.start);
  const Ids places{"rotation.start_angle", "rotation.runs", "rotation.overlap"};
  list.add(
      id + ".start_angle", start, Dimension::angle, fmt::format("Start of {} on the index collar", words),
      "start angle + (run - 1) x full turn / runs - overlap, in the sense of rotation", places, practice);
  list.add(id + ".end_angle", start + (run.pass.end - run.pass.start).value(), Dimension::angle,
           fmt::format("End of {} on the index collar", words),
           "start angle + run x full turn / runs, the last with the overlap on the first", places, practice);
  list.time(id + ".dwell", run.dwell, fmt::format("Arc stands at the start of {}", words),
            "until the joint has melted to its bottom", work);
  list.time(id + ".taper", run.taper, fmt::format("Current falls to nothing at the end of {}", words),
            "current then / 40 A/s, in whole tenths of a second, 0.5 s to 3 s",
            {id + ".end_current", "weld.current"}, practice);
  list.add(id + ".run_out", run.run_out.value(), Dimension::angle,
           fmt::format("Turn past the end of {} meanwhile", words), "taper x travel speed / tube radius",
           {id + ".taper", "weld.travel_speed", "tube.outside_diameter"}, "definition");
  list.time(id + ".time", run.welding, fmt::format("Arc time of {}", words),
            "dwell + angle x tube radius / travel speed + taper",
            {id + ".dwell", id + ".start_angle", id + ".end_angle", "tube.outside_diameter",
             "weld.travel_speed", id + ".taper"},
            "definition");
  Ids hold = work_and({"heat.shielding_temperature", "torch.cup_bore"});
  hold.insert(hold.end(), before.begin(), before.end());
  list.time(id + ".hold", run.hold, fmt::format("Hold under gas after {}", words),
            run.reached ? "until the hottest metal of the joint is below the shielding temperature"
                        : "longest hold that is computed: the metal is still above the shielding temperature",
            hold);
  list.time(id + ".uncovered_hold", run.uncovered_hold,
            fmt::format("Time until the tube outside the chamber's argon is cold enough, {}", words),
            "until the hottest wall beyond heat.covered is below the shielding temperature",
            {"heat.shielding_temperature", "heat.covered", id + ".time"});
}

void list_pool(const Weld &run, const std::string &id, const std::string &words, const Ids &inputs,
               List &list) {
  list.add(id + ".pool_width", run.pool_width.value(), Dimension::length,
           fmt::format("Widest pool, {}", words),
           "along the metal across the joint, where it is above the liquidus", inputs, list.source());
  list.add(id + ".pool_length", run.pool_length.value(), Dimension::length,
           fmt::format("Longest pool, {}", words), "along the joint, where it is above the liquidus", inputs,
           list.source());
  if (run.bottom_length.value() > 0.0) {
    list.add(id + ".bottom_length", run.bottom_length.value(), Dimension::length,
             fmt::format("Melted along the joint at the wall's bottom, {}", words),
             "Gaussian of the heat that a standing arc has spread, above the liquidus", inputs,
             list.source());
  }
  list.add(id + ".least_current", run.least_current, Dimension::ratio,
           fmt::format("Share of the current that the pedal comes down to, {}", words),
           "a foot that keeps the pool at heat.pool_wanted", {"heat.pool_wanted", id + ".pool_width"},
           "common practice, no source");
  list.add(id + ".end_current", run.end_current, Dimension::ratio,
           fmt::format("Share of the current when {} ends", words), "a foot that keeps the pool",
           {"heat.pool_wanted", id + ".pool_width"}, practice);
  list.temperature(id + ".end_peak", run.end_peak, fmt::format("Hottest of the joint as {} travels", words),
                   "in the second half of the travel, mean through the metal", inputs);
  list.temperature(id + ".pin_contact_peak", run.pin_contact_peak,
                   fmt::format("Peak of the cap under the pin, {}", words),
                   "highest in arc and hold, at the contact's outer edge", inputs);
}

// A spot's arc never leaves its start.
void list_peaks(const Weld &run, const std::string &id, const std::string &words, const Ids &inputs,
                List &list) {
  list.temperature(id + ".peak", run.joint_peak, fmt::format("Peak at the joint, {}", words),
                   "highest mean through the metal, pool included, at the start or on the way", inputs);
  if (run.start_pool.value() > 0.0) {
    const Ids standing = work_and({id + ".dwell"});
    list.temperature(id + ".start_peak", run.standing_peak,
                     fmt::format("Peak at the start of {}, under the arc that stands", words),
                     "hotter edge until the tube begins to turn", standing);
    list.add(id + ".start_pool", run.start_pool.value(), Dimension::length,
             fmt::format("Width of the pool when the tube begins to turn, {}", words),
             "Gaussian of the heat that a standing arc has spread, above the liquidus", standing,
             list.source());
  }
}

void list_run(const HeatPlan &plan, const Weld &run, std::size_t number, List &list) {
  const std::string id = fmt::format("heat.run.{}", number), words = fmt::format("run {}", number);
  Ids before;
  if (number > 1) {
    before = {fmt::format("heat.run.{}.hold", number - 1), "heat.torch_move"};
  }
  list_run_times(run, id, words, before, list);
  if (plan.interpass_temperature) {
    Ids inputs = before;
    inputs.emplace_back("weld.interpass_temperature");
    list.time(id + ".interpass_wait", run.interpass_wait, fmt::format("Wait before {}", words),
              "after the hold, until the hottest metal of the joint is at the interpass temperature", inputs);
  }
  list.temperature(id + ".start_temperature", run.start_temperature,
                   fmt::format("Temperature where the arc of {} strikes", words),
                   "left by what was welded before", before);
  list.temperature(id + ".joint_before", run.joint_before,
                   fmt::format("Hottest of the joint when {} starts", words),
                   "left by what was welded before", before);
  const Ids inputs = work_and({id + ".time"});
  list_peaks(run, id, words, inputs, list);
  list.temperature(id + ".o_ring_peak", run.o_ring_peak,
                   fmt::format("Peak of the tube over the plug's rubber, {}", words),
                   "highest in arc and hold", inputs);
  list.temperature(id + ".cap_centre_peak", run.cap_centre_peak,
                   fmt::format("Peak at the cap's centre, {}", words), "highest in arc and hold", inputs);
  list.add(id + ".bottom_peak", plan.pool_bottom(run).value(), Dimension::temperature,
           fmt::format("Pool's bottom as {} ends", words),
           "end peak - share of the current x heat per area under the arc x wall / (6 x pool's conductivity)",
           {id + ".end_peak", id + ".end_current", "heat.power", "heat.arc_radius", "tube.wall"},
           "slab heated evenly on one side: Carslaw & Jaeger, Conduction of Heat in Solids, from memory");
  list_pool(run, id, words, inputs, list);
  if (run.roller_peak) {
    list.temperature(id + ".roller_peak", *run.roller_peak,
                     fmt::format("Peak of the tube at the rollers, {}", words), "highest in arc and hold",
                     inputs);
  }
  list.add(id + ".hot_zone", run.hot_zone.value(), Dimension::length,
           fmt::format("Farthest wall above the shielding temperature, {}", words),
           "from the joint along the tube", work_and({"heat.shielding_temperature"}), list.source());
}

void list_limits(const HeatPlan &plan, List &list) {
  list.temperature("heat.o_ring.peak", plan.o_ring_peak, "Hottest tube over the plug's rubber",
                   "highest of all runs", work);
  list.add("heat.o_ring.limit", plan.o_ring_limit.value(), Dimension::temperature,
           "Temperature the plug's rubber stands", "silicone in dry gas, continuous, unless set", {},
           "seal makers' temperature guides, 200 degC, from memory", Basis::fallback);
  list.temperature("heat.wiper.peak", plan.wiper_peak, "Hottest tube in the chamber's wiper",
                   "highest of tacks and runs", work);
  list.temperature("heat.cap_centre.peak", plan.cap_centre_peak, "Hottest the cap's centre becomes",
                   "highest of all runs", work);
  list.add("heat.cap_centre.limit", plan.cap_centre_limit.value(), Dimension::temperature,
           "Temperature the cap's centre should stay under", "beta transus of the cap's metal, unless set",
           {}, "table of metals (standards/metals.cpp); as a limit: common practice, no source",
           Basis::fallback);
  list.temperature("heat.pin_contact.peak", plan.pin_contact_peak, "Hottest the cap becomes under the pin",
                   "highest of tacks and runs, at the contact's outer edge", work);
  list.add("heat.pin_contact.limit", plan.pin_contact_limit.value(), Dimension::temperature,
           "Temperature at which cap and pin melt into each other",
           "lowest melting mixture of the two metals", {},
           "binary phase diagrams: titanium-iron 1085 degC, titanium-copper 885 degC, from memory",
           Basis::standard);
  list.add("heat.pool_width", plan.pool_width.value(), Dimension::length, "Widest pool of all runs",
           "highest of heat.run.N.pool_width", work, list.source());
  list.add("heat.pool_wanted", plan.pool_target.value(), Dimension::length, "Pool width the pedal keeps",
           "3.5 walls; 0.29 tube.outside_diameter at most, 2.6 walls at least",
           {"tube.wall", "tube.outside_diameter"}, practice, Basis::common_practice);
  Ids ends{"weld.current"};
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    ends.push_back(fmt::format("heat.run.{}.end_current", i + 1));
  }
  list.add("heat.pedal.low", plan.pedal_low().value(), Dimension::current,
           "Current to which the pedal has come down where it comes down the farthest",
           "weld.current x lowest share at the end of a run", ends, practice);
  list.add("heat.pedal.high", plan.pedal_high().value(), Dimension::current,
           "Current to which the pedal has come down where it comes down the least",
           "weld.current x highest share at the end of a run", ends, practice);
  list.temperature("heat.joint.peak", plan.joint_peak, "Hottest the joint becomes",
                   "highest of tacks and runs", work);
  list.temperature("heat.rollers.peak", plan.roller_peak, "Hottest tube on the front rollers",
                   "highest of tacks and runs", work);
  list.temperature("heat.pin.peak", plan.pin_peak, "Backing pin at the end of the last hold",
                   "one lump of metal", work);
  list.temperature("heat.chamber.peak", plan.chamber_peak, "Chamber body at the end of the last hold",
                   "one lump of metal", work);
  list.add("heat.hot_zone", plan.hot_zone.value(), Dimension::length,
           "Farthest wall above the shielding temperature", "largest of all runs", work, list.source());
  list.add("heat.cavity", plan.cavity.value(), Dimension::length, "Chamber cavity behind the joint",
           "joint to the cavity's end", {"chamber.cavity_length"}, "layout of the fixture");
  list.add("heat.covered", plan.covered.value(), Dimension::length,
           "Tube in the chamber's argon, from the joint",
           "joint to the chamber's end: the argon leaves through the gap round the tube", {"chamber.length"},
           "layout of the fixture");
}

} // namespace

units::Figures figures(const HeatPlan &plan) {
  List list(plan.metal_source);
  list.add("heat.shielding_temperature", plan.shielding_temperature.value(), Dimension::temperature,
           "Temperature below which the gas may go", "weld.shielding_temperature",
           {"weld.shielding_temperature"}, "weld.shielding_temperature");
  list.add("heat.power", plan.power.value(), Dimension::power, "Arc power into the metal",
           "arc_efficiency x voltage x current", {"weld.arc_efficiency", "weld.voltage", "weld.current"},
           "definition of arc efficiency");
  list.add("heat.ambient", plan.ambient.value(), Dimension::temperature,
           "Temperature of work and room at the start", "20 degC", {}, practice, Basis::common_practice);
  list.add("heat.arc_radius", plan.arc_radius.value(), Dimension::length,
           "Standard deviation of the arc's heat on the metal", "", {},
           "1.5 mm, of measured arcs from 1.3 to 2.5 mm: Tsai & Eagar, Welding J. 64, 346-s (1985)",
           Basis::standard);
  list.add("heat.tack_length", plan.tack_length.value(), Dimension::length, "Length of a tack", "3 mm", {},
           practice, Basis::common_practice);
  Ids holds, arcs;
  for (std::size_t i = 0; i < plan.tacks.size(); ++i) {
    list_tack(plan.tacks[i], i + 1, list);
    holds.push_back(fmt::format("heat.tack.{}.hold", i + 1));
    arcs.push_back(fmt::format("heat.tack.{}.time", i + 1));
  }
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    list_run(plan, plan.runs[i], i + 1, list);
    holds.push_back(fmt::format("heat.run.{}.hold", i + 1));
    arcs.push_back(fmt::format("heat.run.{}.time", i + 1));
  }
  list.add("heat.torch_move", plan.torch_move.value(), Dimension::time,
           "Time from the end of a hold to the next arc",
           "5 s to turn the tube and place the torch, and the torch's preflow",
           plan.torch_preflow.value() > 0.0 ? Ids{"purge.torch_preflow"} : Ids{}, practice,
           Basis::common_practice);
  Ids postflow = holds;
  postflow.emplace_back("heat.torch_move");
  list.time(std::string(ids::postflow_time), plan.postflow(), "Postflow to set on the torch",
            "longest hold + torch move", postflow);
  list.time("heat.arc_time", plan.arc_time, "Arc time of all tacks and runs", "sum over tacks and runs",
            arcs);
  Ids eased{"heat.power", "heat.arc_time"};
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    eased.push_back(fmt::format("heat.run.{}.least_current", i + 1));
  }
  list.add("heat.mean_power", plan.energy.in / plan.arc_time.value(), Dimension::power,
           "Mean arc power into the metal", "arc power as the pedal eases it, over the arc time",
           std::move(eased), list.source());
  Ids cycle = arcs;
  cycle.insert(cycle.end(), postflow.begin(), postflow.end());
  for (std::size_t i = 0; plan.interpass_temperature && i < plan.runs.size(); ++i) {
    cycle.push_back(fmt::format("heat.run.{}.interpass_wait", i + 1));
  }
  list.time(std::string(ids::heat_cycle), plan.cycle, "First arc to the end of the last hold",
            "sum of arcs, holds, torch moves and waits", cycle);
  list_limits(plan, list);
  return list.take();
}

namespace {

// What rules judge on the settled fixture too.
void list_settled_peaks(const HeatPlan &warm, List &list) {
  const Ids inputs = work_and({"heat.series.settled"});
  const auto add = [&](std::string_view of, units::Temperature peak, std::string_view title) {
    list.temperature(fmt::format("heat.series.{}.peak", of), peak,
                     fmt::format("{}, on the settled fixture", title),
                     "highest of tacks and runs, chamber and gas at heat.series.settled", inputs);
  };
  add("o_ring", warm.o_ring_peak, "Hottest tube over the plug's rubber");
  add("wiper", warm.wiper_peak, "Hottest tube in the chamber's wiper");
  add("rollers", warm.roller_peak, "Hottest tube on the front rollers");
  add("cap_centre", warm.cap_centre_peak, "Hottest the cap's centre becomes");
  add("pin_contact", warm.pin_contact_peak, "Hottest the cap becomes under the pin");
}

} // namespace

units::Figures figures(const Series &series, fixture::ChamberKind chamber) {
  constexpr std::string_view lump = "lump of metal that cools in still air (heat/series.hpp)";
  constexpr std::string_view strip = "chamber on a base plate that conducts (heat/series.hpp)";
  const Ids settled{"heat.series.power", "heat.series.time_constant", std::string(ids::cycle_time),
                    std::string(ids::heat_cycle), "heat.ambient"};
  List list;
  list.add("heat.series.power", series.heat / series.period.value(), Dimension::power,
           "Mean heat into the fixture, parts one after another",
           "(mean power x arc time / arc efficiency - heat left in tube and cap) / time for one part",
           {"heat.mean_power", "heat.arc_time", "weld.arc_efficiency", std::string(ids::cycle_time)}, lump);
  Ids masses{"mass.chamber-end-plate", "mass.base-plate", "chamber.length", "chamber.width",
             "chamber.height"};
  for (const std::string_view wall : fixture::chamber_walls(chamber)) {
    masses.push_back(fmt::format("mass.{}", wall));
  }
  list.time("heat.series.time_constant", series.time_constant(), "Time constant of the fixture's warming",
            "heat capacity of chamber, end plate and base plate / their loss to the room", masses, lump);
  list.add("heat.series.settled", series.settled.value(), Dimension::temperature,
           "Fixture after many parts one after another",
           "room + sum over the modes of chamber and base plate: rise by one part, spread over its arcs and "
           "holds, / (1 - exp(-rate x time for one part))",
           settled, strip);
  list.temperature(
      "heat.series.settled_on_plastic", series.settled_on_plastic,
      "Chamber after many parts, on a base plate of plastic",
      "room + rise by one part / (1 - exp(-time for one part / time constant)), without the base plate",
      settled);
  if (series.warm) {
    Ids holds;
    const auto list_holds = [&](std::string_view name, const std::vector<Weld> &welds) {
      for (std::size_t i = 0; i < welds.size(); ++i) {
        holds.push_back(fmt::format("heat.series.{}.{}.hold", name, i + 1));
        list.time(holds.back(), welds[i].hold,
                  fmt::format("Hold after {} {} on the settled fixture", name, i + 1),
                  "time until cold enough, chamber and gas at heat.series.settled",
                  work_and({"heat.series.settled"}));
      }
    };
    list_settled_peaks(*series.warm, list);
    list_holds("tack", series.warm->tacks);
    list_holds("run", series.warm->runs);
    if (series.warm->hand_warm) {
      list.time(
          "heat.series.hand_warm", *series.warm->hand_warm,
          "From the last hold until a bare hand may touch tube and cap, on the settled fixture",
          "until nothing of them is above 51 degC, left where they are; in a fixture warmer than 46 degC "
          "until they are 5 K above it and then it has cooled to 46 degC, no part following",
          work_and({"heat.series.settled", "heat.series.time_constant"}),
          "ISO 13732-1:2006, contact of 1 min, from memory");
    }
    holds.emplace_back("heat.torch_move");
    list.time("heat.series.postflow", series.warm->postflow(),
              "Postflow to set on the torch once the fixture has settled", "longest hold + torch move",
              holds);
  }
  return list.take();
}

units::Figures figures(const RunAdvice &advice) {
  const Ids inputs = work_and({"rotation.overlap", "heat.o_ring.limit", "heat.cap_centre.limit",
                               "heat.pin_contact.limit", "heat.covered"});
  const std::string unit_note = "coarse plans of 1 run upwards; 0 when none keeps within the limits";
  List list;
  list.add("heat.runs.fewest", advice.fewest, Dimension::count, "Fewest runs within the limits", unit_note,
           inputs, model_source);
  list.add("heat.longest_run", advice.longest_run.value(), Dimension::angle, "Longest run within the limits",
           "full turn / fewest runs + overlap", {"heat.runs.fewest", "rotation.overlap"}, "definition");
  return list.take();
}

units::Figures figures(const OrderAdvice &advice) {
  constexpr std::string_view shrinkage =
      "0.10 x section / thickness of a butt weld: Blodgett, Design of Welded Structures (heat/shrinkage.hpp)";
  List list;
  const auto add = [&](std::string_view name, const OrderAdvice::Row &row) {
    const std::string id = fmt::format("heat.order.{}", name);
    list.add(id + ".rim_shift", row.rim_shift.value(), Dimension::length,
             fmt::format("Largest pull of the cap's rim to one side on the way, {} runs", name),
             "0.10 x pool width x first harmonic of the share that is welded",
             {"rotation.runs", "heat.pool_width"}, shrinkage);
    list.time(id + ".cycle", row.cycle,
              fmt::format("First arc to the end of the last hold, {} runs, by the coarse plan", name),
              "coarse plan", work_and({"rotation.runs"}));
  };
  add("consecutive", advice.consecutive);
  add("alternating", advice.alternating);
  return list.take();
}

} // namespace purgewright::heat

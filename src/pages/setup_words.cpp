#include "setup_words.hpp"

#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace purgewright::pages {
namespace {

using report::bench_time;
using report::Findings;
using report::oxygen_limit_text;
using units::Dimension;

std::string both(units::VolumeFlow flow) {
  return fmt::format("{} | {}", report::litres_per_minute(flow), report::cubic_feet_per_hour(flow));
}

std::string shop(const Findings &f, double si, Dimension dimension, int digits = 4) {
  return units::shop_text(si, dimension, f.design.job.shop.unit_system, digits);
}

bool vented(const Findings &f) {
  return f.design.job.tube.vent.count > 0;
}

// The vent breathes into the chamber: no meter reaches the bore's gas alone.
bool vents_in_chamber(const Findings &f) {
  return vented(f) && f.design.job.tube.vent.from_joint < -f.design.layout.body.cavity_start;
}

std::string_view outlet(const Findings &f) {
  return vented(f) ? "the tube's vent" : "the plug's outlet";
}

// From the end of the last hold, on a warm fixture, until a bare hand may touch tube and cap.
std::string hand_warm_text(const Findings &f) {
  const auto wait = hand_warm(f);
  return wait ? minutes(*wait) : std::string("gloves");
}

std::string metal_limit(const Findings &f) {
  return report::limit_text(f, f.design.heat.shielding_temperature);
}

TurnRow turn_row(const Findings &f, bool tack, std::size_t number, const heat::Weld &weld) {
  return {.tack = tack,
          .name = fmt::format("{} {}", tack ? "tack" : report::run_word(f), number + 1),
          .collar = tack ? report::collar_degrees(0.5 * (weld.pass.start + weld.pass.end))
                         : report::collar_degrees(weld.pass),
          .tapes =
              tack || weld.pass.extent() == units::Angle{} ? std::string() : report::tapes_text(f, number),
          .arc = fmt::format("{:.1f} s", weld.welding.value()),
          .hold = report::longer_hold_text(f, tack, number),
          .before = report::temperature_text(f, weld.joint_before),
          .pool = shop(f, (tack ? weld.start_pool : weld.pool_width).value(), Dimension::length, 2)};
}

// Where the vent must stand, and what it costs elsewhere.
std::string outlet_place(const Findings &f) {
  const auto &purge = f.design.purge;
  if (purge.needs_outlet_above()) {
    return fmt::format("VENT UPPERMOST: anywhere else it takes {}. ", bench_time(purge.bore.high));
  }
  return vented(f) ? "Vent uppermost. " : "";
}

} // namespace

std::optional<units::Time> hand_warm(const Findings &f) {
  return f.design.series.warm ? f.design.series.warm->hand_warm : std::nullopt;
}

std::string minutes(units::Time time) {
  return fmt::format("{:.0f} min", std::ceil(time.value() / 60.0));
}

// Where it reads, and what it must show.
std::string meter_place(const Findings &f) {
  const auto &gas = f.design.job.gas;
  if (vents_in_chamber(f)) {
    return fmt::format("{} in the end plate's port: none reaches the bore alone",
                       oxygen_limit_text(std::min(gas.oxygen_limit_bore, gas.oxygen_limit_chamber)));
  }
  return fmt::format("{} at {} and under {} in the chamber", oxygen_limit_text(gas.oxygen_limit_bore),
                     outlet(f), oxygen_limit_text(gas.oxygen_limit_chamber));
}

std::vector<GasRow> gas_rows(const Findings &f) {
  const auto &purge = f.design.purge;
  const auto &job = f.design.job;
  const std::string bore = both(purge.bore.prepurge), chamber = both(purge.chamber.prepurge);
  const std::string bore_weld = both(purge.bore.welding), chamber_weld = both(purge.chamber.welding);
  const auto changes = [&](const gas::CircuitPlan &plan, units::Volume space) {
    return std::floor(units::ratio(plan.prepurge * report::told(purge.wait()), space));
  };
  const std::string torch = both(job.torch.gas_flow), postflow = report::longer_postflow_text(f);
  return {
      {"Start of day", bore, chamber, torch,
       fmt::format("{:.0f} min", gas::start_of_day_flush.value() / 60.0),
       "Plug in a tube, cover closed. All three lines hold air overnight: flush it and damp out before the "
       "first "
       "part, the torch's by its purge button or valve."},
      {"1  Prepurge, cover closed", bore, chamber, "-", "\u2265 " + bench_time(f.design.purge.wait()),
       fmt::format(
           "{}Until the meter is under {}, falling or steady; at least this long ({:.0f} volumes of the "
           "bore, {:.0f} of the chamber).",
           outlet_place(f), meter_place(f), changes(purge.bore, f.design.volumes.bore_gas),
           changes(purge.chamber, f.design.volumes.chamber_gas))},
      {"2  Turn down, open cover", bore_weld, chamber_weld, torch, "no wait",
       "Both down BEFORE the arc, or the bore's gas lifts the puddle. FOOT OFF THE PEDAL: it strikes by "
       "itself "
       "after its preflow. Torch gas by valve or purge button, torch over the slot, then slide the cover "
       "aside under it."},
      {"3  Before each arc", bore_weld, chamber_weld, torch, bench_time(purge.torch.preflow),
       fmt::format(
           "Torch with gas over the joint this long; a machine whose preflow is shorter: by its valve. The "
           "circuits' flow keeps the chamber full, the torch's gas covers the joint: {} oxygen there with "
           "half of the torch's gas. Keep "
           "the torch there while you turn: lifted, room air brings {}.",
           report::oxygen_text(purge.chamber.welding_floor.oxygen),
           report::oxygen_text(purge.torch.away.best))},
      {"4  Tack and weld", bore_weld, chamber_weld, torch, "see table",
       fmt::format("Puddle bright and flat; {}meter steady.",
                   vents_in_chamber(f) ? "" : fmt::format("gas leaves freely by {}; ", outlet(f)))},
      {"5  Hold after each", bore_weld, chamber_weld, torch, "see table",
       fmt::format("Set torch postflow to {}; a machine that ends sooner: by its valve. Torch stays over the "
                   "joint, the tube at rest, until below {}.",
                   postflow, metal_limit(f))},
      {"6  After the last hold", "off", "off", "off", hand_warm_text(f),
       fmt::format("Nothing above {} any more, the cap under the pin included. Heat-proof gloves and tongs "
                   "for part, collar, knobs and plug{}.",
                   metal_limit(f), hand_warm(f) ? "; bare hands only after this time" : ": no bare hands")},
  };
}

int free_turn(const Findings &f) {
  units::Angle least{}, most{};
  for (const auto *list : {&f.design.heat.tacks, &f.design.heat.runs}) {
    for (const heat::Weld &weld : *list) {
      const units::Angle on = weld.pass.end >= weld.pass.start ? weld.run_out : -weld.run_out;
      least = std::min({least, weld.pass.start, weld.pass.end + on});
      most = std::max({most, weld.pass.start, weld.pass.end + on});
    }
  }
  constexpr double step = 10.0; // deg
  return static_cast<int>(step * std::ceil(units::to_degrees(most - least) / step));
}

// How this kind of plug is set.
std::string plug_step(const Findings &f) {
  const std::string with_lance = f.design.layout.lance.present ? " with its lance" : "";
  const std::string free = fmt::format(" {} free for {} deg of turn{}.", vented(f) ? "Hose" : "Hoses",
                                       free_turn(f), vented(f) ? "" : ", outlet open");
  switch (f.design.layout.plug.kind) {
  case fixture::PlugKind::bore_ring:
    return fmt::format("Push the end plug{} home with a twist, shoulder against the tube.", with_lance) +
           free;
  case fixture::PlugKind::expanding:
    return fmt::format(
               "Slide the end plug{} in, bush against the tube; turn the knob until the rubber holds.",
               with_lance) +
           free;
  case fixture::PlugKind::cup:
    return fmt::format("Push the end plug{} over the tube with a twist until the tube's end stands in it.",
                       with_lance) +
           free;
  }
  return {};
}

// How tube and plug get onto the rollers, and what stands beside them.
std::vector<std::string> cradle_steps(const Findings &f) {
  const auto &layout = f.design.layout;
  const auto &job = f.design.job;
  std::vector<std::string> steps{plug_step(f)};
  if (layout.cradle.kind == fixture::CradleKind::spindle) {
    steps.emplace_back("Spindle over the fitting and onto the plug's head; set screws tight, clear of the "
                       "cross drilling. From "
                       "behind onto "
                       "the rollers, through the loose index collar, tube into the chamber.");
  } else {
    steps.emplace_back("Tube on the rollers, through the loose index collar and into the chamber.");
  }
  if (layout.tail_foot.present) {
    steps.emplace_back("Tail stand: turn its three feet until the tube just rests on all its rollers.");
  }
  if (job.rotation.swing_radius > -layout.body.z_min) {
    steps.push_back(fmt::format("Rear end of the base plate at the bench's edge: what turns with the tube "
                                "swings {} round its axis.",
                                shop(f, job.rotation.swing_radius.value(), Dimension::length)));
  }
  return steps;
}

namespace {

// The cap gets so hot under a pin of its own metal that the two would bond.
bool cap_bonds(const Findings &f) {
  const auto rule = std::ranges::find(f.rules, "heat.pin_bonds", &checks::RuleResult::id);
  return rule != f.rules.end() && rule->status != checks::Status::pass;
}

} // namespace

std::vector<std::string> loading_steps(const Findings &f) {
  const bool inch = f.design.job.shop.unit_system == units::UnitSystem::inch;
  std::vector<std::string> steps{fmt::format("Deburr. Oxide off {} each side of the joint, inside and out, "
                                             "and off the cap: scraper or new stainless brush kept for "
                                             "titanium.",
                                             inch ? "1 in" : "25 mm"),
                                 "Pin cold to the hand, or wiped dry alone. Wash cap, "
                                 "tube end and pin face: acetone or alcohol, NEVER chlorinated. "
                                 "Lint-free cloth and gloves from here on. Dry, "
                                 "vapour gone, bottle away before the arc."};
  if (cap_bonds(f)) {
    steps.emplace_back(
        "Pin's face: boron nitride or yttria stop-off, thin, dried 5 min, none on the joint. Without "
        "it the hot cap bonds to the pin.");
  }
  std::ranges::move(cradle_steps(f), std::back_inserter(steps));
  steps.push_back(fmt::format(
      "Cover{} aside: draw the tube back{}, set the cap on it with tweezers, push it until the cap bears on "
      "the backing pin, edges even all round (Fit, above). {} Its zero at the upper edge of the front "
      "stand's far ear: the pointer. Its work lead hangs free.",
      f.design.layout.mask.present ? " and slot mask" : "",
      vented(f) ? ", its vent uppermost (argon runs under air)" : "",
      f.design.layout.stop.present
          ? "Now clamp the index collar against the stop's rods, their springs pressed in: they press the "
            "cap "
            "on."
          : "Clamp the index collar beside the front stand. NO AXIAL STOP here: a helper presses the plug "
            "forward until the last tack is cold; from then the cap is held. Look before each run that it "
            "still bears."));
  steps.push_back(fmt::format(
      "Oxygen meter: sealing screw out of the end plate's port, its hose in and left there{}.",
      vents_in_chamber(f) ? "" : "; the bore's at the end of its outlet. One meter reads both in turn"));
  if (f.design.layout.mask.present) {
    steps.emplace_back(
        "Slot mask on the chamber, its window over the joint, its ends taped down with aluminium "
        "foil tape. It stays while you weld.");
  }
  steps.push_back(fmt::format(
      "Cover closed. Prepurge until the meter is under both limits, at least {}. No meter: {} and a "
      "coupon (second page).",
      bench_time(f.design.purge.wait()), wait_without_meter(f)));
  steps.push_back(fmt::format(
      "FOOT OFF THE PEDAL. Both circuits down. Torch gas by its own valve or purge button, torch over the "
      "closed slot; cover aside under it, hand out. Wait {}, read the meter again. Hood down; only then the "
      "pedal.",
      torch_preflow(f)));
  const auto &rotation = f.design.job.rotation;
  const bool spots = rotation.seam == job::Seam::spots;
  steps.push_back(fmt::format(
      "Tacks, then {0}, as the table says. Before the hood: mark to the pointer (short line: tack, long "
      "line: "
      "{1}){2}. Weld, foot off, hold, turn to the next: where its angle is the smaller, BACK, so that hoses "
      "never wind "
      "up.{3}",
      spots ? "spots" : "runs", spots ? "spot" : "run starts",
      spots ? "" : ", felt tapes T1, T2 ... where runs 1, 2 ... end",
      spots
          ? std::string()
          : fmt::format(" Looking at the cap, the tube turns {} under the arc.",
                        rotation.direction == job::Direction::clockwise ? "counterclockwise" : "clockwise")));
  return steps;
}

namespace {

// A chamber that parts in a row warm beyond argon's neutral temperature holds it in no air at all.
std::vector<std::string> draught_words(const Findings &f) {
  const auto &bench = f.design.purge.bench;
  const bool holds_warm = bench.draught_warm > units::Velocity{};
  std::vector<std::string> words{
      fmt::format("Air over the bench faster than {}{}: close doors and fans.",
                  report::air_speed(f, holds_warm ? bench.draught_warm : bench.draught_lying),
                  holds_warm ? "" : " (chamber cold)")};
  if (!holds_warm) {
    const auto rises = gas::neutral_temperature(gas::species_of(f.design.job));
    words.push_back(fmt::format("Chamber over {}, by a contact thermometer on its top beside the slot: its "
                                "argon rises out. Pause until it is cooler.",
                                shop(f, rises.value(), Dimension::temperature, 3)));
  }
  return words;
}

// Where the tube gets too warm for its rollers. What the plan itself comes to is no reason to stop.
std::vector<std::string> roller_words(const Findings &f) {
  const auto rule = std::ranges::find(f.rules, "heat.rollers", &checks::RuleResult::id);
  if (rule == f.rules.end() || rule->status == checks::Status::pass) {
    return {};
  }
  const units::Temperature planned = checks::hottest(f.design, &heat::HeatPlan::roller_peak);
  constexpr double more = 20.0, step = 10.0; // K
  const double stop = step * std::ceil((planned.value() + more - units::celsius(0.0).value()) / step);
  return {
      fmt::format("Tube beside the front rollers over {} by a touch probe, tube at rest (this plan comes to "
                  "{}, more than bearings' grease stands for long: renew rollers that run rough): wait "
                  "before the next arc, gas "
                  "on.",
                  shop(f, units::celsius(stop).value(), Dimension::temperature, 3),
                  report::temperature_text(f, planned))};
}

} // namespace

std::vector<std::string> stop_conditions(const Findings &f) {
  const auto &job = f.design.job;
  std::vector<std::string> stops{
      "Oxygen monitor below 19.5 %: EVERYONE OUT FIRST. Bottle shut only from outside or on the way.",
      fmt::format("Meter above {} inside or {} outside: do not strike. Find the leak.",
                  oxygen_limit_text(job.gas.oxygen_limit_bore),
                  oxygen_limit_text(job.gas.oxygen_limit_chamber)),
      vents_in_chamber(f)
          ? std::string("The puddle bulges: arc off, bore's valve shut, look whether the vent is clear.")
          : fmt::format("No flow out of {}, or the puddle bulges: arc off, open the outlet.", outlet(f)),
      "A tack or run shows more than straw: stop, find the cause. Do not weld over it.",
      fmt::format("Hold over but joint above {} by a touch probe, tube at rest, torch gas on: hold on, then "
                  "correct the job.",
                  metal_limit(f)),
      fmt::format("Bottle under {}: change it before the part (moisture rises).",
                  report::bottle_pressure(f, gas::bottle_change)),
      job.rotation.seam == job::Seam::spots
          ? "A spot missed or cut short: hold as the table says, look, then make it again."
          : "Stopped in the middle of a run: hold as the table says, look, then start the run again 10 deg "
            "before where the weld ends.",
  };
  std::ranges::move(draught_words(f), std::back_inserter(stops));
  std::ranges::move(roller_words(f), std::back_inserter(stops));
  return stops;
}

namespace {

// What a hand may meet, and how warm it is.
std::string hot_words(const Findings &f) {
  const auto settled = f.design.series.settled;
  return fmt::format(
      "HOT metal looks cold. Tongs, gloves; cap and tongs onto bare metal or brick to cool. The "
      "pin and the chamber too{}.",
      settled > heat::burn_threshold ? fmt::format(": part after part the fixture comes to {}",
                                                   shop(f, settled.value(), Dimension::temperature, 3))
                                     : "");
}

} // namespace

std::vector<std::string> cautions(const Findings &f) {
  const double after_bottle = f.design.purge.use.room_after_bottle;
  return {
      fmt::format(
          "ARGON suffocates without smell or warning and lies in low and closed rooms. Ventilate, wear an "
          "oxygen monitor; a calculation is not a monitor. A full bottle let out leaves {:.1f} % oxygen in "
          "this "
          "room: shut it after work.",
          std::floor(1000.0 * after_bottle) / 10.0),
      hot_words(f),
      "ARC: eyes and skin; screens for others. Fume and ozone: ventilate. SHOCK: dry gloves, lead on before "
      "the arc, high "
      "frequency too.",
      "FIRE: no solvent by the arc. Titanium chips and dust burn fiercely: wet or swept, class D "
      "extinguisher, no water.",
      "PRESSURE: chain bottles, vent before opening fittings. Never block the bore's outlet: trapped gas "
      "blows out the "
      "joint.",
  };
}

std::string warm_note(const Findings &f) {
  const heat::Series &series = f.design.series;
  return fmt::format(
      "Warm: the hold once parts before have warmed the fixture, one every {} to {} at most{}.",
      minutes(series.period), report::temperature_text(f, series.settled),
      series.settled > heat::burn_threshold ? ": gloves" : "");
}

std::vector<TurnRow> turn_rows(const Findings &f) {
  const auto &plan = f.design.heat;
  std::vector<TurnRow> rows;
  for (std::size_t i = 0; i < plan.tacks.size(); ++i) {
    rows.push_back(turn_row(f, true, i, plan.tacks[i]));
  }
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    rows.push_back(turn_row(f, false, i, plan.runs[i]));
  }
  return rows;
}

std::string work_line(const Findings &f) {
  const auto &job = f.design.job;
  const auto length = [&](units::Length l) { return shop(f, l.value(), Dimension::length); };
  const std::string_view shape = job.cap.shape == job::CapShape::flat    ? "flat"
                                 : job.cap.shape == job::CapShape::domed ? "domed"
                                                                         : "spigot";
  return fmt::format("Tube {} x {}, {} long, {}; {} cap {} thick, {}. {} at {}, {}.",
                     length(job.tube.outside_diameter), length(job.tube.wall), length(job.tube.length),
                     job.tube.material->title, shape, length(job.cap.thickness), job.cap.material->title,
                     shop(f, job.weld.current.value(), Dimension::current, 3),
                     shop(f, job.weld.voltage.value(), Dimension::voltage, 3),
                     job.rotation.seam == job::Seam::spots
                         ? fmt::format("{} spots", job.rotation.runs)
                         : shop(f, job.weld.travel_speed.value(), Dimension::velocity, 3));
}

} // namespace purgewright::pages

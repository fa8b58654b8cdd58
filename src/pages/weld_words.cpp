#include "setup_words.hpp"

#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/standards/welding.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace purgewright::pages {
namespace {

using report::bench_time;
using report::Findings;
using units::Dimension;

std::string shop(const Findings &f, double si, Dimension dimension, int digits = 3) {
  return units::shop_text(si, dimension, f.design.job.shop.unit_system, digits);
}

// Helmet shade for gas tungsten arc, direct current. Source: ANSI Z49.1, guide for shade numbers, the
// suggested ones, from memory.
int shade(units::Current current) {
  return current < units::amperes(50.0) ? 10 : current < units::amperes(150.0) ? 12 : 14;
}

// What the pedal comes down to in the warmest run.
std::string eased(const Findings &f) {
  double least = 1.0;
  for (const auto &run : f.design.heat.runs) {
    least = std::min(least, run.least_current);
  }
  const std::string full = shop(f, f.design.job.weld.current.value(), Dimension::current, 2);
  const std::string down = shop(f, least * f.design.job.weld.current.value(), Dimension::current, 2);
  return down == full ? std::string() : fmt::format(", eased to {} as the joint warms", down);
}

// Turn of the collar in a second.
double degrees_per_second(const job::Job &job) {
  return units::to_degrees(units::radians((2.0 * job.weld.travel_speed / job.tube.outside_diameter).value()));
}

Setting tungsten(const Findings &f) {
  const standards::Tungsten &t = standards::tungsten_for(f.design.job.weld.current);
  return {"Tungsten",
          fmt::format("{} ({}), lanthanum or cerium, never thorium; ground lengthwise to 30 deg, tip "
                      "blunted",
                      units::shop_text(t.diameter.value(), Dimension::length, units::UnitSystem::metric, 2),
                      t.trade)};
}

Setting cup(const Findings &f) {
  const auto &torch = f.design.job.torch;
  const double sixteenths = units::ratio(torch.cup_bore, units::inches(1.0 / 16.0));
  return {"Cup",
          fmt::format("No. {:.0f}, {} bore, with gas lens; stickout {}; tilt {:.0f} deg, pushed", sixteenths,
                      shop(f, torch.cup_bore.value(), Dimension::length),
                      shop(f, torch.stickout.value(), Dimension::length), units::to_degrees(torch.tilt))};
}

Setting turning(const Findings &f) {
  const double rate = degrees_per_second(f.design.job);
  return {
      "Turn",
      fmt::format("torch stays on top; the other hand rolls the collar {:.1f} deg a second: 10 deg in {:.1f} "
                  "s, a run in the table's arc time",
                  rate, 10.0 / rate)};
}

Setting fit_up(const Findings &f) {
  // Autogenous: no wire fills what is missing. Common practice, no source.
  constexpr double gap_share = 0.10, offset_share = 0.15; // of the wall
  const units::Length wall = f.design.job.tube.wall;
  return {"Fit", fmt::format("no wire: gap {} and edge offset {} at most",
                             shop(f, gap_share * wall.value(), Dimension::length, 1),
                             shop(f, offset_share * wall.value(), Dimension::length, 1))};
}

} // namespace

std::string torch_preflow(const Findings &f) {
  return bench_time(f.design.purge.torch.preflow);
}

std::string wait_without_meter(const Findings &f) {
  return bench_time(units::seconds(units::find(f.figures, ids::wait_without_meter)->value));
}

std::vector<Setting> weld_settings(const Findings &f) {
  const auto &job = f.design.job;
  std::vector<Setting> settings{
      {"Current", fmt::format("direct, electrode NEGATIVE; {} at the pedal's end{}: keep the pool {} wide",
                              shop(f, job.weld.current.value(), Dimension::current), eased(f),
                              shop(f, f.design.heat.pool_target.value(), Dimension::length, 2))},
      {"Arc", fmt::format("{} arc, as long as the tungsten is thick; {} along the joint",
                          shop(f, job.weld.voltage.value(), Dimension::voltage),
                          shop(f, job.weld.travel_speed.value(), Dimension::velocity))},
      tungsten(f),
      cup(f),
      {"Start", fmt::format("high frequency, never scratched; torch gas {} before", torch_preflow(f))},
      {"Stop",
       fmt::format("pedal down to nothing over 3 s; torch stays, postflow {}", report::postflow_text(f))},
      turning(f),
      fit_up(f),
      {"Work lead",
       "on its screw in the collar, cable free for a full turn: no current through the bearings"},
      {"Argon", fmt::format("{} or purer, all three circuits",
                            job.gas.oxygen_in_supply <= 2e-6 ? "4.8 (99.998 %)" : "4.6 (99.996 %)")},
      {"Helmet", fmt::format("shade {}, covered skin, screens", shade(job.weld.current))},
      {"End of a run", "felt tape on the collar where the run ends: the thumb finds it under the hood"},
  };
  if (const auto &plan = f.design.heat; plan.interpass_temperature) {
    settings.push_back({"Next run", fmt::format("not before the joint is below {}: up to {} after the hold",
                                                report::limit_text(f, *plan.interpass_temperature),
                                                bench_time(plan.longest_interpass_wait))});
  }
  return settings;
}

namespace {

std::string plug_out(fixture::PlugKind kind) {
  switch (kind) {
  case fixture::PlugKind::bore_ring:
  case fixture::PlugKind::cup:
    return "pull the plug with a twist";
  case fixture::PlugKind::expanding:
    return "knob back until the rubber is loose, then draw the plug out";
  }
  return {};
}

} // namespace

std::vector<std::string> unloading_steps(const Findings &f) {
  std::string out = plug_out(f.design.layout.plug.kind) + "; caps on the hose ends.";
  if (f.design.layout.cradle.kind == fixture::CradleKind::spindle) {
    out = "loosen the spindle's set screws, spindle off; " + out;
  }
  out.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(out.front())));
  return {
      "Last hold over: torch off, then both circuits off; wait until no gas is heard.",
      "Hands off until tube and cap are hand-warm, or heat-proof gloves and tongs. Loosen the collar's clamp "
      "screw.",
      "Loosen the wiper plate's four knobs, slide plate and wiper back; draw the part straight back until "
      "the cap is behind "
      "the chamber, lift it off.",
      out,
      "Look at the joint outside and, by a light in the bore, inside, before anything touches it.",
  };
}

std::vector<std::string> discoloured() {
  return {"Silver or straw: accepted here. Any other colour, inside or out: part aside, tag on it, stop.",
          "What may be done with it, your procedure and who answers for it decide, not this sheet and not "
          "the bench.",
          "Never weld over colour. Never brush before it is judged: brushing hides what the metal took up. "
          "After it, new "
          "stainless brush kept for titanium."};
}

std::string pin_note(const Findings &f) {
  return fmt::format("Under the pin the cap reaches {} (computed): in argon it stays silver there; straw is "
                     "accepted, darker "
                     "means that argon does not reach the pin's face.",
                     report::temperature_text(f, f.design.heat.pin_contact_peak));
}

std::vector<std::string> reasons(const Findings &f) {
  const auto &plan = f.design.heat;
  const bool clockwise = f.design.job.rotation.direction == job::Direction::clockwise;
  const std::string wait = wait_without_meter(f);
  return {
      fmt::format("The weld runs {} looking at the cap, so the tube turns {} under the torch. Tacks go "
                  "opposite each other; "
                  "the order of loading, the tape and the volumes of gas a purge is often counted in are "
                  "common practice.",
                  clockwise ? "clockwise" : "counterclockwise", clockwise ? "counterclockwise" : "clockwise"),
      fmt::format("Each hold ends when the joint is below {}, the last when nothing is above it. {} When in "
                  "doubt, hold as "
                  "when warm.",
                  report::limit_text(f, plan.shielding_temperature), warm_note(f)),
      fmt::format(
          "What is welded shrinks and pulls the cap's rim to one side until the other side is welded: by "
          "up to {} with runs in a row ({}), {} with each opposite the one before ({}). The weld goes "
          "{}; rotation.order chooses.",
          shop(f, f.design.order_advice.consecutive.rim_shift.value(), Dimension::length, 1),
          report::run_order_text(f.design.job.rotation.runs, job::RunOrder::consecutive),
          shop(f, f.design.order_advice.alternating.rim_shift.value(), Dimension::length, 1),
          report::run_order_text(f.design.job.rotation.runs, job::RunOrder::alternating),
          f.design.job.rotation.order == job::RunOrder::alternating ? "each opposite" : "in a row"),
      fmt::format(
          "Without an oxygen meter: {} of prepurge instead of {}, twice as long because a flowmeter may pass "
          "half of "
          "what it shows; then the colour of a coupon, an offcut with a scrap cap welded at these settings, "
          "decides before the first part.",
          wait, bench_time(f.design.purge.wait())),
      fmt::format("The bore's gas then lifts the puddle by {} (limit {}), {} at prepurge flow: turn down "
                  "before the arc.",
                  report::water_column(f, f.design.purge.pressure.welding),
                  report::water_column(f, f.design.purge.pressure.limit, units::Rounding::down),
                  report::water_column(f, f.design.purge.pressure.prepurge)),
      "Temperatures are computed by conduction in still gas, means through the wall, not measured. Try the "
      "first part with a "
      "thermocouple; a temperature crayon on scrap only, its wax spoils the weld.",
      "EN ISO 9606-5:2000, titanium weld metal, accepts silver and straw and a narrow band of strong colour "
      "at the edge of "
      "the gas cover. AWS D17.1 and D1.9 have tables of their own: the one your procedure names decides.",
  };
}

} // namespace purgewright::pages

#include "setup_words.hpp"

#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/standards/welding.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
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

// Helmet shades for gas tungsten arc, direct current. Source: ANSI Z49.1, guide for shade numbers, from
// memory.
struct Shade {
  units::Current below;
  int suggested, least;
};
constexpr std::array<Shade, 2> shades{{{units::amperes(50.0), 10, 8}, {units::amperes(150.0), 12, 8}}};
constexpr Shade darkest{{}, 14, 10};

const Shade &shade(units::Current current) {
  const auto *row = std::ranges::find_if(shades, [&](const Shade &s) { return current < s.below; });
  return row == shades.end() ? darkest : *row;
}

// What the pedal keeps; less where the current set does not get there.
std::string pool_to_keep(const Findings &f) {
  const auto &plan = f.design.heat;
  const bool reached = plan.pool_width >= plan.pool_target;
  return fmt::format("{} wide{}",
                     shop(f, std::min(plan.pool_width, plan.pool_target).value(), Dimension::length, 2),
                     reached ? ": that the pedal keeps" : " at most: this current makes no wider one");
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
  const bool clockwise = f.design.job.rotation.direction == job::Direction::clockwise;
  return {"Cup",
          fmt::format("No. {:.0f}, {} bore, with gas lens; stickout {}; pushed: looking at the cap the "
                      "handle leans {:.0f} deg to the {}, over what is welded",
                      sixteenths, shop(f, torch.cup_bore.value(), Dimension::length),
                      shop(f, torch.stickout.value(), Dimension::length), units::to_degrees(torch.tilt),
                      clockwise ? "left" : "right")};
}

bool by_spots(const Findings &f) {
  return f.design.job.rotation.seam == job::Seam::spots;
}

Setting turning(const Findings &f) {
  if (by_spots(f)) {
    return {"Turn", "torch stays on top, its hand on a rest; the tube stands still under the arc, the other "
                    "hand rolls the collar from spot to spot"};
  }
  const double rate = degrees_per_second(f.design.job);
  return {"Turn",
          fmt::format("torch stays on top, its hand on a rest; {} the collar {:.1f} "
                      "deg a second: 10 deg in {:.1f} s, once the pool is there",
                      f.design.job.weld.with_wire() ? "the other hand feeds the wire, a second person rolls"
                                                    : "the other hand rolls",
                      rate, 10.0 / rate)};
}

// Of all tacks or runs in the same text's unit: "0.7 s", or "0.6 s to 0.8 s" where they differ as printed.
template <class Text, class Quantity>
std::string span(const std::vector<heat::Weld> &welds, Quantity heat::Weld::*of, Text text) {
  if (welds.empty()) {
    return text(Quantity{});
  }
  const auto [least, most] = std::ranges::minmax(welds, {}, of);
  const std::string low = text(least.*of), high = text(most.*of);
  return low == high ? low : fmt::format("{} to {}", low, high);
}

// As the table's arc times are printed, so that one adds up to the other.
std::string tenths(units::Time time) {
  return fmt::format("{:.1f} s", time.value());
}

std::string whole_degrees(units::Angle angle) {
  return fmt::format("{:.0f} deg", units::to_degrees(angle));
}

std::string pools(const Findings &f, const std::vector<heat::Weld> &welds) {
  return span(welds, &heat::Weld::start_pool,
              [&](units::Length width) { return shop(f, width.value(), Dimension::length, 2); });
}

Setting start(const Findings &f) {
  if (by_spots(f)) {
    return {
        "Start",
        fmt::format("each spot: high frequency, never scratched; full pedal, tube at rest, until "
                    "one pool joins both edges, {} wide: {} after the arc (spot timer, if the machine has "
                    "one); foot off",
                    span(f.design.heat.runs, &heat::Weld::pool_width,
                         [&](units::Length width) { return shop(f, width.value(), Dimension::length, 2); }),
                    span(f.design.heat.runs, &heat::Weld::dwell, tenths))};
  }
  return {
      "Start",
      fmt::format(
          "each run: high frequency, never scratched; full pedal, tube at rest, until one pool joins both "
          "edges, {} wide: {} after the arc. Then turn at once; the pool grows as you go: hold it at {} by "
          "the "
          "pedal",
          pools(f, f.design.heat.runs), span(f.design.heat.runs, &heat::Weld::dwell, tenths),
          shop(f, std::min(f.design.heat.pool_width, f.design.heat.pool_target).value(), Dimension::length,
               2))};
}

Setting stop(const Findings &f) {
  if (by_spots(f)) {
    return {"Stop",
            fmt::format(
                "foot off: torch stays: HOLD rules, postflow {}. Each spot half over the one beside it: no "
                "crater stays bare",
                report::longer_postflow_text(f))};
  }
  const auto &runs = f.design.heat.runs;
  return {
      "Stop",
      fmt::format("felt tapes on the collar before the first part (places: second page), T1 where run 1 "
                  "ends. The thumb "
                  "at the pointer counts what comes to it under the hood: the table says which tape it lets "
                  "pass and at which the run ends. There ease the pedal to nothing over {}, turning on {}; "
                  "torch stays: HOLD rules, postflow {}",
                  span(runs, &heat::Weld::taper, tenths), span(runs, &heat::Weld::run_out, whole_degrees),
                  report::longer_postflow_text(f))};
}

Setting tacks(const Findings &f) {
  const auto &tacks = f.design.heat.tacks;
  return {"Tacks",
          fmt::format("same setting: full pedal, tube at rest, until one pool joins both edges, {} wide: {} "
                      "after the arc; foot off",
                      pools(f, tacks), span(tacks, &heat::Weld::welding, tenths))};
}

Setting pace_of(const Findings &f) {
  const auto shortest = checks::pace(f.design), bare = checks::bare_hand_pace(f.design);
  if (!shortest) {
    return {"Pace", "the fixture cools to the room between parts"};
  }
  return {"Pace", fmt::format("one part every {}, no sooner: the fixture is not to get warmer. Unloaded with "
                              "heat-proof gloves and tongs{}",
                              minutes(*shortest),
                              bare ? fmt::format("; by bare hands one every {}", minutes(*bare)) : "")};
}

// How a welder sees that the wall is fused to its bottom: common practice, no source.
Setting root(const Findings &f) {
  const std::string coupon =
      fmt::format("Before the first part a coupon, offcut and scrap cap at these settings: saw through the "
                  "weld at {}, file "
                  "and polish: fused to the wall's bottom in every cut, or do not start",
                  by_spots(f) ? "four spots" : "a run's start, middle and end");
  return {"Root", f.design.job.cap.shape == job::CapShape::spigot
                      ? "the spigot hides it. " + coupon
                      : "through when, by a light in the bore, a bead without a gap stands all round and no "
                        "edge is left. " +
                            coupon};
}

// About as thick as the wall, of the usual sizes: common practice, no source.
std::string wire_size(const Findings &f) {
  const units::Length wall = f.design.job.tube.wall;
  constexpr auto thin = units::millimetres(1.2), middle = units::millimetres(2.0);
  const bool inch = f.design.job.shop.unit_system == units::UnitSystem::inch;
  return wall < thin     ? (inch ? ".035 in" : "1.0 mm")
         : wall < middle ? (inch ? ".045 in" : "1.2 mm")
                         : (inch ? "1/16 in" : "1.6 mm");
}

// Of the grade of the tube, or what the procedure names; its heat is not in the plan.
std::string wire_text(const Findings &f) {
  return f.design.job.weld.with_wire()
             ? fmt::format("wire {} of the tube's grade, bright, wiped, fed ahead of the pool, its hot end "
                           "kept under "
                           "the torch's gas; tacks without it, where the edges touch",
                           wire_size(f))
             : std::string("no wire");
}

Setting fit_up(const Findings &f) {
  const auto allowed = standards::fit_up(f.design.job.tube.wall, f.design.job.weld.with_wire());
  const bool spigot = f.design.job.cap.shape == job::CapShape::spigot;
  return {"Fit",
          fmt::format(
              "{}: both edges turned square; gap {} at most: where light shows, a feeler as thick must not "
              "go in. {}",
              wire_text(f), shop(f, allowed.gap.value(), Dimension::length, 3),
              spigot ? std::string("The spigot centres the cap")
                     : fmt::format("Offset {} at most: a straightedge along tube and cap, at four "
                                   "places, shows it. After the first tack and its hold turn to the next "
                                   "place, press the cap even "
                                   "there with the tweezers, tack; then the rest",
                                   shop(f, allowed.offset.value(), Dimension::length, 3)))};
}

// What the current flows through from lead to joint. Rubber and plastic carry none.
std::string current_path(const Findings &f) {
  return f.design.layout.cradle.kind == fixture::CradleKind::spindle
             ? "lead, collar, spindle, its set screws, plug, the tube's end pressed on it: all bare metal. "
               "Rubber and plastic carry none"
             : "lead, collar, tube: bare where it clamps. Rubber and plastic carry none";
}

// Below what the joint must be when the next arc strikes.
Setting interpass(const Findings &f) {
  const auto &plan = f.design.heat;
  if (plan.interpass_temperature) {
    return {"Interpass", fmt::format("{} at most: next arc up to {} after the hold",
                                     report::limit_text(f, std::min(*plan.interpass_temperature,
                                                                    plan.shielding_temperature)),
                                     bench_time(plan.longest_interpass_wait))};
  }
  return {"Interpass", fmt::format("{} at most, where each hold ends; a lower limit of your procedure: wait",
                                   report::limit_text(f, plan.shielding_temperature))};
}

} // namespace

// Common practice, no source.
std::string arc_length(const Findings &f) {
  const bool inch = f.design.job.shop.unit_system == units::UnitSystem::inch;
  return inch ? "1/16 in" : "1.5 mm to 2 mm";
}

std::string torch_preflow(const Findings &f) {
  return bench_time(f.design.purge.torch.preflow);
}

std::string wait_without_meter(const Findings &f) {
  return bench_time(units::seconds(units::find(f.figures, ids::wait_without_meter)->value));
}

std::vector<Setting> weld_settings(const Findings &f) {
  const auto &job = f.design.job;
  const Shade &glass = shade(job.weld.current);
  // At 100 A a volt falls off on it. Common practice, no source.
  constexpr std::string_view lead_resistance = "0.01 ohm";
  const std::string machine = shop(f, job.weld.current.value(), Dimension::current);
  return {
      {"Current",
       by_spots(f)
           ? fmt::format(
                 "direct, electrode NEGATIVE; machine set to {}, full pedal for every spot. Aim at the "
                 "joint, both edges in one pool",
                 machine)
           : fmt::format("direct, electrode NEGATIVE; machine set to {}: full pedal to start, then {} as "
                         "it warms. Aim at the joint, both edges in one pool {}",
                         machine, report::pedal_text(f), pool_to_keep(f))},
      {"Arc",
       fmt::format("{}: {} long{}", shop(f, job.weld.voltage.value(), Dimension::voltage), arc_length(f),
                   by_spots(f) ? std::string()
                               : fmt::format("; {} along the joint",
                                             shop(f, job.weld.travel_speed.value(), Dimension::velocity)))},
      tungsten(f),
      cup(f),
      start(f),
      tacks(f),
      stop(f),
      turning(f),
      fit_up(f),
      root(f),
      {"Work lead",
       fmt::format("on its screw in the collar, cable free for {} deg: {}; under {} from tube to "
                   "lead, no current through the bearings",
                   free_turn(f), current_path(f), lead_resistance)},
      interpass(f),
      {"Argon",
       fmt::format("{} or purer, all three circuits; torch gas {} before every arc",
                   job.gas.oxygen_in_supply <= 2e-6 ? "4.8 (99.998 %)" : "4.6 (99.996 %)", torch_preflow(f))},
      {"Helmet",
       fmt::format("shade {}; lighter until you see the pool, never below {}; covered skin, screens",
                   glass.suggested, glass.least)},
      pace_of(f),
  };
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
  const auto wait = hand_warm(f);
  std::string out = plug_out(f.design.layout.plug.kind) + "; caps on the hose ends.";
  if (f.design.layout.cradle.kind == fixture::CradleKind::spindle) {
    out = "loosen the spindle's set screws, spindle off; " + out;
  }
  out.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(out.front())));
  return {
      "Last hold over: torch off, then both circuits off; wait until no gas is heard.",
      fmt::format("Heat-proof gloves and tongs{}. Turn the collar back to 0, loosen its clamp screw.",
                  wait ? fmt::format(", or hands off for {}: hand-warm only then", minutes(*wait))
                       : ": too hot for a bare hand"),
      "Undo the wiper plate's four screws out of their thread, slide plate and wiper back; draw the part "
      "straight back until "
      "the cap is behind the chamber, lift it off.",
      out,
      f.design.job.cap.shape == job::CapShape::spigot
          ? "Look at the joint outside before anything touches it."
          : "Look at the joint outside and, by a light in the bore, inside, before anything touches it.",
      f.design.job.fixture.pin_material->weldable_here
          ? "Wipe the pin's face, dry while it is warm."
          : "Look at the pin's face and at the cap where it stood: pick-up or a mark, renew the tip.",
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
  constexpr auto peak = &heat::HeatPlan::pin_contact_peak;
  return fmt::format(
      "Under the pin the cap reaches {} (computed{}): in argon it stays silver there; straw is "
      "accepted, darker means that argon does not reach the pin's face.",
      report::temperature_text(f, checks::hottest(f.design, peak)),
      checks::settled_is_hotter(f.design, peak) ? ", warm fixture" : "");
}

namespace {

// Where the tapes go: no mark of the collar stands where a run ends.
std::string tape_places(const Findings &f) {
  std::string places;
  const auto &runs = f.design.heat.runs;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const units::Angle end = fixture::within_turn(runs[i].pass.end);
    places += fmt::format(
        "{} T{} {} deg, {}", i == 0 ? "" : ";", i + 1, report::collar_degrees(end),
        shop(f, (f.design.layout.collar.outer_radius * end.value()).value(), Dimension::length, 3));
  }
  return "Felt tapes, measured along the collar's rim from its 0 the way the degrees rise:" + places + ".";
}

} // namespace

std::vector<std::string> reasons(const Findings &f) {
  const auto &plan = f.design.heat;
  const bool clockwise = f.design.job.rotation.direction == job::Direction::clockwise;
  const std::string wait = wait_without_meter(f);
  std::vector<std::string> all{
      fmt::format("The weld runs {} looking at the cap, so the tube turns {} under the torch. Tacks go "
                  "opposite each other; hoses and lead wind up over one part and are turned back after it; "
                  "the order of loading, the tape and the volumes of gas a purge is often counted in are "
                  "common practice.",
                  clockwise ? "clockwise" : "counterclockwise", clockwise ? "counterclockwise" : "clockwise"),
      fmt::format("Each hold ends when the joint is below {}, the last when nothing is above it. {} When in "
                  "doubt, hold as "
                  "when warm.",
                  report::limit_text(f, plan.shielding_temperature), warm_note(f)),
      fmt::format(
          "What is welded shrinks and pulls the cap's rim to one side until the other side is welded, at "
          "most "
          "by {} with runs in a row, by {} with each opposite the one before; the weld "
          "bridges a gap of {}. The weld goes {}. Tacks hold against the pull.",
          shop(f, f.design.order_advice.consecutive.rim_shift.value(), Dimension::length, 4),
          shop(f, f.design.order_advice.alternating.rim_shift.value(), Dimension::length, 4),
          shop(f, standards::fit_up(f.design.job.tube.wall, f.design.job.weld.with_wire()).gap.value(),
               Dimension::length, 4),
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
      "Temperatures are computed by conduction in still gas, means through the wall, not measured. No wired "
      "thermocouple on a part that turns. Try them with a touch probe on the tube beside the joint, in the "
      "pauses, tube at rest, under the torch's gas; on scrap a temperature crayon, whose wax spoils a weld.",
      "EN ISO 9606-5:2000, titanium weld metal, accepts silver and straw and a narrow band of strong colour "
      "at the edge of "
      "the gas cover. AWS D17.1 and D1.9 have tables of their own: the one your procedure names decides.",
  };
  if (!by_spots(f)) {
    all.insert(all.begin() + 1, tape_places(f));
  }
  return all;
}

} // namespace purgewright::pages

#include "purgewright/report/text.hpp"

#include "text_parts.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/fixture/choices.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/report/lines.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::report {
namespace {

using units::Dimension;
using namespace parts;

std::string title(const Findings &f, TextStyle style) {
  const auto &job = f.design.job;
  return fmt::format("{}{}{}\n", paint(job.identity.name, 1, style), job.identity.title.empty() ? "" : ": ",
                     job.identity.title);
}

// Rules left out, by the reason; a layout that clashes leaves out all of them.
std::string not_judged_lines(const Findings &f) {
  if (!f.design.layout.buildable()) {
    return "  no other rule is judged: the layout clashes\n";
  }
  std::string text;
  for (const auto &[rule, why] : f.not_judged) {
    text += fmt::format("  not judged: {}, {}\n", rule, why);
  }
  return text;
}

std::string rule_lines(const Findings &f, const checks::RuleResult &rule, TextStyle style) {
  const std::string amount = against_limit(f, rule);
  const std::string plain = status_word(rule.status, {});
  std::string text = wrapped(
      fmt::format("{} {:<28} {}{}{}", plain, rule.id, amount, amount.empty() ? "" : "  ", rule.title), 2, 10);
  text.replace(2, plain.size(), status_word(rule.status, style));
  return rule.remedy.empty() ? text : text + wrapped("to do: " + rule.remedy, 10, 12);
}

// What a person must know before anything else: may this be used, and if not, why.
std::string verdict(const Findings &f, TextStyle style) {
  std::array<int, 3> count{}; // by status
  std::string of_each;
  for (const auto status : {checks::Status::fail, checks::Status::caution}) {
    for (const auto &rule : f.rules) {
      if (rule.status == status) {
        of_each += rule_lines(f, rule, style);
      }
    }
  }
  for (const auto &rule : f.rules) {
    ++count.at(static_cast<std::size_t>(rule.status));
  }
  const auto [passed, cautions, failing] = count;
  const auto worst = checks::worst(f.rules);
  const std::string_view word = worst == checks::Status::fail      ? "FAILS, not for use"
                                : worst == checks::Status::caution ? "PASSES WITH CAUTION"
                                                                   : "PASSES";
  return fmt::format("{}: of {} rules judged {} pass, {} {}, {} {}\n", paint(word, colour_of(worst), style),
                     f.rules.size(), passed, cautions, cautions == 1 ? "is a caution" : "are cautions",
                     failing, failing == 1 ? "fails" : "fail") +
         of_each + not_judged_lines(f);
}

} // namespace

std::vector<std::string_view> dangers() {
  return {
      "Argon displaces air without smell or warning and lies low: ventilate, wear an oxygen monitor, leave "
      "the room below 19.5 % oxygen (OSHA 29 CFR 1910.146).",
      "Never block the bore's outlet: trapped gas blows out the joint.",
      "The arc burns eyes and skin and shocks; its fume and ozone are harmful; hot metal looks cold.",
      "Titanium chips and dust burn fiercely: class D extinguisher, no water.",
      "All of this is calculated, not measured: your local code and your qualified procedure come before "
      "it."};
}

namespace {

std::string cautions(TextStyle style) {
  return heading("Before anything else", style) + wrapped(fmt::format("{}", fmt::join(dangers(), " ")), 2, 2);
}

std::string flow(units::VolumeFlow q) {
  return fmt::format("{} L/min  {} ft3/h", litres_per_minute(q), cubic_feet_per_hour(q));
}

std::string seconds(units::Time t) {
  const double s = t.value();
  return s < 9.95 ? fmt::format("{:.1f} s", s) : fmt::format("{:.0f} s", s);
}

Line prepurge_line(std::string_view what, const gas::CircuitPlan &c, double limit, std::string_view id) {
  const std::string time = c.reached ? fmt::format("{} ({} .. {}) to {}", seconds(c.time), seconds(c.low),
                                                   seconds(c.high), oxygen_limit_text(limit))
                                     : fmt::format("never down to {}", oxygen_limit_text(limit));
  return row(what, fmt::format("{}; {}", flow(c.prepurge), time), id);
}

std::string wait_text(const gas::Purge &purge) {
  const std::string wait = bench_time(purge.wait());
  return purge.needs_outlet_above()
             ? fmt::format("{}, vent uppermost; elsewhere {}", wait, bench_time(purge.bore.high))
             : wait;
}

Lines prepurge_lines(const Findings &f) {
  const auto &purge = f.design.purge;
  const auto &gas = f.design.job.gas;
  const bool reached = purge.bore.reached && purge.chamber.reached;
  return {
      prepurge_line("bore, prepurge", purge.bore, gas.oxygen_limit_bore, ids::bore_prepurge_flow),
      prepurge_line("chamber, prepurge", purge.chamber, gas.oxygen_limit_chamber, ids::chamber_prepurge_flow),
      row("wait, cover closed", reached ? wait_text(purge) : "no use: see the rules", ids::prepurge_wait)};
}

} // namespace

Lines gas_settings(const Findings &f) {
  const auto &purge = f.design.purge;
  const auto &job = f.design.job;
  Lines text = prepurge_lines(f);
  text += row(
      "then bore down to",
      fmt::format("{}; oxygen {}", flow(purge.bore.welding), oxygen_text(purge.bore.welding_floor.oxygen)),
      "purge.bore.welding.flow");
  text += row("and chamber to",
              fmt::format("{}; oxygen {}", flow(purge.chamber.welding),
                          oxygen_text(purge.chamber.welding_floor.oxygen)),
              "purge.chamber.welding.flow");
  text += row(
      "",
      fmt::format("presses {} on the puddle (limit \u2264 {})",
                  shop(f, purge.pressure.welding.value(), Dimension::pressure, 2),
                  limit_of(f, purge.pressure.limit.value(), Dimension::pressure, checks::Bound::at_most, 2)),
      "purge.bore.pressure");
  text += row("torch",
              fmt::format("{}, {} over the joint before every arc", flow(job.torch.gas_flow),
                          bench_time(purge.torch.preflow)),
              "purge.torch_preflow");
  text += row("torch lifted",
              fmt::format("hot joint then at {} oxygen ({} .. {})", oxygen_text(purge.torch.away.best),
                          oxygen_text(purge.torch.away.low), oxygen_text(purge.torch.away.high)),
              "gas.torch_away");
  text += row("postflow", postflow_text(f), ids::postflow_time);
  text += row("arc",
              fmt::format("{}, {}, {}", shop(f, job.weld.current.value(), Dimension::current, 3),
                          shop(f, job.weld.voltage.value(), Dimension::voltage, 3),
                          shop(f, job.weld.travel_speed.value(), Dimension::velocity, 3)),
              "weld.current");
  if (purge.bench.draught_lying > units::Velocity{}) {
    text +=
        row("draught",
            fmt::format("under {}, warm {}; {} sweeps it out", air_speed(f, purge.bench.draught_lying),
                        air_speed(f, purge.bench.draught_warm), air_speed(f, purge.bench.draught_flushed)),
            "purge.draught_lying");
  }
  return text;
}

Lines use(const Findings &f) {
  const auto &use = f.design.purge.use;
  Lines text;
  text += row("one part",
              fmt::format("{:.0f} min, {} of gas, {:.2f} {}; a bottle serves {:.0f} at best",
                          std::ceil(use.cycle.value() / 60.0),
                          shop(f, use.per_part.value(), Dimension::volume, 2), use.cost,
                          f.design.job.shop.currency, std::floor(use.parts_per_bottle)),
              "gas.used.per_part");
  // The limits are ones of too little: shares are rounded down.
  const auto percent = [](double share) { return std::floor(1000.0 * share) / 10.0; };
  text += row("room",
              fmt::format("{:.1f} % oxygen after a day, {:.1f} % after a bottle let out",
                          percent(use.room_oxygen), percent(use.room_after_bottle)),
              "room.oxygen");
  return text;
}

namespace {

Line plug_line(const Findings &f) {
  const auto &plug = f.design.layout.plug;
  const auto &seal = plug.seal;
  const bool cup = plug.kind == fixture::PlugKind::cup;
  return row(
      "end plug",
      fmt::format("{} {}, {}, squeeze {:.0f} to {:.0f} %, {} {:.0f} {}", cup ? "cup" : "spigot",
                  shop(f, (2.0 * (cup ? plug.cup_radius : plug.spigot_radius)).value(), Dimension::length),
                  seal.ring != nullptr ? fmt::format("AS568 {}", seal.ring->dash) : "sleeve",
                  100.0 * seal.squeeze_least, 100.0 * seal.squeeze_most,
                  seal.ring != nullptr ? "push" : "knob", seal.hand, seal.ring != nullptr ? "N" : "N m"),
      "plug.groove_diameter");
}

std::string cavity_text(const Findings &f) {
  const auto &body = f.design.layout.body;
  const auto length = [&](units::Length l) { return shop(f, l.value(), Dimension::length); };
  switch (body.kind) {
  case fixture::ChamberKind::block:
    return fmt::format("{} diameter", length(2.0 * body.cavity_radius));
  case fixture::ChamberKind::plates:
    break;
  }
  return fmt::format("{} wide, {} high", length(2.0 * fixture::between_sides(body)),
                     length(fixture::under_top(body) + body.cavity_radius));
}

} // namespace

Lines sizes(const Findings &f) {
  const auto &d = f.design;
  const auto &body = d.layout.body;
  const auto length = [&](units::Length l) { return shop(f, l.value(), Dimension::length); };
  Lines text;
  text += row(body.kind == fixture::ChamberKind::block ? "chamber body" : "chamber of plates",
              fmt::format("{} x {} x {}", length(body.length()), length(body.width), length(body.height())),
              "chamber.length");
  text += row(
      "cavity",
      fmt::format("{}; slot {} x {}", cavity_text(f), length(body.slot.length()), length(body.slot.width)),
      "chamber.slot.width");
  text +=
      row("rear opening",
          fmt::format("{} for {} to {}, wiper cut to {}", length(2.0 * body.opening_radius),
                      length(d.job.tube.outside_diameter_least()), length(d.job.tube.outside_diameter_most()),
                      length(2.0 * d.layout.wiper.hole_radius)),
          "chamber.opening");
  text += plug_line(f);
  text += row("gas volume",
              fmt::format("chamber {}, bore {}", shop(f, d.volumes.chamber_gas.value(), Dimension::volume),
                          shop(f, d.volumes.bore_gas.value(), Dimension::volume)),
              ids::volume_chamber_gas);
  return text;
}

Lines served(const Findings &f) {
  const auto &d = f.design;
  const auto length = [&](units::Length l) { return shop(f, l.value(), Dimension::length); };
  Lines text;
  const auto lengths = fixture::tube_lengths_served(d.job, d.layout);
  text += row("serves",
              fmt::format("this tube {} {} long", length(lengths.least),
                          lengths.most ? "to " + length(*lengths.most) : std::string("and more")),
              "bench.tube_length.least");
  return text;
}

std::string check_text(const Findings &f, TextStyle style) {
  std::string text = title(f, style) + verdict(f, style) + cautions(style);
  if (f.design.layout.buildable()) {
    text += heading("Set", style) + printed(gas_settings(f)) + heat_lines(f, style) + log_lines(f, style) +
            heading("Use", style) + printed(use(f)) + heading("Sizes", style) + printed(sizes(f));
  }
  return text + (style.all ? details(f, style)
                           : "\n`trace JOB ID` says where a number comes from; `check --all` adds reasons, "
                             "parts, passes and "
                             "defaults\n");
}

} // namespace purgewright::report

#include "purgewright/report/text.hpp"

#include "text_parts.hpp"

#include "purgewright/checks/printing.hpp"
#include "purgewright/fixture/choices.hpp"
#include "purgewright/fixture/family.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/gas/room.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <vector>

namespace purgewright::report {
namespace {

using units::Dimension;
using namespace parts;

// Both flow units side by side.
std::string flow(units::VolumeFlow q) {
  return fmt::format("{:>5} / {:>5}", litres_per_minute(q), cubic_feet_per_hour(q));
}

std::string seconds(units::Time t) {
  const double s = t.value();
  return s < 9.95 ? fmt::format("{:.1f} s", s) : fmt::format("{:.0f} s", s);
}

std::string gas_table(const Findings &f, TextStyle style) {
  const auto &purge = f.design.purge;
  const auto &job = f.design.job;
  std::string text = heading("Gas settings (L/min / ft3/h)", style);
  text += fmt::format("  {:<9} {:>15} {:>9} {:>27} {:>15} {:>12}\n", "circuit", "prepurge", "wait",
                      "best (bracket)", "weld, postflow", "oxygen then");
  const auto row = [&](std::string_view name, const gas::CircuitPlan &c) {
    text +=
        fmt::format("  {:<9} {:>15} {:>9} {:>27} {:>15} {:>12}\n", name, flow(c.prepurge),
                    c.reached ? bench_time(purge.wait()) : std::string("no use"),
                    c.reached ? fmt::format("{} ({} .. {})", seconds(c.time), seconds(c.low), seconds(c.high))
                              : std::string("limit not reached"),
                    flow(c.welding), oxygen_text(c.welding_floor.oxygen));
  };
  row("bore", purge.bore);
  row("chamber", purge.chamber);
  text += fmt::format("  {:<9} {:>15} {:>9} {:>27} {:>15}\n", "torch", "", "", "", flow(job.torch.gas_flow));
  text += "  prepurge with the slot cover closed; bracket: gas displaced .. gas stirred or in layers\n"
          "  wait: the longer bracket's upper end, 15 s at least for the oxygen meter to answer\n";
  const auto explain = [&](std::string_view name, const gas::CircuitPlan &c, double limit) {
    text += fmt::format("  {}: {}; {}\n", name, c.tanks_measured ? "mixing as measured (gas.log)" : c.regime,
                        c.prepurge_reason);
    text += fmt::format(
        "    three volume changes would leave {} (well mixed: {}); limit {}, floor before welding {} ({})\n",
        oxygen_text(c.after_thumb_rule), oxygen_text(c.after_thumb_rule_mixed), oxygen_limit_text(limit),
        oxygen_text(c.prepurge_floor.oxygen), gas::to_text(c.prepurge_floor.dominant));
    if (c.dead_volume_share > 0.5) {
      text += fmt::format(
          "    the lines hold {:.1f} times the space itself: keep hoses short, do not let them stand open\n",
          c.dead_volume_share);
    }
  };
  explain("bore", purge.bore, job.gas.oxygen_limit_bore);
  explain("chamber", purge.chamber, job.gas.oxygen_limit_chamber);
  text += fmt::format(
      "  turn both down before the arc: the bore then presses {} on the puddle (limit \u2264 {}), "
      "{} in the prepurge\n",
      shop(f, purge.pressure.welding.value(), Dimension::pressure, 2),
      limit_of(f, purge.pressure.limit.value(), Dimension::pressure, checks::Bound::at_most, 2),
      shop(f, purge.pressure.prepurge.value(), Dimension::pressure, 2));
  if (purge.bore.high > purge.bore.high_vent_above) {
    text += fmt::format(
        "  stand the vent uppermost for the prepurge: argon runs under air; with the vent above the bore "
        "takes {} at most\n",
        seconds(purge.bore.high_vent_above));
  }
  const gas::Torch &torch = purge.torch;
  text += fmt::format(
      "  torch over the joint {} before every arc; keep it there while you turn. Lifted when a hold ends, "
      "the hot\n    joint draws room air in: {} oxygen ({} .. {}); cover open and joint cold {}\n",
      bench_time(torch.preflow), oxygen_text(torch.away.best), oxygen_text(torch.away.low),
      oxygen_text(torch.away.high), oxygen_text(torch.cover_open.best));
  text +=
      fmt::format("  after a night: both circuits at prepurge flow for {:.0f} min (common practice: moisture "
                  "clings to hose walls); the\n"
                  "    air that stood in the lines is out after {}\n",
                  gas::start_of_day_flush.value() / 60.0, bench_time(purge.bench.start_of_day));
  if (purge.bench.draught_lying > units::Velocity{}) {
    text += fmt::format("  draught: argon lies in the slot below {} ({} once the fixture is warm) and is "
                        "swept out above {}\n",
                        air_speed(f, purge.bench.draught_lying), air_speed(f, purge.bench.draught_warm),
                        air_speed(f, purge.bench.draught_flushed));
  }
  return text;
}

// "2.4" or "2.4 +- 0.3", by what the readings settle: the error to one digit, the value no finer.
std::string fitted(const gas::Fitted &f) {
  if (!std::isfinite(f.error) || f.error <= 0.0) {
    return fmt::format("{:.1f}", f.value);
  }
  const int places = std::clamp(-static_cast<int>(std::floor(std::log10(f.error))), 0, 3);
  return fmt::format("{:.{}f} +- {:.{}f}", f.value, places, f.error, places);
}

std::string log_lines(const Findings &f, TextStyle style) {
  if (f.design.log.fits.empty()) {
    return {};
  }
  std::string text = heading("Measured log", style);
  for (const auto &fit : f.design.log.fits) {
    if (!gas::usable(fit)) {
      text += fmt::format("  {}: {} readings at {:.1f} L/min, {} at the lowest, {} at the end\n"
                          "    not usable: {} (R2 {:.3f}), so nothing is taken from it\n",
                          gas::to_text(fit.circuit), fit.readings, units::to_litres_per_minute(fit.flow),
                          oxygen_text(fit.lowest), oxygen_text(fit.last), gas::to_text(gas::fit_fault(fit)),
                          fit.r_squared);
      continue;
    }
    text += fmt::format(
        "  {}: {} readings at {:.1f} L/min; mixing {} tanks (model {:.1f}), meter's line {} s behind\n",
        gas::to_text(fit.circuit), fit.readings, units::to_litres_per_minute(fit.flow), fitted(fit.tanks),
        fit.tanks_model, fitted(fit.delay));
    text += fmt::format(
        "    {}, ends at {}; curve and log differ by a factor of {:.2f} on average, R2 {:.3f}\n",
        gas::floor_settled(fit) ? fmt::format("settles at {} (model {})", oxygen_text(fit.floor.value),
                                              oxygen_text(fit.floor_model))
                                : std::string("still falling"),
        oxygen_text(fit.last), std::pow(10.0, fit.rms), fit.r_squared);
  }
  if (std::ranges::none_of(f.design.log.fits, gas::usable)) {
    return text;
  }
  text += f.design.job.gas.log_use == job::LogUse::apply
              ? "  the measured mixing replaces the model's in the times above (gas.log_use: apply)\n"
              : "  nothing above uses it; gas.log_use: apply puts the measured mixing in the model's place\n";
  return text;
}

std::string use_lines(const Findings &f, TextStyle style) {
  const auto &use = f.design.purge.use;
  std::string text = heading("Use", style);
  text +=
      fmt::format("  one part: {:.0f} min, {} of gas, {:.2f} {}; a bottle serves {:.0f} parts at best\n",
                  std::ceil(use.cycle.value() / 60.0), shop(f, use.per_part.value(), Dimension::volume, 2),
                  use.cost, f.design.job.shop.currency, std::floor(use.parts_per_bottle));
  text += fmt::format(
      "  room after a working day: {:.1f} % oxygen if well mixed; a calculation is not a monitor\n",
      std::floor(1000.0 * use.room_oxygen) / 10.0); // the limit is one of too little
  text += fmt::format("  of it {} before {} arcs with the torch over the joint; start of day takes {} more\n",
                      shop(f, use.preflow.value(), Dimension::volume, 2), f.design.purge.torch.arcs,
                      shop(f, use.start_of_day.value(), Dimension::volume, 2));
  text += fmt::format(
      "  a full bottle let out into the closed room leaves {:.1f} % oxygen{}\n",
      std::floor(1000.0 * use.room_after_bottle) / 10.0,
      use.room_after_bottle < gas::deficient_oxygen ? ": everyone out, and air it before going in" : "");
  return text;
}

std::string sizes(const Findings &f, TextStyle style) {
  const auto &d = f.design;
  const auto &body = d.layout.body;
  const auto length = [&](units::Length l) { return shop(f, l.value(), Dimension::length); };
  std::string text = heading("Sizes", style);
  text += fmt::format("  chamber body   {} x {} x {}, cavity {} diameter, slot {} x {}\n",
                      length(body.length()), length(body.width), length(body.height()),
                      length(2.0 * body.cavity_radius), length(body.slot.length()), length(body.slot.width));
  text += fmt::format("  rear opening   {} for a tube of {} to {}, closed by a wiper cut to {}\n",
                      length(2.0 * body.opening_radius), length(d.job.tube.outside_diameter_least()),
                      length(d.job.tube.outside_diameter_most()), length(2.0 * d.layout.wiper.hole_radius));
  const auto &seal = d.layout.plug.seal;
  const auto &plug = d.layout.plug;
  const bool cup = plug.kind == fixture::PlugKind::cup;
  text +=
      fmt::format("  end plug       {} {}, {} on {}, squeeze {:.0f} to {:.0f} %, {:.0f} {}\n",
                  cup ? "cup" : "spigot", length(2.0 * (cup ? plug.cup_radius : plug.spigot_radius)),
                  seal.ring != nullptr ? fmt::format("O-ring AS568 {}", seal.ring->dash) : "rubber sleeve",
                  length(2.0 * seal.groove_radius), 100.0 * seal.squeeze_least, 100.0 * seal.squeeze_most,
                  seal.hand, seal.ring != nullptr ? "N to push it home" : "N m at the knob");
  for (const auto &choice : fixture::choices(d.job, d.layout)) {
    text += fmt::format("  chosen         {}: {}, {}\n", choice.what, choice.kind, choice.reason);
  }
  const auto &block = d.layout.block;
  text +=
      fmt::format("  gas-port block {} x {} x {}, {} outlets, ports {}\n", length(block.length),
                  length(block.width), length(block.height), block.outlets, d.job.gas.port_thread->callout);
  text += fmt::format("  gas volume     chamber {}, bore {}\n",
                      shop(f, d.volumes.chamber_gas.value(), Dimension::volume),
                      shop(f, d.volumes.bore_gas.value(), Dimension::volume));
  const auto lengths = fixture::tube_lengths_served(d.job, d.layout);
  text += fmt::format(
      "  serves         tubes of this diameter from {} {} long; base plate, cradle stands and gas-port block "
      "serve\n"
      "                 tubes {}, each with a chamber, plug, pin, collar, stop and cover of its own\n",
      length(lengths.least), lengths.most ? "to " + length(*lengths.most) : std::string("on"),
      diameters_served(d));
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    if (part.volume > units::Volume{}) {
      text += fmt::format("  {:<18} {}{} of {}, {} of chips\n", part.name,
                          part.count > 1 ? fmt::format("{} x ", part.count) : std::string(),
                          shop(f, part.mass().value(), Dimension::mass, 3), part.metal->title,
                          shop(f, part.removed().value(), Dimension::volume, 3));
    }
  }
  return text;
}

std::string printing_lines(const Findings &f, TextStyle style) {
  std::string text = heading("Metal or printed", style);
  for (const auto &part : checks::part_heat(f.design)) {
    text += fmt::format("  {:<18} {:<13} no hotter than the {}, {}{}{}\n", part.part,
                        part.plastic.empty() ? "metal" : fmt::format("may be {}", part.plastic), part.of,
                        shop(f, part.hottest.value(), Dimension::temperature, 3),
                        part.against.empty() ? "" : "; ", part.against);
  }
  return text;
}

// Every tube on the common bench, and what sharing it saves.
std::string family_lines(const Findings &f, TextStyle style) {
  const auto &d = f.design;
  if (d.job.family.empty()) {
    return {};
  }
  std::string text = heading("Family on one bench (fixture.family)", style);
  const auto members = fixture::family_members(d.job);
  for (const auto &member : members) {
    text += fmt::format("  {:<16} tube {}, its axis {} over the base plate, rollers {} from vertical{}\n",
                        member.name, shop(f, member.tube_diameter.value(), Dimension::length),
                        shop(f, member.axis_height.value(), Dimension::length),
                        shop(f, member.roller_angle.value(), Dimension::angle),
                        member.conflicts.empty() ? "" : "; its design clashes: check it");
  }
  std::string shared, own;
  units::Mass saved{};
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    if (part.volume > units::Volume{}) {
      const bool common = fixture::shared_in_family(part.name);
      (common ? shared : own) += fmt::format("{}{}", (common ? shared : own).empty() ? "" : ", ", part.name);
      saved +=
          common ? double(members.size() - 1) * double(part.count) * part.stock.volume() * part.metal->density
                 : units::Mass{};
    }
  }
  text += fmt::format("  made once      {}: {} of stock less than a bench for each\n", shared,
                      shop(f, saved.value(), Dimension::mass, 3));
  return text + fmt::format("  for each tube  {}\n", own);
}

std::string status_word(checks::Status status, TextStyle style) {
  constexpr int red = 31, yellow = 33, green = 32;
  const std::string word = fmt::format("{:<7}", checks::to_text(status));
  return paint(word,
               status == checks::Status::fail      ? red
               : status == checks::Status::caution ? yellow
                                                   : green,
               style);
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

std::string rule_lines(const Findings &f, TextStyle style, bool all) {
  std::string text = heading("Rules", style);
  std::array<int, 3> count{}; // by status
  for (const auto &rule : f.rules) {
    ++count.at(static_cast<std::size_t>(rule.status));
    if (rule.status == checks::Status::pass && !all) {
      continue;
    }
    const std::string amount = against_limit(f, rule);
    text += fmt::format("  {} {:<28} {}{}{}\n", status_word(rule.status, style), rule.id, amount,
                        amount.empty() ? "" : "  ", rule.title);
    if (!rule.remedy.empty()) {
      text += fmt::format("          to do: {}\n", rule.remedy);
    }
  }
  const auto [passed, cautions, failing] = count;
  text +=
      fmt::format("  of {} rules judged {} pass, {} {}, {} {}\n", f.rules.size(), passed, cautions,
                  cautions == 1 ? "is a caution" : "are cautions", failing, failing == 1 ? "fails" : "fail");
  return text + not_judged_lines(f);
}

std::string defaults(const Findings &f, TextStyle style) {
  std::string text = heading("Values the job file leaves open", style);
  for (const auto &field : job::fields()) {
    const auto &origin = f.design.job.origin(field.key);
    const auto *figure = units::find(f.figures, field.path);
    if (origin.basis != units::Basis::given && figure != nullptr) {
      text += fmt::format("  {:<34} {:<12} {}\n", field.path, shop(f, figure->value, figure->dimension),
                          origin.reason);
    }
  }
  return text;
}

std::string title(const Findings &f, TextStyle style) {
  const auto &job = f.design.job;
  return fmt::format("{}{}{}\n", paint(job.identity.name, 1, style), job.identity.title.empty() ? "" : ": ",
                     job.identity.title);
}

// `beside`: the figure in whose unit this one is printed, so that the terms of a sum stand in one unit.
void trace_into(const Findings &f, const units::Figure &figure, double beside, int depth,
                std::vector<std::string> &seen, std::string &text) {
  constexpr int indent = 2;
  const std::string pad(static_cast<std::size_t>(depth * indent), ' ');
  text += fmt::format("{}{} = {}   {} [{}]\n", pad, figure.id,
                      shop_beside(f, figure.value, beside, figure.dimension), figure.title,
                      units::to_text(figure.basis));
  if (std::ranges::find(seen, figure.id) != seen.end()) {
    text += fmt::format("{}  (as above)\n", pad);
    return;
  }
  seen.push_back(figure.id);
  if (!figure.formula.empty()) {
    text += fmt::format("{}  formula: {}\n", pad, figure.formula);
  }
  text += fmt::format("{}  source: {}\n", pad, figure.source);
  for (const auto &input : figure.inputs) {
    if (const auto *next = units::find(f.figures, input)) {
      trace_into(f, *next, next->dimension == figure.dimension ? beside : next->value, depth + 1, seen, text);
    }
  }
}

// A rule by its id: what it judged, against what, by whose word, and what to do; nullopt when there is none.
std::optional<std::string> trace_rule(const Findings &f, std::string_view id) {
  const auto result = std::ranges::find(f.rules, id, &checks::RuleResult::id);
  const auto rule = std::ranges::find(checks::rules(), id, &checks::Rule::id);
  if (result != f.rules.end()) {
    const std::string amount = against_limit(f, *result);
    return fmt::format("{}   {} [{}]\n{}  source: {}\n{}", result->id, result->title,
                       checks::to_text(result->status),
                       amount.empty() ? "" : fmt::format("  value: {}\n", amount), result->source,
                       result->remedy.empty() ? fmt::format("  if it failed: {}\n", rule->remedy)
                                              : fmt::format("  to do: {}\n", result->remedy));
  }
  if (rule == checks::rules().end()) {
    return std::nullopt;
  }
  const auto left_out = std::ranges::find(f.not_judged, id, &checks::NotJudged::rule);
  return fmt::format("{}   {} [not judged: {}]\n  source: {}\n  if it failed: {}\n", rule->id, rule->title,
                     left_out != f.not_judged.end() ? left_out->why
                                                    : "this design has nothing that it judges",
                     rule->source, rule->remedy);
}

} // namespace

std::string cautions_text() {
  return "  Argon is heavier than air and displaces it: it fills low and closed spaces without smell or "
         "warning. Ventilate,\n"
         "  and use an oxygen monitor; below 19.5 % oxygen leave the room (OSHA 29 CFR 1910.146). A "
         "calculation is not a\n"
         "  monitor. Never block the bore's outlet: trapped gas heats and blows out the joint. The arc burns "
         "eyes and skin\n"
         "  (UV), the metal stays hot long after it is dark, fine titanium chips and dust burn fiercely: "
         "keep them wet or\n"
         "  swept, with a class D extinguisher at hand. Secure bottles and relieve pressure before opening "
         "fittings.\n"
         "  Follow your local code, your qualified procedure and the advice of licensed practice: they come "
         "before this.\n";
}

std::string summary_text(const Findings &f, TextStyle style) {
  std::string text = title(f, style);
  if (f.design.layout.buildable()) {
    text += gas_table(f, style) + log_lines(f, style) + heat_lines(f, style) + use_lines(f, style) +
            sizes(f, style) + family_lines(f, style) + printing_lines(f, style);
  }
  return text + rule_lines(f, style, false);
}

std::string check_text(const Findings &f, TextStyle style) {
  std::string text = title(f, style);
  if (f.design.layout.buildable()) {
    text += gas_table(f, style) + log_lines(f, style) + heat_lines(f, style) + use_lines(f, style) +
            sizes(f, style) + family_lines(f, style) + printing_lines(f, style);
  }
  return text + rule_lines(f, style, true) + defaults(f, style) + heading("Cautions", style) +
         cautions_text();
}

std::optional<std::string> trace_text(const Findings &f, std::string_view id) {
  const auto *figure = units::find(f.figures, id);
  if (figure == nullptr) {
    return trace_rule(f, id);
  }
  std::string text;
  std::vector<std::string> seen;
  trace_into(f, *figure, figure->value, 0, seen, text);
  return text;
}

std::string nearest_id(const Findings &f, std::string_view id) {
  std::vector<std::string_view> ids;
  std::ranges::transform(f.figures, std::back_inserter(ids), &units::Figure::id);
  std::ranges::transform(checks::rules(), std::back_inserter(ids), &checks::Rule::id);
  const auto nearest =
      std::ranges::min_element(ids, {}, [&](std::string_view other) { return job::edits(id, other); });
  return job::edits(id, *nearest) <= id.size() / 2 ? std::string(*nearest) : std::string();
}

} // namespace purgewright::report

#include "purgewright/report/text.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/job/nearest.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <vector>

namespace purgewright::report {
namespace {

using units::Dimension;

std::string paint(std::string_view text, int code, TextStyle style) {
  return style.colour ? fmt::format("\x1b[{}m{}\x1b[0m", code, text) : std::string(text);
}

std::string heading(std::string_view text, TextStyle style) { return fmt::format("\n{}\n", paint(text, 1, style)); }

std::string shop(const Findings &f, double si, Dimension dimension, int digits = 4) {
  return units::shop_text(si, dimension, f.design.job.shop.unit_system, digits);
}

// Both flow units side by side, no more digits than a flowmeter shows.
std::string flow(units::VolumeFlow q) {
  return fmt::format("{:>5} / {:>5}", units::shop_value(q.value(), Dimension::flow, units::UnitSystem::metric).value < 9.95
                                          ? fmt::format("{:.1f}", units::to_litres_per_minute(q))
                                          : fmt::format("{:.0f}", units::to_litres_per_minute(q)),
                     fmt::format("{:.1f}", units::shop_value(q.value(), Dimension::flow, units::UnitSystem::inch).value));
}

std::string seconds(units::Time t) {
  const double s = t.value();
  return s < 9.95 ? fmt::format("{:.1f} s", s) : fmt::format("{:.0f} s", s);
}

std::string gas_table(const Findings &f, TextStyle style) {
  const auto &purge = f.design.purge;
  std::string text = heading("Prepurge", style);
  text += fmt::format("  {:<9} {:>15}   {:>9} {:>9}   {}\n", "circuit", "L/min / ft3/h", "displaced", "mixed",
                      "flow is set by");
  const auto row = [&](std::string_view name, const gas::CircuitPurge &c) {
    text += fmt::format("  {:<9} {:>15}   {:>9} {:>9}   {}\n", name, flow(c.flow), seconds(c.displaced),
                        seconds(c.mixed), c.bound);
  };
  row("bore", purge.bore);
  row("chamber", purge.chamber);
  text += "  Wait the mixed time at least: it holds even if the gas stirs instead of pushing the air out.\n";
  return text;
}

std::string sizes(const Findings &f, TextStyle style) {
  const auto &d = f.design;
  const auto &body = d.layout.body;
  const auto length = [&](units::Length l) { return shop(f, l.value(), Dimension::length); };
  std::string text = heading("Sizes", style);
  text += fmt::format("  chamber body   {} x {} x {}, cavity {} diameter, slot {} x {}\n", length(body.length()),
                      length(body.width), length(body.height()), length(2.0 * body.cavity_radius),
                      length(body.slot.length()), length(body.slot.width));
  text += fmt::format("  tube bore      {} for a tube of {} to {}\n", length(2.0 * body.tube_bore_radius),
                      length(d.job.tube.outside_diameter_least()), length(d.job.tube.outside_diameter_most()));
  const auto &seal = d.layout.plug.seal;
  text += fmt::format("  end plug       spigot {}, O-ring AS568 {} on {}, squeeze {:.0f} to {:.0f} %, stretch {:.1f} %\n",
                      length(2.0 * d.layout.plug.spigot_radius), seal.ring->dash, length(2.0 * seal.groove_radius),
                      100.0 * seal.squeeze_least, 100.0 * seal.squeeze_most, 100.0 * seal.stretch);
  const auto &block = d.layout.block;
  text += fmt::format("  gas-port block {} x {} x {}, {} outlets, ports {}\n", length(block.length), length(block.width),
                      length(block.height), block.outlets, d.job.gas.port_thread->callout);
  text += fmt::format("  gas volume     chamber {}, bore {}\n", shop(f, d.volumes.chamber_gas.value(), Dimension::volume),
                      shop(f, d.volumes.bore_gas.value(), Dimension::volume));
  for (const auto &part : fixture::part_metals(d.job, d.volumes)) {
    if (part.volume > units::Volume{}) {
      text += fmt::format("  {:<18} {} of {}, {} of chips\n", part.name,
                          shop(f, part.mass().value(), Dimension::mass, 3), part.metal->title,
                          shop(f, part.removed().value(), Dimension::volume, 3));
    }
  }
  return text;
}

std::string status_word(checks::Status status, TextStyle style) {
  constexpr int red = 31, yellow = 33, green = 32;
  const std::string word = fmt::format("{:<7}", checks::to_text(status));
  return paint(word, status == checks::Status::fail ? red : status == checks::Status::caution ? yellow : green, style);
}

std::string rule_lines(const Findings &f, TextStyle style, bool all) {
  std::string text = heading("Rules", style);
  int passed = 0;
  for (const auto &rule : f.rules) {
    if (rule.status == checks::Status::pass) {
      ++passed;
      if (!all) {
        continue;
      }
    }
    text += fmt::format("  {} {:<28} {} (limit {})  {}\n", status_word(rule.status, style), rule.id,
                        shop(f, rule.value, rule.dimension), shop(f, rule.limit, rule.dimension), rule.title);
    if (!rule.remedy.empty()) {
      text += fmt::format("          to do: {}\n", rule.remedy);
    }
  }
  text += fmt::format("  {} of {} rules pass\n", passed, f.rules.size());
  return text;
}

std::string defaults(const Findings &f, TextStyle style) {
  std::string text = heading("Values the job file leaves open", style);
  for (const auto &field : job::fields()) {
    const auto &origin = f.design.job.origin(field.key);
    const auto *figure = units::find(f.figures, field.path);
    if (origin.basis != units::Basis::given && figure != nullptr) {
      text += fmt::format("  {:<34} {:<12} {}\n", field.path, shop(f, figure->value, figure->dimension), origin.reason);
    }
  }
  return text;
}

std::string title(const Findings &f, TextStyle style) {
  const auto &job = f.design.job;
  return fmt::format("{}{}{}\n", paint(job.identity.name, 1, style), job.identity.title.empty() ? "" : ": ",
                     job.identity.title);
}

void trace_into(const Findings &f, const units::Figure &figure, int depth, std::vector<std::string> &seen,
                std::string &text) {
  constexpr int indent = 2;
  const std::string pad(static_cast<std::size_t>(depth * indent), ' ');
  text += fmt::format("{}{} = {}   {} [{}]\n", pad, figure.id, shop(f, figure.value, figure.dimension), figure.title,
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
      trace_into(f, *next, depth + 1, seen, text);
    }
  }
}

} // namespace

std::string cautions_text() {
  return "  Argon is heavier than air and displaces it: it fills low and closed spaces without smell or warning. Ventilate,\n"
         "  and use an oxygen monitor; below 19.5 % oxygen leave the room (OSHA 29 CFR 1910.146). A calculation is not a\n"
         "  monitor. Never block the bore's outlet: trapped gas heats and blows out the joint. The arc burns eyes and skin\n"
         "  (UV), the metal stays hot long after it is dark, fine titanium chips and dust burn fiercely: keep them wet or\n"
         "  swept, with a class D extinguisher at hand. Secure bottles and relieve pressure before opening fittings.\n"
         "  Follow your local code, your qualified procedure and the advice of licensed practice: they come before this.\n";
}

std::string summary_text(const Findings &f, TextStyle style) {
  std::string text = title(f, style);
  if (f.design.layout.buildable()) {
    text += gas_table(f, style) + sizes(f, style);
  }
  return text + rule_lines(f, style, false);
}

std::string check_text(const Findings &f, TextStyle style) {
  std::string text = title(f, style);
  if (f.design.layout.buildable()) {
    text += gas_table(f, style) + sizes(f, style);
  }
  return text + rule_lines(f, style, true) + defaults(f, style) + heading("Cautions", style) + cautions_text();
}

std::optional<std::string> trace_text(const Findings &f, std::string_view id) {
  const auto *figure = units::find(f.figures, id);
  if (figure == nullptr) {
    return std::nullopt;
  }
  std::string text;
  std::vector<std::string> seen;
  trace_into(f, *figure, 0, seen, text);
  return text;
}

std::string nearest_id(const Findings &f, std::string_view id) {
  const auto nearest = std::ranges::min_element(
      f.figures, {}, [&](const units::Figure &figure) { return job::edits(id, figure.id); });
  return nearest != f.figures.end() && job::edits(id, nearest->id) <= id.size() / 2 ? nearest->id : std::string();
}

} // namespace purgewright::report

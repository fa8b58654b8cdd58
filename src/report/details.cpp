#include "text_parts.hpp"

#include "purgewright/checks/printing.hpp"
#include "purgewright/fixture/choices.hpp"
#include "purgewright/fixture/family.hpp"
#include "purgewright/fixture/figures.hpp"
#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::report::parts {
namespace {

using units::Dimension;

std::string explain(std::string_view name, const gas::CircuitPlan &c, double limit) {
  std::string text =
      fmt::format("  {}: {}; {}\n", name, c.tanks_measured ? "mixing as measured (gas.log)" : c.regime,
                  c.prepurge_reason);
  text += fmt::format(
      "    three volume changes would leave {} (well mixed: {}); limit {}, floor before welding {} ({})\n",
      oxygen_text(c.after_thumb_rule), oxygen_text(c.after_thumb_rule_mixed), oxygen_limit_text(limit),
      oxygen_text(c.prepurge_floor.oxygen), gas::to_text(c.prepurge_floor.dominant));
  if (c.dead_volume_share > 0.5) {
    text += fmt::format(
        "    the lines hold {:.1f} times the space itself: keep hoses short, do not let them stand "
        "open\n",
        c.dead_volume_share);
  }
  return text;
}

std::string gas_reasons(const Findings &f, TextStyle style) {
  const auto &purge = f.design.purge;
  const auto &gas = f.design.job.gas;
  return heading("Why these flows", style) + explain("bore", purge.bore, gas.oxygen_limit_bore) +
         explain("chamber", purge.chamber, gas.oxygen_limit_chamber);
}

// How far the shrinking runs pull the cap's rim aside on the way, and how long they take.
std::string orders(const Findings &f, TextStyle style) {
  const auto line = [&](job::RunOrder order, std::string_view name, const heat::OrderAdvice::Row &advice) {
    return row(
        name,
        fmt::format(
            "{}: rim pulled {} to one side on the way, {}", run_order_text(f.design.job.rotation.runs, order),
            units::shop_text(advice.rim_shift.value(), Dimension::length, f.design.job.shop.unit_system, 4),
            units::shop_text(advice.cycle.value(), Dimension::time, units::UnitSystem::metric, 2)),
        fmt::format("heat.order.{}.rim_shift", name));
  };
  Lines lines;
  lines += line(job::RunOrder::consecutive, "consecutive", f.design.order_advice.consecutive);
  lines += line(job::RunOrder::alternating, "alternating", f.design.order_advice.alternating);
  if (const auto &advice = f.design.run_advice; advice.fewest > 0) {
    lines += row("fewest",
                 fmt::format("{} of {:.0f} deg: as far as heat alone goes", advice.fewest,
                             units::to_degrees(advice.longest_run)),
                 "heat.runs.fewest");
  }
  return heading("Order of the runs", style) + printed(lines);
}

std::string made_parts(const Findings &f, TextStyle style) {
  const auto &d = f.design;
  std::string text = heading("Made parts", style);
  for (const auto &part : fixture::part_metals(d.job, d.layout, d.volumes)) {
    if (part.volume > units::Volume{}) {
      text += fmt::format("  {:<18} {}{} of {}, {} of chips\n", part.name,
                          part.count > 1 ? fmt::format("{} x ", part.count) : std::string(),
                          shop(f, part.mass().value(), Dimension::mass, 3), part.metal->title,
                          shop(f, part.removed().value(), Dimension::volume, 3));
    }
  }
  for (const auto &choice : fixture::choices(d.job, d.layout)) {
    text += fmt::format("  chosen         {}: {}, {}\n", choice.what, choice.kind, choice.reason);
  }
  text += printed(served(f));
  return text + fmt::format("  bench          base plate, cradle stands and gas-port block serve tubes {}\n",
                            diameters_served(d));
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

std::string passes(const Findings &f, TextStyle style) {
  std::string text = heading("Rules that pass", style);
  for (const auto &rule : f.rules) {
    if (rule.status == checks::Status::pass) {
      const std::string amount = against_limit(f, rule);
      text += fmt::format("  {} {:<28} {}{}{}\n", status_word(rule.status, style), rule.id, amount,
                          amount.empty() ? "" : "  ", rule.title);
    }
  }
  return text;
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

} // namespace

std::string details(const Findings &f, TextStyle style) {
  std::string text;
  if (f.design.layout.buildable()) {
    text += gas_reasons(f, style) + orders(f, style) + made_parts(f, style) + printing_lines(f, style) +
            family_lines(f, style);
  }
  return text + passes(f, style) + defaults(f, style);
}

} // namespace purgewright::report::parts

#include "text_parts.hpp"

#include "purgewright/report/bench_numbers.hpp"
#include "purgewright/report/lines.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::report {
namespace {

using units::Dimension;
using namespace parts;

WeldRow weld_row(const Findings &f, bool tack, std::size_t number, const heat::Weld &weld) {
  const std::string_view kind = tack ? "tack" : "run"; // as in the figures' ids
  return {.name = fmt::format("{} {}", tack ? kind : run_word(f), number + 1),
          .collar =
              tack ? collar_degrees(0.5 * (weld.pass.start + weld.pass.end)) : collar_degrees(weld.pass),
          .arc = fmt::format("{:.1f} s", weld.welding.value()),
          .hold = hold_text(weld),
          .warm_hold = warm_hold_text(f.design.series, tack, number),
          .before = temperature_text(f, weld.joint_before),
          .peak = temperature_text(f, weld.joint_peak),
          .pool = tack ? std::string("-") : shop(f, weld.pool_width.value(), Dimension::length, 2),
          .id = fmt::format("heat.{}.{}.hold", kind, number + 1)};
}

constexpr std::size_t of_collar = 21; // columns

std::string table_line(const WeldRow &r) {
  return fmt::format("  {:<10} {:>{}} {:>6} {:>7} {:>7} {:>12} {:>9} {:>8}  {}\n", r.name, r.collar,
                     of_collar, r.arc, r.hold, r.warm_hold, r.before, r.peak, r.pool, r.id);
}

// Tacks or spots beside each other in order, told in one line.
struct Alike {
  bool tack = false;
  std::size_t first = 0, last = 0;
  WeldRow row;
  heat::Weld hottest; // of each temperature and of the pool
};

bool joins(const Alike &alike, const WeldRow &next, const heat::Weld &weld) {
  return weld.pass.extent() == units::Angle{} || alike.tack
             ? alike.row.arc == next.arc && alike.row.hold == next.hold &&
                   alike.row.warm_hold == next.warm_hold &&
                   alike.row.collar.size() + next.collar.size() < of_collar
             : false;
}

void join(const Findings &f, std::size_t number, const heat::Weld &weld, Alike &alike) {
  heat::Weld &most = alike.hottest;
  most.joint_before = std::max(most.joint_before, weld.joint_before);
  most.joint_peak = std::max(most.joint_peak, weld.joint_peak);
  most.pool_width = std::max(most.pool_width, weld.pool_width);
  alike.last = number;
  const WeldRow next = weld_row(f, alike.tack, number, weld), of_most = weld_row(f, alike.tack, number, most);
  alike.row.collar += " " + next.collar;
  alike.row.before = of_most.before;
  alike.row.peak = of_most.peak;
  alike.row.pool = of_most.pool;
  alike.row.name = fmt::format("{} {}-{}", alike.tack ? "tack" : run_word(f), alike.first + 1, number + 1);
}

std::string alike_lines(const Findings &f, bool tack, const std::vector<heat::Weld> &welds) {
  std::vector<Alike> groups;
  for (std::size_t i = 0; i < welds.size(); ++i) {
    const WeldRow row = weld_row(f, tack, i, welds[i]);
    if (!groups.empty() && joins(groups.back(), row, welds[i])) {
      join(f, i, welds[i], groups.back());
    } else {
      groups.push_back({.tack = tack, .first = i, .last = i, .row = row, .hottest = welds[i]});
    }
  }
  std::string text;
  for (const Alike &alike : groups) {
    text += table_line(alike.row);
  }
  return text;
}

std::string table(const Findings &f, TextStyle style) {
  std::string text = table_line(weld_heads());
  text.erase(text.find_last_not_of(" \n") + 1);
  text += '\n';
  if (!style.all) {
    return text + alike_lines(f, true, f.design.heat.tacks) + alike_lines(f, false, f.design.heat.runs);
  }
  for (const WeldRow &weld : weld_rows(f)) {
    text += table_line(weld);
  }
  return text;
}

// When the second column of holds is due.
Line warm_line(const Findings &f) {
  const heat::Series &series = f.design.series;
  return row("fixture, warm",
             fmt::format(
                 "a part each {} brings it to {} in {}{}", shop(f, series.period.value(), Dimension::time, 2),
                 temperature_text(f, series.settled), shop(f, series.settling().value(), Dimension::time, 2),
                 series.settled > heat::burn_threshold ? "; gloves" : ""),
             "heat.series.settled");
}

// How many and in which order; `trace` and --all say why.
Line seam(const Findings &f) {
  const auto &rotation = f.design.job.rotation;
  return row(
      rotation.seam == job::Seam::spots ? "spots" : "runs",
      fmt::format("{}, {}", rotation.runs,
                  rotation.order == job::RunOrder::alternating ? "each opposite the one before" : "in a row"),
      "rotation.runs");
}

Lines interpass(const Findings &f) {
  const auto &plan = f.design.heat;
  if (!plan.interpass_temperature) {
    return {};
  }
  return {row("before a run",
              fmt::format("joint below {}: up to {} more after the hold",
                          limit_text(f, *plan.interpass_temperature),
                          shop(f, plan.longest_interpass_wait.value(), Dimension::time, 2)),
              "heat.interpass")};
}

Line hot_zone(const Findings &f) {
  const auto &plan = f.design.heat;
  return row("hot tube",
             fmt::format("above {} to {}; the chamber's argon to {}",
                         limit_text(f, plan.shielding_temperature),
                         shop(f, plan.hot_zone.value(), Dimension::length, 2),
                         shop(f, plan.covered.value(), Dimension::length, 2)),
             "heat.hot_zone");
}

Line pedal(const Findings &f) {
  const auto &plan = f.design.heat;
  if (f.design.job.rotation.seam == job::Seam::spots) {
    return row("pedal",
               fmt::format("full for each spot, then off: pool {} wide at most",
                           shop(f, plan.pool_width.value(), Dimension::length, 2)),
               "heat.pool_width");
  }
  return row("pedal",
             plan.pool_width < plan.pool_target
                 ? fmt::format("stays down: pool {} wide at most",
                               shop(f, plan.pool_width.value(), Dimension::length, 2))
                 : fmt::format("{}: pool {} wide, {} at most", pedal_text(f),
                               shop(f, plan.pool_target.value(), Dimension::length, 2),
                               shop(f, plan.pool_width.value(), Dimension::length, 2)),
             "heat.pedal.low");
}

Line under_pin(const Findings &f) {
  constexpr auto peak = &heat::HeatPlan::pin_contact_peak;
  const bool settled = checks::settled_is_hotter(f.design, peak);
  return row("cap under the pin",
             fmt::format("{} at most", temperature_text(f, checks::hottest(f.design, peak))),
             settled ? "heat.series.pin_contact.peak" : "heat.pin_contact.peak");
}

} // namespace

WeldRow weld_heads() {
  return {.name = "in order",
          .collar = "collar,deg",
          .arc = "arc",
          .hold = "hold",
          .warm_hold = "warm",
          .before = "joint before",
          .peak = "peak",
          .pool = "pool",
          .id = ""};
}

std::vector<WeldRow> weld_rows(const Findings &f) {
  const auto &plan = f.design.heat;
  std::vector<WeldRow> rows;
  for (std::size_t i = 0; i < plan.tacks.size(); ++i) {
    rows.push_back(weld_row(f, true, i, plan.tacks[i]));
  }
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    rows.push_back(weld_row(f, false, i, plan.runs[i]));
  }
  return rows;
}

Lines welding(const Findings &f) {
  const auto &plan = f.design.heat;
  const bool clockwise = f.design.job.rotation.direction == job::Direction::clockwise;
  Lines text;
  text += row("sense",
              fmt::format("weld {} looking at the cap, tube {}", clockwise ? "clockwise" : "counterclockwise",
                          clockwise ? "counterclockwise" : "clockwise"),
              "rotation.start_angle");
  text +=
      row("hold",
          fmt::format("all gas on until no hot metal is above {}", limit_text(f, plan.shielding_temperature)),
          "heat.shielding_temperature");
  text += interpass(f);
  text += row("first arc to end", shop(f, plan.cycle.value(), Dimension::time, 3), ids::heat_cycle);
  text += warm_line(f);
  for (const auto line : {pedal, under_pin, seam}) {
    text += line(f);
  }
  text += hot_zone(f);
  return text;
}

std::string parts::heat_lines(const Findings &f, TextStyle style) {
  return heading("Do, in this order", style) + table(f, style) + printed(welding(f));
}

} // namespace purgewright::report

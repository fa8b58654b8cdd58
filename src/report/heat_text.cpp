#include "text_parts.hpp"

#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::report::parts {
namespace {

using units::Dimension;

std::string weld_line(const Findings &f, bool tack, std::size_t number, const heat::Weld &weld) {
  const std::string angles =
      tack ? collar_degrees(0.5 * (weld.pass.start + weld.pass.end)) : collar_degrees(weld.pass);
  return fmt::format("  {:<8} {:>12} {:>8} {:>8} {:>9} {:>12} {:>12} {:>12}\n",
                     fmt::format("{} {}", tack ? "tack" : "run", number + 1), angles,
                     fmt::format("{:.1f} s", weld.welding.value()), hold_text(weld),
                     warm_hold_text(f.design.series, tack, number), temperature_text(f, weld.joint_before),
                     temperature_text(f, weld.joint_peak), temperature_text(f, weld.cap_centre_peak));
}

std::string table(const Findings &f) {
  const auto &plan = f.design.heat;
  std::string text =
      fmt::format("  {:<8} {:>12} {:>8} {:>8} {:>9} {:>12} {:>12} {:>12}\n", "in order", "collar, deg", "arc",
                  "hold", "warm", "joint before", "joint peak", "cap centre");
  for (std::size_t i = 0; i < plan.tacks.size(); ++i) {
    text += weld_line(f, true, i, plan.tacks[i]);
  }
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    text += weld_line(f, false, i, plan.runs[i]);
  }
  return text;
}

// When the second column of holds is due.
std::string series_lines(const Findings &f) {
  const heat::Series &series = f.design.series;
  std::string text =
      fmt::format("  warm: hold once parts before have warmed the fixture; when in doubt, hold as when warm\n"
                  "    one part every {} warms it to {} at most, most of that within {}\n",
                  shop(f, series.period.value(), Dimension::time, 2), temperature_text(f, series.settled),
                  shop(f, series.settling().value(), Dimension::time, 2));
  if (series.settled > heat::burn_threshold) {
    text += fmt::format("    gloves: bare metal over {} burns within a minute\n",
                        limit_text(f, heat::burn_threshold));
  }
  return text;
}

std::string advice(const Findings &f) {
  const auto &advice = f.design.run_advice;
  if (advice.fewest == 0) {
    return "  no number of runs up to 8 keeps the metal within its limits: see the rules\n";
  }
  return fmt::format(
      "  runs: the heat allows as few as {} (of {:.0f} deg), {} would be quickest, the job asks for {}\n",
      advice.fewest, units::to_degrees(advice.longest_run), advice.best, f.design.job.rotation.runs);
}

std::string uncovered(const Findings &f) {
  const auto &plan = f.design.heat;
  units::Time longest{};
  for (const auto &run : plan.runs) {
    longest = std::max(longest, run.uncovered_hold);
  }
  const std::string reach = fmt::format(
      "  hot zone: tube above {} as far as {} from the joint, the chamber's argon reaches {}\n",
      limit_text(f, plan.shielding_temperature), shop(f, plan.hot_zone.value(), Dimension::length, 2),
      shop(f, plan.covered.value(), Dimension::length, 2));
  return longest > units::Time{}
             ? reach + fmt::format("    outside it the tube needs {} to get below: the hard limit\n",
                                   bench_time(longest))
             : reach;
}

} // namespace

std::string heat_lines(const Findings &f, TextStyle style) {
  const auto &plan = f.design.heat;
  const bool clockwise = f.design.job.rotation.direction == job::Direction::clockwise;
  std::string text = heading("Tacks, runs and holds", style);
  text += table(f);
  text += fmt::format("  angles on the index collar; the weld runs {} round the joint, looking at the cap\n",
                      clockwise ? "clockwise" : "counterclockwise");
  text += fmt::format(
      "  hold: torch and both circuits stay on until the joint is below {}; after the last run until "
      "nothing is above it\n",
      limit_text(f, plan.shielding_temperature));
  text += fmt::format("  postflow to set on the torch: {}; first arc to last hold {}\n", postflow_text(f),
                      shop(f, plan.cycle.value(), Dimension::time, 3));
  text += series_lines(f) + advice(f) + uncovered(f);
  text += fmt::format("  plug's rubber {} at most (limit \u2264 {}); the cap's centre on the pin stays hot "
                      "longest and may colour a "
                      "little there\n",
                      temperature_text(f, plan.o_ring_peak), limit_text(f, plan.o_ring_limit));
  text += "  computed by conduction in still gas, not measured: peaks are means through the wall and upper "
          "bounds when\n"
          "    the pool nears boiling; let a thermocouple or temperature crayon confirm the first part\n";
  return text;
}

} // namespace purgewright::report::parts

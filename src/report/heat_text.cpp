#include "text_parts.hpp"

#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace purgewright::report::parts {
namespace {

using units::Dimension;

std::string weld_line(const Findings &f, std::string_view name, std::size_t number, const heat::Weld &weld) {
  const bool tack = name == "tack";
  const std::string angles =
      tack ? collar_degrees(0.5 * (weld.pass.start + weld.pass.end)) : collar_degrees(weld.pass);
  return fmt::format("  {:<8} {:>12} {:>8} {:>8} {:>12} {:>12} {:>12}\n", fmt::format("{} {}", name, number), angles,
                     fmt::format("{:.1f} s", weld.welding.value()),
                     weld.reached ? bench_time(weld.hold) : std::string("too long"),
                     temperature_text(f, weld.joint_before), temperature_text(f, weld.joint_peak),
                     temperature_text(f, weld.cap_centre_peak));
}

std::string table(const Findings &f) {
  const auto &plan = f.design.heat;
  std::string text = fmt::format("  {:<8} {:>12} {:>8} {:>8} {:>12} {:>12} {:>12}\n", "in order", "collar, deg", "arc",
                                 "hold", "joint before", "joint peak", "cap centre");
  for (std::size_t i = 0; i < plan.tacks.size(); ++i) {
    text += weld_line(f, "tack", i + 1, plan.tacks[i]);
  }
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    text += weld_line(f, "run", i + 1, plan.runs[i]);
  }
  return text;
}

std::string advice(const Findings &f) {
  const auto &advice = f.design.run_advice;
  if (advice.fewest == 0) {
    return "  no number of runs up to 8 keeps the metal within its limits: see the rules\n";
  }
  return fmt::format("  runs: the heat allows as few as {} (of {:.0f} deg), {} would be quickest, the job asks for {}\n",
                     advice.fewest, units::to_degrees(advice.longest_run), advice.best, f.design.job.rotation.runs);
}

std::string uncovered(const Findings &f) {
  const auto &plan = f.design.heat;
  units::Time longest{};
  for (const auto &run : plan.runs) {
    longest = std::max(longest, run.uncovered_hold);
  }
  const std::string reach =
      fmt::format("  hot zone: tube above {} as far as {} from the joint, the chamber's argon reaches {}\n",
                  limit_text(f, plan.shielding_temperature), shop(f, plan.hot_zone.value(), Dimension::length, 2),
                  shop(f, plan.covered.value(), Dimension::length, 2));
  return longest > units::Time{}
             ? reach + fmt::format("    outside it the tube needs {} to get below: the hard limit\n", bench_time(longest))
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
  text += fmt::format("  hold: torch and both circuits stay on until the joint is below {}; after the last run until "
                      "nothing is above it\n",
                      limit_text(f, plan.shielding_temperature));
  text += fmt::format("  postflow to set on the torch: {}; first arc to last hold {}\n", bench_time(plan.postflow()),
                      shop(f, plan.cycle.value(), Dimension::time, 3));
  text += advice(f) + uncovered(f);
  text += fmt::format("  O-ring {} at most (limit {}); the cap's centre on the pin stays hot longest and may colour a "
                      "little there\n",
                      temperature_text(f, plan.o_ring_peak), limit_text(f, plan.o_ring_limit));
  text += "  computed by conduction in still gas, not measured: peaks are means through the wall and upper bounds when\n"
          "    the pool nears boiling; let a thermocouple or temperature crayon confirm the first part\n";
  return text;
}

} // namespace purgewright::report::parts

#include "text_parts.hpp"

#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::report::parts {
namespace {

// "2.4" or "2.4 +- 0.3", by what the readings settle: the error to one digit, the value no finer.
std::string fitted(const gas::Fitted &f) {
  if (!std::isfinite(f.error) || f.error <= 0.0) {
    return fmt::format("{:.1f}", f.value);
  }
  const int places = std::clamp(-static_cast<int>(std::floor(std::log10(f.error))), 0, 3);
  return fmt::format("{:.{}f} +- {:.{}f}", f.value, places, f.error, places);
}

} // namespace

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

} // namespace purgewright::report::parts

#include "purgewright/report/bench_numbers.hpp"

#include "text_parts.hpp"

#include "purgewright/fixture/order.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

namespace purgewright::report {

std::string_view run_word(const Findings &f) {
  return f.design.job.rotation.seam == job::Seam::spots ? "spot" : "run";
}

std::string run_order_text(int runs, job::RunOrder order) {
  std::string text;
  for (const int place : fixture::run_order(runs, order)) {
    text += fmt::format("{}{}", text.empty() ? "" : "-", place + 1);
  }
  return text;
}

std::string litres_per_minute(units::VolumeFlow flow) {
  const double value = units::to_litres_per_minute(flow);
  return value < 9.95 ? fmt::format("{:.1f}", value) : fmt::format("{:.0f}", value);
}

std::string cubic_feet_per_hour(units::VolumeFlow flow) {
  return fmt::format("{:.1f}",
                     units::shop_value(flow.value(), units::Dimension::flow, units::UnitSystem::inch).value);
}

units::Time told(units::Time t) {
  const double s = t.value();
  const double step = s < 20.0 ? 1.0 : s < 120.0 ? 5.0 : 15.0;
  return units::seconds(std::ceil(s / step) * step);
}

std::string bench_time(units::Time t) {
  return fmt::format("{:.0f} s", told(t).value());
}

namespace {

constexpr std::string_view never = "too long";

} // namespace

std::string hold_text(const heat::Weld &weld) {
  return weld.reached ? bench_time(std::max(weld.hold, least_hold_said)) : std::string(never);
}

std::string warm_hold_text(const heat::Series &series, bool tack, std::size_t number) {
  return series.warm ? hold_text((tack ? series.warm->tacks : series.warm->runs).at(number))
                     : std::string(never);
}

std::string longer_hold_text(const Findings &f, bool tack, std::size_t number) {
  const auto weld_of = [&](const heat::HeatPlan &plan) { return (tack ? plan.tacks : plan.runs).at(number); };
  const heat::Weld first = weld_of(f.design.heat);
  if (!f.design.series.warm) {
    return std::string(first.reached ? hold_text(first) + ", first part" : never);
  }
  const heat::Weld warm = weld_of(*f.design.series.warm);
  return hold_text(!warm.reached || (first.reached && warm.hold > first.hold) ? warm : first);
}

std::string longer_postflow_text(const Findings &f) {
  const auto &warm = f.design.series.warm;
  return warm ? bench_time(std::max(f.design.heat.postflow(), warm->postflow())) : postflow_text(f);
}

std::string postflow_text(const Findings &f) {
  const std::string first = bench_time(f.design.heat.postflow());
  if (!f.design.series.warm) {
    return first + ", first part only: the fixture must cool between parts";
  }
  const std::string warm = bench_time(f.design.series.warm->postflow());
  return warm == first ? first : fmt::format("{}, {} once the fixture is warm", first, warm);
}

std::string water_column(const Findings &f, units::Pressure pressure, units::Rounding rounding) {
  constexpr double millimetre_of_water = 9.80665, inch_of_water = 249.089; // Pa, conventional
  const bool inch = f.design.job.shop.unit_system == units::UnitSystem::inch;
  const double height = pressure.value() / (inch ? inch_of_water : millimetre_of_water);
  // A count prints without a unit of its own.
  return fmt::format("{} {} of water",
                     units::shop_text_beside(height, height, units::Dimension::count,
                                             units::UnitSystem::metric, 2, rounding),
                     inch ? "in" : "mm");
}

std::string bottle_pressure(const Findings &f, units::Pressure pressure) {
  constexpr double bar = 1e5, psi = 6894.757; // Pa
  const bool inch = f.design.job.shop.unit_system == units::UnitSystem::inch;
  return fmt::format("{:.0f} {}", pressure.value() / (inch ? psi : bar), inch ? "psi" : "bar");
}

std::string air_speed(const Findings &f, units::Velocity speed) {
  constexpr double tenths_from = 0.1; // m/s
  const double size = speed.value();
  if (f.design.job.shop.unit_system == units::UnitSystem::inch) {
    return units::shop_text_beside(size, size, units::Dimension::velocity, units::UnitSystem::inch, 2,
                                   units::Rounding::down);
  }
  const double per_unit = size < tenths_from ? 100.0 : 10.0;
  return fmt::format("{:.{}f} m/s", std::floor(per_unit * size) / per_unit, size < tenths_from ? 2 : 1);
}

std::string oxygen_limit_text(double fraction) {
  constexpr double percent_from = 1e-2;
  const bool percent = fraction >= percent_from;
  const double shown = fraction * (percent ? 1e2 : 1e6);
  // A count prints without a unit of its own.
  return fmt::format("{} {}",
                     units::shop_text_beside(shown, shown, units::Dimension::count, units::UnitSystem::metric,
                                             4, units::Rounding::down),
                     percent ? "%" : "ppm");
}

std::string oxygen_text(double fraction) {
  constexpr double percent_from = 1e-2;
  return fraction >= percent_from
             ? fmt::format("{:.1f} %", 100.0 * fraction)
             : fmt::format("{} ppm", units::shop_text(fraction * 1e6, units::Dimension::ratio,
                                                      units::UnitSystem::metric, 2));
}

std::string collar_degrees(units::Angle angle) {
  const double whole = std::fmod(std::round(units::to_degrees(angle)), 360.0);
  return fmt::format("{:.0f}", whole < 0.0 ? whole + 360.0 : whole + 0.0);
}

std::string collar_degrees(const fixture::Pass &pass) {
  if (pass.extent() == units::Angle{}) { // a spot
    return collar_degrees(pass.start);
  }
  const bool whole_turn = units::to_degrees(pass.extent()) > 359.5;
  return fmt::format("{} {} {}", collar_degrees(pass.start), whole_turn ? "round to" : "to",
                     collar_degrees(pass.end));
}

std::string tapes_text(const Findings &f, std::size_t run) {
  std::vector<fixture::Pass> passes;
  for (const heat::Weld &weld : f.design.heat.runs) {
    passes.push_back(weld.pass);
  }
  const auto [at_start, met] = fixture::tapes_of(passes, run);
  std::string text = at_start ? fmt::format("from T{} ", *at_start + 1) : std::string();
  for (std::size_t i = 0; i + 1 < met.size(); ++i) {
    text += fmt::format("{}T{}{}", i == 0 ? "over " : "", met[i] + 1, i + 2 < met.size() ? ", " : " ");
  }
  const bool whole_turn = std::ranges::count(met, run) > 1 || at_start == run;
  return text + fmt::format("{} T{}", whole_turn ? "round to" : "to", run + 1);
}

std::string pedal_text(const Findings &f) {
  const auto current = [&](units::Current of) {
    return parts::shop(f, of.value(), units::Dimension::current, 2);
  };
  const std::string low = current(f.design.heat.pedal_low()), high = current(f.design.heat.pedal_high());
  return low == high ? low : fmt::format("{} falling to {}", high, low);
}

std::string temperature_text(const Findings &f, units::Temperature t) {
  return parts::shop(f, t.value(), units::Dimension::temperature, t > units::celsius(1000.0) ? 3 : 2);
}

std::string limit_text(const Findings &f, units::Temperature t) {
  return parts::shop(f, t.value(), units::Dimension::temperature, 3);
}

} // namespace purgewright::report

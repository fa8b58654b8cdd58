#include "purgewright/gas/measured_log.hpp"

#include "purgewright/job/sources.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace purgewright::gas {
namespace {

using units::Dimension;

constexpr std::string_view method = "least squares on log10 of the readings (gas/measured_log.hpp): BOBYQA, "
                                    "Powell 2009; lag kept by Schwarz 1978";

// Adds the figures of one circuit's fit; an error that the readings do not settle is left out.
class FitFigures {
 public:
  FitFigures(const FitResult &fit, units::Figures &list)
      : circuit_(to_text(fit.circuit)),
        prefix_("gas.log." + circuit_ + "."), log_{std::string("gas.log.") + circuit_ + ".readings"},
        list_(list) {}

  void add(std::string_view name, double value, Dimension dimension, std::string_view title,
           std::string formula) {
    add(name, value, dimension, title, std::move(formula), {log_});
  }
  void add(std::string_view name, double value, Dimension dimension, std::string_view title,
           std::string formula, std::vector<std::string> inputs) {
    if (std::isfinite(value)) {
      list_.push_back({prefix_ + std::string(name), value, dimension,
                       fmt::format("{}, {} circuit", title, circuit_), std::move(formula), std::move(inputs),
                       std::string(method), units::Basis::computed});
    }
  }
  void add(std::string_view name, const Fitted &fitted, Dimension dimension, std::string_view title,
           std::string formula, std::vector<std::string> inputs) {
    add(name, fitted.value, dimension, title, std::move(formula), std::move(inputs));
    add(std::string(name) + "_error", fitted.error, dimension, fmt::format("Standard error of: {}", title),
        "linearised least squares, with 10 % of the flow for the flowmeter",
        {log_, prefix_ + "fit_rms", prefix_ + "flow"});
  }
  const std::string &readings() const { return log_; }
  std::string own(std::string_view name) const { return prefix_ + std::string(name); }

 private:
  std::string circuit_, prefix_, log_;
  units::Figures &list_;
};

void list_parameters(const FitResult &fit, FitFigures &out) {
  const std::string volume(fit.circuit == Circuit::bore ? ids::volume_bore_gas : ids::volume_chamber_gas);
  out.add("tanks", fit.tanks, Dimension::ratio, "Equivalent stirred tanks, as measured",
          "value at which the purge's curve lies nearest to the log",
          {out.readings(), out.own("flow"), volume});
  out.add("tanks_model", fit.tanks_model, Dimension::ratio,
          "Equivalent stirred tanks, by the model at the log's flow", "network at the log's flow",
          {out.own("flow"), volume});
  out.add("delay", fit.delay, Dimension::time, "Delay of the meter's line",
          "shift at which the purge's curve lies nearest to the log", {out.readings()});
  out.add("lag", fit.lag, Dimension::time, "Lag of the meter and its cell",
          "first-order lag, at most gas.log_response / ln 10; 0 where the log shows none",
          {out.readings(), "gas.log_response"});
  out.add("floor", fit.floor, Dimension::ratio, "Oxygen the space settles at, as measured",
          "level at which the purge's curve lies nearest to the log", {out.readings()});
  out.add("floor_model", fit.floor_model, Dimension::ratio, "Oxygen the space settles at, by the model",
          "steady state of the network at the log's flow", {out.own("flow")});
}

void list_fit(const FitResult &fit, units::Figures &list) {
  FitFigures out(fit, list);
  out.add("readings", fit.readings, Dimension::count, "Readings of the measured log",
          "count in the file named by gas.log", {});
  out.add("flow", fit.flow.value(), Dimension::flow, "Flow while the log was taken",
          "column flow of the log, else the prepurge flow");
  out.add("last", fit.last, Dimension::ratio, "Oxygen the meter showed last", "median of the last readings");
  out.add("lowest", fit.lowest, Dimension::ratio, "Lowest oxygen the meter showed",
          "lowest median of as many readings");
  if (const auto wait = measured_wait(fit)) {
    out.add("wait", wait->value(), Dimension::time, "Prepurge that the log asks for",
            "time until the meter stayed under the limit x flow of the log / prepurge flow x 1.1 for the "
            "flowmeter",
            {out.readings(), out.own("flow"),
             std::string(fit.circuit == Circuit::bore ? ids::bore_prepurge_flow : ids::chamber_prepurge_flow),
             fit.circuit == Circuit::bore ? "gas.oxygen_limit.bore" : "gas.oxygen_limit.chamber"});
  }
  std::vector<std::string> fitted{out.readings()};
  if (usable(fit)) {
    list_parameters(fit, out);
    for (const std::string_view name : {"tanks", "delay", "lag", "floor"}) {
      fitted.push_back(out.own(name));
    }
  }
  out.add("fit_rms", fit.rms, Dimension::ratio, "Misfit of curve and log, root mean square, decades",
          "sqrt(mean (log10(curve / reading))^2)", std::move(fitted));
  out.add("fit_r2", fit.r_squared, Dimension::ratio, "Share of the log's variance the curve explains",
          "1 - sum of squares / total sum of squares, on log10", {out.own("fit_rms")});
}

} // namespace

LogFits fit_job_log(const job::Job &job, const fixture::Layout &layout, const fixture::Volumes &volumes,
                    const fixture::Areas &areas, const Bounds &bounds) {
  LogFits result;
  if (!job.log) {
    return result;
  }
  LogReading reading = parse_log(job.log->bytes, job.log->label);
  result.problems = std::move(reading.problems);
  if (reading.log) {
    for (const Readings &readings : reading.log->circuits) {
      result.fits.push_back(fit_log(*reading.log, readings.circuit, job, layout, volumes, areas, bounds));
    }
  }
  return result;
}

FitFault fit_fault(const FitResult &fit) {
  if (!(fit.r_squared >= least_r_squared)) {
    return FitFault::poor;
  }
  if (fit.at_bound) {
    return FitFault::at_bound;
  }
  if (fit.last > most_rise * fit.lowest) {
    return FitFault::rising;
  }
  const double ratio = units::ratio(fit.flow, fit.prepurge);
  return ratio > most_flow_ratio || ratio < 1.0 / most_flow_ratio ? FitFault::other_flow : FitFault::none;
}

std::string_view to_text(FitFault fault) {
  switch (fault) {
  case FitFault::none:
    return {};
  case FitFault::poor:
    return "the curve explains too little of the readings";
  case FitFault::at_bound:
    return "the fit ends at a bound of its search: a meter slower than gas.log_response, or a purge unlike "
           "any curve";
  case FitFault::rising:
    return "the readings rise again after their lowest";
  case FitFault::other_flow:
    return "the flow of the log is another than the prepurge's: log it at that flow";
  }
  return {};
}

bool usable(const FitResult &fit) {
  return fit_fault(fit) == FitFault::none;
}

std::optional<units::Time> measured_wait(const FitResult &fit) {
  return fit.under
             ? std::optional((1.0 + flowmeter_error) * units::ratio(fit.flow, fit.prepurge) * *fit.under)
             : std::nullopt;
}

bool floor_settled(const FitResult &fit) {
  return usable(fit) && fit.floor.error < fit.floor.value;
}

MeasuredMixing mixing_to_use(const job::Job &job, const LogFits &logs) {
  MeasuredMixing mixing;
  if (job.gas.log_use == job::LogUse::apply) {
    for (const FitResult &fit : logs.fits) {
      if (!usable(fit)) {
        continue;
      }
      const bool bore = fit.circuit == Circuit::bore;
      (bore ? mixing.bore_tanks : mixing.chamber_tanks) = fit.tanks.value;
      (bore ? mixing.bore_wait : mixing.chamber_wait) = measured_wait(fit).value_or(units::Time{});
    }
  }
  return mixing;
}

units::Figures log_figures(const LogFits &logs) {
  units::Figures list;
  for (const FitResult &fit : logs.fits) {
    list_fit(fit, list);
  }
  return list;
}

} // namespace purgewright::gas

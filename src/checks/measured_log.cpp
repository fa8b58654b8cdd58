// The oxygen meter's word: does the space get clean enough where it was measured, does it stay so, and may
// the fitted curve be believed. What a meter shows outweighs the model.
#include "topics.hpp"

#include "purgewright/gas/measured_log.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace purgewright::checks {
namespace {

using gas::Circuit;
using units::Dimension;

// Readings of a meter scatter by a few in a hundred; half as much again is no scatter. Common practice, no
// source.
constexpr double most_rise = 1.5;

const gas::FitResult &fit_of(const Design &d, Circuit circuit) {
  return *std::ranges::find(d.log.fits, circuit, &gas::FitResult::circuit);
}

double limit_of(const Design &d, Circuit circuit) {
  return circuit == Circuit::bore ? d.job.gas.oxygen_limit_bore : d.job.gas.oxygen_limit_chamber;
}

// The fitted floor where the readings settle it, else what the meter showed last: a log that ends while the
// curve still falls has not shown its floor.
template <Circuit circuit> Verdict settles(const Design &d) {
  const gas::FitResult &fit = fit_of(d, circuit);
  const double limit = limit_of(d, circuit);
  if (gas::floor_settled(fit)) {
    return at_most(fit.floor.value, limit);
  }
  return at_most(fit.last, limit, gas::usable(fit) ? Status::caution : Status::fail);
}

template <Circuit circuit> Verdict stays(const Design &d) {
  const gas::FitResult &fit = fit_of(d, circuit);
  return at_most(fit.last / fit.lowest, most_rise,
                 fit.last > limit_of(d, circuit) ? Status::fail : Status::caution);
}

template <Circuit circuit> Verdict follows(const Design &d) {
  const gas::FitResult &fit = fit_of(d, circuit);
  const Status poor = d.job.gas.log_use == job::LogUse::apply ? Status::fail : Status::caution;
  Verdict verdict = at_least(fit.r_squared, gas::least_r_squared, poor);
  verdict.status = gas::usable(fit) ? Status::pass : poor;
  return verdict;
}

template <Circuit circuit> std::string why_poor(const Design &d) {
  return fmt::format(": {}", gas::fit_fault(fit_of(d, circuit)));
}

constexpr std::string_view limit_source = "gas.oxygen_limit of the job; readings: gas.log";
constexpr std::string_view practice = "common practice, no source";
constexpr std::string_view fit_source =
    "fit of gas/measured_log.hpp; least share explained: common practice, no source";
constexpr std::string_view settle_remedy =
    "the meter shows more oxygen than the limit: look for a leak, a wet hose or a spent bottle, measure on "
    "until the reading stands still, and log it again";
constexpr std::string_view rise_remedy =
    "the reading rises again after its lowest: look for a leak, a flow turned down, or air drawn in at the "
    "meter, and log it again";
constexpr std::string_view fit_remedy = "no purge curve follows the log, so nothing is taken from it: check "
                                        "that its time starts with the gas, its "
                                        "units and its flow";

constexpr std::array<Rule, 6> table{{
    {"log.bore_floor", "Measured oxygen inside the joint settles under the limit", limit_source,
     Dimension::ratio, settles<Circuit::bore>, settle_remedy, Needs::bore_log},
    {"log.chamber_floor", "Measured oxygen outside the joint settles under the limit", limit_source,
     Dimension::ratio, settles<Circuit::chamber>, settle_remedy, Needs::chamber_log},
    {"log.bore_steady", "Measured oxygen inside the joint stays down: last reading over the lowest", practice,
     Dimension::ratio, stays<Circuit::bore>, rise_remedy, Needs::bore_log},
    {"log.chamber_steady", "Measured oxygen outside the joint stays down: last reading over the lowest",
     practice, Dimension::ratio, stays<Circuit::chamber>, rise_remedy, Needs::chamber_log},
    {"log.bore_fit", "A purge curve follows the log of the bore: share of its variance explained", fit_source,
     Dimension::ratio, follows<Circuit::bore>, fit_remedy, Needs::bore_log, why_poor<Circuit::bore>},
    {"log.chamber_fit", "A purge curve follows the log of the chamber: share of its variance explained",
     fit_source, Dimension::ratio, follows<Circuit::chamber>, fit_remedy, Needs::chamber_log,
     why_poor<Circuit::chamber>},
}};

} // namespace

std::span<const Rule> log_rules() {
  return table;
}

} // namespace purgewright::checks

// The oxygen meter's word: does the space get clean enough where it was measured, does it stay so, and may
// the fitted curve be believed. What a meter shows outweighs the model.
#include "topics.hpp"

#include "purgewright/gas/measured_log.hpp"
#include "purgewright/gas/purge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace purgewright::checks {
namespace {

using gas::Circuit;
using units::Dimension;

// A reading less than this share under the limit may lie under it by scatter alone: three times the few in a
// hundred above. Common practice, no source.
constexpr double clearly_under = 0.1;

const gas::FitResult &fit_of(const Design &d, Circuit circuit) {
  return *std::ranges::find(d.log.fits, circuit, &gas::FitResult::circuit);
}

template <Circuit circuit> bool has_log(const Design &d) {
  return d.purge_known ? std::ranges::count(d.log.fits, circuit, &gas::FitResult::circuit) > 0
                       : !d.job.gas.log.empty(); // which circuits it holds is known once it has been read
}

double limit_of(const Design &d, Circuit circuit) {
  return circuit == Circuit::bore ? d.job.gas.oxygen_limit_bore : d.job.gas.oxygen_limit_chamber;
}

// The fitted floor where the readings settle it, and never less than what the meter showed last: a log that
// ends while the curve still falls has not shown its floor.
template <Circuit circuit> Verdict settles(const Design &d) {
  const gas::FitResult &fit = fit_of(d, circuit);
  const double limit = limit_of(d, circuit);
  if (gas::floor_settled(fit)) {
    return at_most(std::max(fit.floor.value, fit.last), limit);
  }
  return at_most(fit.last, limit, gas::usable(fit) ? Status::caution : Status::fail);
}

template <Circuit circuit> Verdict stays(const Design &d) {
  const gas::FitResult &fit = fit_of(d, circuit);
  return at_most(fit.last / fit.lowest, gas::most_rise,
                 fit.last > limit_of(d, circuit) ? Status::fail : Status::caution);
}

// The reading in the middle of three: one alone that jumps is a drop-out of meter or logger, two in a row are
// gas, and so is the last one, since nothing shows that it was none. Common practice, no source.
double level(const gas::FitResult &fit, std::size_t middle) {
  if (middle + 1 == fit.oxygen.size()) {
    return fit.oxygen.back();
  }
  const double before = fit.oxygen[middle - 1], here = fit.oxygen[middle], after = fit.oxygen[middle + 1];
  return std::max(std::min(before, here), std::min(std::max(before, here), after));
}

// More lone readings above the limit than this share of a log, and than one, are no drop-outs. Common
// practice, no source.
constexpr double most_drop_outs = 0.02;

// Levels above the limit after they have settled under it: clearly, or for as long as a meter takes to
// answer.
int levels_above_again(const gas::FitResult &fit, double limit) {
  bool settled = false;
  int above = 0, alone = 0;
  std::size_t under_since = 0; // 0: above the limit
  for (std::size_t i = 1; i < fit.oxygen.size(); ++i) {
    const double now = level(fit, i);
    if (now > limit) {
      under_since = 0;
      above += settled ? 1 : 0;
      continue;
    }
    alone += settled && fit.oxygen[i] > limit ? 1 : 0;
    under_since = under_since == 0 ? i : under_since;
    settled = settled || now <= (1.0 - clearly_under) * limit ||
              fit.times[i] - fit.times[under_since] >= gas::least_wait;
  }
  const bool drop_outs = alone <= std::max(1.0, most_drop_outs * double(fit.oxygen.size()));
  return above + (drop_outs ? 0 : alone);
}

template <Circuit circuit> Verdict stays_under(const Design &d) {
  return at_most(levels_above_again(fit_of(d, circuit), limit_of(d, circuit)), 0.0);
}

// A curve that is to be applied must be usable; one that is only shown may be bad, and says so.
Status of_a_bad_curve(const Design &d) {
  return d.job.gas.log_use == job::LogUse::apply ? Status::fail : Status::caution;
}

template <Circuit circuit> Verdict follows(const Design &d) {
  return at_least(fit_of(d, circuit).r_squared, gas::least_r_squared, of_a_bad_curve(d));
}

// What else than a poor fit forbids to take the curve.
template <Circuit circuit> Verdict may_be_taken(const Design &d) {
  const gas::FitFault fault = gas::fit_fault(fit_of(d, circuit));
  const bool forbidden = fault != gas::FitFault::none && fault != gas::FitFault::poor;
  return at_most(forbidden ? 1.0 : 0.0, 0.0, of_a_bad_curve(d));
}

template <Circuit circuit> std::string why_not_taken(const Design &d) {
  return fmt::format(": {}", gas::to_text(gas::fit_fault(fit_of(d, circuit))));
}

// What a meter took to show the limit, its line and lag included, is waited for; of a log of another flow it
// is a reckoning and asks for a new log.
template <Circuit circuit> Verdict waited_for(const Design &d) {
  const gas::FitResult &fit = fit_of(d, circuit);
  const auto measured = gas::measured_wait(fit);
  const double least = measured ? measured->value() : fit.times.back().value(); // not even then
  return at_most(least, d.purge.wait().value(), Status::caution);
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
constexpr std::string_view fit_remedy = "nothing is taken from this log: check that its time starts with the "
                                        "gas, its units and its flow";

constexpr std::string_view wait_remedy =
    "the meter took longer than the wait to show the limit: gas.log_use: apply lengthens the wait";

constexpr std::array<Rule, 12> table{{
    {"log.bore_floor", "Measured oxygen inside the joint settles under the limit", limit_source,
     Dimension::ratio, settles<Circuit::bore>, settle_remedy, Needs::log, nullptr, has_log<Circuit::bore>},
    {"log.chamber_floor", "Measured oxygen outside the joint settles under the limit", limit_source,
     Dimension::ratio, settles<Circuit::chamber>, settle_remedy, Needs::log, nullptr,
     has_log<Circuit::chamber>},
    {"log.bore_steady", "Measured oxygen inside the joint stays down: last reading over the lowest", practice,
     Dimension::ratio, stays<Circuit::bore>, rise_remedy, Needs::log, nullptr, has_log<Circuit::bore>},
    {"log.chamber_steady", "Measured oxygen outside the joint stays down: last reading over the lowest",
     practice, Dimension::ratio, stays<Circuit::chamber>, rise_remedy, Needs::log, nullptr,
     has_log<Circuit::chamber>},
    {"log.bore_under",
     "Measured oxygen inside the joint stays under the limit once it is: readings above again", limit_source,
     Dimension::count, stays_under<Circuit::bore>, rise_remedy, Needs::log, nullptr, has_log<Circuit::bore>},
    {"log.chamber_under",
     "Measured oxygen outside the joint stays under the limit once it is: readings above again", limit_source,
     Dimension::count, stays_under<Circuit::chamber>, rise_remedy, Needs::log, nullptr,
     has_log<Circuit::chamber>},
    {"log.bore_fit", "A purge curve follows the log of the bore: share of its variance explained", fit_source,
     Dimension::ratio, follows<Circuit::bore>, fit_remedy, Needs::log, nullptr, has_log<Circuit::bore>},
    {"log.chamber_fit", "A purge curve follows the log of the chamber: share of its variance explained",
     fit_source, Dimension::ratio, follows<Circuit::chamber>, fit_remedy, Needs::log, nullptr,
     has_log<Circuit::chamber>},
    {"log.bore_usable", "The curve of the bore's log may be taken for the purge: reasons against it",
     fit_source, Dimension::count, may_be_taken<Circuit::bore>, fit_remedy, Needs::log,
     why_not_taken<Circuit::bore>, has_log<Circuit::bore>},
    {"log.chamber_usable", "The curve of the chamber's log may be taken for the purge: reasons against it",
     fit_source, Dimension::count, may_be_taken<Circuit::chamber>, fit_remedy, Needs::log,
     why_not_taken<Circuit::chamber>, has_log<Circuit::chamber>},
    {"log.bore_wait", "Prepurge lasts as long as the meter in the bore took to show the limit", limit_source,
     Dimension::time, waited_for<Circuit::bore>, wait_remedy, Needs::log, nullptr, has_log<Circuit::bore>},
    {"log.chamber_wait", "Prepurge lasts as long as the meter in the chamber took to show the limit",
     limit_source, Dimension::time, waited_for<Circuit::chamber>, wait_remedy, Needs::log, nullptr,
     has_log<Circuit::chamber>},
}};

} // namespace

std::span<const Rule> log_rules() {
  return table;
}

} // namespace purgewright::checks

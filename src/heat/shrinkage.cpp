#include "purgewright/heat/shrinkage.hpp"

#include "purgewright/standards/welding.hpp"

#include <algorithm>
#include <cmath>
#include <complex>

namespace purgewright::heat {

units::Length rim_shift(const fixture::Order &places, units::Length shrinkage) {
  const double share = 2.0 * units::pi / double(places.size());
  std::complex<double> pull;
  double most = 0.0;
  for (const int place : places) {
    // First harmonic of 1 over the run's share of the round: 1 / pi times the integral of exp(i angle).
    pull += std::polar(2.0 / units::pi * std::sin(0.5 * share), (double(place) + 0.5) * share);
    most = std::max(most, std::abs(pull));
  }
  return most * shrinkage;
}

OrderAdvice advise_order(const job::Job &job, const fixture::Layout &layout, Options options) {
  options.detail = Detail::coarse;
  options.history = false;
  const auto row = [&](job::RunOrder order) {
    job::Job varied = job;
    varied.rotation.order = order;
    return OrderAdvice::Row{.rim_shift = {}, .cycle = plan_heat(varied, layout, options).cycle};
  };
  return {row(job::RunOrder::consecutive), row(job::RunOrder::alternating)};
}

void add_rim_shifts(const job::Job &job, units::Length pool, OrderAdvice &advice) {
  const auto shrinkage = standards::transverse_shrinkage(pool);
  const auto of = [&](job::RunOrder order) {
    return rim_shift(fixture::run_order(job.rotation.runs, order), shrinkage);
  };
  advice.consecutive.rim_shift = of(job::RunOrder::consecutive);
  advice.alternating.rim_shift = of(job::RunOrder::alternating);
}

} // namespace purgewright::heat

#include "purgewright/gas/trapped.hpp"

#include "gas/require.hpp"

#include <algorithm>

namespace purgewright::gas {

using detail::require;

namespace {

double temperature_share(units::Temperature start, units::Temperature heated, units::Pressure absolute,
                         std::string_view function) {
  require(start.value() > 0.0, function, "start temperature must be above 0", start.value());
  require(heated.value() > 0.0, function, "heated temperature must be above 0", heated.value());
  require(absolute.value() > 0.0, function, "pressure must be above 0", absolute.value());
  return start.value() / heated.value();
}

} // namespace

units::Pressure trapped_rise(double heated_fraction, units::Temperature start, units::Temperature heated,
                             units::Pressure absolute) {
  const double share = temperature_share(start, heated, absolute, "trapped_rise");
  require(heated_fraction >= 0.0 && heated_fraction <= 1.0, "trapped_rise", "fraction must lie in 0 to 1",
          heated_fraction);
  const double loss = heated_fraction * (1.0 - share); // of density, had the pressure stayed
  return absolute * (loss / (1.0 - loss));
}

double heated_fraction_for(units::Pressure limit, units::Temperature start, units::Temperature heated,
                           units::Pressure absolute) {
  const double share = temperature_share(start, heated, absolute, "heated_fraction_for");
  require(share < 1.0, "heated_fraction_for", "heated temperature must exceed the start", heated.value());
  require(limit.value() >= 0.0, "heated_fraction_for", "limit must not be negative", limit.value());
  return std::min(1.0, limit.value() / (absolute.value() + limit.value()) / (1.0 - share));
}

} // namespace purgewright::gas

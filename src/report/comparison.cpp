// What a comparison says of all its rows together.
#include "comparison_parts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace purgewright::report {

bool is_known(const Comparison &c, std::size_t metric) {
  return std::ranges::any_of(c.designs,
                             [&](const ComparedDesign &d) { return std::isfinite(d.values[metric]); });
}

std::vector<std::size_t> best(const Comparison &c, std::size_t metric) {
  if (metrics()[metric].better == Better::neither) {
    return {};
  }
  const double sign = metrics()[metric].better == Better::smaller ? 1.0 : -1.0;
  std::vector<std::size_t> winners;
  double least = std::numeric_limits<double>::infinity();
  std::size_t comparable = 0;
  for (std::size_t d = 0; d < c.designs.size(); ++d) {
    const double value = sign * c.designs[d].values[metric];
    if (!std::isfinite(value)) {
      continue;
    }
    ++comparable;
    if (value < least) {
      least = value;
      winners.clear();
    }
    if (value == least) {
      winners.push_back(d);
    }
  }
  return winners.size() == comparable ? std::vector<std::size_t>{} : winners;
}

bool any_fails(const Comparison &c) {
  return std::ranges::any_of(c.designs, [](const ComparedDesign &d) { return d.rules.failing > 0; });
}

namespace parts {

bool counts_all(const Comparison &c, const ComparedDesign &design) {
  return !c.quick || design.rules.clashes;
}

std::string varied_unit(const Comparison &c, std::size_t key) {
  const units::Dimension dimension = c.varied_dimensions[key];
  return dimension == units::Dimension::price ? c.varied_currencies[key] + "/m3"
                                              : std::string(units::si_unit(dimension));
}

std::set<std::size_t> front_set(const Comparison &c) {
  const auto all = c.ranked.empty() ? std::vector<std::size_t>{} : front(c);
  return {all.begin(), all.end()};
}

} // namespace parts

} // namespace purgewright::report

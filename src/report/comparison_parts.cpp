#include "comparison_parts.hpp"

namespace purgewright::report::parts {

bool counts_all(const Comparison &c, const ComparedDesign &design) {
  return !c.quick || design.rules.clashes;
}

std::string varied_unit(const Comparison &c, std::size_t key) {
  const units::Dimension dimension = c.varied_dimensions[key];
  return dimension == units::Dimension::price ? c.varied_currencies[key] + "/m3"
                                              : std::string(units::si_unit(dimension));
}

} // namespace purgewright::report::parts

#include "purgewright/report/lines.hpp"

#include "text_parts.hpp"

#include <fmt/format.h>

#include <cmath>

namespace purgewright::report {
namespace {

units::Rounding strict(checks::Bound bound) {
  return bound == checks::Bound::at_most ? units::Rounding::down : units::Rounding::up;
}

std::string_view sign(checks::Bound bound) {
  switch (bound) {
  case checks::Bound::at_most:
    return "\u2264";
  case checks::Bound::at_least:
    return "\u2265";
  case checks::Bound::above:
    return ">";
  }
  return {};
}

} // namespace

std::string against_limit(const Findings &f, const checks::RuleResult &rule) {
  if (!rule.has_amount) {
    return "";
  }
  const auto system = f.design.job.shop.unit_system;
  const double unit_of = rule.limit == 0.0 || !std::isfinite(rule.limit) ? rule.value : rule.limit;
  constexpr double noise = 1e-6; // relative: a value that stands at its limit by design prints as its limit
  const bool at_limit = std::abs(rule.value - rule.limit) <= noise * std::abs(rule.limit);
  const auto rounding = at_limit ? units::Rounding::nearest : strict(rule.bound);
  std::string value, limit;
  constexpr int usual = 4, most = 9;
  for (int digits = usual; digits <= most; ++digits) {
    value = units::shop_text_beside(rule.value, unit_of, rule.dimension, system, digits);
    limit = units::shop_text_beside(rule.limit, unit_of, rule.dimension, system, digits, rounding);
    if (rule.status == checks::Status::pass || value != limit) {
      break;
    }
  }
  return fmt::format("{} (limit {} {})", value, sign(rule.bound), limit);
}

std::string value_text(const Findings &f, const units::Figure &figure) {
  return parts::shop(f, figure.value, figure.dimension);
}

std::string parts::limit_of(const Findings &f, double si, units::Dimension dimension, checks::Bound bound,
                            int digits) {
  return units::shop_text_beside(si, si, dimension, f.design.job.shop.unit_system, digits, strict(bound));
}

} // namespace purgewright::report

#include "purgewright/job/sweep.hpp"

#include "purgewright/job/nearest.hpp"
#include "purgewright/units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

namespace purgewright::job {
namespace {

using Values = std::array<double, 3>; // FROM, TO, STEP

// The text's four parts, or nothing.
struct Parts {
  std::string_view key;
  std::array<std::string_view, 3> values;
};

std::optional<Parts> split(std::string_view text) {
  const auto equals = text.find('=');
  const auto first = text.find(':', equals == std::string_view::npos ? 0 : equals);
  const auto second = first == std::string_view::npos ? first : text.find(':', first + 1);
  if (equals == std::string_view::npos || second == std::string_view::npos) {
    return std::nullopt;
  }
  return Parts{text.substr(0, equals),
               {text.substr(equals + 1, first - equals - 1), text.substr(first + 1, second - first - 1),
                text.substr(second + 1)}};
}

// What is wrong with the values, empty when nothing is.
std::string range_problem(const FieldInfo &field, const Values &values) {
  if (!(values[2] > 0.0) || values[1] < values[0]) {
    return "the step must be above zero and FROM not above TO";
  }
  if (values[0] < field.least || values[1] > field.most) {
    return fmt::format("{} allows {} to {}", field.path,
                       units::shop_text(field.least, field.dimension, units::UnitSystem::metric),
                       units::shop_text(field.most, field.dimension, units::UnitSystem::metric));
  }
  return {};
}

SweepReading refused(std::string problem, std::string nearest = {}) {
  return {.sweep = {}, .problem = std::move(problem), .nearest = std::move(nearest)};
}

SweepReading sweep_of(const FieldInfo &field, const Values &values, std::string currency) {
  constexpr double noise = 1e-9; // of a step: the last value counts when it is hit but for rounding
  const double steps = std::floor((values[1] - values[0]) / values[2] + noise);
  if (!(steps < double(most_designs))) {
    return refused(fmt::format("more than {} designs", most_designs));
  }
  return {.sweep = Sweep{&field, values[0], values[2], values[1], static_cast<std::size_t>(steps) + 1,
                         std::move(currency)},
          .problem = {},
          .nearest = {}};
}

} // namespace

double Sweep::at(std::size_t i) const {
  return std::min(to, from + step * double(i)); // rounding may lead past the end, and past the key's limit
}

SweepReading read_sweep(std::string_view text) {
  const auto parts = split(text);
  if (!parts) {
    return refused("a part is missing");
  }
  const FieldInfo *const info = field(parts->key);
  if (info == nullptr) {
    return refused(fmt::format("there is no key '{}'", parts->key), nearest_path(parts->key));
  }
  if (info->kind != FieldKind::quantity && info->kind != FieldKind::count) {
    return refused(fmt::format("'{}' is not a number", info->path));
  }
  Values values{};
  std::string currency;
  constexpr std::size_t step = 2;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const auto parsed = i == step ? units::parse_difference(parts->values[i], info->dimension)
                                  : units::parse_quantity(parts->values[i], info->dimension);
    if (!parsed.si) {
      return refused(parsed.problem);
    }
    if (i > 0 && parsed.currency != currency) {
      return refused("the currencies differ");
    }
    currency = parsed.currency;
    values[i] = *parsed.si;
  }
  std::string problem = range_problem(*info, values);
  return problem.empty() ? sweep_of(*info, values, std::move(currency)) : refused(std::move(problem));
}

std::size_t designs_of(std::span<const Sweep> sweeps) {
  return std::accumulate(sweeps.begin(), sweeps.end(), std::size_t{1},
                         [](std::size_t all, const Sweep &sweep) { return all * sweep.count; });
}

std::vector<double> values_of_design(std::span<const Sweep> sweeps, std::size_t n) {
  std::vector<double> values(sweeps.size());
  for (std::size_t k = sweeps.size(); k-- > 0;) {
    values[k] = sweeps[k].at(n % sweeps[k].count);
    n /= sweeps[k].count;
  }
  return values;
}

} // namespace purgewright::job

#include "purgewright/standards/tables.hpp"

#include <array>
#include <span>

namespace purgewright::standards {

namespace {

constexpr auto metric_flat_thickness =
    std::to_array<double>({5, 6, 8, 10, 12, 15, 16, 20, 25, 30, 35, 40, 50, 60});
constexpr auto metric_flat_width =
    std::to_array<double>({15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200});
constexpr auto metric_round = std::to_array<double>(
    {8, 10, 12, 15, 16, 18, 20, 22, 25, 28, 30, 32, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100});
constexpr auto inch_flat_thickness =
    std::to_array<double>({0.125, 0.1875, 0.25, 0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5});
constexpr auto inch_flat_width = std::to_array<double>({0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6});
constexpr auto inch_round = std::to_array<double>(
    {0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.125, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 3, 3.5, 4});

// Needs arrive by arithmetic; a need over a size by less than this is the size.
constexpr Length rounding = units::micrometres(0.01);

std::span<const double> sizes(StockForm form, bool metric) {
  switch (form) {
  case StockForm::flat_thickness:
    return metric ? std::span<const double>(metric_flat_thickness) : inch_flat_thickness;
  case StockForm::flat_width:
    return metric ? std::span<const double>(metric_flat_width) : inch_flat_width;
  case StockForm::round:
    return metric ? std::span<const double>(metric_round) : inch_round;
  }
  return {};
}

} // namespace

std::optional<Length> stock_size(StockForm form, StockSystem system, Length least) {
  const bool metric = system == StockSystem::metric;
  const auto length = [metric](double size) {
    return metric ? units::millimetres(size) : units::inches(size);
  };
  for (const double size : sizes(form, metric))
    if (length(size) + rounding >= least)
      return length(size);
  return std::nullopt;
}

std::string_view stock_source() {
  return "common practice, stockholders' usual sizes; EN 755-3 and -5 from memory";
}

} // namespace purgewright::standards

#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {
namespace {

using units::inches;
using units::millimetres;

constexpr std::string_view seen = "ISO 15 boundary dimensions; shoulder from memory";
constexpr std::string_view memory = "ISO 15 boundary dimensions, from memory";
constexpr std::string_view inch_series =
    "inch series, R6 sealed: 3/8 x 7/8 x 9/32 in; as dealers list it, shoulder too, from memory";
constexpr std::array<Bearing, 5> table{{
    {"625", millimetres(5.0), millimetres(16.0), millimetres(5.0), millimetres(7.4), memory},
    {"626", millimetres(6.0), millimetres(19.0), millimetres(6.0), millimetres(8.4), memory},
    {"608", millimetres(8.0), millimetres(22.0), millimetres(7.0), millimetres(10.0), seen},
    {"6000", millimetres(10.0), millimetres(26.0), millimetres(8.0), millimetres(12.0), seen},
    {"R6", inches(3.0 / 8.0), inches(7.0 / 8.0), inches(9.0 / 32.0), inches(0.455), inch_series},
}};

} // namespace

std::span<const Bearing> bearings() {
  return table;
}

const Bearing *bearing(std::string_view number) {
  const auto found = std::ranges::find(table, number, &Bearing::number);
  return found == table.end() ? nullptr : &*found;
}

} // namespace purgewright::standards

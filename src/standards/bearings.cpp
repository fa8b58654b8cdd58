#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {
namespace {

using units::millimetres;

constexpr std::string_view seen = "ISO 15 boundary dimensions; shoulder from memory";
constexpr std::string_view memory = "ISO 15 boundary dimensions, from memory";
constexpr std::array<Bearing, 4> table{{
    {"625", millimetres(5.0), millimetres(16.0), millimetres(5.0), millimetres(7.4), memory},
    {"626", millimetres(6.0), millimetres(19.0), millimetres(6.0), millimetres(8.4), memory},
    {"608", millimetres(8.0), millimetres(22.0), millimetres(7.0), millimetres(10.0), seen},
    {"6000", millimetres(10.0), millimetres(26.0), millimetres(8.0), millimetres(12.0), seen},
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

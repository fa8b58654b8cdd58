#include "purgewright/standards/tables.hpp"

#include <array>

namespace purgewright::standards {
namespace {

using units::celsius;

constexpr std::string_view tabled =
    "data sheet value, as tabled on filamentspecs.com/glass-transition-temperature";
constexpr std::array<Plastic, 3> table{{
    {"PLA", celsius(58.8), tabled},
    {"PETG", celsius(76.2), tabled},
    {"ABS", celsius(85.0), "lower end of the service limit of 85 to 100 degC that its sellers state"},
}};

} // namespace

std::span<const Plastic> plastics() {
  return table;
}

} // namespace purgewright::standards

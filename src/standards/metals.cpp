#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {

namespace {

using units::celsius;
using units::kilograms_per_cubic_metre;

// Below 800 degF (427 degC) titanium may leave the gas: the figure of welding practice. Procedures that ask
// for 260 to 370 degC exist.
constexpr units::Temperature titanium_shielding = units::kelvins((800.0 + 459.67) / 1.8);

constexpr std::array<Metal, 7> metal_rows{{
    {.name = "titanium-grade-2",
     .title = "titanium Grade 2",
     .density = kilograms_per_cubic_metre(4510.0),
     .conductivity = 16.4,
     .specific_heat = 523.0,
     .expansion = 8.6e-6,
     .melting_start = celsius(1660.0),
     .weldable_here = true,
     .shielding_temperature = titanium_shielding,
     .source = "ASM data for Grade 2, 20 to 93 degC; conductivity from memory; shielding 800 degF: common "
               "practice"},
    {.name = "titanium-grade-9",
     .title = "titanium Grade 9 (Ti-3Al-2.5V)",
     .density = kilograms_per_cubic_metre(4480.0),
     .conductivity = 8.3,
     .specific_heat = 523.0,
     .expansion = 9.61e-6,
     .melting_start = celsius(1620.0),
     .weldable_here = true,
     .shielding_temperature = titanium_shielding,
     .source =
         "ASM data for Grade 9; specific heat and melting from public data sheets, which disagree on melting "
         "(1620 and 1700 degC, the lower is taken); shielding 800 degF: common practice"},
    {.name = "titanium-6al-4v",
     .title = "titanium Grade 5 (Ti-6Al-4V)",
     .density = kilograms_per_cubic_metre(4430.0),
     .conductivity = 6.7,
     .specific_heat = 526.0,
     .expansion = 8.6e-6,
     .melting_start = celsius(1604.0),
     .weldable_here = true,
     .shielding_temperature = titanium_shielding,
     .source = "public data sheets of Ti-6Al-4V; shielding 800 degF: common practice"},
    {.name = "aluminium-6082",
     .title = "aluminium EN AW-6082-T6",
     .density = kilograms_per_cubic_metre(2700.0),
     .conductivity = 170.0,
     .specific_heat = 897.0,
     .expansion = 2.34e-5,
     .melting_start = celsius(585.0),
     .weldable_here = false,
     .shielding_temperature = std::nullopt,
     .source =
         "public data sheets of EN AW-6082, lower end of conductivity 170 to 220; specific heat from memory"},
    {.name = "aluminium-6061",
     .title = "aluminium 6061-T6",
     .density = kilograms_per_cubic_metre(2700.0),
     .conductivity = 167.0,
     .specific_heat = 896.0,
     .expansion = 2.36e-5,
     .melting_start = celsius(582.0),
     .weldable_here = false,
     .shielding_temperature = std::nullopt,
     .source = "public data sheets of 6061-T6; specific heat from memory"},
    {.name = "stainless-304",
     .title = "stainless steel 304",
     .density = kilograms_per_cubic_metre(8000.0),
     .conductivity = 16.2,
     .specific_heat = 500.0,
     .expansion = 1.73e-5,
     .melting_start = celsius(1400.0),
     .weldable_here = false,
     .shielding_temperature = std::nullopt,
     .source = "from memory of the ASM handbook"},
    {.name = "copper-c110",
     .title = "copper C11000",
     .density = kilograms_per_cubic_metre(8900.0),
     .conductivity = 388.0,
     .specific_heat = 385.0,
     .expansion = 1.7e-5,
     .melting_start = celsius(1083.0),
     .weldable_here = false,
     .shielding_temperature = std::nullopt,
     .source = "from memory of handbook values, close to public data of C10200"},
}};

} // namespace

std::span<const Metal> metals() {
  return metal_rows;
}

const Metal *metal(std::string_view name) {
  const auto *row =
      std::find_if(metal_rows.begin(), metal_rows.end(), [name](const Metal &m) { return m.name == name; });
  return row == metal_rows.end() ? nullptr : row;
}

} // namespace purgewright::standards

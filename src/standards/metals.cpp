#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {

namespace {

using units::celsius;
using units::kelvins;
using units::kilograms_per_cubic_metre;

// Below 800 degF (427 degC) titanium may leave the gas: the figure of welding practice. Procedures that ask
// for 260 to 370 degC exist.
constexpr units::Temperature titanium_shielding = kelvins((800.0 + 459.67) / 1.8);
constexpr std::string_view shielding_practice = "800 degF: common practice, no source";

// CRC Handbook, section 4: 3560 K.
constexpr units::Temperature titanium_boils = kelvins(3560.0);
// Liquid titanium alloy at rest 33 W/(m K) (Mills 2002, from memory); twice that for a stirred pool.
constexpr double stirred_pool = 67.0;

// ---- Titanium Grade 2
constexpr std::array<PropertyRow, 8> grade_2_conductivity{{{300.0, 16.4},
                                                           {400.0, 16.6},
                                                           {600.0, 16.9},
                                                           {800.0, 17.7},
                                                           {1000.0, 18.9},
                                                           {1200.0, 20.3},
                                                           {1500.0, 22.8},
                                                           {1900.0, 26.4}}};
// Change of alpha into beta: 87 kJ/kg (4.17 kJ/mol, NIST-JANAF tables, from memory), a triangle of that area
// on top of the sensible heat, 50 K to either side of 900 degC: a weld heats and cools too quickly for the
// few kelvins of equilibrium.
constexpr std::array<PropertyRow, 9> grade_2_heat{{{300.0, 522.0},
                                                   {400.0, 551.0},
                                                   {600.0, 591.0},
                                                   {800.0, 633.0},
                                                   {1000.0, 675.0},
                                                   {1123.0, 641.0},
                                                   {1173.0, 628.0 + 1740.0},
                                                   {1223.0, 625.0},
                                                   {1500.0, 686.0}}};
constexpr Melting grade_2_melting{
    .liquidus = celsius(1670.0),
    .boiling = titanium_boils,
    .beta_transus = celsius(913.0),
    .latent_heat = 325.0e3,
    .pool_conductivity = stirred_pool,
    .emissivity = 0.30,
    .source =
        "latent heat: ASM Material Data Sheet, Titanium Grade 2; melting from memory of ASM data; "
        "emissivity 0.3 at 710 degC: ASM data for Grade 1; boiling: CRC Handbook, section 4; pool: twice "
        "the liquid at rest, common practice"};

// ---- Titanium Grade 9
constexpr std::array<PropertyRow, 11> grade_9_conductivity{{{298.0, 8.3},
                                                            {373.0, 11.7},
                                                            {473.0, 13.0},
                                                            {573.0, 13.4},
                                                            {673.0, 14.2},
                                                            {773.0, 14.7},
                                                            {873.0, 16.3},
                                                            {973.0, 17.6},
                                                            {1073.0, 19.3},
                                                            {1473.0, 22.9},
                                                            {1873.0, 27.0}}};
// Change of alpha into beta: 65 kJ/kg, taken between the pure metal and Ti-6Al-4V, below the transus.
constexpr std::array<PropertyRow, 11> grade_9_heat{{{298.0, 523.0},
                                                    {473.0, 559.0},
                                                    {673.0, 602.0},
                                                    {873.0, 645.0},
                                                    {1073.0, 684.0},
                                                    {1108.0, 690.0},
                                                    {1158.0, 697.0 + 1300.0},
                                                    {1208.0, 670.0},
                                                    {1268.0, 614.0},
                                                    {1573.0, 667.0},
                                                    {1873.0, 718.0}}};
constexpr Melting grade_9_melting{
    .liquidus = celsius(1700.0),
    .boiling = titanium_boils,
    .beta_transus = celsius(935.0),
    .latent_heat = 300.0e3,
    .pool_conductivity = stirred_pool,
    .emissivity = 0.25,
    .source = "latent heat taken between titanium and Ti-6Al-4V; emissivity: as Ti-6Al-4V; boiling: pure "
              "titanium, CRC Handbook, section 4; pool: twice the liquid at rest, common practice"};

// ---- Ti-6Al-4V
constexpr std::array<PropertyRow, 13> ti_6al_4v_conductivity{{{298.0, 7.0},
                                                              {373.0, 7.45},
                                                              {473.0, 8.75},
                                                              {573.0, 10.15},
                                                              {673.0, 11.35},
                                                              {773.0, 12.6},
                                                              {873.0, 14.2},
                                                              {973.0, 15.5},
                                                              {1073.0, 17.8},
                                                              {1173.0, 20.2},
                                                              {1268.0, 19.3},
                                                              {1473.0, 22.9},
                                                              {1873.0, 27.0}}};
// Change of alpha into beta: 48 kJ/kg below the transus, Mills (2002), from memory.
constexpr std::array<PropertyRow, 10> ti_6al_4v_heat{{{298.0, 546.0},
                                                      {473.0, 584.0},
                                                      {673.0, 629.0},
                                                      {873.0, 673.0},
                                                      {1073.0, 714.0},
                                                      {1168.0, 733.0},
                                                      {1218.0, 687.0 + 960.0},
                                                      {1268.0, 641.0},
                                                      {1573.0, 696.0},
                                                      {1873.0, 750.0}}};
constexpr std::string_view mills = "Mills, Recommended Values of Thermophysical Properties for Selected "
                                   "Commercial Alloys (2002), from memory";
constexpr Melting ti_6al_4v_melting{
    .liquidus = celsius(1650.0),
    .boiling = titanium_boils,
    .beta_transus = celsius(999.0),
    .latent_heat = 286.0e3,
    .pool_conductivity = stirred_pool,
    .emissivity = 0.25,
    .source =
        "Mills (2002), from memory; emissivity: mean over the heat spectrum of the spectral values in J. "
        "Alloys Compd. 541 (2012) 144; boiling: pure titanium, CRC Handbook, section 4; pool: twice the "
        "liquid at rest, common practice"};

// ---- Metals of the fixture: one value for every temperature
constexpr PropertyRow al_6082_conductivity{293.0, 170.0}, al_6082_heat{293.0, 897.0};
constexpr PropertyRow al_6061_conductivity{293.0, 167.0}, al_6061_heat{293.0, 896.0};
constexpr PropertyRow steel_conductivity{293.0, 16.2}, steel_heat{293.0, 500.0};
constexpr PropertyRow copper_conductivity{293.0, 388.0}, copper_heat{293.0, 385.0};
constexpr Property one(const PropertyRow &row, std::string_view source) {
  return {{&row, 1}, source};
}
constexpr std::string_view sheets_6082 = "data sheets of EN AW-6082, from memory",
                           sheet_6061 = "ASM data sheet of 6061-T6 (Aluminum Association, typical)",
                           sheet_304 = "ASM Material Data Sheet, AISI Type 304 Stainless Steel",
                           copper_memory = "from memory of handbook values for C11000",
                           sheet_grade_2 = "ASM Material Data Sheet, Titanium Grade 2, Annealed",
                           sheet_grade_9 = "Alloys International, Titanium 3-2.5 (Grade 9), data sheet",
                           sheet_grade_5 = "BTI Metals, Ti 6Al-4V, characteristics";

constexpr std::array<Metal, 7> metal_rows{{
    {.name = "titanium-grade-2",
     .title = "titanium Grade 2",
     .density = kilograms_per_cubic_metre(4510.0),
     .density_source = sheet_grade_2,
     .conductivity =
         {grade_2_conductivity,
          "16.4 at 300 K from memory of ASM data; over temperature Incropera & DeWitt, table A.1, "
          "titanium, with the impurities' resistance falling as 1/T"},
     .specific_heat =
         {grade_2_heat,
          "Incropera & DeWitt, table A.1, titanium, and the heat of the alpha-beta change, from memory"},
     .expansion = 8.6e-6,
     .expansion_source = sheet_grade_2,
     .melting_start = celsius(1660.0),
     .melting_source = "ASM data for Grade 2, from memory",
     .weldable_here = true,
     .shielding_temperature = titanium_shielding,
     .shielding_source = shielding_practice,
     .melting = grade_2_melting},
    {.name = "titanium-grade-9",
     .title = "titanium Grade 9 (Ti-3Al-2.5V)",
     .density = kilograms_per_cubic_metre(4480.0),
     .density_source = sheet_grade_9,
     .conductivity =
         {grade_9_conductivity,
          "8.3 at 25 degC: Alloys International, Titanium 3-2.5, data sheet; 100 to 800 degC: data "
          "sheets of Ti-3Al-2.5V, from memory; above that as Ti-6Al-4V"},
     .specific_heat = {grade_9_heat, "Ti-6Al-4V (Mills 2002, from memory) scaled to 523 at 25 degC, data "
                                     "sheets of Grade 9, from memory"},
     .expansion = 9.61e-6,
     .expansion_source = sheet_grade_9,
     .melting_start = celsius(1620.0),
     .melting_source =
         "data sheets of Grade 9, from memory, which disagree (1620 and 1700 degC): the lower is "
         "taken",
     .weldable_here = true,
     .shielding_temperature = titanium_shielding,
     .shielding_source = shielding_practice,
     .melting = grade_9_melting},
    {.name = "titanium-6al-4v",
     .title = "titanium Grade 5 (Ti-6Al-4V)",
     .density = kilograms_per_cubic_metre(4430.0),
     .density_source = sheet_grade_5,
     .conductivity = {ti_6al_4v_conductivity, mills},
     .specific_heat = {ti_6al_4v_heat, mills},
     .expansion = 8.6e-6,
     .expansion_source = sheet_grade_5,
     .melting_start = celsius(1604.0),
     .melting_source = sheet_grade_5,
     .weldable_here = true,
     .shielding_temperature = titanium_shielding,
     .shielding_source = shielding_practice,
     .melting = ti_6al_4v_melting},
    {.name = "aluminium-6082",
     .title = "aluminium EN AW-6082-T6",
     .density = kilograms_per_cubic_metre(2700.0),
     .density_source = sheets_6082,
     .conductivity =
         one(al_6082_conductivity, "data sheets of EN AW-6082, lower end of 170 to 220, from memory"),
     .specific_heat = one(al_6082_heat, "from memory"),
     .expansion = 2.34e-5,
     .expansion_source = sheets_6082,
     .melting_start = celsius(585.0),
     .melting_source = sheets_6082,
     .weldable_here = false},
    {.name = "aluminium-6061",
     .title = "aluminium 6061-T6",
     .density = kilograms_per_cubic_metre(2700.0),
     .density_source = sheet_6061,
     .conductivity = one(al_6061_conductivity, sheet_6061),
     .specific_heat = one(al_6061_heat, sheet_6061),
     .expansion = 2.36e-5,
     .expansion_source = sheet_6061,
     .melting_start = celsius(582.0),
     .melting_source = sheet_6061,
     .weldable_here = false},
    {.name = "stainless-304",
     .title = "stainless steel 304",
     .density = kilograms_per_cubic_metre(8000.0),
     .density_source = sheet_304,
     .conductivity = one(steel_conductivity, sheet_304),
     .specific_heat = one(steel_heat, sheet_304),
     .expansion = 1.73e-5,
     .expansion_source = sheet_304,
     .melting_start = celsius(1400.0),
     .melting_source = sheet_304,
     .weldable_here = false},
    {.name = "copper-c110",
     .title = "copper C11000",
     .density = kilograms_per_cubic_metre(8900.0),
     .density_source = copper_memory,
     .conductivity = one(copper_conductivity, copper_memory),
     .specific_heat = one(copper_heat, copper_memory),
     .expansion = 1.7e-5,
     .expansion_source = copper_memory,
     .melting_start = celsius(1083.0),
     .melting_source = copper_memory,
     .weldable_here = false},
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

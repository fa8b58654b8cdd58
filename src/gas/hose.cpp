#include "purgewright/gas/hose.hpp"

#include "purgewright/gas/mixing.hpp"

#include "gas/require.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::gas {

using detail::require;

namespace {

constexpr std::string_view handbook =
    "Polymer Handbook (Brandrup, Immergut), oxygen, 25 degC, dry, from memory";
// Soft tube for laboratories and gas; lightly plasticised compounds pass a sixteenth of it.
constexpr std::string_view soft_pvc =
    "makers' tables of soft (plasticised) PVC tube, oxygen 80e-10 cm3 mm/(s cm2 cmHg), from memory";
constexpr std::string_view robb =
    "Robb, Ann. N.Y. Acad. Sci. 146, 119 (1968), dimethyl silicone, 25 degC, from memory";
constexpr std::string_view solid = "metals pass no molecular oxygen at room temperature (common practice)";

constexpr std::array<HoseMaterial, 19> materials{{
    {"silicone", 605.0 * barrer, robb},
    {"rubber", 23.3 * barrer, handbook}, // natural rubber, the worst of the common rubbers
    {"epdm", 20.0 * barrer, handbook},
    {"polychloroprene", 4.0 * barrer, handbook},
    {"nitrile", 1.0 * barrer, handbook},
    {"butyl", 1.3 * barrer, handbook},
    {"fkm", 1.5 * barrer, handbook},
    {"polyurethane", 1.1 * barrer, handbook},
    {"polyethylene", 2.9 * barrer, handbook}, // low density, the worse of the two
    {"polypropylene", 1.2 * barrer, handbook},
    {"pvc", 8.0 * barrer, soft_pvc}, // plasticised, as hoses are
    {"ptfe", 4.2 * barrer, handbook},
    {"fep", 4.9 * barrer, handbook},
    {"nylon", 0.038 * barrer, handbook},
    {"polycarbonate", 1.4 * barrer, handbook},
    {"pet", 0.035 * barrer, handbook},
    {"steel", 0.0, solid},
    {"stainless", 0.0, solid},
    {"copper", 0.0, solid},
}};

void check_hose(const Hose &hose, std::string_view function) {
  require(hose.length.value() >= 0.0, function, "length must not be negative", hose.length.value());
  require(hose.inside_diameter.value() > 0.0, function, "inside diameter must be above 0",
          hose.inside_diameter.value());
  require(hose.outside_diameter > hose.inside_diameter, function, "outside diameter must exceed the inside",
          hose.outside_diameter.value());
}

} // namespace

std::span<const HoseMaterial> hose_materials() {
  return materials;
}

const HoseMaterial *hose_material(std::string_view name) {
  const auto row = std::ranges::find(materials, name, &HoseMaterial::name);
  return row == materials.end() ? nullptr : &*row;
}

units::VolumeFlow hose_oxygen_at_stp(const Hose &hose, double permeability, units::Pressure difference) {
  check_hose(hose, "hose_oxygen_at_stp");
  require(permeability >= 0.0, "hose_oxygen_at_stp", "permeability must not be negative", permeability);
  require(difference.value() >= 0.0, "hose_oxygen_at_stp", "pressure must not be negative",
          difference.value());
  return units::cubic_metres_per_second(permeability * 2.0 * units::pi * hose.length.value() *
                                        difference.value() /
                                        std::log(units::ratio(hose.outside_diameter, hose.inside_diameter)));
}

units::VolumeFlow from_stp(units::VolumeFlow at_stp, units::Temperature temperature,
                           units::Pressure pressure) {
  require(temperature.value() > 0.0, "from_stp", "temperature must be above 0", temperature.value());
  require(pressure.value() > 0.0, "from_stp", "pressure must be above 0", pressure.value());
  return at_stp * (temperature.value() / 273.15 * units::ratio(standard_atmosphere, pressure));
}

double hose_rise(units::VolumeFlow oxygen, units::VolumeFlow gas) {
  require(oxygen.value() >= 0.0, "hose_rise", "oxygen flow must not be negative", oxygen.value());
  require(gas.value() > 0.0, "hose_rise", "gas flow must be above 0", gas.value());
  const double rise = units::ratio(oxygen, gas);
  require(rise <= 0.01, "hose_rise", "rise must stay under 0.01 to be linear", rise);
  return rise;
}

units::Volume hose_volume(const Hose &hose) {
  check_hose(hose, "hose_volume");
  return units::square(hose.inside_diameter) * hose.length * (units::pi / 4.0);
}

units::Time hose_flush_time(const Hose &hose, units::VolumeFlow flow, units::Diffusivity diffusivity,
                            double initial, double target, double supply) {
  require(flow.value() > 0.0, "hose_flush_time", "flow must be above 0", flow.value());
  const units::Volume volume = hose_volume(hose);
  const units::Velocity speed = flow / (units::square(hose.inside_diameter) * (units::pi / 4.0));
  const units::Diffusivity axial = taylor_aris_tube(diffusivity, speed, 0.5 * hose.inside_diameter);
  const double tanks = std::min(equivalent_tanks((speed * hose.length).value() / axial.value()), 1e4);
  return volume / flow * tanks_volumes(tanks, initial, target, supply);
}

} // namespace purgewright::gas

// Textbook conduction: the solver on walls that stand for a half space, a rod, a lump.
#include "reference_values.hpp"

#include "purgewright/heat/gas_film.hpp"
#include "purgewright/heat/model.hpp"
#include "purgewright/heat/series.hpp"

#include <cmath>

using namespace purgewright;
using namespace purgewright::heat;
using reference::entry;

namespace {

// Steps so small that only the mesh is left.
Accuracy careful(double longest) {
  return {.step_error = units::TemperatureDifference::from_value(0.02),
          .relative_step_error = 1e-4,
          .longest_step = units::seconds(longest),
          .crossing = units::TemperatureDifference::from_value(0.01)};
}

Metal metal(double k, double rho, double cp) {
  return constant_metal(k, units::kilograms_per_cubic_metre(rho), cp, 0.0);
}

// Temperature over the distance from the joint, linear between rings.
double at_depth(const Model &model, double depth) {
  const auto &rings = model.chain().rings;
  for (std::size_t i = rings.size() - 1; i > 0; --i) {
    const double near = -rings[i].position, far = -rings[i - 1].position;
    if (depth >= near && depth <= far) {
      const double share = (depth - near) / (far - near);
      return (1.0 - share) * model.mean(i).value() + share * model.mean(i - 1).value();
    }
  }
  FAIL("depth outside the chain");
  return 0.0;
}

} // namespace

TEST_CASE("Half space whose surface is chilled", "[reference][heat]") {
  const auto e = entry("semi_infinite_fixed");
  const Metal soil = metal(e.number("k"), e.number("rho"), e.number("cp"));
  Chain chain = plain_wall(soil, units::metres(1.0), units::metres(0.1), units::metres(8.0), 320, 8);
  const double to_surface = 0.5 * chain.rings[chain.joint].length;
  chain.contacts.push_back({.ring = chain.joint,
                            .body = Body::chamber,
                            .area = chain.rings[0].face,
                            .coefficient = soil.conductivity[0].value / to_surface});
  Model model(chain, {.ambient = units::celsius(e.number("surface"))}, careful(6.0 * 3600.0));
  for (std::size_t i = 0; i < chain.rings.size(); ++i) {
    model.set_ring(i, units::celsius(e.number("start")));
  }
  model.cool(units::seconds(e.number("days") * 86400.0));
  for (const auto &row : e.values()) {
    const double kelvin = at_depth(model, row["depth"].as<double>());
    CHECK(kelvin - 273.15 == Approx(row["temperature"].as<double>()).margin(e.tolerance()).epsilon(0.0));
  }
}

TEST_CASE("Half space under a constant flux", "[reference][heat]") {
  // Incropera & DeWitt, eq. 5.59; Carslaw & Jaeger, 2nd ed., sec. 2.9.
  constexpr double k = 15.0, rho = 4480.0, cp = 600.0, power = 20.0, time = 60.0;
  const Chain chain = plain_wall(metal(k, rho, cp), units::millimetres(5.0), units::millimetres(1.0),
                                 units::millimetres(250.0), 500, 8);
  Model model(chain, {.ambient = units::kelvins(300.0)}, careful(0.2));
  model.weld({.power = units::Power::from_value(power),
              .radius = units::millimetres(0.01),
              .joint_radius = units::millimetres(5.0)},
             units::seconds(time));
  const double flux = power / chain.rings[0].face, diffusivity = k / (rho * cp);
  const double length = std::sqrt(4.0 * diffusivity * time);
  for (const double x : {1e-3, 5e-3, 10e-3, 20e-3, 40e-3}) {
    const double rise =
        flux / k *
        (length / std::sqrt(units::pi) * std::exp(-x * x / (length * length)) - x * std::erfc(x / length));
    CAPTURE(x);
    CHECK(at_depth(model, x) - 300.0 == Approx(rise).epsilon(2e-3));
  }
}

TEST_CASE("A rod in air needs the printed heat to keep its base hot", "[reference][heat]") {
  const auto e = entry("long_fin");
  const double diameter = e.number("diameter"), rise = e.number("base") - e.number("ambient");
  for (const auto &row : e.values()) {
    const double k = row["k"].as<double>();
    // A wall as thick as its radius is a solid rod.
    const Chain chain = plain_wall(metal(k, 8000.0, 400.0), units::metres(0.25 * diameter),
                                   units::metres(0.5 * diameter), units::metres(1.2), 400, 8, 2.0);
    const Surroundings air{.ambient = units::celsius(e.number("ambient")),
                           .outside_coefficient = e.number("h")};
    Model model(chain, air, careful(20.0));
    model.weld({.power = units::Power::from_value(row["q"].as<double>()),
                .radius = units::millimetres(0.01),
                .joint_radius = units::metres(0.5 * diameter)},
               units::seconds(800.0));
    const double first = model.mean(chain.joint).value(), second = model.mean(chain.joint - 1).value();
    const double base = first + (first - second) * chain.rings[chain.joint].to_face /
                                    (chain.rings[chain.joint - 1].to_face + chain.rings[chain.joint].to_face);
    CAPTURE(k);
    CHECK(base - air.ambient.value() == e.near(rise));
  }
}

// The same rod in closed form: the efficiency that the base plate counts with (heat/series.hpp).
TEST_CASE("A long fin passes the printed heat", "[reference][heat]") {
  const auto e = entry("long_fin");
  const double diameter = e.number("diameter"), h = e.number("h"),
               rise = e.number("base") - e.number("ambient");
  const double length = 1.2; // m, very long: the rest of the rod is cold
  for (const auto &row : e.values()) {
    const double k = row["k"].as<double>();
    CAPTURE(k);
    CHECK(h * units::pi * diameter * length * rise * fin_efficiency(h, k, 4.0 / diameter, length) ==
          e.near(row["q"].as<double>()));
  }
}

TEST_CASE("A thin lump warms as printed", "[reference][heat]") {
  const auto e = entry("lumped_thermocouple");
  // Surface over volume of the sphere, 6 / D, is that of a rod of radius D / 3.
  const double radius = e.number("diameter") / 3.0;
  const Chain chain =
      plain_wall(metal(e.number("k"), e.number("rho"), e.number("cp")), units::metres(0.5 * radius),
                 units::metres(radius), units::millimetres(1.0), 4, 8);
  Model model(chain, {.ambient = units::celsius(e.number("ambient")), .outside_coefficient = e.number("h")},
              careful(0.05));
  for (std::size_t i = 0; i < chain.rings.size(); ++i) {
    model.set_ring(i, units::celsius(e.number("start")));
  }
  for (const auto &row : e.values()) {
    model.cool(units::seconds(row["time"].as<double>()));
    CHECK(model.mean(0).value() - 273.15 ==
          Approx(row["temperature"].as<double>()).margin(e.tolerance()).epsilon(0.0));
  }
}

TEST_CASE("A lump that only radiates follows the closed form", "[reference][heat]") {
  // Incropera & DeWitt, eq. 5.18, with surroundings at Ts.
  constexpr double rho = 4500.0, cp = 550.0, emissivity = 0.3, start = 1400.0, cold = 293.15, time = 30.0;
  const Metal body = constant_metal(20.0, units::kilograms_per_cubic_metre(rho), cp, emissivity);
  const Chain chain =
      plain_wall(body, units::millimetres(10.0), units::millimetres(1.0), units::millimetres(5.0), 4, 8);
  Model model(chain, {.ambient = units::kelvins(cold)}, careful(0.2));
  double volume = 0.0, area = 0.0;
  for (std::size_t i = 0; i < chain.rings.size(); ++i) {
    model.set_ring(i, units::kelvins(start));
    volume += chain.rings[i].volume;
    area += chain.rings[i].outside;
  }
  model.cool(units::seconds(time));
  const auto term = [](double t) {
    return std::log(std::abs((cold + t) / (cold - t))) + 2.0 * std::atan(t / cold);
  };
  const double reached = model.mean(0).value();
  const double taken = rho * volume * cp / (4.0 * emissivity * area * stefan_boltzmann * std::pow(cold, 3)) *
                       (term(reached) - term(start));
  CHECK(reached < 1200.0);
  CHECK(taken == Approx(time).epsilon(1e-3));
}

TEST_CASE("Natural convection round a lying cylinder", "[reference][heat]") {
  const auto e = entry("cylinder_natural_convection");
  for (const auto &row : e.values()) {
    CHECK(cylinder_nusselt(row["Ra"].as<double>(), row["Pr"].as<double>()) == e.near(row["Nu"].as<double>()));
  }
}

TEST_CASE("Gas conductivity against the handbook", "[reference][heat]") {
  const auto e = entry("gas_conductivity_found");
  for (const auto &row : e.values()) {
    const auto gas =
        row["gas"].as<std::string>() == "argon" ? job::GasSpecies::argon : job::GasSpecies::helium;
    CHECK(1e3 * gas_conductivity(gas, units::kelvins(row["T"].as<double>())) ==
          e.near(row["value"].as<double>()));
  }
}

namespace {

void check_metals(const char *id) {
  const auto e = entry(id);
  for (const auto &row : e.values()) {
    const auto name = row["metal"].as<std::string>();
    const Metal *found = thermal_metal(name);
    REQUIRE(found != nullptr);
    const auto at = units::celsius(row["T_C"].as<double>());
    const bool conductivity = row["property"].as<std::string>() == "k";
    CAPTURE(name, row["T_C"].as<double>());
    CHECK((conductivity ? found->conductivity_at(at) : found->specific_heat_at(at)) ==
          e.near(row["value"].as<double>()));
  }
}

} // namespace

TEST_CASE("Titanium's heat capacity against data that was seen", "[reference][heat]") {
  check_metals("titanium_heat_found");
}

TEST_CASE("Metals against data from memory", "[reference][heat]") {
  check_metals("metals_remembered");
}

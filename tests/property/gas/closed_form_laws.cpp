#include "random_network.hpp"

#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"
#include "purgewright/gas/pressure.hpp"
#include "purgewright/gas/properties.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;
using namespace purgewright::gas;
using property::pick;

TEST_CASE("More tanks never need more volumes to a low limit", "[property][gas]") {
  double before = tanks_volumes(1.0, 0.2095, 2e-5);
  CHECK(before == Approx(mixed_volumes(0.2095, 2e-5)).epsilon(1e-12));
  for (double n = 1.1; n < 1e4; n *= 1.1) {
    const double volumes = tanks_volumes(n, 0.2095, 2e-5);
    REQUIRE(volumes < before);
    REQUIRE(volumes > 1.0);
    before = volumes;
  }
  CHECK(before < 1.05);
}

TEST_CASE("Volumes and remaining share are inverse to each other", "[property][gas]") {
  std::mt19937_64 random(11);
  for (int i = 0; i < 300; ++i) {
    const double n = std::exp(pick(random, 0.0, 6.0)), share = std::exp(pick(random, -14.0, -0.1));
    REQUIRE(tanks_remaining(n, tanks_volumes(n, 0.2, 0.2 * share)) == Approx(share).epsilon(1e-9));
  }
}

TEST_CASE("Dispersion falls with time and sharpens with the Peclet number", "[property][gas]") {
  std::mt19937_64 random(12);
  for (int i = 0; i < 300; ++i) {
    const double peclet = std::exp(pick(random, -3.0, 9.0)), theta = pick(random, 0.05, 4.0);
    REQUIRE(dispersion_remaining(peclet, theta * 1.01) <= dispersion_remaining(peclet, theta));
    // Below Pe 10 the semi-infinite solution keeps gas near its inlet, and the order may turn.
    if (peclet > 10.0 && theta > 1.3 && dispersion_remaining(peclet, theta) > 0.0)
      REQUIRE(dispersion_remaining(1.5 * peclet, theta) <= dispersion_remaining(peclet, theta));
  }
  for (const double theta : {0.97, 1.0, 1.03}) // no dispersion: both forms become the same front
    CHECK(dispersion_swept(1e6, theta) == Approx(small_dispersion_swept(1e6, theta)).margin(1e-3));
}

TEST_CASE("Tanks of the same variance stand for a dispersed line", "[property][gas]") {
  for (const double peclet : {30.0, 100.0, 1000.0})
    CHECK(tanks_volumes(equivalent_tanks(peclet), 0.2095, 1e-3) ==
          Approx(dispersion_volumes(peclet, 0.2095, 1e-3)).epsilon(0.06));
}

TEST_CASE("Pressure rises with flow and is inverted anywhere", "[property][gas]") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    std::mt19937_64 random(seed);
    const auto temperature = units::kelvins(pick(random, 280.0, 600.0));
    const Stream stream{.density = density(Species::argon, temperature),
                        .viscosity = viscosity(Species::argon, temperature)};
    Line line;
    for (int i = 0; i < 3; ++i)
      line.tubes.push_back({.length = units::metres(pick(random, 0.0, 5.0)),
                            .diameter = units::millimetres(pick(random, 1.0, 8.0)),
                            .losses = pick(random, 0.0, 3.0),
                            .relative_roughness = 0.0});
    line.plates.push_back({.diameter = units::millimetres(pick(random, 0.3, 3.0)),
                           .thickness = units::millimetres(pick(random, 0.0, 3.0)),
                           .count = 1 + static_cast<int>(random() % 30)});
    INFO("seed " << seed);
    const auto flow = units::litres_per_minute(std::exp(pick(random, -5.0, 4.0)));
    const auto drop = line_drop(line, flow, stream);
    REQUIRE(line_drop(line, 1.001 * flow, stream) > drop);
    REQUIRE(line_flow(line, drop, stream).value() == Approx(flow.value()).epsilon(1e-9));
  }
}

TEST_CASE("Outflow never lets more oxygen in", "[property][gas]") {
  std::mt19937_64 random(13);
  for (int i = 0; i < 300; ++i) {
    const auto conductance = units::cubic_metres_per_second(std::exp(pick(random, -20.0, -8.0)));
    const auto outflow = units::cubic_metres_per_second(std::exp(pick(random, -20.0, -8.0)));
    const auto closed = opposed_conductance(conductance, outflow);
    REQUIRE(closed <= conductance);
    REQUIRE(opposed_conductance(conductance, 1.1 * outflow) <= closed);
    // A mixed space behind it settles at the channel's exponential.
    const double peclet = units::ratio(outflow, conductance);
    if (peclet < 600.0)
      REQUIRE(units::ratio(closed, closed + outflow) == Approx(counterflow_ratio(peclet)).epsilon(1e-9));
  }
}

TEST_CASE("A slot of any aspect diffuses more than the circle of its area", "[property][gas]") {
  double before = 0.0;
  for (double aspect = 1.0; aspect < 1e4; aspect *= 1.3) {
    const double side = std::sqrt(aspect);
    const double shape = slot_shape_length(units::millimetres(side), units::millimetres(1.0 / side)).value();
    REQUIRE(shape > before);
    before = shape;
  }
}

TEST_CASE("Gas properties rise with temperature as kinetic theory has it", "[property][gas]") {
  for (const Species species :
       {Species::argon, Species::helium, Species::oxygen, Species::nitrogen, Species::air})
    for (double kelvin = 210.0; kelvin < 990.0; kelvin += 10.0) {
      const auto cold = units::kelvins(kelvin), warm = units::kelvins(kelvin + 10.0);
      REQUIRE(viscosity(species, warm) > viscosity(species, cold));
      REQUIRE(diffusivity(species, Species::oxygen, warm) > diffusivity(species, Species::oxygen, cold));
      REQUIRE(density(species, warm) < density(species, cold));
    }
}

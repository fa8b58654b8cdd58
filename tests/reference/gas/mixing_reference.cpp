#include "reference_values.hpp"

#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/network.hpp"

#include <cmath>

using namespace purgewright;
using namespace purgewright::gas;
using reference::entry;

TEST_CASE("Perfectly mixed sweep from 21 % to 1 %", "[reference][gas]") {
  const auto example = entry("mixing", "purge_example_21_to_1");
  const YAML::Node values = example.values();
  const double found =
      mixed_volumes(values["C1_pct"].as<double>() / 100.0, values["C2_pct"].as<double>() / 100.0);
  CHECK(found == example.near(values["published_volumes"].as<double>()));
  CHECK(found == Approx(values["formula_volumes"].as<double>()).epsilon(2e-5));
}

TEST_CASE("Sweep-through example with oxygen in the purge gas", "[reference][gas]") {
  const auto example = entry("mixing", "purge_example_crowl");
  const YAML::Node values = example.values();
  const double found = values["V_ft3"].as<double>() * mixed_volumes(values["C1_pct"].as<double>() / 100.0,
                                                                    values["C2_pct"].as<double>() / 100.0,
                                                                    values["C0_pct"].as<double>() / 100.0);
  CHECK(found == example.near(values["published_ft3"].as<double>()));
}

TEST_CASE("Volumes of a mixed purge by limit", "[reference][gas]") {
  const auto table = entry("mixing", "purge_mixed_volumes");
  for (const auto &row : table.values())
    CHECK(mixed_volumes(0.2095, row[0].as<double>() * 1e-6) == table.near(row[1].as<double>()));
  const auto floor = entry("mixing", "purge_floor");
  CHECK(mixed_volumes(0.2095, 10e-6, 2e-6) == floor.near(floor.values()["volumes"].as<double>()));
  CHECK(mixed_volumes(0.2095, 10e-6, 1e-6) == floor.near(floor.values()["C0_1ppm_volumes"].as<double>()));
}

TEST_CASE("Tanks in series match the printed form", "[reference][gas]") {
  const auto table = entry("mixing", "tanks_in_series_check");
  for (const auto &row : table.values()) {
    const double n = row[0].as<double>(), theta = row[1].as<double>();
    INFO("N " << n << " theta " << theta);
    CHECK(tanks_swept(n, theta) == table.near(row[2].as<double>()));
    CHECK(tanks_remaining(n, theta) == table.near(row[3].as<double>()));
    // E is the slope of F.
    const double step = 1e-4;
    CHECK((tanks_remaining(n, theta - step) - tanks_remaining(n, theta + step)) / (2.0 * step) ==
          table.near(row[4].as<double>()));
  }
}

TEST_CASE("Volumes of tanks in series to 10 ppm", "[reference][gas]") {
  const auto table = entry("mixing", "tanks_volumes_to_10ppm");
  for (const auto &row : table.values())
    CHECK(tanks_volumes(row[0].as<double>(), 0.2095, 10e-6) == table.near(row[1].as<double>()));
}

TEST_CASE("Axial dispersion matches the closed forms", "[reference][gas]") {
  const auto table = entry("mixing", "axial_dispersion_check");
  for (const auto &row : table.values()) {
    const double peclet = row[0].as<double>(), theta = row[1].as<double>();
    INFO("Pe " << peclet << " theta " << theta);
    CHECK(dispersion_swept(peclet, theta) == table.near(row[2].as<double>()));
    CHECK(small_dispersion_swept(peclet, theta) == table.near(row[3].as<double>()));
  }
  CHECK(closed_vessel_variance(10.0) == Approx(0.18).epsilon(1e-4)); // 0.2 - 0.02 (1 - exp(-10))
  CHECK(open_vessel_variance(10.0) == Approx(0.28).epsilon(1e-12));
}

TEST_CASE("Taylor-Aris dispersion in a tube", "[reference][gas]") {
  const auto example = entry("mixing", "taylor_aris");
  const YAML::Node check = example.node["check"];
  const auto found = taylor_aris_tube(units::Diffusivity::from_value(check["D"].as<double>()),
                                      units::metres_per_second(check["u"].as<double>()),
                                      units::metres(check["R"].as<double>()));
  CHECK(found.value() == example.near(check["Dax"].as<double>()));
}

// V dP/dt = C (P0 - P) - Q (P - Pu): steady (C P0 + Q Pu)/(C + Q), rate (C + Q)/V.
TEST_CASE("A leaking purged cavity settles as published", "[reference][gas]") {
  const auto example = entry("mixing", "scialdone_purge");
  const double v = 2e-4, c = 3e-7, q = 8e-6, ambient = 0.2095, supply = 4e-6;
  Network network{.zones = {{.volume = units::cubic_metres(v)}},
                  .reservoirs = {supply, ambient},
                  .edges = {{in_reservoir(0), in_zone(0), units::cubic_metres_per_second(q), {}},
                            {in_zone(0), in_reservoir(1), units::cubic_metres_per_second(q),
                             units::cubic_metres_per_second(c)}},
                  .ingress = {}};
  const double steady = (c * ambient + q * supply) / (c + q);
  CHECK(steady_state(network)[0] == example.near(steady));
  const double time = 40.0;
  const Course course = solve(network, uniform_state(network, ambient), units::seconds(time), 4);
  CHECK(course.state(4)[0] == example.near(steady + (ambient - steady) * std::exp(-(c + q) / v * time)));
}

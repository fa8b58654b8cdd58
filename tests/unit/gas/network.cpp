#include "purgewright/gas/network.hpp"

#include "purgewright/gas/mixing.hpp"
#include "purgewright/gas/openings.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;

namespace {

constexpr double supply = 4e-6, room = 0.2095;

// Supply through one zone to the room: V/Q = 10 s.
Network single(double tanks, units::VolumeFlow exchange = {}) {
  const auto flow = units::litres_per_minute(6.0);
  return {.zones = {{.volume = units::litres(1.0), .tanks = tanks}},
          .reservoirs = {supply, room},
          .edges = {{in_reservoir(0), in_zone(0), flow, {}}, {in_zone(0), in_reservoir(1), flow, exchange}},
          .ingress = {}};
}

} // namespace

TEST_CASE("One tank washes out by the exponential", "[unit][gas]") {
  const Network network = single(1.0);
  const Course course = solve(network, uniform_state(network, room), units::seconds(100.0), 50);
  for (std::size_t i = 0; i < course.times.size(); ++i)
    CHECK(course.state(i)[0] ==
          Approx(supply + (room - supply) * std::exp(-course.times[i].value() / 10.0)).epsilon(1e-10));
}

TEST_CASE("Whole tanks wash out by the tail sum, down to parts per billion", "[unit][gas]") {
  for (const double n : {2.0, 5.0, 40.0, 200.0}) {
    const Network network = single(n);
    const Course course = solve(network, uniform_state(network, room), units::seconds(40.0), 20);
    for (std::size_t i = 0; i < course.times.size(); ++i) {
      INFO("N " << n << " at " << course.times[i].value() << " s");
      const double remaining = tanks_remaining(n, course.times[i].value() / 10.0);
      CHECK(course.state(i).back() ==
            Approx(supply + (room - supply) * remaining).epsilon(1e-9).margin(1e-13));
    }
  }
}

TEST_CASE("A real number of tanks keeps its mean and variance", "[unit][gas]") {
  // Moments of the washout: mean = integral of W, variance from the integral of 2 t W.
  const Network network = single(2.6);
  const int intervals = 20000;
  const double span = 250.0, step = span / intervals;
  const Course course = solve(network, uniform_state(network, room), units::seconds(span), intervals);
  double mean = -0.5 * step, square = 0.0;
  for (std::size_t i = 0; i < course.times.size(); ++i) {
    const double remaining = (course.state(i).back() - supply) / (room - supply);
    mean += remaining * step;
    square += 2.0 * course.times[i].value() * remaining * step;
  }
  CHECK(mean == Approx(10.0).epsilon(1e-5));
  CHECK(square / (mean * mean) - 1.0 == Approx(1.0 / 2.6).epsilon(1e-4));
}

TEST_CASE("The time under a limit is the closed form's", "[unit][gas]") {
  const Network network = single(5.0);
  const Target targets[] = {{.zone = 0, .position = 1.0, .limit = 2e-5},
                            {.zone = 0, .position = 0.0, .limit = 2e-5},
                            {.zone = 0, .position = 1.0, .limit = 1e-6}, // under the supply: never
                            {.zone = 0, .position = 1.0, .limit = 0.3}}; // already there
  const Course course = solve(network, uniform_state(network, room), units::seconds(100.0), 10, targets);
  REQUIRE(course.reached.size() == 4);
  REQUIRE(course.reached[0].has_value());
  CHECK(course.reached[0]->value() == Approx(10.0 * tanks_volumes(5.0, room, 2e-5, supply)).margin(1e-3));
  // The level is under the limit at the reported time, and over it one resolution earlier.
  const auto level = [&](units::Time time) {
    return solve(network, uniform_state(network, room), time, 1).state(1).back();
  };
  CHECK(level(*course.reached[0]) <= 2e-5 * (1.0 + 1e-9));
  CHECK(level(*course.reached[0] - units::seconds(1.001 * 10.0 / 16384.0)) > 2e-5);
  REQUIRE(course.reached[1].has_value());
  CHECK(course.reached[1]->value() == Approx(2.0 * mixed_volumes(room, 2e-5, supply)).margin(1e-3));
  CHECK_FALSE(course.reached[2].has_value());
  REQUIRE(course.reached[3].has_value());
  CHECK(course.reached[3]->value() == 0.0);
}

TEST_CASE("The floor of a space with one opening is the channel's exponential", "[unit][gas]") {
  const auto flow = units::litres_per_minute(6.0);
  const auto conductance = (1.0 / 9.0) * flow; // Pe 9
  const Network network = single(1.0, opposed_conductance(conductance, flow));
  CHECK(steady_state(network)[0] == Approx(supply + (room - supply) * std::exp(-9.0)).epsilon(1e-9));
}

TEST_CASE("Floor parts name what each edge and hose brings", "[unit][gas]") {
  Network network = single(3.0, units::litres_per_minute(0.006));
  network.ingress = {{.zone = 0, .oxygen = units::litres_per_minute(6e-5)}};
  const FloorParts parts = floor_parts(network, 0, 1.0);
  REQUIRE(parts.edges.size() == 2);
  // All that comes in leaves through the last tank by flow and exchange, 6.006 L/min.
  CHECK(parts.edges[0] == Approx(supply * 6.0 / 6.006).epsilon(1e-9));
  CHECK(parts.edges[1] == Approx(room * 0.006 / 6.006).epsilon(1e-9));
  CHECK(parts.ingress[0] == Approx(6e-5 / 6.006).epsilon(1e-9));
  CHECK(parts.floor == Approx(steady_state(network).back()).epsilon(1e-9));
  // Upstream tanks do not see the opening.
  CHECK(floor_parts(network, 0, 0.0).edges[1] == Approx(0.0).margin(1e-20));
}

TEST_CASE("A standing zone mixes by its backmixing alone", "[unit][gas]") {
  Network network{
      .zones = {{.volume = units::litres(1.0), .tanks = 2.0, .backmixing = units::litres_per_minute(0.6)}},
      .reservoirs = {room},
      .edges = {{in_zone(0), in_reservoir(0), {}, units::litres_per_minute(0.001)}},
      .ingress = {}};
  const double start[] = {0.2, 0.0};
  const Course course = solve(network, start, units::seconds(200.0), 2);
  CHECK(course.state(2)[0] == Approx(0.1).epsilon(0.02));
  CHECK(course.state(2)[1] == Approx(0.1).epsilon(0.02));
  CHECK(steady_state(network)[0] == Approx(room).epsilon(1e-9));
}

TEST_CASE("Stages follow one another by their last state", "[unit][gas]") {
  const Network network = single(4.0);
  const Course whole = solve(network, uniform_state(network, room), units::seconds(20.0), 2);
  const Course half = solve(network, uniform_state(network, room), units::seconds(10.0), 1);
  const Course rest = solve(network, half.state(1), units::seconds(10.0), 1);
  for (std::size_t tank = 0; tank < 4; ++tank)
    CHECK(rest.state(1)[tank] == Approx(whole.state(2)[tank]).epsilon(1e-11));
}

TEST_CASE("Places along a zone are found by volume", "[unit][gas]") {
  Network network = single(4.0);
  network.zones.push_back({.volume = units::litres(2.0), .tanks = 2.0});
  const TankMap map = tank_map(network);
  CHECK(map.size() == 6);
  CHECK(tank_at(map, 0, 0.0) == 0);
  CHECK(tank_at(map, 0, 0.6) == 2);
  CHECK(tank_at(map, 0, 1.0) == 3);
  CHECK(tank_at(map, 1, 1.0) == 5);
  const double state[] = {1.0, 0.0, 0.0, 1.0, 0.2, 0.4};
  CHECK(zone_mean(map, state, 0) == Approx(0.5));
  CHECK(zone_mean(map, state, 1) == Approx(0.3));
  CHECK_THROWS_AS(tank_at(map, 2, 0.0), std::domain_error);
}

TEST_CASE("Networks that cannot be are refused", "[unit][gas]") {
  const auto start = uniform_state(single(1.0), room);
  const auto run = [&](const Network &network) { solve(network, start, units::seconds(1.0), 1); };
  Network leaky = single(1.0);
  leaky.edges[1].flow = units::litres_per_minute(5.0);
  CHECK_THROWS_AS(run(leaky), std::domain_error);
  Network negative = single(1.0);
  negative.edges[0].exchange = units::litres_per_minute(-1.0);
  CHECK_THROWS_AS(run(negative), std::domain_error);
  Network stray = single(1.0);
  stray.edges[0].to.index = 7;
  CHECK_THROWS_AS(run(stray), std::domain_error);
  Network empty = single(1.0);
  empty.zones[0].volume = units::litres(0.0);
  CHECK_THROWS_AS(run(empty), std::domain_error);
  Network dead = single(1.0);
  dead.edges.clear();
  CHECK_THROWS_AS(steady_state(dead), std::domain_error);
  Network closed = single(1.0); // two zones that exchange only with each other
  closed.zones.push_back(closed.zones[0]);
  closed.edges = {{in_zone(0), in_zone(1), {}, units::litres_per_minute(1.0)}};
  CHECK_THROWS_AS(steady_state(closed), std::domain_error);
  CHECK_THROWS_AS(solve(single(2.0), start, units::seconds(1.0), 1),
                  std::domain_error); // one value, two tanks
  CHECK_NOTHROW(run(single(1.0)));
}

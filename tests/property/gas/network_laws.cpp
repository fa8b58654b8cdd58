#include "random_network.hpp"

#include "purgewright/gas/mixing.hpp"

#include <boost/numeric/odeint.hpp>
#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;
using namespace purgewright::gas;
using namespace purgewright::gas::property;

namespace {

std::vector<double> random_state(std::mt19937_64 &random, const Network &network) {
  std::vector<double> state = uniform_state(network, 0.0);
  for (double &fraction : state)
    fraction = pick(random, 0.0, 0.21);
  return state;
}

// The balance written out edge by edge for single tanks: the slow obvious twin of the assembled matrix.
std::vector<double> slope(const Network &network, const std::vector<double> &state) {
  std::vector<double> gain(state.size(), 0.0);
  const auto level = [&](const Place &p) {
    return p.kind == Place::Kind::zone ? state[p.index] : network.reservoirs[p.index];
  };
  const auto add = [&](const Place &p, double oxygen) {
    if (p.kind == Place::Kind::zone)
      gain[p.index] += oxygen / network.zones[p.index].volume.value();
  };
  for (const Edge &edge : network.edges) {
    const double forward = (edge.flow + edge.exchange).value() * level(edge.from);
    const double backward = edge.exchange.value() * level(edge.to);
    add(edge.from, backward - forward);
    add(edge.to, forward - backward);
  }
  for (const Ingress &ingress : network.ingress)
    add(in_zone(ingress.zone), ingress.oxygen.value());
  return gain;
}

Network more_flow(Network network, double factor) {
  for (Edge &edge : network.edges)
    edge.flow *= factor;
  return network;
}

} // namespace

TEST_CASE("Oxygen in is oxygen out plus oxygen held", "[property][gas]") {
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    std::mt19937_64 random(seed);
    const Network network = random_network(random, {.zones = 1 + seed % 7, .tanks_max = 8.0});
    const auto initial = random_state(random, network);
    const Course course =
        solve(network, initial, units::seconds(pick(random, 1.0, 600.0)), 1 + static_cast<int>(seed % 50));
    INFO("seed " << seed);
    REQUIRE(course.ledger.brought > 0.0);
    REQUIRE(course.ledger.left > 0.0);
    REQUIRE(std::abs(course.ledger.error()) < 1e-9);
  }
}

TEST_CASE("The exponential agrees with a step-by-step integration", "[property][gas]") {
  namespace odeint = boost::numeric::odeint;
  using State = std::vector<double>;
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    std::mt19937_64 random(seed);
    const Network network = random_network(random, {.zones = 4, .tanks_max = 1.0});
    const State initial = random_state(random, network);
    const double duration = pick(random, 0.5, 20.0);
    State stepped = initial;
    odeint::integrate_adaptive(
        odeint::make_controlled<odeint::runge_kutta_dopri5<State>>(1e-13, 1e-11),
        [&](const State &y, State &dydt, double) { dydt = slope(network, y); }, stepped, 0.0, duration, 1e-4);
    const Course course = solve(network, initial, units::seconds(duration), 3);
    INFO("seed " << seed);
    for (std::size_t z = 0; z < stepped.size(); ++z)
      REQUIRE(course.state(3)[z] == Approx(stepped[z]).epsilon(1e-7).margin(1e-11));
  }
}

TEST_CASE("The floor is where the course ends and stays", "[property][gas]") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    std::mt19937_64 random(seed);
    const Network network = random_network(random, {.zones = 4, .tanks_max = 6.0});
    const auto floor = steady_state(network);
    INFO("seed " << seed);
    const Course still = solve(network, floor, units::seconds(100.0), 1);
    const Course late = solve(network, random_state(random, network), units::seconds(5000.0), 1);
    for (std::size_t tank = 0; tank < floor.size(); ++tank) {
      REQUIRE(still.state(1)[tank] == Approx(floor[tank]).epsilon(1e-9));
      REQUIRE(late.state(1)[tank] == Approx(floor[tank]).epsilon(1e-6));
    }
    const std::size_t zone = seed % 4;
    const FloorParts parts = floor_parts(network, zone, 1.0);
    REQUIRE(parts.floor == Approx(floor[tank_at(tank_map(network), zone, 1.0)]).epsilon(1e-9));
    for (const double part : parts.edges)
      REQUIRE(part >= -1e-15);
    for (const double part : parts.ingress)
      REQUIRE(part >= -1e-15);
  }
}

TEST_CASE("More flow is never slower and never leaves more", "[property][gas]") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    std::mt19937_64 random(seed);
    const Network network = random_network(random, {.zones = 4, .tanks_max = 5.0});
    const Network faster = more_flow(network, pick(random, 1.05, 3.0));
    INFO("seed " << seed);
    const auto floor = steady_state(network), lower = steady_state(faster);
    for (std::size_t tank = 0; tank < floor.size(); ++tank)
      REQUIRE(lower[tank] <= floor[tank] * (1.0 + 1e-9));
    const std::size_t zone = seed % 4;
    const double limit = 0.01 + floor[tank_at(tank_map(network), zone, 1.0)];
    const Target target{.zone = zone, .position = 1.0, .limit = limit};
    const auto start = uniform_state(network, 0.2095);
    const Course slow = solve(network, start, units::seconds(2000.0), 100, {&target, 1});
    const Course quick = solve(faster, start, units::seconds(2000.0), 100, {&target, 1});
    REQUIRE(slow.reached[0].has_value());
    REQUIRE(quick.reached[0].has_value());
    REQUIRE(*quick.reached[0] <= *slow.reached[0] + units::seconds(2e-3));
  }
}

TEST_CASE("Fractions stay between nothing and the richest source", "[property][gas]") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    std::mt19937_64 random(seed);
    Network network = random_network(random, {.zones = 5, .tanks_max = 6.0});
    network.ingress.clear(); // pure oxygen could exceed the room
    const Course course = solve(network, random_state(random, network), units::seconds(300.0), 40);
    const auto [least, most] = std::ranges::minmax(course.states);
    INFO("seed " << seed);
    REQUIRE(least >= 0.0);
    REQUIRE(most <= 0.21 + 1e-12);
  }
}

TEST_CASE("Twice the size at twice the flow keeps the times", "[property][gas]") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    std::mt19937_64 random(seed);
    const Network network = random_network(random, {.zones = 3, .tanks_max = 4.0});
    Network large = more_flow(network, 2.0);
    for (Zone &zone : large.zones)
      zone.volume *= 2.0;
    for (Edge &edge : large.edges)
      edge.exchange *= 2.0;
    for (Ingress &ingress : large.ingress)
      ingress.oxygen *= 2.0;
    const auto initial = random_state(random, network);
    const Course small_course = solve(network, initial, units::seconds(60.0), 5);
    const Course large_course = solve(large, initial, units::seconds(60.0), 5);
    INFO("seed " << seed);
    for (std::size_t i = 0; i < small_course.states.size(); ++i)
      REQUIRE(large_course.states[i] == Approx(small_course.states[i]).epsilon(1e-12));
  }
}

TEST_CASE("The same network gives the same bits", "[property][gas]") {
  std::mt19937_64 first(7), second(7);
  const Network a = random_network(first, {}), b = random_network(second, {});
  const auto start = uniform_state(a, 0.2095);
  CHECK(solve(a, start, units::seconds(100.0), 30).states ==
        solve(b, start, units::seconds(100.0), 30).states);
}

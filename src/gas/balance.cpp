#include "gas/balance.hpp"

#include "purgewright/gas/mixing.hpp"

#include "gas/require.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace purgewright::gas {

namespace detail {

namespace {

constexpr double balance_tolerance = 1e-9; // of a zone's throughput

void check_place(const Network &network, const Place &place, std::string_view function) {
  const std::size_t size = place.kind == Place::Kind::zone ? network.zones.size() : network.reservoirs.size();
  require(place.index < size, function, "edge must end inside the network", static_cast<double>(place.index));
}

void check_parts(const Network &network, std::string_view function) {
  for (const Zone &zone : network.zones) {
    require(zone.volume.value() > 0.0, function, "zone volume must be above 0", zone.volume.value());
    require(zone.backmixing.value() >= 0.0, function, "backmixing must not be negative",
            zone.backmixing.value());
  }
  for (const double fraction : network.reservoirs)
    require(fraction >= 0.0 && fraction <= 1.0, function, "reservoir fraction must lie in 0 to 1", fraction);
  for (const Edge &edge : network.edges) {
    check_place(network, edge.from, function);
    check_place(network, edge.to, function);
    require(edge.from.kind == Place::Kind::zone || edge.to.kind == Place::Kind::zone, function,
            "edge must touch a zone", static_cast<double>(edge.from.index));
    require(edge.flow.value() >= 0.0, function, "edge flow must not be negative", edge.flow.value());
    require(edge.exchange.value() >= 0.0, function, "edge exchange must not be negative",
            edge.exchange.value());
  }
  for (const Ingress &ingress : network.ingress) {
    require(ingress.zone < network.zones.size(), function, "ingress must lie in a zone",
            static_cast<double>(ingress.zone));
    require(ingress.oxygen.value() >= 0.0, function, "ingress must not be negative", ingress.oxygen.value());
  }
}

// Flow through each zone, which its inlets and outlets must agree on.
std::vector<double> throughput(const Network &network, std::string_view function) {
  std::vector<double> in(network.zones.size(), 0.0), out(network.zones.size(), 0.0);
  for (const Edge &edge : network.edges) {
    if (edge.to.kind == Place::Kind::zone)
      in[edge.to.index] += edge.flow.value();
    if (edge.from.kind == Place::Kind::zone)
      out[edge.from.index] += edge.flow.value();
  }
  for (std::size_t z = 0; z < in.size(); ++z)
    require(std::abs(in[z] - out[z]) <= balance_tolerance * std::max(in[z], out[z]), function,
            "flow into a zone must equal the flow out, zone", static_cast<double>(z));
  return in;
}

Eigen::Index row(std::size_t tank) {
  return static_cast<Eigen::Index>(tank);
}

void add_flow(Balance &balance, std::size_t from, std::size_t to, double flow) {
  balance.rates(row(to), row(from)) += flow / balance.volume(row(to));
  balance.rates(row(from), row(from)) -= flow / balance.volume(row(from));
}

// Gas that enters a tank from a reservoir; what it drives out is counted where it leaves.
void add_bring(Balance &balance, std::size_t tank, double flow, double fraction) {
  balance.bring(row(tank)) += flow * fraction;
  balance.source(row(tank)) += flow * fraction / balance.volume(row(tank));
}

void add_leave(Balance &balance, std::size_t tank, double flow) {
  balance.leave(row(tank)) += flow;
  balance.rates(row(tank), row(tank)) -= flow / balance.volume(row(tank));
}

void add_edge(Balance &balance, const Network &network, const Edge &edge) {
  const double flow = edge.flow.value(), exchange = edge.exchange.value();
  const auto first = [&](const Place &p) { return balance.map.first[p.index]; };
  const auto last = [&](const Place &p) { return balance.map.first[p.index + 1] - 1; };
  if (edge.from.kind == Place::Kind::reservoir) {
    add_bring(balance, first(edge.to), flow + exchange, network.reservoirs[edge.from.index]);
    add_leave(balance, first(edge.to), exchange);
  } else if (edge.to.kind == Place::Kind::reservoir) {
    add_leave(balance, last(edge.from), flow + exchange);
    add_bring(balance, last(edge.from), exchange, network.reservoirs[edge.to.index]);
  } else {
    add_flow(balance, last(edge.from), first(edge.to), flow + exchange);
    add_flow(balance, first(edge.to), last(edge.from), exchange);
  }
}

void add_zone(Balance &balance, std::size_t zone, double flow, double backmixing) {
  for (std::size_t tank = balance.map.first[zone]; tank + 1 < balance.map.first[zone + 1]; ++tank) {
    add_flow(balance, tank, tank + 1, flow + backmixing);
    add_flow(balance, tank + 1, tank, backmixing);
  }
}

} // namespace

Balance assemble(const Network &network, std::string_view function) {
  check_parts(network, function);
  const std::vector<double> through = throughput(network, function);
  Balance balance{
      .map = tank_map(network), .rates = {}, .source = {}, .volume = {}, .leave = {}, .bring = {}};
  const Eigen::Index size = row(balance.map.size());
  balance.rates = Eigen::MatrixXd::Zero(size, size);
  balance.source = balance.volume = balance.leave = balance.bring = Eigen::VectorXd::Zero(size);
  for (std::size_t z = 0; z < network.zones.size(); ++z)
    for (std::size_t tank = balance.map.first[z]; tank < balance.map.first[z + 1]; ++tank)
      balance.volume(row(tank)) = balance.map.share[tank] * network.zones[z].volume.value();
  for (std::size_t z = 0; z < network.zones.size(); ++z)
    add_zone(balance, z, through[z], network.zones[z].backmixing.value());
  for (const Edge &edge : network.edges)
    add_edge(balance, network, edge);
  for (const Ingress &ingress : network.ingress)
    for (std::size_t tank = balance.map.first[ingress.zone]; tank < balance.map.first[ingress.zone + 1];
         ++tank)
      add_bring(balance, tank, ingress.oxygen.value() * balance.map.share[tank], 1.0);
  return balance;
}

std::vector<std::vector<std::size_t>> circuits(const Eigen::MatrixXd &rates) {
  const auto size = static_cast<std::size_t>(rates.rows());
  std::vector<std::size_t> label(size);
  std::iota(label.begin(), label.end(), std::size_t{0});
  const auto root = [&](std::size_t tank) {
    while (label[tank] != tank)
      tank = label[tank] = label[label[tank]];
    return tank;
  };
  for (std::size_t i = 0; i < size; ++i)
    for (std::size_t j = 0; j < size; ++j)
      if (i != j && rates(row(i), row(j)) != 0.0)
        label[std::max(root(i), root(j))] = std::min(root(i), root(j));
  std::vector<std::vector<std::size_t>> lists(size);
  for (std::size_t tank = 0; tank < size; ++tank)
    lists[root(tank)].push_back(tank);
  std::erase_if(lists, [](const auto &list) { return list.empty(); });
  return lists;
}

} // namespace detail

TankMap tank_map(const Network &network) {
  TankMap map;
  map.first.push_back(0);
  for (const Zone &zone : network.zones) {
    const std::vector<double> shares = chain_fractions(zone.tanks);
    map.share.insert(map.share.end(), shares.begin(), shares.end());
    map.first.push_back(map.share.size());
  }
  return map;
}

std::size_t tank_at(const TankMap &map, std::size_t zone, double position) {
  detail::require(zone + 1 < map.first.size(), "tank_at", "zone must lie in the network",
                  static_cast<double>(zone));
  detail::require(position >= 0.0 && position <= 1.0, "tank_at", "position must lie in 0 to 1", position);
  std::size_t tank = map.first[zone];
  double passed = map.share[tank];
  while (passed < position && tank + 1 < map.first[zone + 1])
    passed += map.share[++tank];
  return tank;
}

std::vector<double> uniform_state(const Network &network, double fraction) {
  detail::require(fraction >= 0.0 && fraction <= 1.0, "uniform_state", "fraction must lie in 0 to 1",
                  fraction);
  std::vector<double> state(tank_map(network).size(), fraction);
  return state;
}

double zone_mean(const TankMap &map, std::span<const double> state, std::size_t zone) {
  detail::require(zone + 1 < map.first.size(), "zone_mean", "zone must lie in the network",
                  static_cast<double>(zone));
  detail::require(state.size() == map.size(), "zone_mean", "state must have one value a tank",
                  static_cast<double>(state.size()));
  double mean = 0.0;
  for (std::size_t tank = map.first[zone]; tank < map.first[zone + 1]; ++tank)
    mean += map.share[tank] * state[tank];
  return mean;
}

} // namespace purgewright::gas

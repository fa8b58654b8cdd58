// Random purge networks that balance by construction: every flow is the sum of whole paths from the supply to
// the room and of rings within. One seed, one network.
#pragma once

#include "purgewright/gas/network.hpp"

#include <cmath>
#include <random>
#include <vector>

namespace purgewright::gas::property {

inline double pick(std::mt19937_64 &random, double low, double high) {
  // Not std::uniform_real_distribution: its bits differ between standard libraries.
  return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
}

inline std::size_t pick_index(std::mt19937_64 &random, std::size_t size) {
  return static_cast<std::size_t>(random() % size);
}

struct Shape {
  std::size_t zones = 5;
  double tanks_max = 8.0; // 1 gives single tanks
  bool rings = true;      // recirculation between zones
};

inline Network random_network(std::mt19937_64 &random, const Shape &shape) {
  Network network;
  network.reservoirs = {pick(random, 0.0, 2e-5), 0.2095};
  for (std::size_t z = 0; z < shape.zones; ++z) {
    const double litres = std::exp(pick(random, std::log(1e-3), std::log(2.0)));
    network.zones.push_back({.volume = units::litres(litres), .tanks = pick(random, 1.0, shape.tanks_max)});
  }
  const auto carry = [&](Place from, Place to, units::VolumeFlow flow) {
    network.edges.push_back({from, to, flow, units::litres_per_minute(pick(random, 0.0, 0.05))});
  };
  for (std::size_t path = 0; path < 3; ++path) { // the first path sweeps every zone
    const auto flow = units::litres_per_minute(pick(random, 0.5, 10.0));
    Place here = in_reservoir(0);
    for (std::size_t z = 0; z < shape.zones; ++z)
      if (path == 0 || random() % 2 == 0) {
        carry(here, in_zone(z), flow);
        here = in_zone(z);
      }
    if (here.kind == Place::Kind::zone)
      carry(here, in_reservoir(1), flow);
  }
  if (shape.rings && shape.zones > 1) {
    const std::size_t a = pick_index(random, shape.zones), b = (a + 1) % shape.zones;
    const auto flow = units::litres_per_minute(pick(random, 0.0, 5.0));
    carry(in_zone(a), in_zone(b), flow);
    carry(in_zone(b), in_zone(a), flow);
  }
  network.ingress.push_back(
      {pick_index(random, shape.zones), units::litres_per_minute(pick(random, 0.0, 1e-3))});
  return network;
}

} // namespace purgewright::gas::property

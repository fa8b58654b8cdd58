// Oxygen in a network of swept zones: over time, at rest, and where it comes from.
//
// A zone is a chain of stirred tanks; gas enters its first tank and leaves its last. Reservoirs (supply,
// room) keep their oxygen. Every flow is constant over one solution, so the balance of each tank is linear,
// dc/dt = A c + b, and is solved by the matrix exponential: no step size, no stiffness. Units: quantity
// types; oxygen is a volume fraction, amounts of oxygen are m3 at the network's own conditions. Errors:
// std::domain_error with the function's name and the value: a flow that does not balance in a zone (1e-9 of
// its throughput), negative flows, volumes not above 0, fractions outside 0 to 1, an index outside the
// network. Guarantee: same input, same bits; a ledger that closes to 1e-9 of the oxygen handled. Thread use:
// pure functions. Source: tanks in series, Levenspiel, 3rd ed. (1999), ch. 14; exponential by scaling and
// squaring with Pade terms, Higham, SIAM J. Matrix Anal. 26, 1179 (2005), as in Eigen.
#pragma once

#include "purgewright/units/quantity.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace purgewright::gas {

struct Zone {
  units::Volume volume{};
  double tanks = 1.0; // any real number in 1 to 200; see chain_fractions
  // Two-way mixing flow between neighbouring tanks, for a zone that nearly stands still: D A over the tanks'
  // distance. Leave 0 where `tanks` already stands for the dispersion.
  units::VolumeFlow backmixing{};
};

struct Place {
  enum class Kind { zone, reservoir };
  Kind kind = Kind::zone;
  std::size_t index = 0;
};
constexpr Place in_zone(std::size_t index) {
  return {Place::Kind::zone, index};
}
constexpr Place in_reservoir(std::size_t index) {
  return {Place::Kind::reservoir, index};
}

// A passage. `flow` goes from `from`'s last tank to `to`'s first; `exchange` goes both ways between the same
// two tanks, as conductance of diffusion, buoyancy or draught. At most one end is a reservoir.
struct Edge {
  Place from{};
  Place to{};
  units::VolumeFlow flow{};
  units::VolumeFlow exchange{};
};

// Oxygen that seeps into a zone, as pure oxygen, shared over its tanks by volume (hose walls).
struct Ingress {
  std::size_t zone = 0;
  units::VolumeFlow oxygen{};
};

struct Network {
  std::vector<Zone> zones;
  std::vector<double> reservoirs; // oxygen fraction of each
  std::vector<Edge> edges;
  std::vector<Ingress> ingress;
};

// Where each zone's tanks stand in a state: zone z holds tanks first[z] up to first[z + 1].
struct TankMap {
  std::vector<std::size_t> first;
  std::vector<double> share; // of its zone's volume, by tank
  std::size_t size() const { return share.size(); }
};
TankMap tank_map(const Network &network);

// Tank of a zone at a position along it, 0 its inlet to 1 its outlet, by volume.
std::size_t tank_at(const TankMap &map, std::size_t zone, double position);

// State with the same fraction everywhere.
std::vector<double> uniform_state(const Network &network, double fraction);

// Mean fraction of a zone in a state.
double zone_mean(const TankMap &map, std::span<const double> state, std::size_t zone);

// A level to watch for.
struct Target {
  std::size_t zone = 0;
  double position = 1.0; // 0 inlet to 1 outlet
  double limit = 0.0;    // fraction
};

// Oxygen brought in (reservoirs, the inward half of exchanges, ingress), left (to reservoirs), and held.
struct Ledger {
  double brought = 0.0, left = 0.0, held_before = 0.0, held_after = 0.0; // m3
  double error() const; // (before + brought - left - after) over the largest of the four; 0 when all are 0
};

struct Course {
  std::vector<units::Time> times;                  // intervals + 1, from 0
  std::vector<double> states;                      // tanks of every time, one time after another
  std::vector<std::optional<units::Time>> reached; // by target; first time at or under the limit
  Ledger ledger;
  TankMap map;
  std::span<const double> state(std::size_t time) const {
    return std::span(states).subspan(time * map.size(), map.size());
  }
};

// Course from a state over a duration above 0, kept at `intervals` (1 to 100000) equal steps. Targets are
// looked for at these times and then closed in on to duration / intervals / 16384; a dip under a limit and
// back between two kept times is not seen. Stages of different flows follow one another by passing the last
// state on.
Course solve(const Network &network, std::span<const double> initial, units::Time duration, int intervals,
             std::span<const Target> targets = {});

// State at rest, the floor. Throws where a zone has no way to a reservoir.
std::vector<double> steady_state(const Network &network);

// What the floor at one place is made of: the part each edge (from its reservoir) and each ingress brings.
// The parts are not negative and sum to the floor there, since the network is linear.
struct FloorParts {
  double floor = 0.0;
  std::vector<double> edges;   // by edge; 0 between zones
  std::vector<double> ingress; // by ingress
};
FloorParts floor_parts(const Network &network, std::size_t zone, double position);

} // namespace purgewright::gas

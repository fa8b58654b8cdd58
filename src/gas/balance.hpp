// The linear oxygen balance of a network, dc/dt = A c + b, assembled tank by tank.
#pragma once

#include "purgewright/gas/network.hpp"

#include <Eigen/Dense>

#include <cstddef>
#include <string_view>
#include <vector>

namespace purgewright::gas::detail {

struct Balance {
  TankMap map;
  Eigen::MatrixXd rates;  // A, 1/s
  Eigen::VectorXd source; // b, 1/s
  Eigen::VectorXd volume; // m3
  Eigen::VectorXd leave;  // flow to reservoirs, m3/s
  Eigen::VectorXd bring;  // oxygen from outside, m3/s
};

// Checks the whole network; `function` is named in refusals.
Balance assemble(const Network &network, std::string_view function);

// Tanks that exchange gas, as lists; circuits that do not touch are solved apart.
std::vector<std::vector<std::size_t>> circuits(const Eigen::MatrixXd &rates);

} // namespace purgewright::gas::detail

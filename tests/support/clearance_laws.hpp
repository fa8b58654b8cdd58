// Closed-form clearances against those measured on the solids. Header only: nothing but tests of solids links
// the kernel.
#pragma once

#include "purgewright/solids/clearances.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace purgewright::test {

struct ClearancePair {
  std::string_view name;
  double measured, promised; // m; rad for sight
};

inline std::array<ClearancePair, 10> clearance_pairs(const fixture::Clearances &m,
                                                     const fixture::Clearances &c) {
  return {{{"loading", m.loading.value(), c.loading.value()},
           {"sliding", m.sliding.value(), c.sliding.value()},
           {"withdrawing", m.withdrawing.value(), c.withdrawing.value()},
           {"turning", m.turning.value(), c.turning.value()},
           {"torch", m.torch.value(), c.torch.value()},
           {"sight", m.sight.value(), c.sight.value()},
           {"screws", m.screws.value(), c.screws.value()},
           {"ports", m.ports.value(), c.ports.value()},
           {"valves", m.valves.value(), c.valves.value()},
           {"axles", m.axles.value(), c.axles.value()}}};
}

// Faults where the two answers differ by more than the promised agreement. Bodies that overlap show as a
// negative closed form where only zero can be measured.
inline void judge_clearances(const fixture::Clearances &measured, const fixture::Clearances &closed,
                             std::vector<std::string> &faults) {
  const double agreement = solids::clearance_agreement.value(), sight = 2.0 * solids::sight_accuracy.value();
  for (const auto &[name, found, promised] : clearance_pairs(measured, closed)) {
    const double limit = name == "sight" ? sight : agreement;
    if (!(std::abs(std::max(0.0, found) - std::max(0.0, promised)) <= limit)) {
      faults.push_back(fmt::format("{}: solids {:.9g}, closed form {:.9g}", name, found, promised));
    }
  }
}

} // namespace purgewright::test

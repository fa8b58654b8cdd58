// The gas: does it suit the chamber, does it leave freely.
#include "topics.hpp"

#include <array>

namespace purgewright::checks {
namespace {

// The chamber is fed from below and open on top: a gas lighter than air rises out of it at once.
Verdict gas_stays_in_chamber(const Design &d) {
  const bool heavy = d.job.gas.species == job::GasSpecies::argon;
  return {heavy ? Status::pass : Status::fail, heavy ? 1.0 : 0.0, 1.0};
}

// Openings smaller than the inlet would make the bore the narrowest place of its circuit and load the joint.
Verdict bore_outlet(const Design &d) {
  constexpr double share = 0.2; // of the inlet area, common practice
  return at_least(units::ratio(d.areas.vent, d.areas.bore_inlet), share, Status::caution);
}

constexpr std::string_view practice = "common practice, no source";
constexpr std::array<Rule, 2> table{{
    {"gas.stays_in_chamber", "Purge gas is heavier than air, as a chamber open on top needs", practice,
     units::Dimension::ratio, gas_stays_in_chamber,
     "use argon: helium fed from below leaves through the open slot before it has covered the joint"},
    {"gas.bore_outlet", "Bore gas leaves freely", practice, units::Dimension::ratio, bore_outlet,
     "larger tube.vent.diameter or tube.vent.count"},
}};

} // namespace

std::span<const Rule> gas_rules() { return table; }

} // namespace purgewright::checks

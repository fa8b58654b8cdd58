// Which made parts may be printed from plastic: how hot each becomes at most, and what else stands against
// it.
//
// Estimate: the hottest metal that the part faces or touches, as the heat plan has it for the work and
// heat/series for the fixture after many parts; so it is an upper bound, the part itself being cooler.
// Errors: none; empty until the heat plan is known. Source of the margin under the plastic's deflection
// temperature: common practice, no source.
#pragma once

#include "purgewright/checks/design.hpp"

#include <string_view>
#include <vector>

namespace purgewright::checks {

struct PartHeat {
  std::string_view part;
  units::Temperature hottest{};
  std::string_view of;    // what has that temperature: "tube at the front rollers"
  std::string_view input; // id of the figure it is
  std::string_view
      against; // why it is to be of metal whatever its temperature; empty when nothing but heat decides
  std::string_view plastic; // the coldest listed one that bears it; empty: metal
};

// Made parts in reporting order, the absent ones left out.
std::vector<PartHeat> part_heat(const Design &);

// temperature.PART for each.
units::Figures figures(const std::vector<PartHeat> &);

} // namespace purgewright::checks

// A figure: one number of a design with its provenance. Every number on an output is a figure made in one
// place; results.json, the printed tables and `trace` all read the same list.
//
// Units: value is SI, in si_unit(dimension).
#pragma once

#include "purgewright/units/dimension.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::units {

enum class Basis { computed, given, fallback, standard, common_practice };

// As results.json spells it: "computed", "given", "default", "standard", "common practice".
std::string_view to_text(Basis);

struct Figure {
  std::string id; // "volume.chamber_gas"; job values use their job-file key, "tube.wall"
  double value{}; // SI
  Dimension dimension{Dimension::ratio};
  std::string title;               // plain words, no final stop
  std::string formula;             // plain text in terms of the inputs' ids; empty for given values
  std::vector<std::string> inputs; // ids of the figures the formula uses
  std::string
      source; // standard and clause, paper and equation, "job.yaml:12:9", or "common practice, no source"
  Basis basis{Basis::computed};
};

using Figures = std::vector<Figure>;

// The figure with this id, or null.
const Figure *find(const Figures &, std::string_view id);

} // namespace purgewright::units

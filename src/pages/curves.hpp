// The two plots of a design, to stand in a file or on the setup sheet. Private to pages.
//
// Units, frame, errors, guarantee, source: as pages/plots.hpp.
#pragma once

#include "plot.hpp"

#include "purgewright/report/results.hpp"

namespace purgewright::pages {

Plot temperature_plot(const report::Findings &);
Plot oxygen_plot(const report::Findings &);

} // namespace purgewright::pages

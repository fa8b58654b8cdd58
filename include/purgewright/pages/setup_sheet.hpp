// setup-sheet.pdf: one page for the bench, to be taped to the wall: weld settings, gas by stage, tacks and
// runs with holds in a round diagram and a table, loading, unloading, stop conditions, cautions, colours of
// the weld; and a second with the reasons and the plots.
//
// Units: set-points in L/min and ft3/h, the rest in the job's units. Paper: A4, or Letter when the job's
// sheets are Letter or Tabloid; two pages, upright. Frame: collar angles as seen looking at the cap. Range
// and errors: the purge and heat of the design must be known; std::runtime_error when no font is installed.
// Guarantee: same findings and mark, same bytes. Source: numbers are the figures of results.json; each line
// of practice is common practice, no source, unless it names one.
#pragma once

#include "purgewright/report/results.hpp"

#include <string>

namespace purgewright::pages {

// What ties a sheet on the wall to the files it came from.
struct SheetMark {
  std::string job_sha256;
  std::string tool_version;
};

std::string setup_sheet_pdf(const report::Findings &, const SheetMark &);

} // namespace purgewright::pages

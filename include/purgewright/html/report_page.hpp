// report.html: a design as one page to look at, which works offline from any disk: may I weld, cautions, what
// to set and do, the fixture in three dimensions, plots, rules with their margins, sheets, parts, every
// number with where it comes from.
//
// Units: the job's own, as the printed text. Frame: the assembly's file (exchange/glb.hpp). Errors: the
// layout must be buildable; std::runtime_error when bytes cannot be compressed. Guarantee: same findings and
// files, same bytes (for one version of zlib); one file that asks no network for anything, by a policy
// within it that the browser holds; texts of the job are text, whatever stands in them. Source: HTML Living
// Standard; Content Security Policy level 3; RFC 1952 (gzip).
#pragma once

#include "purgewright/report/results.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace purgewright::html {

// A picture of the folder that the page shows.
struct Picture {
  std::string path; // in the folder: "drawings/end-plug.svg"
  std::string svg;
};

struct Shown {
  std::string assembly_glb, gas_spaces_glb;
  std::string temperatures_svg, oxygen_svg;
  std::vector<Picture> sheets;
  std::string_view version; // of the program
};

std::string report_page(const report::Findings &, const Shown &);

} // namespace purgewright::html

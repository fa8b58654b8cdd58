// The words of the setup sheet, from a design's own numbers. Private to pages.
//
// Units: as printed. Frame, range, errors, guarantee, source: as pages/setup_sheet.hpp.
#pragma once

#include "purgewright/report/results.hpp"

#include <string>
#include <vector>

namespace purgewright::pages {

struct GasRow {
  std::string stage;
  std::string bore, chamber, torch; // "10 | 21.2", L/min and ft3/h; "-" when shut
  std::string time, look_for;
};

std::vector<GasRow> gas_rows(const report::Findings &);
std::vector<std::string> loading_steps(const report::Findings &);
std::vector<std::string> stop_conditions(const report::Findings &);
std::vector<std::string> cautions(const report::Findings &);

struct TurnRow {
  bool tack = false;
  std::string name, collar, arc, hold, warm, before, peak;
};
std::vector<TurnRow> turn_rows(const report::Findings &);
// What the column of warm holds means.
std::string warm_note(const report::Findings &);

// "25.4 mm x 0.9 mm titanium Grade 2, flat cap 1.2 mm, 35 A".
std::string work_line(const report::Findings &);

} // namespace purgewright::pages

// The words of the setup sheet, from a design's own numbers. Private to pages.
//
// Units: as printed. Frame, range, errors, guarantee, source: as pages/setup_sheet.hpp.
#pragma once

#include "purgewright/report/results.hpp"

#include <optional>
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

// What to set on torch, power source and hands: "Tungsten", "1.6 mm ...".
struct Setting {
  std::string name, value;
};
std::vector<Setting> weld_settings(const report::Findings &);
std::vector<std::string> unloading_steps(const report::Findings &);
std::vector<std::string> discoloured();
// Why the numbers are what they are; for the second page.
std::vector<std::string> reasons(const report::Findings &);
// How hot the cap becomes under the pin, and what colour that may leave.
std::string pin_note(const report::Findings &);
// How far hoses and lead must let the collar turn from its first arc to its last, deg, in whole tens.
int free_turn(const report::Findings &);
// From the end of the last hold on a warm fixture until a bare hand may touch tube and cap; absent: gloves.
std::optional<units::Time> hand_warm(const report::Findings &);
// "5 min", never less than it is.
std::string minutes(units::Time);
// From the tungsten's tip to the metal: "1.5 mm to 2 mm".
std::string arc_length(const report::Findings &);
// Torch gas before the arc; wait for a shop without an oxygen meter.
std::string torch_preflow(const report::Findings &);
std::string wait_without_meter(const report::Findings &);

struct TurnRow {
  bool tack = false;
  std::string name, collar, tapes, arc, hold, before, pool; // how wide it may become; tapes of runs alone
};
std::vector<TurnRow> turn_rows(const report::Findings &);
// What the column of warm holds means.
std::string warm_note(const report::Findings &);

// "25.4 mm x 0.9 mm titanium Grade 2, flat cap 1.2 mm, 35 A".
std::string work_line(const report::Findings &);

} // namespace purgewright::pages

// Pages that are renewed in place while a job is edited: a job's report, and several jobs side by side. A
// page is made of parts, each of which can be sent anew; what a save's faults leave standing says so itself.
//
// Units: the job's own, as the printed text; times of saves are the machine's local ones. Frame, errors: as
// report_page.hpp, but that numbers may be missing. Guarantee: texts of the job and of its faults are text,
// whatever stands in them; numbers that are not of the last save, or not yet exact, say so. Source: as
// report_page.hpp.
#pragma once

#include "purgewright/html/report_page.hpp"
#include "purgewright/job/sources.hpp"

#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace purgewright::html {

using Parts = std::map<std::string, std::string>; // markup by the name of its place
using SaveTime = std::chrono::system_clock::time_point;

// A job under watch, as a page shows it.
struct Watched {
  std::string file; // the path as typed
  const job::Sources &sources;
  const job::Diagnostics &problems; // of the last save
  SaveTime saved{};                 // the last time
  // The last numbers without a fault, those of them that can be built, and those before; null where there are
  // none.
  const report::Findings *judged = nullptr, *numbers = nullptr, *before = nullptr;
  SaveTime numbers_saved{};
  bool coarse = false;                                // heat by its coarse plan: exact numbers follow
  std::optional<SaveTime> view_saved, sheets_saved{}; // whose bodies, plots and drawings are shown
  std::string building{};                             // what is being made now
  std::string build_fault{};                          // why the solids could not be made
};

// What changes with every save and every step: the state, the faults.
Parts state_parts(const Watched &);

// The numbers; of coarse ones only what stands on top.
Parts watched_numbers(const Watched &, std::string_view version);

// The fixture's bodies and the plots; the sheets.
Parts watched_view(const report::Findings &of, const Shown &);
Parts watched_sheets(const Shown &);

// The whole page of a job from its parts; `version` is that of the parts, which the page asks to be newer.
std::string watched_page(const Parts &, std::uint64_t version);

// Several jobs in columns; each column's head leads to the N-th page.
Parts list_parts(std::span<const Watched>);
std::string list_page(const Parts &, std::uint64_t version, std::string_view program_version);

// What browsers hold the pages to, for a header.
std::string watch_policy();

} // namespace purgewright::html

// One job from its bytes to its findings: what every command, the program that builds the solids and whatever
// shows a design stand on.
//
// Units: SI. Frame: job.hpp.
// Range and errors: faults of the job and of the files it names are Diagnostics, sorted as read_job sorts
// them; nothing is thrown on input.
// Guarantee: opens no file; the same sources give the same study, wherever they lay.
#pragma once

#include "purgewright/checks/remedy.hpp"
#include "purgewright/job/sources.hpp"
#include "purgewright/report/manifest.hpp"
#include "purgewright/report/results.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace purgewright::study {

struct Study {
  job::Sources sources;
  job::Draft draft; // with the chosen values stated
  report::Findings findings;
  std::vector<checks::Change> chosen; // by --solve
};

struct Opening {
  std::optional<Study> study; // absent when a problem is an error
  job::Diagnostics problems;  // cautions too
};

enum class Choose { nothing, what_is_open }; // what the job leaves open: smallest chamber that passes

Opening open(job::Sources, Choose = Choose::nothing);

// A first answer in a part of the time: heat by its coarse plan, no advice on runs, no smallest change beside
// a rule that fails.
Opening open_coarsely(job::Sources);

// What only the solids can tell joins the findings.
void add_clashes(Study &, std::vector<checks::Clash>);

// The job of these sources with the values that were chosen for it.
job::Resolution chosen_job(const job::Sources &, std::span<const checks::Change>);

// The files that the job names, as a manifest lists them.
std::vector<report::InputFile> inputs_of(const job::Sources &);

} // namespace purgewright::study

// The jobs that share a bench with this one.
#pragma once

#include "purgewright/job/draft.hpp"

#include <string>

namespace purgewright::job {

// A job file without those its fixture.family names.
DraftReading read_draft_alone(const std::string &path);

// Reads the files that the draft's fixture.family names into draft.family; faults are added to the reading's
// problems.
void read_family(DraftReading &);

} // namespace purgewright::job

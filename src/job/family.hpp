// The jobs that share a bench with this one.
#pragma once

#include "purgewright/job/sources.hpp"

namespace purgewright::job {

// Reads the documents that the draft's fixture.family names into draft.family; faults are added to the
// reading's problems.
void read_family(DraftReading &, const std::vector<Document> &);

} // namespace purgewright::job

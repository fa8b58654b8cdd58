// What any buildable layout must satisfy so that its parts can be made and go together: walls positive, holes
// in metal, openings reachable, parts that fit. Stated from the drawing's point of view, without the layout's
// own shop sizes.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/job/job.hpp"

#include <string>
#include <vector>

namespace purgewright::test {

// One sentence with numbers in mm for every law the layout breaks; empty when all hold.
std::vector<std::string> broken_laws(const job::Job &, const fixture::Layout &);

// The sentences as lines, for a failure's message.
std::string lines(const std::vector<std::string> &);

} // namespace purgewright::test

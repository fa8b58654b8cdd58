// A job file from the sizes of a tube alone.
//
// Units: texts with units; a size without one takes that of the size after it. Frame: none. Range: as the
// job file's. Errors: `problem` says in a sentence what is wrong, and then there is no text. Guarantee: what
// is not asked for is left to the job file's defaults, but for the cap's thickness, which has none.
// Source: common practice, no source. Private to the command line.
#pragma once

#include <string>
#include <string_view>

namespace purgewright::cli {

struct NewJob {
  std::string text;
  std::string problem; // empty when there is a text
};

// "1 in x 0.035 in x 8 in", and flat, domed or spigot.
NewJob job_of_sizes(std::string_view tube, std::string_view cap);

} // namespace purgewright::cli

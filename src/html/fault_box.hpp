// Faults of a job file, each with the line it stands in.
//
// Units, frame, errors: none. Guarantee: as watch_page.hpp. Private to html.
#pragma once

#include "purgewright/html/watch_page.hpp"

#include <optional>
#include <string>

namespace purgewright::html {

// "14:03:22", as the machine's clock has it.
std::string clock_time(SaveTime);

std::string fault_list(const job::Diagnostics &, const job::Sources &);

// With what follows from them; empty when there is nothing to say. `numbers_saved`: of what stands below.
std::string fault_box(const job::Diagnostics &, const job::Sources &, std::optional<SaveTime> numbers_saved);

} // namespace purgewright::html

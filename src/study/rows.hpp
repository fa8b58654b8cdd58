// What rows of jobs and rows of a sweep have in common. Private to study.
//
// Units: SI. Frame: none. Errors: BadSweep names what does not exist and what would be right. Guarantee,
// source: as comparison.hpp.
#pragma once

#include "purgewright/study/comparison.hpp"

#include <span>
#include <string>
#include <vector>

namespace purgewright::study::rows {

// The figures of these ids, as the design has them.
std::vector<report::Asked> asked_of(const checks::Design &, std::span<const std::string> show);

// Which metrics the ids name.
std::vector<std::size_t> ranked(std::span<const std::string> ids);

// The row's outlines.
void draw(const checks::Design &, report::ComparedDesign &);

} // namespace purgewright::study::rows

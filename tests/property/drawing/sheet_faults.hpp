// Faults of a job's sheets in words; empty on good ones.
#pragma once

#include "drawn_job.hpp"

#include <string>
#include <vector>

namespace purgewright::test {

// Text on a line, on another text or beyond the frame: counted on the placed sheet, not by the placer's own
// book.
std::vector<std::string> overlaps(const drawing::Sheet &);

// Visible lines of a view that run beside each other nearer than they can be told apart: ISO 128-2 asks for
// 0.7 mm between parallel lines (from memory).
inline constexpr double line_distance = 0.7;
std::vector<std::string> close_lines(const drawing::Sheet &);

// Leaders that cross another's, or pass through a hole that is not theirs.
std::vector<std::string> tangled_leaders(const drawing::Sheet &);

// Printed numbers that are not those measured on the solid, or that nothing on the solid answers to.
struct Measures {
  int count = 0;
  std::vector<std::string> faults{};
};
Measures wrong_measures(const DrawnJob &);

// Features dimensioned more than once.
std::vector<std::string> repeated_features(const DrawnJob &);

// Made parts without a sheet, and sheets of no made part.
std::vector<std::string> missing_sheets(const DrawnJob &);

// Lengths of the layout that may change without any word of the parts' sheets changing.
struct Silence {
  int asked = 0;
  std::vector<std::string> faults{};
};
Silence silent_lengths(const DrawnJob &);

} // namespace purgewright::test

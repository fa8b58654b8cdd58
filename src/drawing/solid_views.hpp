// Views taken from the solids: the cut face of a section, and a small pictorial view without hidden lines.
//
// Units: millimetres at full size. Frame: the part's; results in the plane of `Looking`.
// Range and errors: SolidError when the kernel fails.
// Guarantee: circles seen square stay circles; other curves become chords within chord_deviation. One kernel
// thread. Source: OpenCASCADE 7.6.3. Exact hidden lines square to the parts' faces take up to 40 s a view
// there, so they are used only for the pictorial direction, which has no face or edge seen edge-on.
#pragma once

#include "view.hpp"

#include "purgewright/solids/kernel/solid.hpp"

#include <span>
#include <vector>

namespace purgewright::drawing {

inline constexpr double chord_deviation = 0.01; // mm, full size

struct CutFace {
  std::vector<Curve> edges;
  std::vector<Loop> loops;
};

// The plane through `through`, square to the direction of sight; empty when it misses the part.
CutFace cut_face(const solids::kernel::Solid &, const Looking &, Vec through);

// Visible edges and contours of each solid seen from the direction (1, -1, 1) among the others, smooth edges
// left out. Holes that begin and end inside a part, as those of a diffuser, take most of the time when there
// are many; where the part is closed all round nobody sees them.
enum class Insides { drawn, closed };
std::vector<std::vector<Curve>> pictorial(std::span<const solids::kernel::Solid>, Insides);

} // namespace purgewright::drawing

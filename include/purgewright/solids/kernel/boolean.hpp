// Cut, fuse and common of solids, each checked after the kernel says it is done.
//
// Units: volumes are quantity types. Frame: that of the arguments.
// Range and errors: SolidError when the kernel reports an error or warning, the result is not valid and
// closed, the number of solids differs from the expected one, or the volume breaks the bounds that hold
// for any such operation (cut: below the base's and not below it by more than the tools; fuse: between the
// largest and the sum). A cut that removes nothing is an error: the tool missed. An empty common is not.
// Guarantee: arguments stay as they were; fuzzy value zero; no parallel run, so results repeat.
// Source: OpenCASCADE 7.6.3 behaviour as measured.
#pragma once

#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

#include <optional>
#include <vector>

namespace purgewright::solids::kernel {

// All tools in one operation: faster and steadier than a loop.
Solid cut(Solid const &base, std::vector<Solid> const &tools, int expected_solids = 1);

Solid fuse(std::vector<Solid> const &solids, int expected_solids = 1);

// Nothing where the two share no volume; any number of solids otherwise.
std::optional<Solid> common(Solid const &a, Solid const &b);

// What one shares with several, which must share nothing among themselves.
std::optional<Solid> common(Solid const &a, std::vector<Solid> const &others);

// Zero where they share no volume.
units::Volume common_volume(Solid const &a, Solid const &b);
units::Volume common_volume(Solid const &a, std::vector<Solid> const &others);

} // namespace purgewright::solids::kernel

// Binary STL whose volume is true to the solid's.
//
// Units: millimetres in the file (the format states none). Frame: the solid's.
// Range and errors: FileError when the file cannot be written; SolidError when the mesh is not closed or
// the volume is not reached within most_refinements refinements of the chord tolerance, each by a half or
// more. Guarantee: closed, every facet's normal outwards, no facet with two equal corners after rounding to
// the file's single precision; volume_error is that of the rounded triangles. Same solid, same bytes. Source:
// binary STL as commonly read: 80-byte header, little-endian single precision.
#pragma once

#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace purgewright::exchange {

struct StlOptions {
  double greatest_volume_error = 1e-3; // relative
  units::Angle angle = units::degrees(12.0);
  std::optional<units::Volume> exact_volume{}; // where the caller has measured the solid already
};

inline constexpr int most_refinements = 10;

struct StlFile {
  std::string bytes;
  std::uint32_t facets;
  units::Length chord_tolerance;
  double volume_error; // relative, mesh less solid
};

StlFile stl_file(solids::kernel::Solid const &solid, StlOptions const &options = {});

// The same written out; `bytes` comes back too.
StlFile write_stl(std::filesystem::path const &path, solids::kernel::Solid const &solid,
                  StlOptions const &options = {});

} // namespace purgewright::exchange

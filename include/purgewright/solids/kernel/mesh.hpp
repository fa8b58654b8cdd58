// Triangles of a solid's boundary.
//
// Units: vertices in millimetres (a mesh is what files carry); volume a quantity type. Frame: the solid's.
// Range and errors: deflection at least smallest_deflection, angle above zero and at most a right angle;
// otherwise, or when a face gets no triangles, SolidError.
// Guarantee: the solid itself is not meshed and later measures do not change; triangles face outwards;
// vertices on shared edges are one vertex, joined by topology and not by distance; deterministic.
// Source: OpenCASCADE 7.6.3 behaviour as measured.
#pragma once

#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace purgewright::solids::kernel {

// A hundred times the kernel's confusion distance.
inline constexpr units::Length smallest_deflection = units::micrometres(0.01);

struct MeshOptions {
  units::Length deflection;                  // greatest distance of chord from surface, absolute
  units::Angle angle = units::degrees(12.0); // greatest turn of the surface along one chord
};

struct Mesh {
  std::vector<std::array<double, 3>> vertices_mm;
  std::vector<std::array<std::uint32_t, 3>> triangles; // counter-clockwise seen from outside
};

Mesh triangulate(Solid const &solid, MeshOptions const &options);

// By the divergence theorem; right only for a closed mesh.
units::Volume volume(Mesh const &mesh);

// Every edge is used exactly twice, once in each direction.
bool is_closed(Mesh const &mesh);

} // namespace purgewright::solids::kernel

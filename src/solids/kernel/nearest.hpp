// Least distance of two shapes by their vertices, edges and faces, each pair measured only if its boxes are
// nearer than what is known already; private to the kernel wrapper.
//
// Units: millimetres, as kernel shapes. Frame: that of the arguments.
// Range and errors: Standard_Failure if the kernel fails: to be called inside guarded().
// Guarantee: the distance of the boundaries; one shape inside the other is not looked for.
// Source: OpenCASCADE 7.6.3; nearest points inside two faces as stated at meeting_of().
#pragma once

#include <Bnd_Box.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Cylinder.hxx>

#include <array>
#include <optional>
#include <vector>

namespace purgewright::solids::kernel {

struct Piece {
  TopoDS_Shape shape;
  Bnd_Box box;
  std::optional<gp_Cylinder> cylinder; // of a face on one
};

// By dimension: vertices, edges, faces.
using Pieces = std::array<std::vector<Piece>, 3>;

// Of a shape, or of some faces of it.
Pieces pieces_of(std::vector<TopoDS_Shape> const &shapes);

// The least distance where it is below `known`, otherwise `known`.
double least_distance(double known, Pieces const &a, Pieces const &b);

} // namespace purgewright::solids::kernel

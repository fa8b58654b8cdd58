#include "measure.hpp"

#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <gp_Cylinder.hxx>
#include <gp_Pnt.hxx>

#include <cmath>

namespace purgewright::test {
namespace {

using drawing::Dimension;
using drawing::Probe;

constexpr double on_it = 1e-4; // mm, a point that lies on a face or an axis

gp_Pnt point(const fixture::Position &p) {
  return {units::to_millimetres(p.x), units::to_millimetres(p.y), units::to_millimetres(p.z)};
}

bool on_surface(const TopoDS_Shape &shape, const gp_Pnt &p) {
  const TopoDS_Shape vertex = BRepBuilderAPI_MakeVertex(p).Shape();
  for (TopExp_Explorer face(shape, TopAbs_FACE); face.More(); face.Next()) {
    const BRepExtrema_DistShapeShape distance(vertex, face.Current());
    if (distance.IsDone() && distance.Value() < on_it) {
      return true;
    }
  }
  return false;
}

template <class Accept> std::optional<gp_Cylinder> round_face(const TopoDS_Shape &shape, Accept &&accept) {
  for (TopExp_Explorer face(shape, TopAbs_FACE); face.More(); face.Next()) {
    const BRepAdaptor_Surface surface(TopoDS::Face(face.Current()));
    if (surface.GetType() == GeomAbs_Cylinder && accept(surface.Cylinder(), face.Current())) {
      return surface.Cylinder();
    }
  }
  return std::nullopt;
}

std::optional<gp_Cylinder> holding(const TopoDS_Shape &shape, const gp_Pnt &p, const gp_Dir &along) {
  const TopoDS_Shape vertex = BRepBuilderAPI_MakeVertex(p).Shape();
  return round_face(shape, [&](const gp_Cylinder &cylinder, const TopoDS_Shape &face) {
    return cylinder.Axis().Direction().IsParallel(along, 1e-9) &&
           BRepExtrema_DistShapeShape(vertex, face).Value() < on_it;
  });
}

double coordinate(const gp_Pnt &p, const gp_Dir &along) {
  return gp_Vec(gp_Pnt(), p).Dot(gp_Vec(along));
}

// A round face whose axis is square to the measured direction and as far along it as `p`: that is where the
// extension line of an axis runs.
std::optional<gp_Cylinder> about(const TopoDS_Shape &shape, const gp_Pnt &p, const gp_Dir &along) {
  return round_face(shape, [&](const gp_Cylinder &cylinder, const TopoDS_Shape &) {
    return cylinder.Axis().Direction().IsNormal(along, 1e-9) &&
           std::abs(coordinate(cylinder.Location(), along) - coordinate(p, along)) < on_it;
  });
}

// Coordinate along the direction of a point of the surface or of a round face's axis, whichever is asked for.
std::optional<double> place(const TopoDS_Shape &shape, const gp_Pnt &p, const gp_Dir &along, bool axis) {
  if (axis) {
    const auto cylinder = about(shape, p, along);
    return cylinder ? std::optional(coordinate(cylinder->Location(), along)) : std::nullopt;
  }
  return on_surface(shape, p) ? std::optional(coordinate(p, along)) : std::nullopt;
}

Measured between(const TopoDS_Shape &shape, const Dimension &d, bool first_axis, bool second_axis) {
  const gp_Dir along(d.along[0], d.along[1], d.along[2]);
  const auto a = place(shape, point(d.from), along, first_axis),
             b = place(shape, point(d.to), along, second_axis);
  if (!a || !b) {
    return {std::nullopt, std::string(a ? "second" : "first") + " end is not on the solid"};
  }
  return {std::abs(*b - *a)};
}

} // namespace

Measured measure(const Dimension &d, const solids::kernel::Solid &solid) {
  const TopoDS_Shape &shape = solids::kernel::occt(solid);
  switch (d.probe) {
  case Probe::distance:
    return between(shape, d, false, false);
  case Probe::axes:
    return between(shape, d, true, true);
  case Probe::offset: {
    const Measured one = between(shape, d, false, true);
    return one.value ? one : between(shape, d, true, false);
  }
  case Probe::diameter:
  case Probe::radius: {
    const auto cylinder = holding(shape, point(d.to), gp_Dir(d.along[0], d.along[1], d.along[2]));
    if (!cylinder) {
      return {std::nullopt, "no round face holds the point"};
    }
    return {(d.probe == Probe::diameter ? 2.0 : 1.0) * cylinder->Radius()};
  }
  default:
    return {std::nullopt, "not a measure of the solid"};
  }
}

} // namespace purgewright::test

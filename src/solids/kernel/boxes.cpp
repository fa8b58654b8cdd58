#include "solids/kernel/boxes.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepBndLib.hxx>
#include <Bnd_Box.hxx>
#include <TopExp.hxx>

namespace purgewright::solids::kernel {

namespace {

Point point(double x, double y, double z) {
  return {length_from_mm(x), length_from_mm(y), length_from_mm(z)};
}

} // namespace

Bounds box_of(TopoDS_Shape const &shape) {
  Bnd_Box box;
  BRepBndLib::AddOptimal(shape, box, Standard_False, Standard_False);
  double a = 0.0, b = 0.0, c = 0.0, d = 0.0, e = 0.0, f = 0.0;
  box.SetGap(0.0);
  box.Get(a, b, c, d, e, f);
  return {point(a, b, c), point(d, e, f)};
}

TopTools_IndexedMapOfShape faces_of(Solid const &solid) {
  TopTools_IndexedMapOfShape faces;
  TopExp::MapShapes(occt(solid), TopAbs_FACE, faces);
  return faces;
}

} // namespace purgewright::solids::kernel

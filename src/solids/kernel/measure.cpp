#include "purgewright/solids/kernel/measure.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/boxes.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>

namespace purgewright::solids::kernel {

namespace {

// Per-face relative bound of the adaptive integration. The plain overload is 1e-5 off where cylinders
// cross off centre; this one stays within 5e-10 there at two to three times the cost.
constexpr double integration_error = 1e-10;

GProp_GProps volume_properties(Solid const &solid) {
  return guarded({"measure volume", ""}, [&] {
    GProp_GProps properties;
    BRepGProp::VolumeProperties(occt(solid), properties, integration_error);
    return properties;
  });
}

} // namespace

units::Volume volume(Solid const &solid) {
  return volume_from_mm3(volume_properties(solid).Mass());
}

Point centroid(Solid const &solid) {
  gp_Pnt const c = volume_properties(solid).CentreOfMass();
  return {length_from_mm(c.X()), length_from_mm(c.Y()), length_from_mm(c.Z())};
}

units::Area surface_area(Solid const &solid) {
  return guarded({"measure area", ""}, [&] {
    GProp_GProps properties;
    BRepGProp::SurfaceProperties(occt(solid), properties, integration_error);
    return area_from_mm2(properties.Mass());
  });
}

Bounds bounding_box(Solid const &solid) {
  return guarded({"measure box", ""}, [&] { return box_of(occt(solid)); });
}

int face_count(Solid const &solid) {
  return faces_of(solid).Extent();
}

int solid_count(Solid const &solid) {
  return count_solids(occt(solid));
}

bool is_one_closed_solid(Solid const &solid) {
  return guarded({"check", ""}, [&] {
    TopoDS_Shape const &shape = occt(solid);
    return count_solids(shape) == 1 && shells_are_closed(shape) && BRepCheck_Analyzer(shape).IsValid() &&
           rough_volume(shape) > 0.0;
  });
}

} // namespace purgewright::solids::kernel

#include "purgewright/solids/kernel/ray.hpp"

#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/boxes.hpp"
#include "solids/kernel/guard.hpp"

#include <BRep_Builder.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <Precision.hxx>
#include <TopoDS_Compound.hxx>
#include <gp_Lin.hxx>

namespace purgewright::solids::kernel {

Target::Target(Solid const &solid) : faces_(std::make_unique<IntCurvesFace_ShapeIntersector>()) {
  guarded({"ray target", ""}, [&] { faces_->Load(occt(solid), Precision::Confusion()); });
}

Target::Target(Located const &solid, Bounds const &region)
    : faces_(std::make_unique<IntCurvesFace_ShapeIntersector>()) {
  guarded({"ray target", ""}, [&] {
    TopTools_IndexedMapOfShape const faces = faces_of(solid.solid);
    BRep_Builder builder;
    TopoDS_Compound within;
    builder.MakeCompound(within);
    for (int i = 1; i <= faces.Extent(); ++i)
      if (apart(solid.face_boxes[static_cast<std::size_t>(i - 1)], region) <=
          length_from_mm(Precision::Confusion()))
        builder.Add(within, faces(i));
    faces_->Load(within, Precision::Confusion());
  });
}

Target::~Target() = default;
Target::Target(Target &&) noexcept = default;
Target &Target::operator=(Target &&) noexcept = default;

std::optional<units::Length> Target::first_hit(Ray const &ray) const {
  Task const task{"ray", "from " + text(ray.from)};
  require_finite(task, ray.from);
  require_size(task, "reach", ray.reach);
  return guarded(task, [&]() -> std::optional<units::Length> {
    gp_Lin const line(occt(ray.from), gp_Dir(ray.towards.x, ray.towards.y, ray.towards.z));
    faces_->PerformNearest(line, 0.0, mm(ray.reach));
    if (!faces_->IsDone())
      fail(task, "the intersection is not found");
    if (faces_->NbPnt() == 0)
      return std::nullopt;
    return length_from_mm(faces_->WParameter(1));
  });
}

} // namespace purgewright::solids::kernel

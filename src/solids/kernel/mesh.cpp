#include "purgewright/solids/kernel/mesh.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"
#include "solids/kernel/mesh_nodes.hpp"

#include <BRepBuilderAPI_Copy.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <IMeshTools_Parameters.hxx>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::solids::kernel {

namespace {

Task mesh_task(MeshOptions const &options) {
  return {"mesh", fmt::format("deflection {}, angle {} rad", mm(options.deflection), rad(options.angle))};
}

} // namespace

// A copy, because the kernel keeps triangles in the shape and then measures them.
TopoDS_Shape meshed_shape(Solid const &solid, MeshOptions const &options) {
  Task const task = mesh_task(options);
  if (!(options.deflection >= smallest_deflection) || !std::isfinite(options.deflection.value()))
    fail(task, fmt::format("the deflection is below {} mm", mm(smallest_deflection)));
  if (!(rad(options.angle) > 0.0 && rad(options.angle) <= 0.5 * units::pi))
    fail(task, "the angle lies outside 0 to 90 degrees");
  return guarded(task, [&] {
    TopoDS_Shape const copy = BRepBuilderAPI_Copy(occt(solid), Standard_True, Standard_False).Shape();
    IMeshTools_Parameters parameters;
    parameters.Deflection = mm(options.deflection);
    parameters.DeflectionInterior = mm(options.deflection);
    parameters.Angle = rad(options.angle);
    parameters.AngleInterior = rad(options.angle);
    parameters.Relative = Standard_False;
    parameters.InParallel = Standard_False;
    BRepMesh_IncrementalMesh mesher(copy, parameters);
    if (!mesher.IsDone())
      fail(task, fmt::format("the mesher stops with status {}", mesher.GetStatusFlags()));
    return copy;
  });
}

Mesh triangulate(Solid const &solid, MeshOptions const &options) {
  TopoDS_Shape const shape = meshed_shape(solid, options);
  return guarded(mesh_task(options), [&] {
    MeshNodes nodes(shape);
    if (nodes.has_bare_face())
      fail(mesh_task(options), "a face gets no triangles");
    return nodes.welded();
  });
}

units::Volume volume(Mesh const &mesh) {
  double sum = 0.0;
  for (auto const &[i, j, k] : mesh.triangles) {
    auto const &a = mesh.vertices_mm[i];
    auto const &b = mesh.vertices_mm[j];
    auto const &c = mesh.vertices_mm[k];
    sum += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) +
           a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return volume_from_mm3(sum / 6.0);
}

bool is_closed(Mesh const &mesh) {
  std::vector<std::array<std::uint32_t, 2>> edges;
  edges.reserve(3 * mesh.triangles.size());
  for (auto const &t : mesh.triangles)
    for (std::size_t i = 0; i < 3; ++i)
      edges.push_back({t[i], t[(i + 1) % 3]});
  std::sort(edges.begin(), edges.end());
  bool const once_each = std::adjacent_find(edges.begin(), edges.end()) == edges.end();
  return once_each && !edges.empty() && std::all_of(edges.begin(), edges.end(), [&](auto const &e) {
           return e[0] != e[1] && std::binary_search(edges.begin(), edges.end(), std::array{e[1], e[0]});
         });
}

} // namespace purgewright::solids::kernel

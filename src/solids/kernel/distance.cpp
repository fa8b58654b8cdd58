#include "purgewright/solids/kernel/distance.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/boxes.hpp"
#include "solids/kernel/guard.hpp"
#include "solids/kernel/nearest.hpp"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRep_Tool.hxx>
#include <Precision.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>

#include <algorithm>
#include <cmath>

namespace purgewright::solids::kernel {

namespace {

units::Length measured(Task const &task, TopoDS_Shape const &a, TopoDS_Shape const &b) {
  BRepExtrema_DistShapeShape extrema(a, b);
  if (!extrema.IsDone())
    fail(task, "the distance is not found");
  return length_from_mm(extrema.Value());
}

TopoDS_Edge edge(Task const &task, Line const &line) {
  require_finite(task, line.from);
  require_finite(task, line.to);
  BRepBuilderAPI_MakeEdge maker(occt(line.from), occt(line.to));
  if (!maker.IsDone())
    fail(task, "the line has no length");
  return maker.Edge();
}

Task task_of(Line const &line) {
  return {"distance from line", text(line.from) + ".." + text(line.to)};
}

// ---- Only what is near

// Faces of the part nearer to the box than `known`.
std::vector<TopoDS_Shape> near_faces(Bounds const &box, Located const &part, units::Length known) {
  TopTools_IndexedMapOfShape const faces = faces_of(part.solid);
  std::vector<TopoDS_Shape> near;
  for (int i = 1; i <= faces.Extent(); ++i)
    if (apart(box, part.face_boxes[static_cast<std::size_t>(i - 1)]) < known)
      near.push_back(faces(i));
  return near;
}

bool is_inside(TopoDS_Shape const &body, Solid const &solid) {
  TopExp_Explorer const vertex(body, TopAbs_VERTEX);
  if (!vertex.More())
    return false;
  BRepClass3d_SolidClassifier const classifier(occt(solid), BRep_Tool::Pnt(TopoDS::Vertex(vertex.Current())),
                                               Precision::Confusion());
  return classifier.State() != TopAbs_OUT;
}

// In kernel's numbers nothing is infinite.
double finite_mm(units::Length known) {
  return std::isfinite(known.value()) ? mm(known) : Precision::Infinite();
}

units::Length boundaries_below(units::Length known, TopoDS_Shape const &body, Bounds const &box,
                               Located const &part) {
  double const limit = finite_mm(known);
  double const found = least_distance(limit, pieces_of({body}), pieces_of(near_faces(box, part, known)));
  return found < limit ? std::min(known, length_from_mm(found)) : known;
}

} // namespace

units::Length distance(Solid const &a, Solid const &b) {
  Task const task{"distance", ""};
  return guarded(task, [&] { return measured(task, occt(a), occt(b)); });
}

units::Length distance(Line const &line, Solid const &solid) {
  Task const task = task_of(line);
  return guarded(task, [&] { return measured(task, edge(task, line), occt(solid)); });
}

units::Length distance(Line const &a, Line const &b) {
  Task const task = task_of(a);
  return guarded(task, [&] { return measured(task, edge(task, a), edge(task, b)); });
}

units::Length distance_below(units::Length known, Solid const &body, Located const &part) {
  return guarded({"distance", ""}, [&] {
    Bounds const box = box_of(occt(body));
    if ((holds(part.box, box) && is_inside(occt(body), part.solid)) ||
        (holds(box, part.box) && is_inside(occt(part.solid), body)))
      return std::min(known, units::Length{});
    return boundaries_below(known, occt(body), box, part);
  });
}

units::Length distance_below(units::Length known, Line const &line, Located const &part) {
  Task const task = task_of(line);
  return guarded(task, [&] {
    TopoDS_Edge const straight = edge(task, line);
    Bounds const box = box_of(straight);
    if (holds(part.box, box) && is_inside(straight, part.solid))
      return std::min(known, units::Length{});
    return boundaries_below(known, straight, box, part);
  });
}

} // namespace purgewright::solids::kernel

#include "purgewright/solids/kernel/distance.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <TopoDS_Edge.hxx>

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

} // namespace purgewright::solids::kernel

#include "purgewright/solids/kernel/chamfer.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepBndLib.hxx>
#include <BRepFilletAPI_MakeChamfer.hxx>
#include <BRepLib.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <fmt/format.h>

namespace purgewright::solids::kernel {

namespace {

bool lies_within(Bnd_Box box, EdgeBox const &where) {
  double a = 0.0, b = 0.0, c = 0.0, d = 0.0, e = 0.0, f = 0.0;
  box.SetGap(0.0);
  box.Get(a, b, c, d, e, f);
  double const slack = mm(selection_slack);
  gp_Pnt const least = occt(where.least);
  gp_Pnt const greatest = occt(where.greatest);
  return a >= least.X() - slack && b >= least.Y() - slack && c >= least.Z() - slack &&
         d <= greatest.X() + slack && e <= greatest.Y() + slack && f <= greatest.Z() + slack;
}

// The ends first: they are cheap, and most edges lie elsewhere.
bool lies_within(TopoDS_Edge const &edge, EdgeBox const &where) {
  Bnd_Box ends;
  ends.Add(BRep_Tool::Pnt(TopExp::FirstVertex(edge)));
  ends.Add(BRep_Tool::Pnt(TopExp::LastVertex(edge)));
  if (!lies_within(ends, where))
    return false;
  Bnd_Box whole;
  BRepBndLib::AddOptimal(edge, whole, Standard_False, Standard_False);
  return lies_within(whole, where);
}

// A seam has one face twice; a tangent join has nothing to break. Booleans do not always record tangency,
// so it is measured.
bool is_corner(TopoDS_Edge const &edge, TopTools_ListOfShape const &faces) {
  if (faces.Extent() != 2 || faces.First().IsSame(faces.Last()))
    return false;
  TopoDS_Face const &one = TopoDS::Face(faces.First());
  TopoDS_Face const &other = TopoDS::Face(faces.Last());
  constexpr double tangent = 1e-3; // rad
  return BRepLib::ContinuityOfFaces(edge, one, other, tangent) == GeomAbs_C0;
}

std::vector<TopoDS_Edge> chosen_edges(TopoDS_Shape const &shape, EdgeBox const &where) {
  TopTools_IndexedDataMapOfShapeListOfShape faces_of;
  TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, faces_of);
  std::vector<TopoDS_Edge> result;
  for (int i = 1; i <= faces_of.Extent(); ++i) {
    TopoDS_Edge const &edge = TopoDS::Edge(faces_of.FindKey(i));
    if (BRep_Tool::Degenerated(edge))
      continue;
    if (lies_within(edge, where) && is_corner(edge, faces_of.FindFromIndex(i)))
      result.push_back(edge);
  }
  return result;
}

TopoDS_Shape chamfered(TopoDS_Shape const &shape, std::vector<TopoDS_Edge> const &edges, double distance) {
  BRepFilletAPI_MakeChamfer operation(shape);
  for (TopoDS_Edge const &edge : edges)
    if (operation.Contour(edge) == 0) // not yet taken along with a tangent neighbour
      operation.Add(distance, edge);
  operation.Build();
  return operation.IsDone() ? operation.Shape() : TopoDS_Shape{};
}

bool fails_alone(TopoDS_Shape const &shape, TopoDS_Edge const &edge, double distance) {
  try {
    return chamfered(shape, {edge}, distance).IsNull();
  } catch (Standard_Failure const &) {
    return true;
  }
}

std::string diagnosis(TopoDS_Shape const &shape, std::vector<TopoDS_Edge> const &edges, double distance) {
  std::string result;
  for (TopoDS_Edge const &edge : edges) {
    if (!fails_alone(shape, edge, distance))
      continue;
    BRepAdaptor_Curve const curve(edge);
    gp_Pnt const middle = curve.Value(0.5 * (curve.FirstParameter() + curve.LastParameter()));
    result += fmt::format(" ({:.4f}, {:.4f}, {:.4f})", middle.X(), middle.Y(), middle.Z());
  }
  return result.empty() ? "the edges fail together but not alone"
                        : "edges that fail alone, by middle:" + result;
}

} // namespace

int count_edges(Solid const &solid, EdgeBox const &where) {
  return guarded({"choose edges", text(where.least) + " to " + text(where.greatest)},
                 [&] { return static_cast<int>(chosen_edges(occt(solid), where).size()); });
}

Solid chamfer_edges(Solid const &solid, EdgeBox const &where, units::Length distance) {
  Task const task{"chamfer", fmt::format("edges in {} to {}, distance {}", text(where.least),
                                         text(where.greatest), mm(distance))};
  require_size(task, "the distance", distance);
  std::vector<TopoDS_Edge> const edges = guarded(task, [&] { return chosen_edges(occt(solid), where); });
  if (edges.empty())
    fail(task, "no edge lies there");
  try {
    TopoDS_Shape const shape = chamfered(occt(solid), edges, mm(distance));
    if (!shape.IsNull())
      return guarded(task, [&] { return checked(task, shape); });
  } catch (Standard_Failure const &failure) {
    fail(task, failure_text(failure) + "; " + diagnosis(occt(solid), edges, mm(distance)));
  }
  fail(task, "the kernel gives no shape; " + diagnosis(occt(solid), edges, mm(distance)));
}

} // namespace purgewright::solids::kernel

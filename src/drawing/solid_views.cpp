#include "solid_views.hpp"

#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepLib.hxx>
#include <BRepTools.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <GCPnts_QuasiUniformDeflection.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <gp_Pln.hxx>

#include <functional>
#include <string>

namespace purgewright::drawing {
namespace {

using solids::kernel::SolidError;
using Flatten = std::function<Point(const gp_Pnt &)>;

template <class Work> auto guarded(const char *operation, Work &&work) {
  try {
    return work();
  } catch (const Standard_Failure &failure) {
    throw SolidError("", operation, "", failure.GetMessageString());
  }
}

// Three points of a circular arc in the plane to an arc that runs counter-clockwise.
Arc arc_through(Point centre, double radius, Point a, Point middle, Point b) {
  const auto angle = [&](Point p) { return std::atan2(p.y - centre.y, p.x - centre.x); };
  const auto turn = [](double from, double to) {
    const double t = std::fmod(to - from, full_turn);
    return t < 0.0 ? t + full_turn : t;
  };
  const double start = angle(a), end = angle(b);
  const bool forward = turn(start, angle(middle)) < turn(start, end);
  return forward ? Arc{centre, radius, start, turn(start, end)} : Arc{centre, radius, end, turn(end, start)};
}

std::vector<Point> points_of(const BRepAdaptor_Curve &curve, const Flatten &flat) {
  const GCPnts_QuasiUniformDeflection chords_of(curve, chord_deviation);
  std::vector<Point> out;
  for (int i = 1; i <= chords_of.NbPoints(); ++i) {
    out.push_back(flat(chords_of.Value(i)));
  }
  return out;
}

void add_edge(const TopoDS_Edge &edge, const Flatten &flat, std::vector<Curve> &curves) {
  const BRepAdaptor_Curve curve(edge);
  const double first = curve.FirstParameter(), last = curve.LastParameter();
  const Point a = flat(curve.Value(first)), b = flat(curve.Value(last));
  if (curve.GetType() == GeomAbs_Line) {
    curves.push_back(Segment{a, b});
    return;
  }
  if (curve.GetType() == GeomAbs_Circle) {
    const Point centre = flat(curve.Circle().Location());
    const double radius = curve.Circle().Radius();
    const Point middle = flat(curve.Value(0.5 * (first + last)));
    const bool seen_square =
        std::abs(length(a - centre) - radius) < 1e-7 && std::abs(length(middle - centre) - radius) < 1e-7;
    if (seen_square) {
      const bool whole = last - first > full_turn - 1e-9;
      curves.push_back(whole ? Arc{centre, radius, 0.0, full_turn}
                             : arc_through(centre, radius, a, middle, b));
      return;
    }
  }
  const auto points = points_of(curve, flat);
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    curves.push_back(Segment{points[i], points[i + 1]});
  }
}

Loop loop_of(const TopoDS_Wire &wire, const TopoDS_Face &face, const Flatten &flat) {
  Loop loop;
  for (BRepTools_WireExplorer walk(wire, face); walk.More(); walk.Next()) {
    auto points = points_of(BRepAdaptor_Curve(walk.Current()), flat);
    if (walk.Orientation() == TopAbs_REVERSED) {
      std::reverse(points.begin(), points.end());
    }
    loop.insert(loop.end(), points.begin(), points.empty() ? points.end() : points.end() - 1);
  }
  return loop;
}

gp_Dir direction(Vec v) {
  return {v.x, v.y, v.z};
}

} // namespace

CutFace cut_face(const solids::kernel::Solid &solid, const Looking &looking, Vec through) {
  return guarded("section", [&] {
    constexpr double beyond = 2000.0; // mm, larger than any part
    const gp_Pln plane(gp_Pnt(through.x, through.y, through.z), direction(looking.toward()));
    const TopoDS_Face cutter = BRepBuilderAPI_MakeFace(plane, -beyond, beyond, -beyond, beyond).Face();
    BRepAlgoAPI_Common common(solids::kernel::occt(solid), cutter);
    const Flatten flat = [&](const gp_Pnt &p) { return looking(Vec{p.X(), p.Y(), p.Z()}); };
    CutFace out;
    for (TopExp_Explorer face(common.Shape(), TopAbs_FACE); face.More(); face.Next()) {
      for (TopExp_Explorer wire(face.Current(), TopAbs_WIRE); wire.More(); wire.Next()) {
        out.loops.push_back(loop_of(TopoDS::Wire(wire.Current()), TopoDS::Face(face.Current()), flat));
        for (BRepTools_WireExplorer walk(TopoDS::Wire(wire.Current())); walk.More(); walk.Next()) {
          add_edge(walk.Current(), flat, out.edges);
        }
      }
    }
    return out;
  });
}

std::vector<std::vector<Curve>> pictorial(std::span<const solids::kernel::Solid> parts) {
  return guarded("pictorial view", [&] {
    Handle(HLRBRep_Algo) hidden = new HLRBRep_Algo;
    for (const auto &solid : parts) {
      hidden->Add(solids::kernel::occt(solid));
    }
    hidden->Projector(HLRAlgo_Projector(gp_Ax2(gp_Pnt(), gp_Dir(1.0, -1.0, 1.0), gp_Dir(1.0, 1.0, 0.0))));
    hidden->Update();
    hidden->Hide();
    HLRBRep_HLRToShape shapes(hidden);
    const Flatten flat = [](const gp_Pnt &p) { return Point{p.X(), p.Y()}; };
    std::vector<std::vector<Curve>> out;
    for (const auto &solid : parts) {
      const TopoDS_Shape &shape = solids::kernel::occt(solid);
      out.emplace_back();
      for (TopoDS_Shape lines : {shapes.VCompound(shape), shapes.OutLineVCompound(shape)}) {
        if (lines.IsNull()) {
          continue;
        }
        BRepLib::BuildCurves3d(lines);
        for (TopExp_Explorer edge(lines, TopAbs_EDGE); edge.More(); edge.Next()) {
          add_edge(TopoDS::Edge(edge.Current()), flat, out.back());
        }
      }
    }
    return out;
  });
}

} // namespace purgewright::drawing

#include "solid_views.hpp"

#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepAlgoAPI_Section.hxx>
#include <BRepBndLib.hxx>
#include <BRepLib.hxx>
#include <BRepTools.hxx>
#include <BRep_Builder.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GCPnts_QuasiUniformDeflection.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Iterator.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Pln.hxx>

#include <algorithm>
#include <functional>
#include <string>
#include <utility>

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

bool before(Point a, Point b) {
  return a.x != b.x ? a.x < b.x : a.y < b.y;
}

bool box_before(const Box &a, const Box &b) {
  return before(a.least, b.least) || (!before(b.least, a.least) && before(a.greatest, b.greatest));
}

// Order and sense by place, whatever the kernel's: the same job gives the same bytes.
void sort_by_place(std::vector<Curve> &curves) {
  for (Curve &curve : curves) {
    if (auto *s = std::get_if<Segment>(&curve); s != nullptr && before(s->b, s->a)) {
      std::swap(s->a, s->b);
    }
  }
  std::stable_sort(curves.begin(), curves.end(),
                   [](const Curve &a, const Curve &b) { return box_before(box_of(a), box_of(b)); });
}

void sort_by_place(std::vector<std::vector<Point>> &pieces) {
  for (auto &piece : pieces) {
    if (before(piece.back(), piece.front())) {
      std::reverse(piece.begin(), piece.end());
    }
  }
  std::sort(pieces.begin(), pieces.end(), [](const auto &a, const auto &b) {
    return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(), before);
  });
}

// Edges of a closed cut, end to end.
std::vector<Loop> loops_of(std::vector<std::vector<Point>> pieces) {
  constexpr double joint = 1e-5; // mm, ends that meet
  const auto meet = [](Point a, Point b) { return length(b - a) < joint; };
  std::vector<Loop> out;
  while (!pieces.empty()) {
    Loop loop = std::move(pieces.back());
    pieces.pop_back();
    while (!meet(loop.front(), loop.back())) {
      const auto next = std::find_if(pieces.begin(), pieces.end(), [&](const auto &piece) {
        return meet(piece.front(), loop.back()) || meet(piece.back(), loop.back());
      });
      if (next == pieces.end()) {
        throw SolidError("", "section", "", "the cut is not closed");
      }
      if (!meet(next->front(), loop.back())) {
        std::reverse(next->begin(), next->end());
      }
      loop.insert(loop.end(), next->begin() + 1, next->end());
      pieces.erase(next);
    }
    loop.pop_back();
    out.push_back(std::move(loop));
  }
  return out;
}

bool deep_in(const Bnd_Box &whole, const TopoDS_Shape &shape) {
  constexpr double skin = 0.5; // mm
  Bnd_Box box;
  BRepBndLib::Add(shape, box, false);
  const gp_Pnt a = box.CornerMin(), b = box.CornerMax(), least = whole.CornerMin(), most = whole.CornerMax();
  return a.X() > least.X() + skin && a.Y() > least.Y() + skin && a.Z() > least.Z() + skin &&
         b.X() < most.X() - skin && b.Y() < most.Y() - skin && b.Z() < most.Z() - skin;
}

// The face without the mouths of inner holes.
TopoDS_Face unbroken(const TopoDS_Face &face, const Bnd_Box &whole) {
  const TopoDS_Wire outer = BRepTools::OuterWire(face);
  TopoDS_Face out = TopoDS::Face(face.EmptyCopied());
  for (TopoDS_Iterator wire(face); wire.More(); wire.Next()) {
    if (wire.Value().IsSame(outer) || !deep_in(whole, wire.Value())) {
      BRep_Builder().Add(out, wire.Value());
    }
  }
  return out;
}

TopoDS_Shape without_inner_holes(const TopoDS_Shape &shape) {
  Bnd_Box whole; // of the corners: exact on blocks, too small on turned parts, which so stay as they are
  for (TopExp_Explorer corner(shape, TopAbs_VERTEX); corner.More(); corner.Next()) {
    whole.Add(BRep_Tool::Pnt(TopoDS::Vertex(corner.Current())));
  }
  TopoDS_Shell shell;
  BRep_Builder().MakeShell(shell);
  for (TopExp_Explorer face(shape, TopAbs_FACE); face.More(); face.Next()) {
    const bool round = BRepAdaptor_Surface(TopoDS::Face(face.Current())).GetType() == GeomAbs_Cylinder;
    if (!round || !deep_in(whole, face.Current())) {
      BRep_Builder().Add(shell, unbroken(TopoDS::Face(face.Current()), whole));
    }
  }
  shell.Closed(true); // to the eye: faces that look away are not searched
  return shell;
}

gp_Dir direction(Vec v) {
  return {v.x, v.y, v.z};
}

} // namespace

CutFace cut_face(const solids::kernel::Solid &solid, const Looking &looking, Vec through) {
  return guarded("section", [&] {
    const gp_Pln plane(gp_Pnt(through.x, through.y, through.z), direction(looking.toward()));
    BRepAlgoAPI_Section section(solids::kernel::occt(solid), plane, false);
    section.Build();
    if (!section.IsDone()) {
      throw SolidError("", "section", "", "the kernel finds no intersection");
    }
    const Flatten flat = [&](const gp_Pnt &p) { return looking(Vec{p.X(), p.Y(), p.Z()}); };
    CutFace out;
    std::vector<std::vector<Point>> pieces;
    for (TopExp_Explorer edge(section.Shape(), TopAbs_EDGE); edge.More(); edge.Next()) {
      add_edge(TopoDS::Edge(edge.Current()), flat, out.edges);
      pieces.push_back(points_of(BRepAdaptor_Curve(TopoDS::Edge(edge.Current())), flat));
    }
    sort_by_place(out.edges);
    sort_by_place(pieces);
    out.loops = loops_of(std::move(pieces));
    return out;
  });
}

std::vector<std::vector<Curve>> pictorial(std::span<const solids::kernel::Solid> parts, Insides insides) {
  return guarded("pictorial view", [&] {
    Handle(HLRBRep_Algo) hidden = new HLRBRep_Algo;
    std::vector<TopoDS_Shape> seen;
    for (const auto &solid : parts) {
      const TopoDS_Shape &shape = solids::kernel::occt(solid);
      seen.push_back(insides == Insides::drawn ? shape : without_inner_holes(shape));
      hidden->Add(seen.back());
    }
    hidden->Projector(HLRAlgo_Projector(gp_Ax2(gp_Pnt(), gp_Dir(1.0, -1.0, 1.0), gp_Dir(1.0, 1.0, 0.0))));
    hidden->Update();
    hidden->Hide();
    HLRBRep_HLRToShape shapes(hidden);
    const Flatten flat = [](const gp_Pnt &p) { return Point{p.X(), p.Y()}; };
    std::vector<std::vector<Curve>> out;
    for (const TopoDS_Shape &shape : seen) {
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

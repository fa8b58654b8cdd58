#include "solids/kernel/nearest.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepExtrema_DistanceSS.hxx>
#include <BRep_Tool.hxx>
#include <Precision.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Ax1.hxx>
#include <gp_Cone.hxx>
#include <gp_Lin.hxx>
#include <gp_Vec.hxx>

#include <algorithm>

namespace purgewright::solids::kernel {

namespace {

constexpr std::array kinds{TopAbs_VERTEX, TopAbs_EDGE, TopAbs_FACE};

bool is(BRepAdaptor_Surface const &surface, GeomAbs_SurfaceType kind) {
  return surface.GetType() == kind;
}

Piece piece(TopoDS_Shape const &shape) {
  Piece made{shape, {}, {}};
  BRepBndLib::Add(shape, made.box, Standard_False);
  if (shape.ShapeType() == TopAbs_FACE)
    if (BRepAdaptor_Surface const surface(TopoDS::Face(shape), Standard_False); is(surface, GeomAbs_Cylinder))
      made.cylinder = surface.Cylinder();
  return made;
}

// From a box within the cylinder to its wall; zero for any other box. Farthest from an axis is a corner.
double from_wall(Bnd_Box const &box, gp_Cylinder const &cylinder) {
  gp_Pnt const least = box.CornerMin(), greatest = box.CornerMax();
  gp_Lin const axis(cylinder.Axis());
  double farthest = 0.0;
  for (double const x : {least.X(), greatest.X()})
    for (double const y : {least.Y(), greatest.Y()})
      for (double const z : {least.Z(), greatest.Z()})
        farthest = std::max(farthest, axis.Distance({x, y, z}));
  return std::max(0.0, cylinder.Radius() - farthest);
}

// No more than the distance of the two.
double lower_bound(Piece const &a, Piece const &b) {
  double least = a.box.Distance(b.box);
  if (b.cylinder)
    least = std::max(least, from_wall(a.box, *b.cylinder));
  if (a.cylinder)
    least = std::max(least, from_wall(b.box, *a.cylinder));
  return least;
}

double measured(double known, Piece const &a, Piece const &b) {
  BRepExtrema_DistanceSS const pair(a.shape, b.shape, a.box, b.box, known);
  return pair.IsDone() ? std::min(known, pair.DistValue()) : known;
}

// Where two faces can be nearest to each other inside both. There the line between them is normal to both.
enum class Meeting {
  at_an_edge,       // nowhere, or all along a ruling that ends at an edge of one: found from the edges
  on_common_normal, // of two cylinders whose axes are not parallel: it crosses both axes at right angles
  anywhere
};

bool is_ruled(BRepAdaptor_Surface const &surface) {
  return is(surface, GeomAbs_Plane) || is(surface, GeomAbs_Cylinder) || is(surface, GeomAbs_Cone);
}

gp_Ax1 axis_of(BRepAdaptor_Surface const &surface) {
  return is(surface, GeomAbs_Cone) ? surface.Cone().Axis() : surface.Cylinder().Axis();
}

Meeting meeting_of(BRepAdaptor_Surface const &a, BRepAdaptor_Surface const &b) {
  if (!is_ruled(a) || !is_ruled(b))
    return Meeting::anywhere;
  if (is(a, GeomAbs_Plane) || is(b, GeomAbs_Plane))
    return Meeting::at_an_edge;
  bool const cones = is(a, GeomAbs_Cone) && is(b, GeomAbs_Cone);
  if (!cones && axis_of(a).IsParallel(axis_of(b), Precision::Angular()))
    return Meeting::at_an_edge; // beside a cone, a cylinder's normals never point the same way
  return is(a, GeomAbs_Cone) || is(b, GeomAbs_Cone) ? Meeting::anywhere : Meeting::on_common_normal;
}

// The point of the first axis nearest to the second; they are not parallel.
gp_Pnt nearest_on_axis(gp_Ax1 const &axis, gp_Ax1 const &other) {
  gp_Vec const along(axis.Direction()), across(other.Direction());
  gp_Vec const between(axis.Location(), other.Location());
  double const cosine = along * across;
  double const far = (between * along - (between * across) * cosine) / (1.0 - cosine * cosine);
  return axis.Location().Translated(far * along);
}

double on_common_normal(double known, Piece const &a, Piece const &b) {
  gp_Cylinder const &first = *a.cylinder, &second = *b.cylinder;
  gp_Vec const normal(first.Axis().Direction().Crossed(second.Axis().Direction()));
  gp_Pnt const centre = nearest_on_axis(first.Axis(), second.Axis());
  for (double const side : {-1.0, 1.0}) {
    Piece const point =
        piece(BRepBuilderAPI_MakeVertex(centre.Translated(side * first.Radius() * normal)).Vertex());
    double const off_face = measured(2.0 * Precision::Confusion(), point, a); // it lies on the cylinder
    if (off_face <= Precision::Confusion())
      known = measured(known, point, b);
  }
  return known;
}

double of_faces(double known, Piece const &a, Piece const &b) {
  switch (meeting_of(BRepAdaptor_Surface(TopoDS::Face(a.shape), Standard_False),
                     BRepAdaptor_Surface(TopoDS::Face(b.shape), Standard_False))) {
  case Meeting::at_an_edge:
    return known;
  case Meeting::on_common_normal:
    return on_common_normal(known, a, b);
  case Meeting::anywhere:
    break;
  }
  return measured(known, a, b);
}

struct Pair {
  double least; // lower bound
  Piece const *a, *b;
};

std::vector<Pair> near_pairs(double known, std::vector<Piece> const &a, std::vector<Piece> const &b) {
  std::vector<Pair> pairs;
  for (Piece const &first : a)
    for (Piece const &second : b)
      if (double const least = lower_bound(first, second); least < known)
        pairs.push_back({least, &first, &second});
  std::ranges::stable_sort(pairs, {}, &Pair::least);
  return pairs;
}

} // namespace

Pieces pieces_of(std::vector<TopoDS_Shape> const &shapes) {
  Pieces pieces;
  for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
    TopTools_IndexedMapOfShape of_kind;
    for (TopoDS_Shape const &shape : shapes)
      TopExp::MapShapes(shape, kinds[kind], of_kind);
    for (int i = 1; i <= of_kind.Extent(); ++i)
      if (of_kind(i).ShapeType() != TopAbs_EDGE || !BRep_Tool::Degenerated(TopoDS::Edge(of_kind(i))))
        pieces[kind].push_back(piece(of_kind(i)));
  }
  return pieces;
}

double least_distance(double known, Pieces const &a, Pieces const &b) {
  // Quick kinds first: what they find spares the others.
  for (std::size_t sum = 0; sum <= 4; ++sum) {
    for (std::size_t first = 0; first < a.size(); ++first) {
      if (first > sum || sum - first >= b.size())
        continue;
      bool const faces = first == 2 && sum == 4;
      for (Pair const &pair : near_pairs(known, a[first], b[sum - first])) {
        if (pair.least >= known)
          break;
        known = faces ? of_faces(known, *pair.a, *pair.b) : measured(known, *pair.a, *pair.b);
      }
    }
  }
  return known;
}

} // namespace purgewright::solids::kernel

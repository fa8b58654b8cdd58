#include "solids/kernel/mesh_nodes.hpp"

#include <BRep_Tool.hxx>
#include <Poly_PolygonOnTriangulation.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Pnt.hxx>

#include <algorithm>
#include <limits>

namespace purgewright::solids::kernel {

MeshNodes::MeshNodes(TopoDS_Shape const &shape) {
  TopExp::MapShapes(shape, TopAbs_EDGE, edges_);
  TopExp::MapShapes(shape, TopAbs_VERTEX, vertices_);
  for (TopExp_Explorer at(shape, TopAbs_FACE); at.More(); at.Next()) {
    FaceNodes face{TopoDS::Face(at.Current()), {}, {}, static_cast<std::uint32_t>(points_.size())};
    face.triangles = BRep_Tool::Triangulation(face.face, face.place);
    if (face.triangles.IsNull() || face.triangles->NbTriangles() == 0) {
      bare_face_ = true;
      continue;
    }
    add_nodes(face);
    faces_.push_back(face);
  }
  for (FaceNodes const &face : faces_)
    join_edges(face);
}

void MeshNodes::add_nodes(FaceNodes const &face) {
  for (int i = 1; i <= face.triangles->NbNodes(); ++i) {
    gp_Pnt const p = face.triangles->Node(i).Transformed(face.place.Transformation());
    parent_.push_back(static_cast<std::uint32_t>(points_.size()));
    points_.push_back({p.X(), p.Y(), p.Z()});
  }
}

void MeshNodes::join_edges(FaceNodes const &face) {
  for (TopExp_Explorer at(face.face, TopAbs_EDGE); at.More(); at.Next())
    join_edge(face, TopoDS::Edge(at.Current()));
}

// A seam comes twice with opposite orientation; each time the kernel returns that side's nodes, always in
// the order of the edge's own parameter.
void MeshNodes::join_edge(FaceNodes const &face, TopoDS_Edge const &edge) {
  auto const &polygon = BRep_Tool::PolygonOnTriangulation(edge, face.triangles, face.place);
  if (polygon.IsNull())
    return;
  TopoDS_Edge const forward = TopoDS::Edge(edge.Oriented(TopAbs_FORWARD));
  int const first = vertices_.FindIndex(TopExp::FirstVertex(forward));
  int const last = vertices_.FindIndex(TopExp::LastVertex(forward));
  int const count = polygon->NbNodes();
  for (int i = 1; i <= count; ++i) {
    std::uint32_t const node = face.first + static_cast<std::uint32_t>(polygon->Node(i) - 1);
    bool const at_end = i == 1 || i == count || BRep_Tool::Degenerated(edge);
    auto const known = at_end ? vertex_node_.try_emplace(i == count ? last : first, node).first->second
                              : edge_node_.try_emplace({edges_.FindIndex(edge), i}, node).first->second;
    join(known, node);
  }
}

std::uint32_t MeshNodes::root(std::uint32_t node) {
  while (parent_[node] != node)
    node = parent_[node] = parent_[parent_[node]];
  return node;
}

void MeshNodes::join(std::uint32_t a, std::uint32_t b) {
  std::uint32_t const ra = root(a);
  std::uint32_t const rb = root(b);
  parent_[std::max(ra, rb)] = std::min(ra, rb);
}

void MeshNodes::add_triangles(FaceNodes const &face, std::vector<std::uint32_t> const &number, Mesh &mesh) {
  bool const flipped =
      (face.face.Orientation() == TopAbs_REVERSED) != face.place.Transformation().IsNegative();
  for (int i = 1; i <= face.triangles->NbTriangles(); ++i) {
    int a = 0, b = 0, c = 0;
    face.triangles->Triangle(i).Get(a, b, c);
    auto const vertex = [&](int node) {
      return number[root(face.first + static_cast<std::uint32_t>(node - 1))];
    };
    std::array<std::uint32_t, 3> t{vertex(a), vertex(b), vertex(c)};
    if (flipped)
      std::swap(t[1], t[2]);
    if (t[0] != t[1] && t[1] != t[2] && t[2] != t[0])
      mesh.triangles.push_back(t);
  }
}

Mesh MeshNodes::welded() {
  constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();
  std::vector<std::uint32_t> number(points_.size(), none);
  Mesh mesh;
  for (std::uint32_t node = 0; node < points_.size(); ++node)
    if (root(node) == node) {
      number[node] = static_cast<std::uint32_t>(mesh.vertices_mm.size());
      mesh.vertices_mm.push_back(points_[node]);
    }
  for (FaceNodes const &face : faces_)
    add_triangles(face, number, mesh);
  return mesh;
}

} // namespace purgewright::solids::kernel

// Joins the triangles of all faces into one mesh by topology.
//
// Units: millimetres. Frame: the shape's.
// Range and errors: the shape must carry triangles; has_bare_face() tells if a face does not.
// Guarantee: nodes of two faces become one vertex when they belong to the same edge polygon's node or the
// same topological vertex; coordinates are those of the first face in order, so the result repeats.
// Triangles that shrink to an edge (poles, cone tips) are dropped.
// Source: OpenCASCADE 7.6.3: faces store their own nodes, edges the indices of theirs in each face.
#pragma once

#include "purgewright/solids/kernel/mesh.hpp"

#include <Poly_Triangulation.hxx>
#include <TopLoc_Location.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>

#include <map>

namespace purgewright::solids::kernel {

class MeshNodes {
 public:
  explicit MeshNodes(TopoDS_Shape const &shape);

  bool has_bare_face() const { return bare_face_; }
  Mesh welded();

 private:
  struct FaceNodes {
    TopoDS_Face face;
    Handle(Poly_Triangulation) triangles;
    TopLoc_Location place;
    std::uint32_t first; // number of the face's first node
  };

  void add_nodes(FaceNodes const &face);
  void join_edges(FaceNodes const &face);
  void join_edge(FaceNodes const &face, TopoDS_Edge const &edge);
  void add_triangles(FaceNodes const &face, std::vector<std::uint32_t> const &number, Mesh &mesh);
  std::uint32_t root(std::uint32_t node);
  void join(std::uint32_t a, std::uint32_t b);

  std::vector<FaceNodes> faces_;
  bool bare_face_ = false;
  std::vector<std::array<double, 3>> points_;
  std::vector<std::uint32_t> parent_;
  TopTools_IndexedMapOfShape edges_;
  TopTools_IndexedMapOfShape vertices_;
  std::map<std::array<int, 2>, std::uint32_t> edge_node_; // edge, place along it -> node
  std::map<int, std::uint32_t> vertex_node_;
};

} // namespace purgewright::solids::kernel

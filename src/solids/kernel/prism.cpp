#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Wire.hxx>
#include <fmt/format.h>
#include <gp_Circ.hxx>
#include <gp_Vec.hxx>

#include <array>
#include <cmath>

namespace purgewright::solids::kernel {

namespace {

// Outline in plain millimetres: half sides and corner radius.
struct Outline {
  double x, y, corner;
};

Outline outline(RoundedRectangle const &plan) {
  const double x = 0.5 * mm(plan.length);
  const double y = 0.5 * mm(plan.width);
  const double corner = mm(plan.corner_radius);
  // Half a side falls between two points of mm()'s grid where the side's last digit is odd: an obround's
  // radius, rounded for itself, may then stand one step of the grid over.
  constexpr double grid_step = 1e-9;
  const double most = std::min(x, y);
  return {x, y, corner > most && corner <= most + grid_step ? most : corner};
}

double area(Outline const &o) {
  return 4.0 * o.x * o.y - (4.0 - units::pi) * o.corner * o.corner;
}

void require_plan(Task const &task, RoundedRectangle const &plan) {
  require_size(task, "the plan's length", plan.length);
  require_size(task, "the plan's width", plan.width);
  if (mm(plan.corner_radius) != 0.0)
    require_size(task, "the corner radius", plan.corner_radius);
  Outline const o = outline(plan);
  if (o.corner > std::min(o.x, o.y))
    fail(task, "the corner radius is more than half the smaller side");
}

gp_Pnt in_plane(gp_Ax2 const &frame, double x, double y) {
  return frame.Location().XYZ() + x * frame.XDirection().XYZ() + y * frame.YDirection().XYZ();
}

// Counter-clockwise from the right-hand side; sides that shrink to nothing are left out.
TopoDS_Wire wire(gp_Ax2 const &frame, Outline const &o) {
  struct Corner {
    double x, y; // centre of the corner's arc
    double turn; // where the arc starts, in quarter turns
  };
  std::array<Corner, 4> const corners{{{o.x - o.corner, o.y - o.corner, 0.0},
                                       {o.corner - o.x, o.y - o.corner, 1.0},
                                       {o.corner - o.x, o.corner - o.y, 2.0},
                                       {o.x - o.corner, o.corner - o.y, 3.0}}};
  auto const end = [&](Corner const &c, int quarter) {
    static constexpr std::array<double, 5> cosine{1.0, 0.0, -1.0, 0.0, 1.0};
    static constexpr std::array<double, 5> sine{0.0, 1.0, 0.0, -1.0, 0.0};
    auto const k = static_cast<std::size_t>(c.turn) + static_cast<std::size_t>(quarter);
    return in_plane(frame, c.x + o.corner * cosine[k], c.y + o.corner * sine[k]);
  };
  BRepBuilderAPI_MakeWire builder;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    Corner const &here = corners[i];
    Corner const &next = corners[(i + 1) % corners.size()];
    if (o.corner > 0.0) {
      gp_Ax2 axes = frame;
      axes.SetLocation(in_plane(frame, here.x, here.y));
      builder.Add(BRepBuilderAPI_MakeEdge(gp_Circ(axes, o.corner), end(here, 0), end(here, 1)));
    }
    if (end(here, 1).Distance(end(next, 0)) >= mm(smallest_size))
      builder.Add(BRepBuilderAPI_MakeEdge(end(here, 1), end(next, 0)));
  }
  return builder.Wire();
}

TopoDS_Shape prism(gp_Ax2 const &frame, TopoDS_Shape const &face, double height) {
  return BRepPrimAPI_MakePrism(face, gp_Vec(height * frame.Direction().XYZ())).Shape();
}

std::string plan_text(Frame const &frame, RoundedRectangle const &plan, units::Length height) {
  return fmt::format("{}, {} x {} corner radius {}, height {}", text(frame), mm(plan.length), mm(plan.width),
                     mm(plan.corner_radius), mm(height));
}

} // namespace

RoundedRectangle stadium(units::Length length, units::Length width) {
  return {.length = length, .width = width, .corner_radius = 0.5 * std::min(length, width)};
}

Solid rounded_rectangle_prism(Frame const &frame, RoundedRectangle const &plan, units::Length height) {
  Task const task{"rounded-rectangle prism", plan_text(frame, plan, height)};
  require_finite(task, frame.origin);
  require_size(task, "the height", height);
  require_plan(task, plan);
  return guarded(task, [&] {
    gp_Ax2 const axes = occt(frame);
    Outline const o = outline(plan);
    BRepBuilderAPI_MakeFace const face(wire(axes, o), Standard_True);
    return checked_primitive(task, prism(axes, face.Face(), mm(height)), area(o) * mm(height));
  });
}

Solid rounded_rectangle_ring_prism(Frame const &frame, RoundedRectangle const &outer, units::Length band,
                                   units::Length height) {
  Task const task{"rounded-rectangle ring",
                  plan_text(frame, outer, height) + fmt::format(", band {}", mm(band))};
  require_finite(task, frame.origin);
  require_size(task, "the height", height);
  require_size(task, "the band", band);
  require_plan(task, outer);
  RoundedRectangle const inner{.length = outer.length - 2.0 * band,
                               .width = outer.width - 2.0 * band,
                               .corner_radius = std::max(outer.corner_radius - band, units::Length{})};
  require_plan(task, inner);
  return guarded(task, [&] {
    gp_Ax2 const axes = occt(frame);
    BRepBuilderAPI_MakeFace face(wire(axes, outline(outer)), Standard_True);
    face.Add(TopoDS::Wire(wire(axes, outline(inner)).Reversed()));
    double const section = area(outline(outer)) - area(outline(inner));
    return checked_primitive(task, prism(axes, face.Face(), mm(height)), section * mm(height));
  });
}

Solid stadium_ring_prism(Frame const &frame, units::Length length, units::Length width, units::Length band,
                         units::Length height) {
  return rounded_rectangle_ring_prism(frame, stadium(length, width), band, height);
}

} // namespace purgewright::solids::kernel

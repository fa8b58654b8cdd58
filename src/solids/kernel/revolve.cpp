#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"
#include "solids/kernel/profile.hpp"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <TopoDS_Wire.hxx>
#include <fmt/format.h>
#include <gp_Ax1.hxx>

#include <cmath>

namespace purgewright::solids::kernel {

namespace {

std::string profile_text(Frame const &frame, std::vector<ProfilePoint> const &profile) {
  std::string result = text(frame) + ", profile";
  for (ProfilePoint const &p : profile) {
    result += fmt::format(" ({}, {})", mm(p.axial), mm(p.radial));
    if (p.via)
      result += fmt::format(" via ({}, {})", mm(p.via->axial), mm(p.via->radial));
  }
  return result;
}

void require_profile(Task const &task, std::vector<ProfileSegment> const &profile) {
  if (profile.size() < 2)
    fail(task, "a profile needs two corners or more");
  for (ProfileSegment const &s : profile) {
    if (!std::isfinite(s.axial) || !std::isfinite(s.radial))
      fail(task, "a corner is not a number");
    if (s.radial < 0.0)
      fail(task, fmt::format("a corner lies at radius {}", s.radial));
    if (s.bad_arc)
      fail(task, "an arc is asked for through three points in line");
    if (!(std::hypot(s.axial_end - s.axial, s.radial_end - s.radial) >= mm(smallest_size)))
      fail(task, fmt::format("two corners coincide at ({}, {})", s.axial, s.radial));
  }
}

double total_volume(std::vector<ProfileSegment> const &profile) {
  double sum = 0.0;
  for (ProfileSegment const &s : profile)
    sum += swept_volume(s);
  return std::abs(sum);
}

gp_Pnt spatial(gp_Ax2 const &frame, double axial, double radial) {
  return frame.Location().XYZ() + axial * frame.Direction().XYZ() + radial * frame.XDirection().XYZ();
}

TopoDS_Edge edge(gp_Ax2 const &frame, ProfileSegment const &s, TopoDS_Vertex const &from,
                 TopoDS_Vertex const &to) {
  if (!s.arc)
    return BRepBuilderAPI_MakeEdge(from, to);
  double const middle = s.arc->start + 0.5 * s.arc->sweep;
  gp_Pnt const via = spatial(frame, s.arc->axial + s.arc->radius * std::cos(middle),
                             s.arc->radial + s.arc->radius * std::sin(middle));
  GC_MakeArcOfCircle const arc(spatial(frame, s.axial, s.radial), via,
                               spatial(frame, s.axial_end, s.radial_end));
  return BRepBuilderAPI_MakeEdge(arc.Value(), from, to);
}

TopoDS_Wire wire(gp_Ax2 const &frame, std::vector<ProfileSegment> const &profile) {
  std::vector<TopoDS_Vertex> corners;
  for (ProfileSegment const &s : profile)
    corners.push_back(BRepBuilderAPI_MakeVertex(spatial(frame, s.axial, s.radial)));
  BRepBuilderAPI_MakeWire builder;
  for (std::size_t i = 0; i < profile.size(); ++i)
    builder.Add(edge(frame, profile[i], corners[i], corners[(i + 1) % corners.size()]));
  return builder.Wire();
}

} // namespace

units::Volume volume_of_revolution(std::vector<ProfilePoint> const &profile) {
  return volume_from_mm3(total_volume(segments(profile)));
}

Solid revolve(Frame const &frame, std::vector<ProfilePoint> const &profile) {
  Task const task{"revolve", profile_text(frame, profile)};
  require_finite(task, frame.origin);
  std::vector<ProfileSegment> const outline = segments(profile);
  require_profile(task, outline);
  return guarded(task, [&] {
    gp_Ax2 const axes = occt(frame);
    BRepBuilderAPI_MakeFace const face(wire(axes, outline), Standard_True);
    TopoDS_Shape const shape =
        BRepPrimAPI_MakeRevol(face.Face(), gp_Ax1(axes.Location(), axes.Direction())).Shape();
    return checked_primitive(task, shape, total_volume(outline));
  });
}

} // namespace purgewright::solids::kernel

#include "purgewright/solids/kernel/frame.hpp"

#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"

#include <gp_Ax1.hxx>
#include <gp_Dir.hxx>
#include <gp_Vec.hxx>

#include <cmath>

namespace purgewright::solids::kernel {

namespace {

gp_Dir direction(Direction const &d) {
  return {d.x, d.y, d.z};
}

Direction default_across(gp_Dir const &axis) {
  constexpr double nearly_along = 0.9; // cosine of 26 degrees
  return std::abs(axis.X()) > nearly_along ? along_y : along_x;
}

} // namespace

Frame advanced(Frame const &frame, units::Length distance) {
  double const norm = std::hypot(frame.axis.x, frame.axis.y, frame.axis.z);
  Frame result = frame;
  result.origin.x += distance * (frame.axis.x / norm);
  result.origin.y += distance * (frame.axis.y / norm);
  result.origin.z += distance * (frame.axis.z / norm);
  return result;
}

gp_Pnt occt(Point const &point) {
  return {mm(point.x), mm(point.y), mm(point.z)};
}

gp_Ax2 occt(Frame const &frame) {
  gp_Dir const axis = direction(frame.axis);
  return {occt(frame.origin), axis, direction(frame.across.value_or(default_across(axis)))};
}

gp_Trsf occt(Placement const &placement) {
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(gp_Pnt(0.0, 0.0, 0.0), direction(placement.axis)), rad(placement.angle));
  gp_Trsf shift;
  shift.SetTranslation(gp_Vec(occt(placement.offset).XYZ()));
  return shift * turn;
}

} // namespace purgewright::solids::kernel

#include "solids/kernel/guard.hpp"

#include "purgewright/solids/kernel/primitives.hpp"
#include "purgewright/solids/kernel/scale.hpp"

#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Type.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <fmt/format.h>

#include <cmath>

namespace purgewright::solids::kernel {

void fail(Task const &task, std::string const &text) {
  throw SolidError("", task.operation, task.inputs_mm, text);
}

std::string failure_text(Standard_Failure const &failure) {
  char const *message = failure.GetMessageString();
  std::string const kind = failure.DynamicType()->Name();
  return message != nullptr && *message != '\0' ? kind + ": " + message : kind;
}

void require_size(Task const &task, char const *name, units::Length size) {
  if (!(size >= smallest_size) || !std::isfinite(size.value()))
    fail(task, fmt::format("{} is {} mm, at least {} mm is needed", name, mm(size), mm(smallest_size)));
}

void require_finite(Task const &task, Point const &point) {
  if (!std::isfinite(point.x.value() + point.y.value() + point.z.value()))
    fail(task, "a coordinate is not a number");
}

std::string text(Point const &point) {
  return fmt::format("({}, {}, {})", mm(point.x), mm(point.y), mm(point.z));
}

std::string text(Frame const &frame) {
  return fmt::format("at {} along ({}, {}, {})", text(frame.origin), frame.axis.x, frame.axis.y,
                     frame.axis.z);
}

double rough_volume(TopoDS_Shape const &shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return properties.Mass();
}

double rough_volume(Solid const &solid) {
  std::optional<double> const known = solid.checked_volume_mm3();
  return known ? *known : rough_volume(solid.shape());
}

int count_solids(TopoDS_Shape const &shape) {
  int count = 0;
  for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next())
    ++count;
  return count;
}

bool shells_are_closed(TopoDS_Shape const &shape) {
  for (TopExp_Explorer at(shape, TopAbs_SHELL); at.More(); at.Next())
    if (!BRep_Tool::IsClosed(at.Current()))
      return false;
  return true;
}

namespace {

// A Boolean wraps even a single solid in a compound.
TopoDS_Shape unwrapped(TopoDS_Shape const &shape) {
  TopExp_Explorer at(shape, TopAbs_SOLID);
  return at.Current();
}

Solid checked_all(Task const &task, TopoDS_Shape const &shape, double volume, Expected const &expected) {
  int const solids = count_solids(shape);
  if (solids != expected.solids)
    fail(task, fmt::format("{} solids come out where {} are expected", solids, expected.solids));
  if (!shells_are_closed(shape))
    fail(task, "a shell is open");
  if (!BRepCheck_Analyzer(shape).IsValid())
    fail(task, "the boundary is not valid");
  if (!(volume > expected.least_volume))
    fail(task, fmt::format("the volume is {} mm3, not above {} mm3", volume, expected.least_volume));
  if (expected.greatest_volume > 0.0 && !(volume <= expected.greatest_volume))
    fail(task, fmt::format("the volume is {} mm3, above {} mm3", volume, expected.greatest_volume));
  return {solids == 1 ? unwrapped(shape) : shape, volume};
}

void require_shape(Task const &task, TopoDS_Shape const &shape) {
  if (shape.IsNull())
    fail(task, "the kernel gives no shape");
}

} // namespace

Solid checked(Task const &task, TopoDS_Shape const &shape, Expected const &expected) {
  require_shape(task, shape);
  return checked_all(task, shape, rough_volume(shape), expected);
}

Solid checked_primitive(Task const &task, TopoDS_Shape const &shape, double volume_mm3) {
  constexpr double closed_form_slack = 1e-6;
  require_shape(task, shape);
  double const volume = rough_volume(shape);
  bool const inside_out = volume < 0.0;
  return checked_all(task, inside_out ? shape.Reversed() : shape, std::abs(volume),
                     {.least_volume = volume_mm3 * (1.0 - closed_form_slack),
                      .greatest_volume = volume_mm3 * (1.0 + closed_form_slack)});
}

} // namespace purgewright::solids::kernel

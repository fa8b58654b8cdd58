#include "purgewright/solids/kernel/solid.hpp"

#include <TopoDS_Shape.hxx>

namespace purgewright::solids::kernel {

Solid::Solid(TopoDS_Shape const &shape) : shape_(std::make_shared<TopoDS_Shape const>(shape)) {}

Solid::Solid(TopoDS_Shape const &shape, double checked_volume_mm3)
    : shape_(std::make_shared<TopoDS_Shape const>(shape)), checked_volume_mm3_(checked_volume_mm3) {}

namespace {

std::string sentence(std::string const &part, std::string const &operation, std::string const &inputs_mm,
                     std::string const &kernel_text) {
  return (part.empty() ? std::string{} : part + ": ") + operation + " [" + inputs_mm + " mm]: " + kernel_text;
}

} // namespace

SolidError::SolidError(std::string part_name, std::string operation_name, std::string inputs, std::string why)
    : std::runtime_error(sentence(part_name, operation_name, inputs, why)), part(std::move(part_name)),
      operation(std::move(operation_name)), inputs_mm(std::move(inputs)), kernel_text(std::move(why)) {}

} // namespace purgewright::solids::kernel

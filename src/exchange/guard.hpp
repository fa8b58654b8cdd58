// Turns a kernel fault during translation into a SolidError that names the part.
//
// Units: none. Frame: none.
// Range and errors: Standard_Failure is no std::exception in 7.6 and is caught here.
// Guarantee: other exceptions pass through.
// Source: OpenCASCADE 7.6.3.
#pragma once

#include "purgewright/solids/kernel/solid.hpp"

#include <Standard_Failure.hxx>

#include <string>
#include <utility>

namespace purgewright::exchange {

template <class Work> auto guarded(std::string const &part, std::string const &operation, Work &&work) {
  try {
    return std::forward<Work>(work)();
  } catch (Standard_Failure const &failure) {
    char const *message = failure.GetMessageString();
    throw solids::kernel::SolidError(part, operation, "", message != nullptr ? message : "");
  }
}

} // namespace purgewright::exchange

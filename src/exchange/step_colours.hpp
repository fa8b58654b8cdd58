// Colours of the solids in a STEP model, in the order they are added.
//
// Units: sRGB components 0 to 1, written as given. Frame: none.
// Range and errors: none beyond memory.
// Guarantee: same order of adding, same entities. The kernel's own colour writer goes by memory address and
// rounds to single precision.
// Source: ISO 10303-46 styled item; OpenCASCADE 7.6.3.
#pragma once

#include "purgewright/exchange/part.hpp"

#include <StepData_StepModel.hxx>
#include <StepRepr_Representation.hxx>
#include <StepVisual_StyledItem.hxx>

#include <vector>

namespace purgewright::exchange {

class StepColours {
 public:
  // Colours every solid of the shape.
  void add(Handle(StepRepr_Representation) const &shape, Colour const &colour);

  // Puts what was added into the model; does nothing when nothing was.
  void finish(Handle(StepData_StepModel) const &model) const;

 private:
  std::vector<Handle(StepVisual_StyledItem)> styled_;
  Handle(StepRepr_RepresentationContext) context_; // of the first shape
};

} // namespace purgewright::exchange

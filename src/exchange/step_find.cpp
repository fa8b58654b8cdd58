#include "exchange/step_find.hpp"

#include <StepBasic_ProductDefinitionFormation.hxx>
#include <StepRepr_CharacterizedDefinition.hxx>
#include <StepRepr_PropertyDefinition.hxx>
#include <StepRepr_RepresentedDefinition.hxx>
#include <StepShape_ShapeDefinitionRepresentation.hxx>
#include <TCollection_HAsciiString.hxx>

#include <stdexcept>

namespace purgewright::exchange {

using Model = Handle(StepData_StepModel);

Handle(StepBasic_Product) find_product(Model const &model, std::string const &key) {
  Handle(StepBasic_Product) found;
  for_each<StepBasic_Product>(model, [&](Handle(StepBasic_Product) const &product) {
    if (found.IsNull() && (key.empty() || key == product->Id()->ToCString()))
      found = product;
  });
  return found;
}

Handle(StepBasic_ProductDefinition)
    definition_of(Model const &model, Handle(StepBasic_Product) const &product) {
  Handle(StepBasic_ProductDefinition) found;
  for_each<StepBasic_ProductDefinition>(model, [&](Handle(StepBasic_ProductDefinition) const &definition) {
    if (found.IsNull() && definition->Formation()->OfProduct() == product)
      found = definition;
  });
  if (found.IsNull())
    throw std::logic_error("a STEP product has no definition");
  return found;
}

Handle(StepRepr_Representation)
    shape_of(Model const &model, Handle(StepBasic_ProductDefinition) const &definition) {
  Handle(StepRepr_Representation) found;
  for_each<StepShape_ShapeDefinitionRepresentation>(model, [&](auto const &shape) {
    auto const property = shape->Definition().PropertyDefinition();
    if (found.IsNull() && !property.IsNull() && property->Definition().ProductDefinition() == definition)
      found = shape->UsedRepresentation();
  });
  if (found.IsNull())
    throw std::logic_error("a STEP product has no shape");
  return found;
}

} // namespace purgewright::exchange

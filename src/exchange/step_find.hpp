// Finds products, their definitions and their shapes in a STEP model.
//
// Units: none. Frame: none.
// Range and errors: std::logic_error when a translated product has no definition or no shape.
// Guarantee: entities are visited in the model's order, so the answers repeat.
// Source: ISO 10303-41 product structure; OpenCASCADE 7.6.3.
#pragma once

#include <StepBasic_Product.hxx>
#include <StepBasic_ProductDefinition.hxx>
#include <StepData_StepModel.hxx>
#include <StepRepr_Representation.hxx>

#include <string>

namespace purgewright::exchange {

// Calls visit(entity) for each entity of the kind.
template <class Kind, class Visit> void for_each(Handle(StepData_StepModel) const &model, Visit visit) {
  for (int i = 1; i <= model->NbEntities(); ++i)
    if (Handle(Kind) const entity = Handle(Kind)::DownCast(model->Value(i)); !entity.IsNull())
      visit(entity);
}

// The product whose id is `key`; null when there is none. An empty key finds the first.
Handle(StepBasic_Product) find_product(Handle(StepData_StepModel) const &model, std::string const &key);

Handle(StepBasic_ProductDefinition)
    definition_of(Handle(StepData_StepModel) const &model, Handle(StepBasic_Product) const &product);

Handle(StepRepr_Representation)
    shape_of(Handle(StepData_StepModel) const &model, Handle(StepBasic_ProductDefinition) const &definition);

} // namespace purgewright::exchange

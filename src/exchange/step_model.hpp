// Names, texts and header of a translated STEP model, and the model as text.
//
// Units: none. Frame: none.
// Range and errors: std::invalid_argument for texts with control characters.
// Guarantee: what the kernel numbers by process-wide counters is replaced; entities are visited in the
// model's order.
// Source: ISO 10303-21 header section; ISO 10303-41 property definition; names of a material's property after
// the recommended practices of the STEP implementor forum, as OpenCASCADE 7.6.3 reads them.
#pragma once

#include "purgewright/exchange/part.hpp"
#include "purgewright/exchange/step.hpp"

#include <StepBasic_Product.hxx>
#include <StepData_StepModel.hxx>

#include <string>

namespace purgewright::exchange {

void set_header(Handle(StepData_StepModel) const &model, StepHeader const &header, std::string const &name,
                std::string const &description);

void describe_product(Handle(StepData_StepModel) const &model, Handle(StepBasic_Product) const &product,
                      std::string const &name, std::string const &description,
                      std::vector<Property> const &properties);

// Name of the product's material; an empty one adds nothing.
void add_material(Handle(StepData_StepModel) const &model, Handle(StepBasic_Product) const &product,
                  std::string const &material);

// Names the uses in the assembly after their parts and numbers them from 1.
void name_uses(Handle(StepData_StepModel) const &model, Assembly const &assembly);

std::string model_text(Handle(StepData_StepModel) const &model);

} // namespace purgewright::exchange

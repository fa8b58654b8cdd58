#include "exchange/step_colours.hpp"

#include <STEPConstruct_Styles.hxx>
#include <StepRepr_HArray1OfRepresentationItem.hxx>
#include <StepRepr_RepresentationContext.hxx>
#include <StepShape_ManifoldSolidBrep.hxx>
#include <StepVisual_ColourRgb.hxx>
#include <StepVisual_HArray1OfPresentationStyleAssignment.hxx>
#include <StepVisual_MechanicalDesignGeometricPresentationRepresentation.hxx>
#include <StepVisual_PresentationStyleAssignment.hxx>
#include <TCollection_HAsciiString.hxx>

namespace purgewright::exchange {

namespace {

Handle(StepVisual_StyledItem) styled(Handle(StepRepr_RepresentationItem) const &solid, Colour const &colour) {
  Handle(StepVisual_ColourRgb) const rgb = new StepVisual_ColourRgb;
  rgb->Init(new TCollection_HAsciiString(""), colour.red, colour.green, colour.blue);
  Handle(StepVisual_HArray1OfPresentationStyleAssignment) const styles =
      new StepVisual_HArray1OfPresentationStyleAssignment(1, 1);
  styles->SetValue(1, STEPConstruct_Styles().MakeColorPSA(solid, rgb, nullptr, nullptr, 0.0));
  Handle(StepVisual_StyledItem) const item = new StepVisual_StyledItem;
  item->Init(new TCollection_HAsciiString("color"), styles, solid);
  return item;
}

} // namespace

void StepColours::add(Handle(StepRepr_Representation) const &shape, Colour const &colour) {
  if (context_.IsNull())
    context_ = shape->ContextOfItems();
  for (int i = 1; i <= shape->NbItems(); ++i)
    if (shape->ItemsValue(i)->IsKind(STANDARD_TYPE(StepShape_ManifoldSolidBrep)))
      styled_.push_back(styled(shape->ItemsValue(i), colour));
}

void StepColours::finish(Handle(StepData_StepModel) const &model) const {
  if (styled_.empty())
    return;
  Handle(StepRepr_HArray1OfRepresentationItem) const items =
      new StepRepr_HArray1OfRepresentationItem(1, static_cast<int>(styled_.size()));
  for (std::size_t i = 0; i < styled_.size(); ++i)
    items->SetValue(static_cast<int>(i) + 1, styled_[i]);
  Handle(StepVisual_MechanicalDesignGeometricPresentationRepresentation) const presentation =
      new StepVisual_MechanicalDesignGeometricPresentationRepresentation;
  presentation->Init(new TCollection_HAsciiString(""), items, context_);
  model->AddWithRefs(presentation);
}

} // namespace purgewright::exchange

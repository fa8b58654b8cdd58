#include "purgewright/exchange/step.hpp"

#include "exchange/document.hpp"
#include "exchange/guard.hpp"
#include "exchange/step_colours.hpp"
#include "exchange/step_find.hpp"
#include "exchange/step_model.hpp"
#include "exchange/step_settings.hpp"
#include "exchange/tolerances.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"

#include <STEPCAFControl_Writer.hxx>
#include <STEPControl_Writer.hxx>
#include <StepBasic_MeasureValueMember.hxx>
#include <StepBasic_MeasureWithUnit.hxx>
#include <StepShape_LimitsAndFits.hxx>
#include <StepShape_ToleranceValue.hxx>
#include <TCollection_HAsciiString.hxx>

namespace purgewright::exchange {

namespace kernel = solids::kernel;

namespace {

[[noreturn]] void refused(std::string const &name) {
  throw kernel::SolidError(name, "translate to STEP", "", "the kernel refuses the shape");
}

void describe_parts(Handle(StepData_StepModel) const &model, Assembly const &assembly) {
  StepColours colours;
  std::vector<std::size_t> const first = first_of_part(assembly);
  for (std::size_t i = 0; i < assembly.items.size(); ++i) {
    if (first[i] != i)
      continue;
    Part const &part = assembly.items[i].part;
    Handle(StepBasic_Product) const product = find_product(model, product_key(i));
    if (product.IsNull())
      refused(part.name);
    describe_product(model, product, part.name, part.description, part.properties);
    add_material(model, product, part.material);
    colours.add(shape_of(model, definition_of(model, product)), assembly.items[i].colour);
  }
  colours.finish(model);
}

// What a file of one part says of it.
void describe_alone(Handle(StepData_StepModel) const &model, Handle(StepBasic_Product) const &product,
                    Part const &part, StepHeader const &header) {
  describe_product(model, product, part.name, part.description, part.properties);
  add_material(model, product, part.material);
  if (part.colour) {
    StepColours colours;
    colours.add(shape_of(model, definition_of(model, product)), *part.colour);
    colours.finish(model);
  }
  set_header(model, header, part.name, part.description);
}

// OpenCASCADE 7.6.3 writes a grade two too high, so h7 would be made as h9; its entities stand in the fits'
// order.
void set_grades(Handle(StepData_StepModel) const &model, std::vector<Fit> const &fits) {
  std::size_t next = 0;
  for_each<StepShape_LimitsAndFits>(model, [&](Handle(StepShape_LimitsAndFits) const &entity) {
    if (next < fits.size())
      entity->SetGrade(new TCollection_HAsciiString(fits[next].grade));
    ++next;
  });
  if (next != fits.size())
    throw kernel::SolidError("", "translate to STEP", "", "a fit is missing in the model");
}

// OpenCASCADE 7.6.3 writes the limits as bare numbers, where ISO 10303-41 has the kind of measure.
void set_kind_of_limits(Handle(StepData_StepModel) const &model) {
  for_each<StepShape_ToleranceValue>(model, [](Handle(StepShape_ToleranceValue) const &limits) {
    for (Handle(Standard_Transient) const &bound : {limits->LowerBound(), limits->UpperBound()}) {
      auto const measure = Handle(StepBasic_MeasureWithUnit)::DownCast(bound);
      if (measure.IsNull())
        throw kernel::SolidError("", "translate to STEP", "", "a limit is no measure");
      Handle(StepBasic_MeasureValueMember) const value = new StepBasic_MeasureValueMember;
      value->SetName("LENGTH_MEASURE");
      value->SetReal(measure->ValueComponent());
      measure->SetValueComponentMember(value);
    }
  });
}

// Tolerances need the kernel's document and the schema that knows them.
std::string toleranced_text(Part const &part, StepHeader const &header) {
  StaticScope const settings = step_settings("AP242DIS");
  return guarded(part.name, "translate to STEP", [&] {
    STEPCAFControl_Writer writer;
    writer.SetColorMode(Standard_False);
    writer.SetDimTolMode(Standard_True);
    if (!writer.Transfer(document_with_tolerances(part)))
      refused(part.name);
    Handle(StepData_StepModel) const model = writer.ChangeWriter().Model();
    Handle(StepBasic_Product) const product = find_product(model, product_key(0));
    if (product.IsNull())
      refused(part.name);
    set_grades(model, part.tolerances.fits);
    set_kind_of_limits(model);
    describe_alone(model, product, part, header);
    return model_text(model);
  });
}

} // namespace

std::string step_text(Part const &part, StepHeader const &header) {
  silence_kernel();
  if (!part.tolerances.empty())
    return toleranced_text(part, header);
  StaticScope const settings = step_settings();
  return guarded(part.name, "translate to STEP", [&] {
    STEPControl_Writer writer;
    if (writer.Transfer(kernel::occt(part.solid), STEPControl_AsIs) != IFSelect_RetDone)
      refused(part.name);
    Handle(StepData_StepModel) const model = writer.Model();
    Handle(StepBasic_Product) const product = find_product(model, "");
    if (product.IsNull())
      refused(part.name);
    describe_alone(model, product, part, header);
    return model_text(model);
  });
}

std::string step_text(Assembly const &assembly, StepHeader const &header) {
  silence_kernel();
  StaticScope const settings = step_settings();
  return guarded(assembly.name, "translate to STEP", [&] {
    STEPCAFControl_Writer writer;
    writer.SetColorMode(Standard_False); // it would write them in the order of memory addresses
    if (!writer.Transfer(document(assembly, {.keyed_names = true})))
      refused(assembly.name);
    Handle(StepData_StepModel) const model = writer.ChangeWriter().Model();
    Handle(StepBasic_Product) const root = find_product(model, assembly_key);
    if (root.IsNull())
      refused(assembly.name);
    describe_product(model, root, assembly.name, assembly.description, {});
    describe_parts(model, assembly);
    name_uses(model, assembly);
    set_header(model, header, assembly.name, assembly.description);
    return model_text(model);
  });
}

void write_step(std::filesystem::path const &path, Part const &part, StepHeader const &header) {
  files::write(path, step_text(part, header));
}

void write_step(std::filesystem::path const &path, Assembly const &assembly, StepHeader const &header) {
  files::write(path, step_text(assembly, header));
}

} // namespace purgewright::exchange

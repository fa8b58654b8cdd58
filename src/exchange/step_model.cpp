#include "exchange/step_model.hpp"

#include "exchange/document.hpp"
#include "exchange/part21_text.hpp"
#include "exchange/step_find.hpp"

#include <APIHeaderSection_MakeHeader.hxx>
#include <Interface_HArray1OfHAsciiString.hxx>
#include <StepBasic_ProductDefinition.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepWriter.hxx>
#include <StepRepr_CharacterizedDefinition.hxx>
#include <StepRepr_DescriptiveRepresentationItem.hxx>
#include <StepRepr_HArray1OfRepresentationItem.hxx>
#include <StepRepr_NextAssemblyUsageOccurrence.hxx>
#include <StepRepr_PropertyDefinition.hxx>
#include <StepRepr_PropertyDefinitionRepresentation.hxx>
#include <StepRepr_Representation.hxx>
#include <StepRepr_RepresentationContext.hxx>
#include <StepRepr_RepresentedDefinition.hxx>
#include <TCollection_HAsciiString.hxx>

#include <fmt/format.h>

#include <locale>
#include <map>
#include <sstream>

namespace purgewright::exchange {

namespace {

using Model = Handle(StepData_StepModel);

Handle(TCollection_HAsciiString) string(std::string const &utf8) {
  return new TCollection_HAsciiString(part21_text(utf8).c_str());
}

Handle(Interface_HArray1OfHAsciiString) one_string(std::string const &utf8) {
  Handle(Interface_HArray1OfHAsciiString) const array = new Interface_HArray1OfHAsciiString(1, 1);
  array->SetValue(1, string(utf8));
  return array;
}

// A property of a product with one text as its value.
struct TextProperty {
  std::string name, description;
  std::string values; // name of what represents it
  std::string item, text;
};

void add_property(Model const &model, Handle(StepBasic_ProductDefinition) const &definition,
                  Handle(StepRepr_RepresentationContext) const &context, TextProperty const &property) {
  StepRepr_CharacterizedDefinition owner;
  owner.SetValue(definition);
  Handle(StepRepr_PropertyDefinition) const kind = new StepRepr_PropertyDefinition;
  kind->Init(string(property.name), Standard_True, string(property.description), owner);
  Handle(StepRepr_DescriptiveRepresentationItem) const item = new StepRepr_DescriptiveRepresentationItem;
  item->Init(string(property.item), string(property.text));
  Handle(StepRepr_HArray1OfRepresentationItem) const items = new StepRepr_HArray1OfRepresentationItem(1, 1);
  items->SetValue(1, item);
  Handle(StepRepr_Representation) const values = new StepRepr_Representation;
  values->Init(string(property.values), items, context);
  StepRepr_RepresentedDefinition what;
  what.SetValue(kind);
  Handle(StepRepr_PropertyDefinitionRepresentation) const link =
      new StepRepr_PropertyDefinitionRepresentation;
  link->Init(what, values);
  model->AddEntity(kind);
  model->AddEntity(item);
  model->AddEntity(values);
  model->AddEntity(link);
}

} // namespace

void set_header(Model const &model, StepHeader const &header, std::string const &name,
                std::string const &description) {
  APIHeaderSection_MakeHeader section(model);
  section.SetName(string(name));
  section.SetTimeStamp(string(header.time_stamp));
  section.SetAuthor(one_string(header.author));
  section.SetOrganization(one_string(header.organization));
  section.SetPreprocessorVersion(string(header.originating_system));
  section.SetOriginatingSystem(string(header.originating_system));
  section.SetAuthorisation(string(header.authorisation));
  section.SetDescription(one_string(header.description.empty() ? description : header.description));
  section.SetImplementationLevel(string("2;1"));
  section.Apply(model);
}

void describe_product(Model const &model, Handle(StepBasic_Product) const &product, std::string const &name,
                      std::string const &description, std::vector<Property> const &properties) {
  product->SetId(string(name));
  product->SetName(string(name));
  product->SetDescription(string(description));
  if (properties.empty())
    return;
  Handle(StepBasic_ProductDefinition) const definition = definition_of(model, product);
  Handle(StepRepr_RepresentationContext) const context = shape_of(model, definition)->ContextOfItems();
  for (Property const &property : properties)
    add_property(model, definition, context,
                 {property.name, "user defined attribute", property.name, property.name, property.value});
}

void add_material(Model const &model, Handle(StepBasic_Product) const &product, std::string const &material) {
  if (material.empty())
    return;
  Handle(StepBasic_ProductDefinition) const definition = definition_of(model, product);
  add_property(model, definition, shape_of(model, definition)->ContextOfItems(),
               {"material property", "material name", "material name", material, ""});
}

void name_uses(Model const &model, Assembly const &assembly) {
  std::map<std::string, std::size_t> item_of;
  for (std::size_t i = 0; i < assembly.items.size(); ++i)
    item_of.emplace(use_key(i), i);
  for_each<StepRepr_NextAssemblyUsageOccurrence>(model, [&](auto const &use) {
    auto const item = item_of.find(use->Name()->ToCString());
    if (item == item_of.end())
      return;
    use->SetId(string(fmt::format("{}", item->second + 1)));
    use->SetName(string(assembly.items[item->second].part.name));
  });
}

namespace {

// OpenCASCADE 7.6.3 and 7.8.1 end the schema's name with a dot that ISO 10303-21 does not have there.
std::string with_schema_name(std::string text) {
  constexpr std::string_view wrong = "_MIM_LF. {", right = "_MIM_LF {";
  auto const at = text.find(wrong);
  if (at < text.find("ENDSEC"))
    text.replace(at, wrong.size(), right);
  return text;
}

} // namespace

std::string model_text(Model const &model) {
  StepData_StepWriter writer(model);
  writer.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
  std::ostringstream stream;
  stream.imbue(std::locale::classic());
  writer.Print(stream);
  return with_schema_name(with_escapes(std::move(stream).str()));
}

} // namespace purgewright::exchange

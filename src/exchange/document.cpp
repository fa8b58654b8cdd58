#include "exchange/document.hpp"

#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepBuilderAPI_Copy.hxx>
#include <Quantity_Color.hxx>
#include <TCollection_ExtendedString.hxx>
#include <TDF_Label.hxx>
#include <TDataStd_Name.hxx>
#include <TopLoc_Location.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace purgewright::exchange {

namespace kernel = solids::kernel;

namespace {

bool same_colour(Colour const &a, Colour const &b) {
  return a.red == b.red && a.green == b.green && a.blue == b.blue;
}

void require(bool holds, std::string const &text) {
  if (!holds)
    throw std::invalid_argument(text);
}

void require_colour(AssemblyItem const &item) {
  for (double const component : {item.colour.red, item.colour.green, item.colour.blue})
    require(component >= 0.0 && component <= 1.0,
            item.part.name + ": a colour component lies outside 0 to 1");
}

void name(TDF_Label const &label, std::string const &text) {
  TDataStd_Name::Set(label, TCollection_ExtendedString(text.c_str(), Standard_True));
}

// The product keeps the part's own frame; where the solid has been moved, its uses carry the move. Two
// products must not share a shape, or the writer makes one of them.
TopoDS_Shape product_shape(Assembly const &assembly, std::size_t item, DocumentOptions const &options) {
  kernel::Solid const &solid = assembly.items[item].part.solid;
  TopoDS_Shape const own = kernel::occt(solid).Located(TopLoc_Location());
  if (options.mesh)
    return kernel::meshed_shape(kernel::Solid(own), *options.mesh);
  bool const shared =
      std::any_of(assembly.items.begin(), assembly.items.begin() + static_cast<std::ptrdiff_t>(item),
                  [&](AssemblyItem const &other) { return kernel::occt(other.part.solid).IsPartner(own); });
  return shared ? BRepBuilderAPI_Copy(own).Shape() : own;
}

Quantity_Color kernel_colour(Colour const &c) {
  return {c.red, c.green, c.blue, Quantity_TOC_sRGB};
}

} // namespace

std::string product_key(std::size_t item) {
  return fmt::format("product {}", item);
}

std::string use_key(std::size_t item) {
  return fmt::format("use {}", item);
}

std::vector<std::size_t> first_of_part(Assembly const &assembly) {
  std::vector<std::size_t> first;
  for (std::size_t i = 0; i < assembly.items.size(); ++i) {
    AssemblyItem const &item = assembly.items[i];
    std::size_t same = 0;
    while (assembly.items[same].part.name != item.part.name)
      ++same;
    AssemblyItem const &other = assembly.items[same];
    require(kernel::occt(other.part.solid).IsPartner(kernel::occt(item.part.solid)) &&
                same_colour(other.colour, item.colour),
            "two different parts are named " + item.part.name);
    first.push_back(same);
  }
  return first;
}

Handle(TDocStd_Document) document(Assembly const &assembly, DocumentOptions const &options) {
  require(!assembly.items.empty(), assembly.name + ": an assembly needs a part");
  std::vector<std::size_t> const first = first_of_part(assembly);
  Handle(TDocStd_Document) result = new TDocStd_Document("");
  Handle(XCAFDoc_ShapeTool) const shapes = XCAFDoc_DocumentTool::ShapeTool(result->Main());
  Handle(XCAFDoc_ColorTool) const colours = XCAFDoc_DocumentTool::ColorTool(result->Main());
  TDF_Label const root = shapes->NewShape();
  name(root, options.keyed_names ? assembly_key : assembly.name);
  std::vector<TDF_Label> products(assembly.items.size());
  for (std::size_t i = 0; i < assembly.items.size(); ++i) {
    AssemblyItem const &item = assembly.items[i];
    require_colour(item);
    if (first[i] == i) {
      products[i] = shapes->NewShape();
      shapes->SetShape(products[i], product_shape(assembly, i, options));
      colours->SetColor(products[i], kernel_colour(item.colour), XCAFDoc_ColorSurf);
      name(products[i], options.keyed_names ? product_key(i) : item.part.name);
    }
    TopLoc_Location const place =
        TopLoc_Location(kernel::occt(item.placement)) * kernel::occt(item.part.solid).Location();
    TDF_Label const use = shapes->AddComponent(root, products[first[i]], place);
    name(use, options.keyed_names ? use_key(i) : item.part.name);
  }
  shapes->UpdateAssemblies();
  return result;
}

} // namespace purgewright::exchange

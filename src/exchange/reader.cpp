#include "purgewright/exchange/reader.hpp"

#include "exchange/guard.hpp"
#include "exchange/step_settings.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/files/file.hpp"

#include <Quantity_Color.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_Label.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XCAFPrs_DocumentExplorer.hxx>

namespace purgewright::exchange {

namespace {

std::string name_of(TDF_Label const &label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name))
    return {};
  TCollection_ExtendedString const &text = name->Get();
  std::string utf8(static_cast<std::size_t>(text.LengthOfCString()) + 1, '\0');
  char *bytes = utf8.data();
  text.ToUTF8CString(bytes);
  utf8.pop_back();
  return utf8;
}

ReadPart part_of(XCAFPrs_DocumentNode const &node) {
  TopoDS_Shape const shape = XCAFDoc_ShapeTool::GetShape(node.RefLabel).Located(node.Location);
  ReadPart part{name_of(node.RefLabel), std::nullopt, solids::kernel::Solid(shape)};
  if (node.Style.IsSetColorSurf()) {
    Colour c{};
    node.Style.GetColorSurf().Values(c.red, c.green, c.blue, Quantity_TOC_sRGB);
    part.colour = c;
  }
  return part;
}

} // namespace

std::vector<ReadPart> read_step(std::filesystem::path const &path) {
  files::read(path); // the kernel does not say why a file will not open
  silence_kernel();
  StaticScope const settings = step_settings();
  return guarded(path.string(), "read STEP", [&] {
    STEPCAFControl_Reader reader;
    Handle(TDocStd_Document) document = new TDocStd_Document("");
    if (reader.ReadFile(path.c_str()) != IFSelect_RetDone || !reader.Transfer(document))
      throw files::FileError(path, "no STEP model can be read");
    std::vector<ReadPart> parts;
    for (XCAFPrs_DocumentExplorer at(document, XCAFPrs_DocumentExplorerFlags_OnlyLeafNodes); at.More();
         at.Next())
      parts.push_back(part_of(at.Current()));
    return parts;
  });
}

} // namespace purgewright::exchange

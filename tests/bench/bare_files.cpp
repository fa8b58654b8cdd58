#include "bare_files.hpp"

#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepBuilderAPI_Copy.hxx>
#include <BRepGProp.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <GProp_GProps.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_ProgressRange.hxx>
#include <RWGltf_CafWriter.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <STEPControl_Writer.hxx>
#include <StlAPI_Writer.hxx>
#include <TColStd_IndexedDataMapOfStringString.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopLoc_Location.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>

#include <cmath>

namespace purgewright::bench {
namespace {

namespace kernel = solids::kernel;

// As exchange::StlOptions, and as exchange/fixture_files.cpp has it for viewing.
constexpr double degree = 3.14159265358979 / 180.0;
constexpr double stl_turn = 12.0 * degree, viewing_turn = 15.0 * degree, viewing_chord = 0.1;

TopoDS_Shape meshed(const TopoDS_Shape &shape, double chord, double turn) {
  const TopoDS_Shape copy = BRepBuilderAPI_Copy(shape, Standard_True, Standard_False).Shape();
  BRepMesh_IncrementalMesh(copy, chord, Standard_False, turn);
  return copy;
}

// The chord that exchange/stl.cpp starts from.
double chord_for(const TopoDS_Shape &shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return 0.5e-3 * std::cbrt(properties.Mass());
}

void write_part(const std::filesystem::path &stem, const TopoDS_Shape &shape) {
  STEPControl_Writer step;
  step.Transfer(shape, STEPControl_AsIs);
  step.Write((stem.string() + ".step").c_str());
  StlAPI_Writer stl;
  stl.ASCIIMode() = Standard_False;
  stl.Write(meshed(shape, chord_for(shape), stl_turn), (stem.string() + ".stl").c_str());
}

Handle(TDocStd_Document) document(const solids::Assembly &assembly, bool with_mesh) {
  Handle(TDocStd_Document) const result = new TDocStd_Document("");
  const auto shapes = XCAFDoc_DocumentTool::ShapeTool(result->Main());
  const TDF_Label root = shapes->NewShape();
  for (const auto &part : assembly.parts) {
    const TDF_Label product = shapes->NewShape();
    const TopoDS_Shape &shape = kernel::occt(part.solid);
    shapes->SetShape(product, with_mesh ? meshed(shape, viewing_chord, viewing_turn) : shape);
    TDataStd_Name::Set(product, part.name.c_str());
    shapes->AddComponent(root, product, TopLoc_Location(kernel::occt(part.place)));
    for (const auto &place : part.more_places) {
      shapes->AddComponent(root, product, TopLoc_Location(kernel::occt(place)));
    }
  }
  shapes->UpdateAssemblies();
  return result;
}

} // namespace

void write_bare_files(const std::filesystem::path &folder, const solids::Assembly &assembly) {
  Message::DefaultMessenger()->ChangePrinters().Clear();
  for (const auto &part : assembly.parts) {
    if (part.made()) {
      write_part(folder / part.name, kernel::occt(part.solid));
    }
  }
  STEPCAFControl_Writer step;
  step.Transfer(document(assembly, false));
  step.Write((folder / "assembly.step").c_str());
  RWGltf_CafWriter glb((folder / "assembly.glb").c_str(), Standard_True);
  glb.Perform(document(assembly, true), TColStd_IndexedDataMapOfStringString(), Message_ProgressRange());
}

} // namespace purgewright::bench

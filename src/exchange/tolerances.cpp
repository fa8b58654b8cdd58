#include "exchange/tolerances.hpp"

#include "exchange/document.hpp"

#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <TCollection_ExtendedString.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <XCAFDimTolObjects_DatumObject.hxx>
#include <XCAFDimTolObjects_DimensionObject.hxx>
#include <XCAFDimTolObjects_GeomToleranceObject.hxx>
#include <XCAFDoc_Datum.hxx>
#include <XCAFDoc_DimTolTool.hxx>
#include <XCAFDoc_Dimension.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_GeomTolerance.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <gp_Cylinder.hxx>

#include <cctype>
#include <map>

namespace purgewright::exchange {

namespace kernel = solids::kernel;

namespace {

struct RoundFace {
  TDF_Label label;
  double diameter = 0.0;
};

class Tolerances {
 public:
  Tolerances(Part const &part, TDF_Label const &main)
      : part_(part), shape_(kernel::occt(part.solid)), shapes_(XCAFDoc_DocumentTool::ShapeTool(main)),
        tool_(XCAFDoc_DocumentTool::DimTolTool(main)) {
    product_ = shapes_->AddShape(shape_, Standard_False);
    TDataStd_Name::Set(product_, TCollection_ExtendedString(product_key(0).c_str(), Standard_True));
  }
  void add(Fit const &fit);
  void add(Runout const &runout);

 private:
  RoundFace face_at(fixture::Position const &point) const;
  TDF_Label datum(Runout const &runout);

  Part const &part_;
  TopoDS_Shape shape_;
  Handle(XCAFDoc_ShapeTool) shapes_;
  Handle(XCAFDoc_DimTolTool) tool_;
  TDF_Label product_;
  std::map<std::string, TDF_Label> datums_;
};

RoundFace Tolerances::face_at(fixture::Position const &p) const {
  constexpr double on_it = 1e-6; // mm
  auto const mm = [](units::Length l) { return units::to_millimetres(l); };
  TopoDS_Shape const vertex = BRepBuilderAPI_MakeVertex(gp_Pnt(mm(p.x), mm(p.y), mm(p.z))).Shape();
  for (TopExp_Explorer face(shape_, TopAbs_FACE); face.More(); face.Next()) {
    BRepAdaptor_Surface const surface(TopoDS::Face(face.Current()));
    if (surface.GetType() != GeomAbs_Cylinder ||
        BRepExtrema_DistShapeShape(vertex, face.Current()).Value() > on_it)
      continue;
    RoundFace found{{}, 2.0 * surface.Cylinder().Radius()};
    shapes_->AddSubShape(product_, face.Current(), found.label);
    return found;
  }
  throw kernel::SolidError(part_.name, "tolerance", "", "no round face where one is stated");
}

// The kernel's letters and grades are enumerations in the standard's order.
XCAFDimTolObjects_DimensionFormVariance variance_of(char letter) {
  switch (std::toupper(static_cast<unsigned char>(letter))) {
  case 'F':
    return XCAFDimTolObjects_DimensionFormVariance_F;
  case 'G':
    return XCAFDimTolObjects_DimensionFormVariance_G;
  default:
    return XCAFDimTolObjects_DimensionFormVariance_H;
  }
}

void Tolerances::add(Fit const &fit) {
  RoundFace const face = face_at(fit.on);
  TDF_Label const label = tool_->AddDimension();
  tool_->SetDimension(face.label, label);
  Handle(XCAFDoc_Dimension) attribute;
  label.FindAttribute(XCAFDoc_Dimension::GetID(), attribute);
  Handle(XCAFDimTolObjects_DimensionObject) const size = new XCAFDimTolObjects_DimensionObject;
  size->SetType(XCAFDimTolObjects_DimensionType_Size_Diameter);
  size->SetValue(face.diameter);
  bool const hole = std::isupper(static_cast<unsigned char>(fit.letter)) != 0;
  size->SetClassOfTolerance(
      hole, variance_of(fit.letter),
      static_cast<XCAFDimTolObjects_DimensionGrade>(XCAFDimTolObjects_DimensionGrade_IT1 + fit.grade - 1));
  size->SetSemanticName(new TCollection_HAsciiString(fit.name.c_str()));
  attribute->SetObject(size);
}

TDF_Label Tolerances::datum(Runout const &runout) {
  if (auto const known = datums_.find(runout.datum); known != datums_.end())
    return known->second;
  TDF_Label const label = tool_->AddDatum();
  Handle(XCAFDoc_Datum) attribute;
  label.FindAttribute(XCAFDoc_Datum::GetID(), attribute);
  Handle(XCAFDimTolObjects_DatumObject) const object = new XCAFDimTolObjects_DatumObject;
  object->SetName(new TCollection_HAsciiString(runout.datum.c_str()));
  object->SetPosition(1);
  attribute->SetObject(object);
  TDF_LabelSequence faces;
  faces.Append(face_at(runout.to).label);
  tool_->SetDatum(faces, label);
  return datums_.emplace(runout.datum, label).first->second;
}

void Tolerances::add(Runout const &runout) {
  RoundFace const face = face_at(runout.on);
  TDF_Label const label = tool_->AddGeomTolerance();
  tool_->SetGeomTolerance(face.label, label);
  Handle(XCAFDoc_GeomTolerance) attribute;
  label.FindAttribute(XCAFDoc_GeomTolerance::GetID(), attribute);
  Handle(XCAFDimTolObjects_GeomToleranceObject) const object = new XCAFDimTolObjects_GeomToleranceObject;
  object->SetType(XCAFDimTolObjects_GeomToleranceType_CircularRunout);
  object->SetValue(units::to_millimetres(runout.tolerance));
  attribute->SetObject(object);
  tool_->SetDatumToGeomTol(datum(runout), label);
}

} // namespace

Handle(TDocStd_Document) document_with_tolerances(Part const &part) {
  Handle(TDocStd_Document) result = new TDocStd_Document("");
  Tolerances tolerances(part, result->Main());
  for (Fit const &fit : part.fits)
    tolerances.add(fit);
  for (Runout const &runout : part.runouts)
    tolerances.add(runout);
  return result;
}

} // namespace purgewright::exchange

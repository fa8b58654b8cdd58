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
#include <stdexcept>

namespace purgewright::exchange {

namespace kernel = solids::kernel;

namespace {

using Label = TDF_Label;

double mm(units::Length l) {
  return units::to_millimetres(l);
}

struct ToleranceFace {
  Label label;
  double diameter = 0.0; // 0 of a plane one
};

class Writer {
 public:
  Writer(Part const &part, Label const &main)
      : part_(part), shape_(kernel::occt(part.solid)), shapes_(XCAFDoc_DocumentTool::ShapeTool(main)),
        tool_(XCAFDoc_DocumentTool::DimTolTool(main)) {
    product_ = shapes_->AddShape(shape_, Standard_False);
    TDataStd_Name::Set(product_, TCollection_ExtendedString(product_key(0).c_str(), Standard_True));
  }
  void add(Fit const &fit);
  void add(SizeTolerance const &size);
  void add(GeometricTolerance const &geometric);
  void add(Distance const &distance);

 private:
  ToleranceFace face_at(fixture::Position const &point) const;
  ToleranceFace round_face_at(fixture::Position const &point) const;
  Handle(XCAFDoc_Dimension) dimension_of(Label const &face);
  Label datum(GeometricTolerance const &geometric);

  Part const &part_;
  TopoDS_Shape shape_;
  Handle(XCAFDoc_ShapeTool) shapes_;
  Handle(XCAFDoc_DimTolTool) tool_;
  Label product_;
  std::map<std::string, Label> datums_;
};

// A point that lies on two faces is no point of either.
ToleranceFace Writer::face_at(fixture::Position const &p) const {
  constexpr double on_it = 1e-6; // mm
  TopoDS_Shape const vertex = BRepBuilderAPI_MakeVertex(gp_Pnt(mm(p.x), mm(p.y), mm(p.z))).Shape();
  for (TopExp_Explorer face(shape_, TopAbs_FACE); face.More(); face.Next()) {
    BRepAdaptor_Surface const surface(TopoDS::Face(face.Current()));
    bool const round = surface.GetType() == GeomAbs_Cylinder;
    if ((!round && surface.GetType() != GeomAbs_Plane) ||
        BRepExtrema_DistShapeShape(vertex, face.Current()).Value() > on_it)
      continue;
    ToleranceFace found{{}, round ? 2.0 * surface.Cylinder().Radius() : 0.0};
    shapes_->AddSubShape(product_, face.Current(), found.label);
    return found;
  }
  throw kernel::SolidError(part_.name, "tolerance", "", "no plane or round face where one is stated");
}

ToleranceFace Writer::round_face_at(fixture::Position const &point) const {
  ToleranceFace const found = face_at(point);
  if (found.diameter <= 0.0)
    throw kernel::SolidError(part_.name, "tolerance", "", "no round face where one is stated");
  return found;
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

Handle(XCAFDimTolObjects_DimensionObject)
    named_dimension(std::string const &name, XCAFDimTolObjects_DimensionType type, double value) {
  Handle(XCAFDimTolObjects_DimensionObject) const object = new XCAFDimTolObjects_DimensionObject;
  object->SetType(type);
  object->SetValue(value);
  object->SetSemanticName(new TCollection_HAsciiString(name.c_str()));
  return object;
}

void set_plus_minus(Handle(XCAFDimTolObjects_DimensionObject) const &object, units::Length by) {
  object->SetUpperTolValue(mm(by));
  object->SetLowerTolValue(mm(by));
}

Handle(XCAFDoc_Dimension) Writer::dimension_of(Label const &face) {
  Label const label = tool_->AddDimension();
  tool_->SetDimension(face, label);
  Handle(XCAFDoc_Dimension) attribute;
  label.FindAttribute(XCAFDoc_Dimension::GetID(), attribute);
  return attribute;
}

void Writer::add(Fit const &fit) {
  ToleranceFace const face = round_face_at(fit.on);
  auto const size = named_dimension(fit.name, XCAFDimTolObjects_DimensionType_Size_Diameter, face.diameter);
  bool const hole = std::isupper(static_cast<unsigned char>(fit.letter)) != 0;
  size->SetClassOfTolerance(
      hole, variance_of(fit.letter),
      static_cast<XCAFDimTolObjects_DimensionGrade>(XCAFDimTolObjects_DimensionGrade_IT1 + fit.grade - 1));
  dimension_of(face.label)->SetObject(size);
}

void Writer::add(SizeTolerance const &wanted) {
  ToleranceFace const face = round_face_at(wanted.on);
  auto const size =
      named_dimension(wanted.name, XCAFDimTolObjects_DimensionType_Size_Diameter, face.diameter);
  set_plus_minus(size, wanted.plus_minus);
  dimension_of(face.label)->SetObject(size);
}

void Writer::add(Distance const &distance) {
  TDF_LabelSequence from, to;
  from.Append(face_at(distance.from).label);
  to.Append(face_at(distance.to).label);
  Label const label = tool_->AddDimension();
  tool_->SetDimension(from, to, label);
  auto const size = named_dimension(distance.name, XCAFDimTolObjects_DimensionType_Location_LinearDistance,
                                    mm(distance.nominal));
  set_plus_minus(size, distance.plus_minus);
  Handle(XCAFDoc_Dimension) attribute;
  label.FindAttribute(XCAFDoc_Dimension::GetID(), attribute);
  attribute->SetObject(size);
}

Label Writer::datum(GeometricTolerance const &geometric) {
  if (auto const known = datums_.find(geometric.datum); known != datums_.end())
    return known->second;
  Label const label = tool_->AddDatum();
  Handle(XCAFDoc_Datum) attribute;
  label.FindAttribute(XCAFDoc_Datum::GetID(), attribute);
  Handle(XCAFDimTolObjects_DatumObject) const object = new XCAFDimTolObjects_DatumObject;
  object->SetName(new TCollection_HAsciiString(geometric.datum.c_str()));
  object->SetPosition(1);
  attribute->SetObject(object);
  TDF_LabelSequence faces;
  for (fixture::Position const &point : geometric.to)
    faces.Append(face_at(point).label);
  tool_->SetDatum(faces, label);
  return datums_.emplace(geometric.datum, label).first->second;
}

XCAFDimTolObjects_GeomToleranceType type_of(GeometricTolerance::Kind kind) {
  switch (kind) {
  case GeometricTolerance::Kind::runout:
    return XCAFDimTolObjects_GeomToleranceType_CircularRunout;
  case GeometricTolerance::Kind::position:
    return XCAFDimTolObjects_GeomToleranceType_Position;
  case GeometricTolerance::Kind::squareness:
    return XCAFDimTolObjects_GeomToleranceType_Perpendicularity;
  }
  throw std::logic_error("no kind of tolerance");
}

void Writer::add(GeometricTolerance const &geometric) {
  Label const label = tool_->AddGeomTolerance();
  tool_->SetGeomTolerance(round_face_at(geometric.on).label, label);
  Handle(XCAFDoc_GeomTolerance) attribute;
  label.FindAttribute(XCAFDoc_GeomTolerance::GetID(), attribute);
  Handle(XCAFDimTolObjects_GeomToleranceObject) const object = new XCAFDimTolObjects_GeomToleranceObject;
  object->SetType(type_of(geometric.kind));
  object->SetValue(mm(geometric.tolerance));
  if (geometric.round_zone)
    object->SetTypeOfValue(XCAFDimTolObjects_GeomToleranceTypeValue_Diameter);
  attribute->SetObject(object);
  tool_->SetDatumToGeomTol(datum(geometric), label);
}

} // namespace

Handle(TDocStd_Document) document_with_tolerances(Part const &part) {
  Handle(TDocStd_Document) result = new TDocStd_Document("");
  Writer writer(part, result->Main());
  for (Fit const &fit : part.tolerances.fits)
    writer.add(fit);
  for (SizeTolerance const &size : part.tolerances.sizes)
    writer.add(size);
  for (Distance const &distance : part.tolerances.distances)
    writer.add(distance);
  for (GeometricTolerance const &geometric : part.tolerances.geometric)
    writer.add(geometric);
  return result;
}

} // namespace purgewright::exchange

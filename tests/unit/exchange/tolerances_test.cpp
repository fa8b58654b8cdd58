// Semantic tolerances: read back by the kernel's own AP242 reader, and found as text by name.
#include "exchange_test.hpp"

#include "exchange/step_settings.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"

#include <BRepAdaptor_Surface.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDocStd_Document.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <XCAFDimTolObjects_DatumObject.hxx>
#include <XCAFDimTolObjects_DimensionObject.hxx>
#include <XCAFDimTolObjects_GeomToleranceObject.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_Datum.hxx>
#include <XCAFDoc_DimTolTool.hxx>
#include <XCAFDoc_Dimension.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_GeomTolerance.hxx>
#include <XCAFDoc_MaterialTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <catch2/catch.hpp>
#include <gp_Cylinder.hxx>

using namespace purgewright;
using namespace purgewright::exchange;
using Catch::Contains;
using test::length;
using test::point;

namespace {

// A stepped pin: radius 10 up to x = 8, radius 6 beyond.
Part stepped() {
  const auto turned = solids::kernel::revolve({.axis = solids::kernel::along_x}, {{length(0), length(0)},
                                                                                  {length(0), length(10)},
                                                                                  {length(8), length(10)},
                                                                                  {length(8), length(6)},
                                                                                  {length(20), length(6)},
                                                                                  {length(20), length(0)}});
  Part part{.name = "pin", .solid = turned};
  const fixture::Position thick{length(4), {}, length(10)}, thin{length(15), {}, length(6)};
  part.tolerances.fits = {{"thick", thick, 'h', 7}, {"thin", thin, 'g', 6}};
  part.tolerances.geometric = {{.on = thin, .to = {thick}, .datum = "A", .tolerance = length(0.025)}};
  return part;
}

struct ReadBack {
  Handle(TDocStd_Document) document = new TDocStd_Document("");
  Handle(XCAFDoc_DimTolTool) tool;
  explicit ReadBack(const std::filesystem::path &file) {
    silence_kernel();
    const StaticScope settings = step_settings("AP242DIS");
    STEPCAFControl_Reader reader;
    reader.SetGDTMode(Standard_True);
    REQUIRE(reader.ReadFile(file.c_str()) == IFSelect_RetDone);
    REQUIRE(reader.Transfer(document));
    tool = XCAFDoc_DocumentTool::DimTolTool(document->Main());
  }
  double radius_under(const TDF_Label &label) const {
    TDF_LabelSequence first, second;
    REQUIRE(tool->GetRefShapeLabel(label, first, second));
    REQUIRE(first.Length() == 1);
    return BRepAdaptor_Surface(TopoDS::Face(XCAFDoc_ShapeTool::GetShape(first(1)))).Cylinder().Radius();
  }
};

} // namespace

TEST_CASE("fits and runout come back from AP242 on the faces that they were put on", "[unit]") {
  const test::TemporaryFolder folder;
  write_step(folder / "pin.step", stepped(), test::header());
  const ReadBack read(folder / "pin.step");
  TDF_LabelSequence sizes, tolerances, datums;
  read.tool->GetDimensionLabels(sizes);
  read.tool->GetGeomToleranceLabels(tolerances);
  read.tool->GetDatumLabels(datums);
  REQUIRE(sizes.Length() == 2);
  const struct {
    double radius;
    XCAFDimTolObjects_DimensionFormVariance letter;
    XCAFDimTolObjects_DimensionGrade grade;
  } wanted[] = {{10.0, XCAFDimTolObjects_DimensionFormVariance_H, XCAFDimTolObjects_DimensionGrade_IT7},
                {6.0, XCAFDimTolObjects_DimensionFormVariance_G, XCAFDimTolObjects_DimensionGrade_IT6}};
  for (int i = 1; i <= 2; ++i) {
    Handle(XCAFDoc_Dimension) attribute;
    REQUIRE(sizes(i).FindAttribute(XCAFDoc_Dimension::GetID(), attribute));
    const auto size = attribute->GetObject();
    Standard_Boolean hole = Standard_True;
    XCAFDimTolObjects_DimensionFormVariance letter;
    XCAFDimTolObjects_DimensionGrade grade;
    REQUIRE(size->GetClassOfTolerance(hole, letter, grade));
    CHECK_FALSE(hole);
    CHECK(letter == wanted[i - 1].letter);
    CHECK(grade == wanted[i - 1].grade);
    CHECK(size->GetType() == XCAFDimTolObjects_DimensionType_Size_Diameter);
    CHECK(size->GetValue() == Approx(2.0 * wanted[i - 1].radius));
    CHECK(read.radius_under(sizes(i)) == Approx(wanted[i - 1].radius));
  }
  REQUIRE(tolerances.Length() == 1);
  Handle(XCAFDoc_GeomTolerance) runout;
  REQUIRE(tolerances(1).FindAttribute(XCAFDoc_GeomTolerance::GetID(), runout));
  CHECK(runout->GetObject()->GetType() == XCAFDimTolObjects_GeomToleranceType_CircularRunout);
  CHECK(runout->GetObject()->GetValue() == Approx(0.025));
  CHECK(read.radius_under(tolerances(1)) == Approx(6.0));
  REQUIRE(datums.Length() == 1);
  Handle(XCAFDoc_Datum) datum;
  REQUIRE(datums(1).FindAttribute(XCAFDoc_Datum::GetID(), datum));
  CHECK(std::string(datum->GetObject()->GetName()->ToCString()) == "A");
}

TEST_CASE("a toleranced part is AP242, named as its part, the same bytes each time", "[unit]") {
  const std::string text = test::unbroken(step_text(stepped(), test::header()));
  CHECK_THAT(text, Contains("AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF {")); // no dot, ISO 10303-21
  CHECK_THAT(text, Contains("PRODUCT('pin','pin'"));
  CHECK_THAT(text,
             Contains("LIMITS_AND_FITS('h','shaft','7'") && Contains("LIMITS_AND_FITS('g','shaft','6'"));
  CHECK(test::unbroken(step_text(stepped(), test::header())) == text);
}

TEST_CASE("a tolerance where the part has no round face is an error", "[unit]") {
  Part part = stepped();
  part.tolerances.fits[0].on = {length(4), {}, length(9)};
  CHECK_THROWS_AS(step_text(part, test::header()), solids::kernel::SolidError);
}

namespace {

// A plate 40 x 30 x 8 with two holes of radius 2 at y = -10 and 10, one of radius 3 at x = 30 between them.
Part plate() {
  using namespace solids::kernel;
  const auto hole = [](double x, double y, double radius) {
    return through_cutter({.origin = point(x, y, 0), .axis = along_z}, length(2.0 * radius), length(8));
  };
  Part part{.name = "plate",
            .material = "aluminium 6082",
            .colour = Colour{0.25, 0.5, 0.125},
            .solid = cut(box(point(0, -15, 0), point(40, 15, 8)),
                         {hole(10, -10, 2), hole(10, 10, 2), hole(30, 0, 3)})};
  const fixture::Position first{length(12), length(-10), length(4)},
      second{length(12), length(10), length(4)}, third{length(33), {}, length(4)};
  part.tolerances.sizes = {{"third", third, length(0.1)}};
  part.tolerances.distances = {{"pitch", first, second, length(20), length(0.03)},
                               {"from the edge", {{}, {}, length(4)}, third, length(30), length(0.05)}};
  part.tolerances.geometric = {{.kind = GeometricTolerance::Kind::position,
                                .on = third,
                                .to = {first, second},
                                .datum = "B",
                                .tolerance = length(0.06)},
                               {.kind = GeometricTolerance::Kind::squareness,
                                .on = third,
                                .to = {{length(1), length(1), length(8)}},
                                .datum = "A",
                                .tolerance = length(0.05),
                                .round_zone = true}};
  return part;
}

} // namespace

TEST_CASE("sizes, distances, place and squareness come back from AP242 with limits and datums", "[unit]") {
  const test::TemporaryFolder folder;
  write_step(folder / "plate.step", plate(), test::header());
  const ReadBack read(folder / "plate.step");
  TDF_LabelSequence sizes, tolerances, datums;
  read.tool->GetDimensionLabels(sizes);
  read.tool->GetGeomToleranceLabels(tolerances);
  read.tool->GetDatumLabels(datums);
  REQUIRE(sizes.Length() == 3);
  const struct { double value, by; } wanted[] = {{6.0, 0.1}, {20.0, 0.03}, {30.0, 0.05}};
  for (int i = 1; i <= 3; ++i) {
    Handle(XCAFDoc_Dimension) attribute;
    REQUIRE(sizes(i).FindAttribute(XCAFDoc_Dimension::GetID(), attribute));
    const auto size = attribute->GetObject();
    CHECK(size->GetType() == (i == 1 ? XCAFDimTolObjects_DimensionType_Size_Diameter
                                     : XCAFDimTolObjects_DimensionType_Location_LinearDistance));
    CHECK(size->GetValue() == Approx(wanted[i - 1].value));
    REQUIRE(size->IsDimWithPlusMinusTolerance());
    CHECK(std::abs(size->GetUpperTolValue()) == Approx(wanted[i - 1].by));
    CHECK(std::abs(size->GetLowerTolValue()) == Approx(wanted[i - 1].by));
  }
  CHECK(datums.Length() == 2);
  REQUIRE(tolerances.Length() == 2);
  for (int i = 1; i <= 2; ++i) {
    Handle(XCAFDoc_GeomTolerance) attribute;
    REQUIRE(tolerances(i).FindAttribute(XCAFDoc_GeomTolerance::GetID(), attribute));
    const auto object = attribute->GetObject();
    CHECK(object->GetType() == (i == 1 ? XCAFDimTolObjects_GeomToleranceType_Position
                                       : XCAFDimTolObjects_GeomToleranceType_Perpendicularity));
    CHECK(object->GetValue() == Approx(i == 1 ? 0.06 : 0.05));
    CHECK(read.radius_under(tolerances(i)) == Approx(3.0));
  }
}

// ISO 10303-45 material property, as the implementor forum's practice names it.
TEST_CASE("material and colour of a part alone come back, with tolerances and without", "[unit]") {
  Part part = plate();
  for (const bool toleranced : {true, false}) {
    CAPTURE(toleranced);
    if (!toleranced)
      part.tolerances = {};
    const test::TemporaryFolder folder;
    write_step(folder / "plate.step", part, test::header());
    silence_kernel();
    const StaticScope settings = step_settings("AP242DIS");
    STEPCAFControl_Reader reader;
    reader.SetMatMode(Standard_True);
    reader.SetColorMode(Standard_True);
    REQUIRE(reader.ReadFile((folder / "plate.step").c_str()) == IFSelect_RetDone);
    Handle(TDocStd_Document) document = new TDocStd_Document("");
    REQUIRE(reader.Transfer(document));
    TDF_LabelSequence materials, colours;
    const auto material_tool = XCAFDoc_DocumentTool::MaterialTool(document->Main());
    material_tool->GetMaterialLabels(materials);
    REQUIRE(materials.Length() == 1);
    Handle(TCollection_HAsciiString) name, description, density_name, density_type;
    double density = 0.0;
    REQUIRE(material_tool->GetMaterial(materials(1), name, description, density, density_name, density_type));
    CHECK(std::string(name->ToCString()) == part.material);
    XCAFDoc_DocumentTool::ColorTool(document->Main())->GetColors(colours);
    REQUIRE(colours.Length() == 1);
    const std::string text = test::unbroken(step_text(part, test::header()));
    CHECK_THAT(text, Contains("COLOUR_RGB('',0.25,0.5,0.125)"));
    CHECK(test::unbroken(step_text(part, test::header())) == text);
  }
}

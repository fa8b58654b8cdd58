#include "purgewright/exchange/step.hpp"

#include "exchange_test.hpp"
#include "purgewright/exchange/reader.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/solids/kernel/placed.hpp"

#include <catch2/catch.hpp>

#include <memory>

using namespace purgewright;
using namespace purgewright::exchange;
using namespace purgewright::solids::kernel;
using Catch::Contains;
using test::length;
using test::off;
using test::point;

namespace {

void check_same_solid(Solid const &read, Solid const &written) {
  CHECK(is_one_closed_solid(read));
  CHECK(off(volume(read).value(), volume(written).value()) < test::volume_accuracy);
  CHECK(off(surface_area(read).value(), surface_area(written).value()) < test::volume_accuracy);
  CHECK(face_count(read) == face_count(written));
  Bounds const expected = bounding_box(written);
  Bounds const found = bounding_box(read);
  auto const mm = [](units::Length l) { return units::to_millimetres(l); };
  CHECK(off(found.least, mm(expected.least.x), mm(expected.least.y), mm(expected.least.z)) < 1e-6);
  CHECK(off(found.greatest, mm(expected.greatest.x), mm(expected.greatest.y), mm(expected.greatest.z)) <
        1e-6);
}

} // namespace

TEST_CASE("a part comes back from STEP with name, volume, area and box", "[unit]") {
  test::TemporaryFolder const folder;
  std::vector<Part> const parts{
      test::block_part(),
      test::pin_part(),
      {.name = "dome", .solid = sphere_segment({.axis = along_x}, length(25.0), length(6.0))},
      {.name = "turned",
       .solid = placed(test::drilled_block(), {point(1, 2, 3), along_y, units::degrees(30)})},
      {.name = "inch", .solid = box(point(0, 0, 0), {units::inches(1), units::inches(2), units::inches(3)})}};
  for (Part const &part : parts) {
    CAPTURE(part.name);
    write_step(folder / "part.step", part, test::header());
    std::vector<ReadPart> const read = read_step(folder / "part.step");
    REQUIRE(read.size() == 1);
    CHECK(read[0].name == part.name);
    check_same_solid(read[0].solid, part.solid);
  }
}

TEST_CASE("the header is the caller's in every field", "[unit]") {
  std::string const text = test::unbroken(step_text(test::block_part(), test::header()));
  CHECK_THAT(text, Contains("FILE_DESCRIPTION(('milled; thread, inlet: G 1/8'),'2;1');"));
  CHECK_THAT(text, Contains("FILE_NAME('chamber-body','2026-01-31T00:00:00',('A. Turner'),('Tool room'),"
                            "'purgewright 0.1.0','purgewright 0.1.0','none');"));
  CHECK_THAT(text, Contains("FILE_SCHEMA(('AUTOMOTIVE_DESIGN"));
  CHECK_THAT(text, Contains("SI_UNIT(.MILLI.,.METRE.)"));
  StepHeader described = test::header();
  described.description = "design of a job";
  CHECK_THAT(test::unbroken(step_text(test::block_part(), described)),
             Contains("FILE_DESCRIPTION(('design of a job'),"));
}

TEST_CASE("description and properties travel with the product", "[unit]") {
  std::string const text = test::unbroken(step_text(test::block_part(), test::header()));
  CHECK_THAT(text, Contains("PRODUCT('chamber-body','chamber-body','milled; thread, inlet: G 1/8',"));
  CHECK_THAT(text, Contains("PROPERTY_DEFINITION('thread, inlet','user defined attribute',#"));
  CHECK_THAT(text, Contains("DESCRIPTIVE_REPRESENTATION_ITEM('thread, inlet','G 1/8, 8.8 drill')"));
  CHECK_THAT(text, Contains("'M3 \\X2\\00D7\\X0\\ 0.5'"));
}

TEST_CASE("texts are encoded as STEP strings", "[unit]") {
  Part part = test::pin_part();
  part.description = "it's 5 \xC2\xB5m \\ \xF0\x9F\x94\xA7"; // micro sign, and a sign beyond 16 bits
  CHECK_THAT(test::unbroken(step_text(part, test::header())),
             Contains("'it''s 5 \\X2\\00B5\\X0\\m \\\\ \\X4\\0001F527\\X0\\'"));
  part.description = "two\nlines";
  CHECK_THROWS_AS(step_text(part, test::header()), std::invalid_argument);
  part.description = "\xC3"; // cut short
  CHECK_THROWS_AS(step_text(part, test::header()), std::invalid_argument);
  part.description = "\xC0\xAF"; // longer than need be
  CHECK_THROWS_AS(step_text(part, test::header()), std::invalid_argument);
}

TEST_CASE("a name beyond ASCII comes back", "[unit]") {
  test::TemporaryFolder const folder;
  Part part = test::pin_part();
  part.name = "g\xC3\xA2te 5 \xC2\xB5m";
  write_step(folder / "part.step", part, test::header());
  CHECK(read_step(folder / "part.step").at(0).name == part.name);
}

TEST_CASE("the same part gives the same bytes at each write", "[unit]") {
  std::string const first = step_text(test::block_part(), test::header());
  std::vector<std::unique_ptr<char[]>> clutter; // moves later shapes to other addresses
  for (std::size_t i = 1; i < 5; ++i) {
    clutter.push_back(std::make_unique<char[]>(100000 * i));
    step_text(test::pin_part(), test::header());
    CHECK(step_text(test::block_part(), test::header()) == first);
  }
}

TEST_CASE("a file that cannot be written says why", "[unit]") {
  test::TemporaryFolder const folder;
  try {
    write_step(folder / "missing" / "part.step", test::pin_part(), test::header());
    FAIL("no error");
  } catch (files::FileError const &error) {
    CHECK(error.path == folder / "missing" / "part.step");
    CHECK_THAT(error.reason, Contains("no such file"));
  }
  CHECK_THROWS_AS(write_step("/dev/full", test::pin_part(), test::header()), files::FileError);
}

TEST_CASE("a file that is no STEP says so", "[unit]") {
  test::TemporaryFolder const folder;
  CHECK_THROWS_AS(read_step(folder / "absent.step"), files::FileError);
  std::ofstream(folder / "other.step") << "not a STEP file\n";
  CHECK_THROWS_AS(read_step(folder / "other.step"), files::FileError);
}

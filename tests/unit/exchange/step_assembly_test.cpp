#include "exchange_test.hpp"
#include "purgewright/exchange/reader.hpp"
#include "purgewright/exchange/step.hpp"
#include "purgewright/solids/kernel/placed.hpp"

#include <catch2/catch.hpp>

#include <memory>

using namespace purgewright;
using namespace purgewright::exchange;
using namespace purgewright::solids::kernel;
using Catch::Contains;
using test::off;
using test::point;

TEST_CASE("an assembly comes back with names, colours and places", "[unit]") {
  test::TemporaryFolder const folder;
  Assembly const assembly = test::small_assembly();
  write_step(folder / "assembly.step", assembly, test::header());
  std::vector<ReadPart> const read = read_step(folder / "assembly.step");
  REQUIRE(read.size() == assembly.items.size());
  for (std::size_t i = 0; i < read.size(); ++i) {
    AssemblyItem const &item = assembly.items[i];
    CAPTURE(i);
    CHECK(read[i].name == item.part.name);
    REQUIRE(read[i].colour);
    CHECK(read[i].colour->red == Approx(item.colour.red).epsilon(1e-5));
    CHECK(read[i].colour->green == Approx(item.colour.green).epsilon(1e-5));
    CHECK(read[i].colour->blue == Approx(item.colour.blue).epsilon(1e-5));
    Point const c = centroid(placed(item.part.solid, item.placement));
    CHECK(off(centroid(read[i].solid), units::to_millimetres(c.x), units::to_millimetres(c.y),
              units::to_millimetres(c.z)) < 1e-6);
    CHECK(off(volume(read[i].solid).value(), volume(item.part.solid).value()) < test::volume_accuracy);
  }
  CHECK(off(centroid(read[2].solid), 40.0, 10.0, 6.0) < 1e-6); // the pin's middle, worked by hand
}

TEST_CASE("parts of one name are one product used twice", "[unit]") {
  std::string const text = test::unbroken(step_text(test::small_assembly(), test::header()));
  auto const count = [&](std::string const &what) {
    int n = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
      ++n;
    return n;
  };
  CHECK(count("PRODUCT('backing-pin','backing-pin',") == 1);
  CHECK(count("NEXT_ASSEMBLY_USAGE_OCCURRENCE(") == 3);
  CHECK_THAT(text, Contains("NEXT_ASSEMBLY_USAGE_OCCURRENCE('1','chamber-body',"));
  CHECK_THAT(text, Contains("NEXT_ASSEMBLY_USAGE_OCCURRENCE('3','backing-pin',"));
  CHECK_THAT(text, Contains("COLOUR_RGB('',0.25,0.5,0.125)"));
  CHECK_THAT(text, Contains("DESCRIPTIVE_REPRESENTATION_ITEM('thread, inlet','G 1/8, 8.8 drill')"));
}

TEST_CASE("a solid that has been moved keeps its place, and may share its shape with another part",
          "[unit]") {
  test::TemporaryFolder const folder;
  Part const pin = test::pin_part();
  Part const moved{.name = "moved",
                   .solid = placed(pin.solid, {point(0, 0, 20), along_y, units::degrees(90)})};
  Assembly const assembly{.name = "two",
                          .items = {{pin, {1, 0, 0}, {}}, {moved, {0, 1, 0}, {point(1, 0, 0)}}}};
  write_step(folder / "two.step", assembly, test::header());
  std::vector<ReadPart> const read = read_step(folder / "two.step");
  REQUIRE(read.size() == 2);
  CHECK(read[1].name == "moved");
  CHECK(off(centroid(read[0].solid), 5.0, 0.0, 0.0) < 1e-6);
  CHECK(off(centroid(read[1].solid), 1.0, 0.0, 15.0) < 1e-6);
}

TEST_CASE("the same assembly gives the same bytes at each write", "[unit]") {
  std::string const first = step_text(test::small_assembly(), test::header());
  std::vector<std::unique_ptr<char[]>> clutter; // moves later shapes to other addresses
  for (std::size_t i = 1; i < 9; ++i) {
    clutter.push_back(std::make_unique<char[]>(50000 * i));
    CHECK(step_text(test::small_assembly(), test::header()) == first);
  }
}

TEST_CASE("assemblies that cannot be are refused", "[unit]") {
  Assembly empty{.name = "empty", .items = {}};
  CHECK_THROWS_AS(step_text(empty, test::header()), std::invalid_argument);
  Assembly loud = test::small_assembly();
  loud.items[0].colour.green = 1.5;
  CHECK_THROWS_AS(step_text(loud, test::header()), std::invalid_argument);
  Assembly confused = test::small_assembly();
  confused.items[0].part.name = "backing-pin";
  CHECK_THROWS_AS(step_text(confused, test::header()), std::invalid_argument);
}

#include "purgewright/exchange/glb.hpp"

#include "exchange_test.hpp"
#include "purgewright/files/file.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <cstdint>
#include <cstring>

using namespace purgewright;
using namespace purgewright::exchange;
using test::length;
using test::point;

namespace {

nlohmann::json scene(std::string const &bytes) {
  std::uint32_t size = 0;
  std::memcpy(&size, bytes.data() + 12, 4);
  return nlohmann::json::parse(bytes.substr(20, size));
}

// Linear light of an sRGB component, IEC 61966-2-1.
double linear(double c) {
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

} // namespace

TEST_CASE("glb holds named, coloured parts in metres with Y up", "[unit]") {
  test::TemporaryFolder const folder;
  write_glb(folder / "assembly.glb", test::small_assembly());
  std::string const bytes = test::contents(folder / "assembly.glb");
  REQUIRE(bytes.compare(0, 4, "glTF") == 0);
  nlohmann::json const file = scene(bytes);
  REQUIRE(file["nodes"].size() == 4);
  CHECK(file["nodes"][0]["name"] == "fixture");
  CHECK(file["nodes"][1]["name"] == "chamber-body");
  CHECK(file["nodes"][3]["name"] == "backing-pin");
  // 40 x 20 x 20 mm, and the pin 40, 5, 6 mm away: Z becomes Y, Y becomes -Z.
  auto const &position =
      file["accessors"][file["meshes"][0]["primitives"][0]["attributes"]["POSITION"].get<int>()];
  CHECK(position["max"][0].get<double>() == Approx(0.020));
  CHECK(position["max"][1].get<double>() == Approx(0.010));
  auto const &shift = file["nodes"][3]["translation"];
  CHECK(shift[0].get<double>() == Approx(0.040));
  CHECK(shift[1].get<double>() == Approx(0.006));
  CHECK(shift[2].get<double>() == Approx(-0.005));
  auto const &colour = file["materials"][0]["pbrMetallicRoughness"]["baseColorFactor"];
  CHECK(colour[0].get<double>() == Approx(linear(0.25)).epsilon(1e-5));
  CHECK(colour[1].get<double>() == Approx(linear(0.5)).epsilon(1e-5));
}

TEST_CASE("glb leaves nothing beside the file and repeats byte for byte", "[unit]") {
  test::TemporaryFolder const folder;
  write_glb(folder / "a.glb", test::small_assembly());
  write_glb(folder / "b.glb", test::small_assembly());
  CHECK(test::contents(folder / "a.glb") == test::contents(folder / "b.glb"));
  auto const files = std::filesystem::directory_iterator(folder / "");
  CHECK(std::distance(begin(files), end(files)) == 2);
}

TEST_CASE("a glb that cannot be written is an error", "[unit]") {
  test::TemporaryFolder const folder;
  CHECK_THROWS_AS(write_glb(folder / "missing" / "a.glb", test::small_assembly()), files::FileError);
}

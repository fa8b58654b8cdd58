#include "purgewright/exchange/stl.hpp"

#include "exchange_test.hpp"
#include "purgewright/files/file.hpp"
#include "purgewright/solids/kernel/mesh.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cstdio>
#include <cstring>
#include <map>

using namespace purgewright;
using namespace purgewright::exchange;
using namespace purgewright::solids::kernel;
using test::length;
using test::point;

namespace {

// An independent reading of the format: corners joined where their bytes are equal.
Mesh parsed(std::string const &bytes) {
  std::uint32_t facets = 0;
  std::memcpy(&facets, bytes.data() + 80, 4);
  REQUIRE(bytes.size() == 84 + 50 * std::size_t{facets});
  Mesh mesh;
  std::map<std::array<float, 3>, std::uint32_t> number;
  for (std::size_t f = 0; f < facets; ++f) {
    std::array<std::uint32_t, 3> triangle{};
    for (std::size_t corner = 0; corner < 3; ++corner) {
      std::array<float, 3> p{};
      std::memcpy(p.data(), bytes.data() + 84 + 50 * f + 12 * (corner + 1), 12);
      auto const [at, is_new] = number.try_emplace(p, static_cast<std::uint32_t>(number.size()));
      if (is_new)
        mesh.vertices_mm.push_back({p[0], p[1], p[2]});
      triangle[corner] = at->second;
    }
    mesh.triangles.push_back(triangle);
  }
  return mesh;
}

// A thin tube is the hard case: two curved faces with little between them.
std::vector<Solid> samples() {
  return {test::drilled_block(), sphere({}, length(7.0)),
          revolve({.axis = along_x}, {{length(0), length(11.8)},
                                      {length(80), length(11.8)},
                                      {length(80), length(12.7)},
                                      {length(0), length(12.7)}}),
          box(point(0, 0, 0), point(1, 2, 3))};
}

// The number after the colon of the line that begins with `label`; admesh prints before and after mending.
std::string report_line(std::string const &report, std::string const &label) {
  std::size_t const at = report.find(label);
  REQUIRE(at != std::string::npos);
  return report.substr(at, report.find('\n', at) - at);
}

std::string output_of(std::string const &command) {
  std::string text;
  std::FILE *const pipe = ::popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::array<char, 4096> block{};
  while (std::size_t const count = std::fread(block.data(), 1, block.size(), pipe))
    text.append(block.data(), count);
  ::pclose(pipe);
  return text;
}

} // namespace

TEST_CASE("STL is closed, turned outwards and true to the volume", "[unit]") {
  for (Solid const &solid : samples()) {
    StlFile const file = stl_file(solid);
    Mesh const mesh = parsed(file.bytes);
    CHECK(file.facets == mesh.triangles.size());
    CHECK(is_closed(mesh));
    double const error = units::ratio(volume(mesh), volume(solid)) - 1.0;
    CHECK(std::abs(error) <= 1e-3);
    CHECK(error == Approx(file.volume_error).margin(1e-12));
    CHECK(file.chord_tolerance > units::Length{});
  }
}

TEST_CASE("a finer volume is reached by refining", "[unit]") {
  Solid const solid = sphere({}, length(7.0));
  StlFile const coarse = stl_file(solid);
  StlFile const fine = stl_file(solid, {.greatest_volume_error = 2e-4});
  CHECK(std::abs(fine.volume_error) <= 2e-4);
  CHECK(fine.facets > coarse.facets);
}

TEST_CASE("STL bytes: header, determinism, a given volume", "[unit]") {
  Solid const solid = test::drilled_block();
  StlFile const file = stl_file(solid);
  CHECK(file.bytes.compare(0, 5, "solid") != 0);
  CHECK(stl_file(test::drilled_block()).bytes == file.bytes);
  CHECK(stl_file(solid, {.exact_volume = volume(solid)}).bytes == file.bytes);
  CHECK_THROWS_AS(stl_file(solid, {.exact_volume = 2.0 * volume(solid)}), SolidError);
  test::TemporaryFolder const folder;
  write_stl(folder / "part.stl", solid);
  CHECK(test::contents(folder / "part.stl") == file.bytes);
  CHECK_THROWS_AS(write_stl(folder / "missing" / "part.stl", solid), files::FileError);
}

TEST_CASE("normals point outwards", "[unit]") {
  std::string const bytes = stl_file(box(point(-1, -1, -1), point(1, 1, 1))).bytes;
  Mesh const mesh = parsed(bytes);
  for (std::size_t f = 0; f < mesh.triangles.size(); ++f) {
    std::array<float, 3> n{};
    std::memcpy(n.data(), bytes.data() + 84 + 50 * f, 12);
    auto const &corner = mesh.vertices_mm[mesh.triangles[f][0]];
    CHECK(n[0] * corner[0] + n[1] * corner[1] + n[2] * corner[2] == Approx(1.0));
  }
}

TEST_CASE("an independent checker finds nothing to mend", "[unit]") {
  if (output_of("command -v admesh").empty()) {
    WARN("admesh is not installed");
    return;
  }
  test::TemporaryFolder const folder;
  for (Solid const &solid : samples()) {
    StlFile const file = write_stl(folder / "part.stl", solid);
    std::string const report = output_of("admesh " + (folder / "part.stl").string() + " 2>&1");
    CAPTURE(report);
    std::string const facets = std::to_string(file.facets);
    CHECK_THAT(report_line(report, "Number of facets"), Catch::EndsWith(" " + facets));
    for (char const *label :
         {"Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added",
          "Facets reversed", "Backwards edges", "Normals fixed"}) {
      std::string const line = report_line(report, label);
      std::size_t const value = line.find_first_of("0123456789");
      CHECK(line.substr(value, 2).find_first_of("123456789") == std::string::npos);
    }
    double const reported = std::stod(report.substr(report.find("Volume   :") + 10));
    CHECK(reported == Approx(test::volume_mm3(solid)).epsilon(1.1e-3));
  }
}

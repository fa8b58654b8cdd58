// The program's files as other programs read them: STEP through gmsh's library, exactly and as tetrahedra,
// STL through admesh. Each is compared with the closed form, never with the solids that wrote the file.
#include "support/paths.hpp"
#include "support/run_program.hpp"

#include "purgewright/fixture/figures.hpp"
#include "purgewright/fixture/volumes.hpp"

#include <catch2/catch.hpp>
#include <gmsh.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <filesystem>
#include <map>
#include <memory>
#include <regex>

using namespace purgewright;

namespace {

namespace fs = std::filesystem;

// A circle of n curved elements, each a parabola through three points, lies inside by 2 (1 - cos(pi / n))^2 /
// 15 of its area. Metal is a sum and difference of round things that together are no more than three times as
// large.
constexpr double elements_per_turn = 12.0;
const double mesh_error = 3.0 * 2.0 * std::pow(1.0 - std::cos(units::pi / elements_per_turn), 2) / 15.0;
// The other library integrates over faces without refining: good to a hundred thousandth where two cylinders
// cross. The index collar has three bores that cross its rim and errs by 1.1e-5; a refined integration of the
// same solid agrees with the closed form to 1e-6, as `design` demands.
constexpr double mass_error = 2e-5;
// Chord tolerance of the STL, as issue and writer state it.
constexpr double stl_error = 1e-3;
struct Written {
  test::ScratchFolder folder;
  std::map<std::string, double> volumes; // closed form, mm3
  fs::path part(const std::string &name, const char *extension) const {
    return folder / ("out/parts/" + name + extension);
  }
};

std::unique_ptr<Written> design(const std::string &job_name) {
  auto result = std::make_unique<Written>();
  const std::string job_file = purgewright::test::example_job(job_name);
  const auto run =
      test::run(PURGEWRIGHT_PROGRAM, {"design", job_file, "-o", (result->folder / "out").string()});
  INFO(run.err);
  REQUIRE((run.status == 0 || run.status == 1));
  const auto resolution = job::read_job(job_file);
  REQUIRE(resolution.job);
  const auto layout = fixture::lay_out(*resolution.job);
  const auto v = fixture::volumes(*resolution.job, layout);
  for (const auto &part : fixture::part_metals(*resolution.job, layout, v)) {
    if (part.volume > units::Volume{}) { // zero: the design does without
      result->volumes[std::string(part.name)] = part.volume.value() * 1e9;
    }
  }
  return result;
}

// gmsh for one scope.
struct Gmsh {
  Gmsh() {
    gmsh::initialize();
    gmsh::option::setNumber("General.Terminal", 0);
    gmsh::option::setNumber("Mesh.MeshSizeFromCurvature", elements_per_turn);
    gmsh::option::setNumber("Mesh.MeshSizeMax", 12.0); // mm
    // The tip of a drilled hole has no radius: without a least size its curvature asks for elements without
    // end.
    gmsh::option::setNumber("Mesh.MeshSizeMin", 0.15); // mm
    gmsh::option::setNumber("Mesh.Algorithm3D", 10);   // the fastest of its meshers
    gmsh::option::setNumber("Mesh.Optimize", 0);       // shape of the elements does not matter here
    gmsh::model::add("part");
  }
  ~Gmsh() { gmsh::finalize(); }
  Gmsh(const Gmsh &) = delete;
  Gmsh &operator=(const Gmsh &) = delete;
};

gmsh::vectorpair import_solids(const fs::path &file) {
  gmsh::vectorpair solids;
  gmsh::model::occ::importShapes(file.string(), solids, true, "step");
  gmsh::model::occ::synchronize();
  return solids;
}

// Volume of the curved ten-node tetrahedra, each by its own integration rule.
double tetrahedra_volume() {
  constexpr int ten_node_tetrahedron = 11;
  gmsh::model::mesh::generate(3);
  gmsh::model::mesh::setOrder(2);
  std::vector<double> points, weights, jacobians, determinants, coordinates;
  gmsh::model::mesh::getIntegrationPoints(ten_node_tetrahedron, "Gauss4", points, weights);
  gmsh::model::mesh::getJacobians(ten_node_tetrahedron, points, jacobians, determinants, coordinates);
  double sum = 0.0;
  for (std::size_t i = 0; i < determinants.size(); ++i) {
    sum += determinants[i] * weights[i % weights.size()];
  }
  return sum;
}

void check_tetrahedra(const Written &written, const std::string &name) {
  CAPTURE(name);
  const Gmsh session;
  REQUIRE(import_solids(written.part(name, ".step")).size() == 1);
  CHECK(tetrahedra_volume() == Approx(written.volumes.at(name)).epsilon(mesh_error).margin(0.0));
}

double number_after(const std::string &text, const std::string &label) {
  std::smatch match;
  const std::regex pattern(label + R"(\s*[:=]\s*([-+0-9.eE]+))");
  INFO(label << " in\n" << text);
  REQUIRE(std::regex_search(text, match, pattern));
  return std::stod(match[1]);
}

std::uint32_t facets_in(const std::string &stl) {
  REQUIRE(stl.size() > 84);
  std::uint32_t facets = 0;
  std::memcpy(&facets, stl.data() + 80, sizeof facets); // little-endian, as this machine
  REQUIRE(stl.size() == 84 + 50 * static_cast<std::size_t>(facets));
  return facets;
}

// One solid of the closed form's volume, in millimetres.
void check_step(const Written &written, const std::string &name, double volume) {
  CAPTURE(name);
  const Gmsh session;
  const auto solids = import_solids(written.part(name, ".step"));
  REQUIRE(solids.size() == 1);
  REQUIRE(solids[0].first == 3);
  double mass = 0.0;
  gmsh::model::occ::getMass(3, solids[0].second, mass);
  CHECK(mass == Approx(volume).epsilon(mass_error).margin(0.0));
}

// Every part stands in the assembly, some twice, tube and cap besides, and the bought parts.
void check_assembly(const Written &written) {
  const Gmsh session;
  // Tube 50.8 x 1.65 mm, 220 long; cap 50.8 x 2 with a spigot 3 long of the bore less 0.1 mm all round.
  auto expected = written.volumes;
  expected["tube"] = units::pi * (25.4 * 25.4 - 23.75 * 23.75) * 220;
  expected["cap"] = units::pi * (25.4 * 25.4 * 2 + 23.65 * 23.65 * 3);
  std::map<std::string, int> seen;
  int others = 0;
  for (const auto &[dimension, tag] : import_solids(written.folder / "out/assembly.step")) {
    double mass = 0.0;
    gmsh::model::occ::getMass(dimension, tag, mass);
    const auto part = std::ranges::find_if(expected, [&](const auto &named) {
      return mass == Approx(named.second).epsilon(mass_error).margin(0.0);
    });
    ++(part != expected.end() ? seen[part->first] : others);
  }
  for (const auto &[name, volume] : expected) {
    INFO(name);
    CHECK(seen[name] == (name == "cradle-stand" || name == "clamp-bar" ? 2 : 1));
  }
  // Bearings and axles 4 + 4, rods, springs and nuts 2 + 2 + 2, screws of end plate, body, stands, stop and
  // block 4 + 4 + 4 + 2 + 2, dowels 4, feet and their nuts 4 + 4, fittings of block, chamber and plug 1 + 1 +
  // 2, gallery plug 1, valves 2; the wiper plate's screws 4, wiper 1, gaskets 2.
  CHECK(others == 56);
}

// Classes of ISO 286 as AP242 entities: pin in its bore, rods in theirs, dowels tapped into two parts and
// loose in the third.
void check_fits(const Written &written) {
  const std::map<std::string, std::pair<int, std::string>> expected{
      {"chamber-end-plate", {1, "'H'"}}, {"backing-pin", {1, "'f'"}}, {"axial-stop", {2, "'H'"}},
      {"chamber-body", {2, "'H'"}},      {"base-plate", {3, "'F'"}},  {"cradle-stand", {1, "'H'"}}};
  for (const auto &[name, fits] : expected) {
    CAPTURE(name);
    const std::string text = test::bytes_of(written.part(name, ".step"));
    const std::regex fit("LIMITS_AND_FITS\\(" + fits.second);
    CHECK(std::distance(std::sregex_iterator(text.begin(), text.end(), fit), {}) == fits.first);
  }
}

// admesh prints what it found in the first column and what it left in the second.
void check_stl(const Written &written, const std::string &name, double volume) {
  CAPTURE(name);
  const fs::path file = written.part(name, ".stl");
  const auto report = test::run(PURGEWRIGHT_ADMESH, {file.string()});
  REQUIRE(report.status == 0);
  CHECK(number_after(report.out, "Number of facets") == facets_in(test::bytes_of(file)));
  for (const char *fault :
       {"Facets with 1 disconnected edge", "Facets with 2 disconnected edges",
        "Facets with 3 disconnected edges", "Total disconnected facets", "Degenerate facets", "Edges fixed",
        "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed"}) {
    CHECK(number_after(report.out, fault) == 0.0);
  }
  CHECK(number_after(report.out, "Number of parts") == 1.0);
  CHECK(number_after(report.out, "Volume") == Approx(volume).epsilon(stl_error).margin(0.0));
}

} // namespace

// logger-51 has every kind of part, lance and two gas ways included.
TEST_CASE("gmsh and admesh read every part as it was designed") {
  const auto written = design("logger-51");
  REQUIRE(written->volumes.size() == 14);
  for (const auto &[name, volume] : written->volumes) {
    check_step(*written, name, volume);
    check_stl(*written, name, volume);
    if (name != "chamber-body") { // its many small holes make it slow: the smaller example's stands in
      check_tetrahedra(*written, name);
    }
  }
  check_assembly(*written);
  check_fits(*written);
}

TEST_CASE("gmsh fills the chamber body with tetrahedra of its volume") {
  const auto written = design("logger-25");
  check_tetrahedra(*written, "chamber-body");
}

#include "job_text.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <cctype>
#include <sstream>

using namespace purgewright;
using namespace purgewright::job;
using namespace purgewright::job::test;

namespace {

// The template with its commented keys made live: "#" in the first column, then spaces and a key.
std::string uncommented(const std::string &text) {
  std::istringstream lines(text);
  std::string result;
  for (std::string line; std::getline(lines, line);) {
    const auto first = line.find_first_not_of('#');
    const bool is_prose = first != 1 || line.starts_with("# ");
    const bool is_key =
        line.starts_with("#  ") || (!is_prose && std::isalpha(static_cast<unsigned char>(line[1])));
    result += (is_key ? line.substr(1) : line) + "\n";
  }
  return result;
}

} // namespace

TEST_CASE("templates are good jobs that show every key with its default", "[unit]") {
  for (const std::string name : {"flat-cap", "domed-cap", "spigot-cap"}) {
    CAPTURE(name);
    const std::string text = file_text(path_in_tests("../templates/" + name + ".yaml"));
    CHECK(text.starts_with("# yaml-language-server: $schema=job.schema.json\n"));
    for (const auto &info : fields()) {
      CAPTURE(info.path);
      CHECK(text.find(info.path.substr(info.path.rfind('.') + 1)) != std::string::npos);
    }
    const Resolution plain = resolve_text(text);
    const Resolution full = resolve_text(uncommented(text));
    CAPTURE(all_text(plain.problems), all_text(full.problems));
    REQUIRE(plain.job);
    REQUIRE(full.job);
    const auto shown = figures(*full.job);
    for (const auto &figure : figures(*plain.job)) {
      CAPTURE(figure.id);
      const auto *given = units::find(shown, figure.id);
      REQUIRE(given != nullptr);
      const bool kept_apart = figure.id == "tube.inside_diameter" || figure.id == "tube.vent.count";
      CHECK((kept_apart || given->basis == units::Basis::given));
      if (figure.id != "tube.vent.count") {
        CHECK(given->value == Approx(figure.value).epsilon(1e-9));
      }
    }
    CHECK(full.job->gas.port_thread == plain.job->gas.port_thread);
    CHECK(full.job->fixture.material == plain.job->fixture.material);
    CHECK(full.job->fixture.pin_material == plain.job->fixture.pin_material);
    CHECK(full.job->rotation.direction == plain.job->rotation.direction);
    CHECK(full.job->identity.title == plain.job->identity.title);
    CHECK(full.job->identity.revision == plain.job->identity.revision);
    CHECK(full.job->shop.sheet == plain.job->shop.sheet);
    CHECK(full.job->shop.currency == plain.job->shop.currency);
    CHECK(full.job->gas.hose.material == plain.job->gas.hose.material);
  }
}

TEST_CASE("examples are good jobs named as their files", "[unit]") {
  for (const std::string &name : purgewright::test::example_names()) {
    CAPTURE(name);
    const Resolution resolution = read_job(path_in_tests("../examples/" + name + ".yaml"));
    CAPTURE(all_text(resolution.problems));
    REQUIRE(resolution.job);
    CHECK(resolution.problems.empty());
    CHECK(resolution.job->identity.name == name);
  }
  CHECK(read_job(path_in_tests("../examples/logger-51.yaml")).job->tube.vent.count == 0);
}

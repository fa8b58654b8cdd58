#include "job_text.hpp"

#include "job/limits.hpp"

#include "purgewright/job/schema.hpp"
#include "purgewright/units/parse.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace purgewright::job;
using namespace purgewright::job::test;

namespace {

std::string schema_path() {
  return path_in_tests("../templates/job.schema.json");
}

} // namespace

TEST_CASE("the schema's committed copy is the schema of the key table", "[unit]") {
  CHECK(file_text(schema_path()) == job_schema_json());
}

// Hidden: run with the tag [refresh] to write the copy anew after a change of the key table.
TEST_CASE("write the schema's copy", "[.refresh]") {
  std::ofstream(schema_path(), std::ios::binary) << job_schema_json();
  SUCCEED();
}

TEST_CASE("every key is documented and stands in the schema", "[unit]") {
  const std::string schema = job_schema_json();
  for (const auto &info : fields()) {
    CAPTURE(info.path);
    CHECK(info.meaning.ends_with('.'));
    CHECK(info.meaning.size() > 8);
    const std::string name(info.path.substr(info.path.rfind('.') + 1));
    CHECK(schema.find("\"" + name + "\": {") != std::string::npos);
    CHECK(schema.find("\"description\": \"" + std::string(info.meaning)) != std::string::npos);
    CHECK(field(info.path) == &info);
    CHECK(info.least <= info.most);
    CHECK((info.kind == FieldKind::choice) == !info.choices.empty());
  }
}

TEST_CASE("the limits that messages and schema name are quantities a job may hold, close to the true limits",
          "[unit]") {
  for (const auto &info : fields()) {
    if (info.kind != FieldKind::quantity || info.dimension == purgewright::units::Dimension::price) {
      continue;
    }
    for (const std::string_view unit : {"", "degF", "in", "ft3/h", "psi"}) {
      const std::string text = allowed_values(info, unit);
      CAPTURE(info.path, text);
      const auto from = text.find(" from "), to = text.find(" to ");
      REQUIRE(from != std::string::npos);
      REQUIRE(to != std::string::npos);
      const auto least =
          purgewright::units::parse_quantity(text.substr(from + 6, to - from - 6), info.dimension);
      const auto most = purgewright::units::parse_quantity(
          text.substr(to + 4, text.find(", or", to) - to - 4), info.dimension);
      REQUIRE(least.si);
      REQUIRE(most.si);
      CHECK(*least.si >= info.least - 1e-5 * std::abs(info.least));
      CHECK(*most.si <= info.most + 1e-5 * std::abs(info.most));
      CHECK(*least.si == Approx(info.least).epsilon(2e-3));
      CHECK(*most.si == Approx(info.most).epsilon(2e-3));
    }
  }
}

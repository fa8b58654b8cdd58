#include "job_text.hpp"

#include "purgewright/job/schema.hpp"

#include <catch2/catch.hpp>

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

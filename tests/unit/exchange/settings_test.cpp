#include "purgewright/exchange/static_scope.hpp"

#include "exchange_test.hpp"
#include "purgewright/exchange/glb.hpp"
#include "purgewright/exchange/reader.hpp"
#include "purgewright/exchange/silence.hpp"
#include "purgewright/exchange/stl.hpp"

#include <catch2/catch.hpp>

#include <cstdio>
#include <iostream>
#include <unistd.h>

using namespace purgewright;
using namespace purgewright::exchange;

namespace {

// What reaches file descriptor 1 while the work runs.
template <class Work> std::string printed(Work work) {
  test::TemporaryFolder const folder;
  std::fflush(stdout);
  int const kept = ::dup(STDOUT_FILENO);
  std::FILE *const file = std::fopen((folder / "stdout").c_str(), "wb");
  ::dup2(::fileno(file), STDOUT_FILENO);
  work();
  std::cout.flush();
  std::fflush(stdout);
  ::dup2(kept, STDOUT_FILENO);
  ::close(kept);
  std::fclose(file);
  return test::contents(folder / "stdout");
}

} // namespace

TEST_CASE("a setting is changed for the scope and put back after it", "[unit]") {
  std::string const before = static_value("write.step.unit");
  {
    StaticScope const scope(
        StaticScope::Settings{{"write.step.unit", "INCH"}, {"write.surfacecurve.mode", "Off"}});
    CHECK(static_value("write.step.unit") == "INCH");
    CHECK(static_value("write.surfacecurve.mode") == "Off");
  }
  CHECK(static_value("write.step.unit") == before);
  CHECK(static_value("write.surfacecurve.mode") == "On");
}

TEST_CASE("a setting is put back by an exception and by a refusal", "[unit]") {
  std::string const before = static_value("write.step.schema");
  CHECK_THROWS_AS(
      [] {
        StaticScope const scope(StaticScope::Settings{{"write.step.schema", "AP203"}});
        throw std::runtime_error("fault");
      }(),
      std::runtime_error);
  CHECK(static_value("write.step.schema") == before);
  CHECK_THROWS_AS(
      StaticScope(StaticScope::Settings{{"write.step.schema", "AP203"}, {"no.such.setting", "1"}}),
      std::invalid_argument);
  CHECK(static_value("write.step.schema") == before);
  CHECK_THROWS_AS(
      StaticScope(StaticScope::Settings{{"write.step.schema", "AP203"}, {"write.step.unit", "furlong"}}),
      std::invalid_argument);
  CHECK(static_value("write.step.schema") == before);
  CHECK_THROWS_AS(static_value("no.such.setting"), std::invalid_argument);
}

TEST_CASE("what other code has set does not reach our files, nor ours its", "[unit]") {
  std::string const clean = step_text(test::pin_part(), test::header());
  StaticScope const other(StaticScope::Settings{{"write.step.unit", "INCH"}, {"write.step.schema", "AP203"}});
  CHECK(step_text(test::pin_part(), test::header()) == clean);
  CHECK(static_value("write.step.unit") == "INCH");
}

TEST_CASE("readers and writers print nothing", "[unit]") {
  test::TemporaryFolder const folder;
  std::string const text = printed([&] {
    write_step(folder / "part.step", test::block_part(), test::header());
    write_step(folder / "assembly.step", test::small_assembly(), test::header());
    read_step(folder / "assembly.step");
    write_stl(folder / "part.stl", test::drilled_block());
    write_glb(folder / "assembly.glb", test::small_assembly());
    std::ofstream(folder / "other.step") << "not a STEP file\n";
    try {
      read_step(folder / "other.step");
    } catch (std::exception const &) { // the fault is not what is tested here
    }
  });
  CHECK(text.empty());
  CHECK_FALSE(printed([] { std::puts("seen"); }).empty()); // the capture itself works
}

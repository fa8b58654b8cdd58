// The message to the program that builds the solids, and its answer.
#include "purgewright/study/request.hpp"

#include <catch2/catch.hpp>

using namespace purgewright;
using namespace purgewright::study;

namespace {

Request sample() {
  Request request;
  request.sources.job = {"", "a\xff b.yaml", "job: {}\n", {}, {}};
  request.sources.family = {{"b.yaml", "x/b.yaml", std::string("\0\xff", 2), {}, {}}};
  request.sources.log = job::Document{"log.csv", "log.csv", "time [s]\r\n", {}, {}};
  request.chosen = {{job::Key::fixture_wall, 0.004, 0.1 + 0.2}};
  request.version = "1.2.3";
  request.extent = Extent::page;
  return request;
}

} // namespace

TEST_CASE("a message gives back every byte and every number", "[unit][study]") {
  const Request sent = sample(), got = read_message(to_message(sent));
  CHECK(got.version == sent.version);
  CHECK(got.extent == Extent::page);
  CHECK(got.sources.job.label == sent.sources.job.label);
  CHECK(got.sources.job.bytes == sent.sources.job.bytes);
  REQUIRE(got.sources.family.size() == 1);
  CHECK(got.sources.family[0].name == "b.yaml");
  CHECK(got.sources.family[0].bytes == sent.sources.family[0].bytes);
  REQUIRE(got.sources.log);
  CHECK(got.sources.log->bytes == sent.sources.log->bytes);
  REQUIRE(got.chosen.size() == 1);
  CHECK(got.chosen[0].key == job::Key::fixture_wall);
  CHECK(got.chosen[0].to == sent.chosen[0].to);
  CHECK_FALSE(read_message(to_message({})).sources.log);
}

TEST_CASE("half a message, or something else, is none", "[unit][study]") {
  const std::string message = to_message(sample());
  for (std::size_t length = 0; length < message.size(); length += 7) {
    CHECK_THROWS_AS(read_message(message.substr(0, length)), BadMessage);
  }
  CHECK_THROWS_AS(read_message("job: {name: a}"), BadMessage);
}

TEST_CASE("an answer is read back as it was said", "[unit][study]") {
  Answer answer;
  const std::string hash(64, 'a');
  CHECK(answer.take("building base-plate") == Said::step);
  CHECK(answer.take(clash_line({"end-plug", "tube", units::cubic_metres(1.0 / 3e9)})) == Said::other);
  CHECK(answer.take(made_line("parts/end plug.step", hash)) == Said::other);
  CHECK(answer.take(view_line) == Said::view);
  CHECK(answer.take(fault_line("the disk is full")) == Said::other);
  CHECK(answer.faults == "the disk is full\n");
  CHECK(answer.take(of_line(hash)) == Said::other);
  CHECK(answer.last_step == "building base-plate");
  REQUIRE(answer.clashes.size() == 1);
  CHECK(answer.clashes[0].second == "tube");
  CHECK(answer.clashes[0].shared.value() == 1.0 / 3e9);
  CHECK(answer.made.at("parts/end plug.step") == hash);
  CHECK(answer.of == hash);
  CHECK_THROWS_AS(answer.take("clash end-plug"), BadMessage);
}

#include "purgewright/standards/tables.hpp"

#include "reference_data.hpp"

using namespace purgewright;
using namespace standards_reference;
using units::to_inches;
using units::to_millimetres;

namespace {

const standards::PortThread &thread_of(const YAML::Node &row) {
  INFO(text(row, "name"));
  const auto *thread = standards::port_thread(text(row, "name"));
  REQUIRE(thread != nullptr);
  return *thread;
}

const standards::Screw &screw_of(const YAML::Node &row) {
  INFO(text(row, "name"));
  const auto *screw = standards::screw(text(row, "name"));
  REQUIRE(screw != nullptr);
  return *screw;
}

} // namespace

TEST_CASE("parallel pipe threads", "[reference][standards]") {
  const Expected data = expected("threads.yaml", "parallel_pipe");
  for (const YAML::Node &row : data.values) {
    const auto &thread = thread_of(row);
    INFO(text(row, "name"));
    CHECK(to_millimetres(thread.pitch) == near(number(row, "pitch"), data.tolerance));
    CHECK(to_millimetres(thread.pitch) == near(25.4 / number(row, "tpi"), data.tolerance));
    CHECK(to_millimetres(thread.major) == near(number(row, "major"), data.tolerance));
    CHECK(to_millimetres(thread.drill) == near(number(row, "drill"), data.tolerance));
    CHECK(to_millimetres(thread.drill) > number(row, "minor"));
  }
}

TEST_CASE("parallel pipe ports have room for a seal", "[reference][standards]") {
  const Expected data = expected("threads.yaml", "parallel_pipe_port");
  for (const YAML::Node &row : data.values) {
    const auto &thread = thread_of(row);
    INFO(text(row, "name"));
    CHECK(to_millimetres(thread.full_thread) == near(number(row, "full_thread"), data.tolerance));
    CHECK(to_millimetres(thread.spot_face) == near(number(row, "spot_face_least"), data.tolerance));
    CHECK(to_millimetres(thread.spot_face) > number(row, "bonded_seal_outside"));
  }
}

TEST_CASE("taper pipe threads", "[reference][standards]") {
  const Expected data = expected("threads.yaml", "taper_pipe");
  for (const YAML::Node &row : data.values) {
    const auto &thread = thread_of(row);
    INFO(text(row, "name"));
    CHECK(to_inches(thread.pitch) == near(1.0 / number(row, "tpi"), data.tolerance));
    CHECK(to_inches(thread.major) == near(number(row, "pipe"), data.tolerance));
    CHECK(to_inches(thread.drill) == near(number(row, "drill"), data.tolerance));
    CHECK(to_inches(thread.drill) < number(row, "E1"));
    // A fitting's effective thread, and hand engagement with three threads of make-up, both find thread.
    CHECK(to_inches(thread.full_thread) >= number(row, "L2") - 1e-9);
    CHECK(to_inches(thread.full_thread) >= number(row, "L1") + 3.0 / number(row, "tpi") - 1e-9);
    CHECK(thread.spot_face.value() == 0.0);
  }
}

TEST_CASE("miniature ports", "[reference][standards]") {
  const Expected data = expected("threads.yaml", "small_ports");
  for (const YAML::Node &row : data.values) {
    const auto &thread = thread_of(row);
    INFO(text(row, "name"));
    CHECK(to_millimetres(thread.major) == near(number(row, "major"), data.tolerance));
    CHECK(to_millimetres(thread.pitch) == near(number(row, "pitch"), data.tolerance));
    CHECK(to_millimetres(thread.drill) == near(number(row, "drill"), data.tolerance));
    CHECK(to_millimetres(thread.drill) > at(row, "minor", 0));
    CHECK(to_millimetres(thread.drill) < at(row, "minor", 1));
  }
  const Expected practice = expected("threads.yaml", "small_port_practice");
  for (const YAML::Node &row : practice.values) {
    CHECK(to_millimetres(thread_of(row).spot_face) == near(number(row, "spot_face"), practice.tolerance));
    CHECK(to_millimetres(thread_of(row).full_thread) == near(number(row, "full_thread"), practice.tolerance));
  }
}

TEST_CASE("cap screws as published", "[reference][standards]") {
  const Expected data = expected("threads.yaml", "cap_screws");
  CHECK(data.values.size() == standards::screws().size());
  for (const YAML::Node &row : data.values) {
    const auto &screw = screw_of(row);
    INFO(text(row, "name"));
    CHECK(to_millimetres(screw.major) == near(number(row, "major"), data.tolerance));
    CHECK(to_millimetres(screw.pitch) == near(number(row, "pitch"), data.tolerance));
    CHECK(to_millimetres(screw.tap_drill) == near(number(row, "tap_drill"), data.tolerance));
    CHECK(to_millimetres(screw.tap_drill) > number(row, "minor"));
    CHECK(to_millimetres(screw.clearance) == near(at(row, "clearance_series", 1), data.tolerance));
    CHECK(to_millimetres(screw.head_diameter) == near(number(row, "head_diameter"), data.tolerance));
    CHECK(to_millimetres(screw.head_height) == near(number(row, "head_height"), data.tolerance));
  }
}

TEST_CASE("counterbores as remembered", "[reference][standards]") {
  const Expected data = expected("threads.yaml", "counterbores");
  for (const YAML::Node &row : data.values) {
    const auto &screw = screw_of(row);
    CHECK(to_millimetres(screw.counterbore_diameter) == near(number(row, "diameter"), data.tolerance));
    CHECK(to_millimetres(screw.counterbore_depth) == near(number(row, "depth"), data.tolerance));
  }
}

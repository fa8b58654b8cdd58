#include "support/assembly_laws.hpp"
#include "support/layout_laws.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace purgewright;
using units::to_millimetres;

namespace {

// Boxes are exact to the kernel's confusion distance, 1e-7 mm, on each side.
constexpr double box_slack = 1e-6; // mm

struct Example {
  job::Job job;
  fixture::Layout layout;
};

Example example(const std::string &name) {
  auto resolution = job::read_job(purgewright::test::example_job(name));
  REQUIRE(resolution.job);
  auto layout = fixture::lay_out(*resolution.job);
  REQUIRE(layout.buildable());
  return {std::move(*resolution.job), std::move(layout)};
}

const solids::Part &named(const solids::Assembly &assembly, const std::string &name) {
  const auto found = std::ranges::find(assembly.parts, name, &solids::Part::name);
  REQUIRE(found != assembly.parts.end());
  return *found;
}

struct Size {
  double x, y, z;
};

void check_box(const solids::Assembly &assembly, const std::string &name, const Size &low, const Size &high) {
  CAPTURE(name);
  const auto box = solids::kernel::bounding_box(named(assembly, name).solid);
  const auto near = [](double value) { return Approx(value).epsilon(0.0).margin(box_slack); };
  CHECK(to_millimetres(box.least.x) == near(low.x));
  CHECK(to_millimetres(box.least.y) == near(low.y));
  CHECK(to_millimetres(box.least.z) == near(low.z));
  CHECK(to_millimetres(box.greatest.x) == near(high.x));
  CHECK(to_millimetres(box.greatest.y) == near(high.y));
  CHECK(to_millimetres(box.greatest.z) == near(high.z));
}

void check_boxes(const Example &e, const solids::Assembly &assembly) {
  const auto mm = [](units::Length l) { return to_millimetres(l); };
  const auto &b = e.layout.body;
  check_box(assembly, "chamber-body", {mm(b.x_min), -0.5 * mm(b.width), mm(b.bottom)},
            {mm(b.x_max), 0.5 * mm(b.width), mm(b.z_max)});
  const auto &p = e.layout.end_plate;
  check_box(assembly, "chamber-end-plate", {0, -0.5 * mm(p.width), mm(p.z_min)},
            {mm(p.thickness), 0.5 * mm(p.width), mm(p.z_max)});
  const double shoulder = mm(e.layout.plug.shoulder_radius);
  check_box(assembly, "end-plug", {-mm(e.layout.plug.shoulder_length), -shoulder, -shoulder},
            {mm(e.layout.plug.spigot_length + e.layout.plug.nose_length), shoulder, shoulder});
  const auto &block = e.layout.block;
  check_box(assembly, "gas-port-block", {0, -0.5 * mm(block.width), 0},
            {mm(block.length), 0.5 * mm(block.width), mm(block.height)});
  const double tube = 0.5 * mm(e.job.tube.outside_diameter);
  check_box(assembly, "tube", {-mm(e.job.tube.length), -tube, -tube}, {0, tube, tube});
  const double cap = 0.5 * mm(e.job.cap.diameter);
  check_box(assembly, "cap", {-mm(e.job.cap.spigot_length), -cap, -cap}, {mm(e.job.cap.reach()), cap, cap});
}

void check_example(const std::string &name) {
  const Example e = example(name);
  const auto assembly = solids::build_assembly(e.job, e.layout);
  std::vector<std::string> faults;
  test::judge_parts(e.job, e.layout, assembly, faults);
  test::judge_gas(e.job, e.layout, assembly, faults);
  test::judge_interference(solids::stand(assembly), faults);
  INFO(test::lines(faults));
  CHECK(faults.empty());
  check_boxes(e, assembly);
  for (const auto &part : assembly.parts) {
    CAPTURE(part.name);
    CHECK_FALSE(part.title.empty());
    const bool work = part.name == "tube" || part.name == "cap";
    CHECK((part.kind == solids::PartKind::workpiece) == work);
  }
  // Threads are cosmetic: they must be told in words on every part that has one.
  for (const std::string threaded : {"chamber-body", "end-plug", "gas-port-block"}) {
    const auto &notes = named(assembly, threaded).notes;
    const std::string callout(e.job.gas.port_thread->callout);
    CHECK(std::ranges::any_of(notes,
                              [&](const auto &note) { return note.find(callout) != std::string::npos; }));
  }
}

} // namespace

TEST_CASE("flat cap example: solids sound, sized as laid out, fitting together") {
  check_example("logger-25");
}
TEST_CASE("domed cap example: solids sound, sized as laid out, fitting together") {
  check_example("logger-38");
}
TEST_CASE("spigot cap example: solids sound, sized as laid out, fitting together") {
  check_example("logger-51");
}

// The judges must be able to find fault.
TEST_CASE("a part that misses its formula and parts in one place are found") {
  const Example e = example("logger-25");
  const auto assembly = solids::build_assembly(e.job, e.layout);
  std::vector<std::string> faults;
  auto wrong = e.layout;
  wrong.pin.head_length += units::micrometres(10);
  wrong.body.slot.corner_radius *= 1.01; // a hundred thousandth of the body
  test::judge_parts(e.job, wrong, assembly, faults);
  test::judge_gas(e.job, wrong, assembly, faults);
  INFO(test::lines(faults));
  CHECK(faults.size() == 3); // pin, body, chamber gas
  auto moved = assembly;
  for (auto &part : moved.parts) {
    if (part.name == "backing-pin") {
      part.place.offset.x -= units::micrometres(1);
    }
  }
  faults.clear();
  test::judge_interference(solids::stand(moved), faults);
  INFO(test::lines(faults));
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].find("cap") != std::string::npos);
}

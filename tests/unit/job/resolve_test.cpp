#include "job_text.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <vector>

using namespace purgewright;
using namespace purgewright::job;
using namespace purgewright::job::test;
using Catch::Contains;
using units::to_millimetres;

namespace {

std::string shaped(std::string_view shape, std::string_view more = "") {
  return with(flat_job, "shape: flat", "shape: " + std::string(shape)) + std::string(more);
}

} // namespace

TEST_CASE("a choice is known in capitals and in small letters", "[unit]") {
  const Job job = good_job(std::string(flat_job) + "shop: {sheet: letter, units: INCH}\n");
  CHECK(job.shop.sheet == Sheet::letter);
  CHECK(job.shop.unit_system == units::UnitSystem::inch);
}

TEST_CASE("the hose to the plug reaches the far end of a long tube", "[unit]") {
  const auto hose = [](const std::string &length) {
    return good_job(with(flat_job, "length: 160 mm", "length: " + length)).gas.hose.bore_length.value();
  };
  CHECK(hose("160 mm") == Approx(1.0));
  CHECK(hose("300 mm") == Approx(1.0));
  CHECK(hose("310 mm") == Approx(1.5));
  CHECK(hose("900 mm") == Approx(2.0));
  CHECK(hose("1.4 m") == Approx(2.5));
}

TEST_CASE("defaults follow the tube", "[unit]") {
  const Job job = good_job(flat_job);
  CHECK(to_millimetres(job.tube.inside_diameter) == Approx(23.6));
  // ASTM B338: 0.005 in for 1 in to 1.5 in, wall 10 %.
  CHECK(to_millimetres(job.tube.outside_diameter_tolerance) == Approx(0.127).margin(0.001));
  CHECK(to_millimetres(job.tube.wall_tolerance) == Approx(0.09));
  // Wells by hand: 8 x 20 x 1.05e-3 x 1650 x (1/5 + 4.23e-3 x hypot(2.4e-3, 3.53e-3) / 2.72e-5) = 240 W, at
  // 0.77 x 10 V, and 8 % more.
  CHECK(job.weld.current.value() == Approx(34.0));
  CHECK(to_millimetres(job.rotation.swing_radius) == Approx(20.0));
  CHECK(to_millimetres(job.torch.cup_outside_diameter) > to_millimetres(job.torch.cup_bore));
  CHECK(job.cap.material == job.tube.material);
  CHECK(job.gas.port_thread->name == "G1/8");
  CHECK(job.fixture.material->name == "aluminium-6082");
  CHECK(job.identity.title == "flat");
  CHECK(job.shop.currency == "EUR");
  CHECK(job.rotation.direction == Direction::counterclockwise);
  CHECK_FALSE(job.fixture.slot_length.has_value());
}

TEST_CASE("a short tube on a thick joint is welded in more runs and cools further for its plug's rubber",
          "[unit]") {
  const auto short_tube = [](const std::string &wall, const std::string &cap) {
    return good_job("job: {name: short}\ntube: {material: titanium-grade-2, outside_diameter: 25 mm, wall: " +
                    wall + ", length: 40 mm}\ncap: {shape: flat, diameter: 25 mm, thickness: " + cap + "}\n");
  };
  const Job thin = short_tube("0.5 mm", "1.5 mm"), thick = short_tube("3 mm", "6 mm");
  // Worked by hand: 0.5 mm wall, joint 0.75 mm: 21 A x 10 V x 0.77 over 78.5 mm at 4.23 mm/s are 3.0 kJ into
  // 6.9 g of tube and 3.3 g of cap, 560 K; 3 mm wall, joint 4.5 mm: 119 A at 1.4 mm/s, 51 kJ into 37 g and
  // 13 g, 2000 K.
  CHECK(thin.rotation.runs == 8);
  CHECK(units::to_celsius(thin.weld.shielding_temperature) == Approx(315.0));
  CHECK(thick.rotation.runs == 16);
  CHECK(units::to_celsius(thick.weld.shielding_temperature) == Approx(200.0));
  CHECK_FALSE(thick.weld.interpass_temperature.has_value());
}

namespace {

// Current for a pool so wide in titanium so thick, at 0.77 x 10 V: Wells 1952 (standards/welding.hpp), from
// memory, worked anew.
double cold_pool(double thickness, double width, double speed) {
  return 8.0 * 20.0 * thickness * 1650.0 *
         (0.2 + speed * std::hypot(width, 2.355 * 1.5e-3) / (4.0 * 6.8e-6)) / 7.7;
}

} // namespace

TEST_CASE("under 40 mm such a tube waits between its runs, without the torch's gas", "[unit]") {
  const auto tube = [](const std::string &length, const std::string &more) {
    return good_job(
        "job: {name: short}\ntube: {material: titanium-grade-2, outside_diameter: 25 mm, wall: 3 mm, "
        "length: " +
        length + "}\ncap: {shape: spigot, diameter: 25 mm, thickness: 3 mm}\n" + more);
  };
  const Job waits = tube("32 mm", {}), reaches = tube("41 mm", {});
  REQUIRE(waits.weld.interpass_temperature.has_value());
  CHECK(units::to_celsius(*waits.weld.interpass_temperature) == Approx(120.0));
  CHECK(units::to_celsius(waits.weld.shielding_temperature) == Approx(315.0));
  CHECK_FALSE(reaches.weld.interpass_temperature.has_value());
  const Job stated = tube("32 mm", "weld: {interpass_temperature: 150 degC}\n");
  CHECK(units::to_celsius(*stated.weld.interpass_temperature) == Approx(150.0));
  // Joint of 3 mm wall and 2.6 walls of spigot: 5.4 mm, at 10 in/min x 1.524 / 5.4 = 1.2 mm/s; pool of 2.6
  // walls, since the rim of 3 mm bears no wider.
  CHECK(waits.weld.current.value() == Approx(std::ceil(cold_pool(5.4e-3, 7.8e-3, 1.2e-3))));
}

TEST_CASE("small caps on thick joints take no more than a pool in cold metal", "[unit]") {
  constexpr double sheet = 10.0 * 25.4e-3 / 60.0; // m/s
  const auto domed = [](const std::string &diameter, const std::string &wall, const std::string &cap) {
    return good_job("job: {name: small}\ntube: {material: titanium-grade-2, outside_diameter: " + diameter +
                    ", wall: " + wall + ", length: 200 mm}\ncap: {shape: domed, diameter: " + diameter +
                    ", thickness: " + cap + "}\nrotation: {seam: runs}\nweld: {travel_speed: 10 in/min}\n");
  };
  const Job smallest = domed("6.35 mm", "0.71 mm", "1.0 mm"), small = domed("12.7 mm", "1.65 mm", "3.0 mm"),
            thin = domed("10.3 mm", "0.9 mm", "0.9 mm");
  CHECK(smallest.weld.current.value() == Approx(std::ceil(cold_pool(0.855e-3, 2.485e-3, sheet))));
  CHECK(smallest.rotation.runs == 6);
  // Joint 2.325 mm.
  CHECK(small.weld.current.value() == Approx(std::ceil(1.08 * cold_pool(2.325e-3, 5.775e-3, sheet))));
  CHECK(small.rotation.runs == 16);
  CHECK(thin.weld.current.value() == Approx(std::ceil(1.08 * cold_pool(0.9e-3, 3.15e-3, sheet))));
  CHECK(thin.rotation.runs == 12);
}

TEST_CASE("an inch shop gets inch threads, metal, paper and projection", "[unit]") {
  const Job job = good_job(std::string(flat_job) + "shop: {units: inch}\n");
  CHECK(job.gas.port_thread->name == "1/8 NPT");
  CHECK(job.fixture.material->name == "aluminium-6061");
  CHECK(job.shop.sheet == Sheet::tabloid);
  CHECK(job.shop.projection == Projection::third);
}

TEST_CASE("a narrow bore gets the small port thread", "[unit]") {
  const std::string narrow = with(with(flat_job, "outside_diameter: 25.4 mm", "outside_diameter: 16 mm"),
                                  "diameter: 25.4 mm\n  thick", "diameter: 16 mm\n  thick");
  CHECK(good_job(narrow).gas.port_thread->name == "M5");
  CHECK(good_job(narrow + "shop: {units: inch}\n").gas.port_thread->name == "10-32 UNF");
}

TEST_CASE("wall and inside diameter give the same tube", "[unit]") {
  const Job by_wall = good_job(flat_job);
  const Job by_bore = good_job(with(flat_job, "wall: 0.9 mm", "inside_diameter: 23.6 mm"));
  CHECK(by_bore.tube.wall.value() == Approx(by_wall.tube.wall.value()).epsilon(1e-12));
  CHECK(by_bore.origin(Key::tube_wall).basis == units::Basis::computed);
  CHECK(by_wall.origin(Key::tube_inside_diameter).basis == units::Basis::computed);
}

TEST_CASE("a job in mm equals the job in inches", "[unit]") {
  const std::string inch = R"(job: {name: flat}
tube: {material: titanium-grade-2, outside_diameter: 1.25 in, wall: 0.049 in, length: 6 1/2 in}
cap: {shape: flat, diameter: 1250 thou, thickness: 3/64 in}
torch: {gas_flow: 20 cfh}
)";
  const std::string metric = R"(job: {name: flat}
tube: {material: titanium-grade-2, outside_diameter: 31.75 mm, wall: 1.2446 mm, length: 165.1 mm}
cap: {shape: flat, diameter: 31.75 mm, thickness: 1.190625 mm}
torch: {gas_flow: 9.4389487 L/min}
)";
  const auto a = figures(good_job(inch));
  const auto b = figures(good_job(metric));
  REQUIRE(a.size() == b.size());
  REQUIRE(a.size() > 30);
  for (std::size_t i = 0; i < a.size(); ++i) {
    CAPTURE(a[i].id);
    CHECK(a[i].id == b[i].id);
    CHECK(a[i].value == Approx(b[i].value).epsilon(1e-7));
    if (a[i].dimension == units::Dimension::length) {
      CHECK(a[i].value == b[i].value);
    }
  }
}

TEST_CASE("every value has an origin: a place when given, a reason when not", "[unit]") {
  for (const auto &text : {std::string(flat_job), shaped("domed"), shaped("spigot")}) {
    const DraftReading reading = read_draft_text(text, "job.yaml");
    const Resolution resolution = resolve(reading.draft);
    REQUIRE(resolution.job);
    for (const auto &info : fields()) {
      CAPTURE(info.path);
      const Origin &origin = resolution.job->origin(info.key);
      if (reading.draft[info.key].stated) {
        CHECK(origin.basis == units::Basis::given);
        CHECK(origin.mark.line > 0);
      } else {
        CHECK(origin.basis != units::Basis::given);
        CHECK_FALSE(origin.reason.empty());
        CHECK((origin.basis != units::Basis::common_practice ||
               origin.reason.find("common practice") != std::string_view::npos));
      }
    }
  }
}

TEST_CASE("the default spigot enters the smallest bore with room to spare", "[unit]") {
  for (const auto wall : {"0.4 mm", "0.9 mm", "1.65 mm", "3 mm"}) {
    const Job job = good_job(with(shaped("spigot"), "0.9 mm", wall));
    CAPTURE(wall);
    CHECK(job.cap.spigot_diameter + units::micrometres(99) <= job.tube.inside_diameter_least());
    CHECK(to_millimetres(job.cap.spigot_clearance) >= 0.0999);
  }
}

TEST_CASE("the clearance that a spigot fault asks for does", "[unit]") {
  for (const auto units_text : {"", "shop: {units: inch}\n"}) {
    const std::string text = shaped("spigot", "  spigot_clearance: 0.02 mm\n") + units_text;
    const Resolution bad = resolve_text(text);
    REQUIRE(bad.problems.size() == 1);
    const std::string allowed = bad.problems.front().allowed;
    const std::string remedy = allowed.substr(std::string_view("a clearance of at least ").size());
    CAPTURE(remedy);
    CHECK(resolve_text(with(text, "0.02 mm", remedy)).problems.empty());
  }
}

TEST_CASE("the cap diameters that a fault names do", "[unit]") {
  for (const auto units_text : {"", "shop: {units: inch}\n"}) {
    const std::string text =
        with(flat_job, "diameter: 25.4 mm\n  thick", "diameter: 99 mm\n  thick") + std::string(units_text);
    const Resolution bad = resolve_text(text);
    REQUIRE(bad.problems.size() == 1);
    const std::string allowed = bad.problems.front().allowed;
    const auto to = allowed.find(" to ");
    const std::string least = allowed.substr(0, to);
    const std::string most = allowed.substr(to + 4, allowed.find(':') - to - 4);
    CAPTURE(least, most);
    CHECK(resolve_text(with(text, "99 mm", least)).problems.empty());
    CHECK(resolve_text(with(text, "99 mm", most)).problems.empty());
  }
}

TEST_CASE("domes up to half a sphere are accepted", "[unit]") {
  CHECK(resolve_text(shaped("domed", "  dome_height: 12.7 mm\n")).job);
  CHECK(resolve_text(shaped("domed", "  dome_height: 1.3 mm\n")).job);
  CHECK_FALSE(resolve_text(shaped("domed", "  dome_height: 1.2 mm\n")).job);
  CHECK_FALSE(resolve_text(shaped("domed", "  dome_height: 12.8 mm\n")).job);
}

TEST_CASE("a sweep's own numbers are held to the limits", "[unit]") {
  Draft draft = read_draft_text(flat_job, "job.yaml").draft;
  draft[Key::tube_wall].number = 5e-3;
  draft[Key::cap_diameter].number = 25.4e-3;
  CHECK(resolve(draft).job);
  draft[Key::tube_wall].number = 13e-3;
  CHECK_THAT(all_text(resolve(draft).problems), Contains("tube.wall: 13 mm is too large"));
  draft[Key::tube_wall].number = std::numeric_limits<double>::quiet_NaN();
  CHECK_FALSE(resolve(draft).job);
  draft[Key::tube_wall].number = 0.9e-3;
  draft[Key::rotation_runs].stated = true;
  draft[Key::rotation_runs].number = 2.5;
  CHECK_THAT(all_text(resolve(draft).problems), Contains("rotation.runs: 2.5 is not a whole number"));
  draft[Key::rotation_runs].number = 3;
  draft[Key::cap_shape].number = 9;
  CHECK_FALSE(resolve(draft).job);
}

TEST_CASE("an empty draft names each missing key once and does not fail", "[unit]") {
  const Resolution resolution = resolve(Draft{});
  CHECK_FALSE(resolution.job);
  CHECK(resolution.problems.size() == 8);
}

TEST_CASE("figures carry sources and formulas", "[unit]") {
  const auto list = figures(good_job(flat_job));
  const auto *wall = units::find(list, "tube.wall");
  REQUIRE(wall != nullptr);
  CHECK(wall->source == "job file, line 6, column 9");
  CHECK(wall->basis == units::Basis::given);
  const auto *bore = units::find(list, "tube.inside_diameter");
  REQUIRE(bore != nullptr);
  CHECK(bore->inputs == std::vector<std::string>{"tube.outside_diameter", "tube.wall"});
  CHECK(units::find(list, "cap.dome_height") == nullptr);
  CHECK(units::find(list, "job.name") == nullptr);
  for (const auto &figure : list) {
    CAPTURE(figure.id);
    CHECK(std::isfinite(figure.value));
    CHECK_FALSE(figure.source.empty());
    CHECK_FALSE(figure.title.empty());
    for (const auto &input : figure.inputs) {
      CHECK(units::find(list, input) != nullptr);
    }
  }
}

namespace {

Job tube_of(const std::string &diameter, const std::string &wall, const std::string &more = "") {
  return good_job("job: {name: t}\ntube: {material: titanium-grade-2, outside_diameter: " + diameter +
                  ", wall: " + wall + ", length: 200 mm}\ncap: {shape: flat, diameter: " + diameter +
                  ", thickness: 1.5 mm}\n" + more);
}

} // namespace

// Five turns a minute by hand: 30 deg/s; on 12.7 mm 3.32 mm/s, less than the charts' 10 in/min, on 16.5 mm
// 4.32 mm/s, more.
TEST_CASE("no tube turns quicker under the arc than a hand rolls it, the smallest is welded by spots",
          "[unit]") {
  const Job small = tube_of("12.7 mm", "0.9 mm"), usual = tube_of("16.5 mm", "0.9 mm");
  CHECK(small.rotation.seam == Seam::runs);
  CHECK(small.weld.travel_speed.value() == Approx(3.3e-3));
  CHECK(usual.weld.travel_speed.value() == Approx(10.0 * 25.4e-3 / 60.0));
  const Job smallest = tube_of("6.35 mm", "0.71 mm");
  CHECK(smallest.rotation.seam == Seam::spots);
  // 19.9 mm round, a spot each millimetre, in pairs.
  CHECK(smallest.rotation.runs == 20);
  CHECK(tube_of("6.35 mm", "0.71 mm", "rotation: {seam: runs}\n").rotation.seam == Seam::runs);
}

// By hand: in a row 2 / pi of 0.1 x pool; 3.5 walls give 0.223 walls, beyond the fifth that is bridged;
// 0.29 x 12 mm = 3.48 mm, 2.9 walls of 1.2 mm, give 0.185.
TEST_CASE("runs go opposite each other where in a row they would pull the rim beyond the gap", "[unit]") {
  CHECK(tube_of("25.4 mm", "0.9 mm").rotation.order == RunOrder::alternating);
  CHECK(tube_of("12 mm", "1.2 mm").rotation.order == RunOrder::consecutive);
  CHECK(tube_of("25.4 mm", "0.9 mm", "rotation: {order: consecutive}\n").rotation.order ==
        RunOrder::consecutive);
}

// 4 x 20 L/min / (pi x 12.7 mm x 1.34e-5 m2/s) = 2500, through 19.05 mm 1660.
TEST_CASE("the gas of a wide slot gets a cup that it leaves laminar", "[unit]") {
  const Job wide = tube_of("114.3 mm", "3 mm");
  CHECK(wide.torch.gas_flow.value() == Approx(20e-3 / 60.0));
  CHECK(to_millimetres(wide.torch.cup_bore) == Approx(19.05));
  CHECK(to_millimetres(tube_of("60 mm", "2 mm").torch.cup_bore) == Approx(12.7));
}

#include "purgewright/gas/measured_log.hpp"
#include "purgewright/job/sources.hpp"
#include "support/paths.hpp"
#include "support/run_program.hpp"

#include "unit/gas/design_of.hpp"

#include "purgewright/gas/mixing.hpp"

#include "gas/log/family.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>

using namespace purgewright;
using namespace purgewright::gas;
using gas::test::example;
using gas::test::example_job;
using gas::test::PurgeDesign;

namespace {

// Column time in seconds, oxygen in ppm, one circuit, falling from air by half a decade a step.
std::string good_rows(int rows = 10) {
  std::string text;
  double ppm = 209500.0;
  for (int i = 0; i < rows; ++i) {
    text += std::to_string(i) + "," + std::to_string(ppm) + ",bore\n";
    ppm /= 3.0;
  }
  return text;
}

LogReading parsed(const std::string &text) {
  return parse_log(text, "log.csv");
}

std::string example_log() {
  return purgewright::test::bytes_of(purgewright::test::project_file("examples/logger-25-oxygen.csv"));
}

bool says(const LogReading &reading, int line, int column, const std::string &key) {
  return std::ranges::any_of(reading.problems, [&](const job::Diagnostic &problem) {
    return problem.mark.line == line && problem.mark.column == column && problem.key == key;
  });
}

FitResult fit(const PurgeDesign &d, const Log &log, Circuit circuit) {
  return fit_log(log, circuit, d.job, d.layout, d.volumes, d.areas, d.bounds);
}

// Multiplicative noise, near enough normal, the same on every machine.
class Noise {
 public:
  explicit Noise(std::uint64_t seed) : engine_(seed) {}
  double factor(double spread) {
    double sum = -6.0;
    for (int i = 0; i < 12; ++i)
      sum += static_cast<double>(engine_() >> 11) * 0x1p-53;
    return 1.0 + spread * sum;
  }

 private:
  std::mt19937_64 engine_;
};

} // namespace

TEST_CASE("A log is read with its units, comments and spare columns", "[unit][gas][log]") {
  const auto reading =
      parsed("\xEF\xBB\xBF# shop meter\r\n\r\nCircuit, time [min] ,\"oxygen [%]\",note,flow [L/min]\r\n"
             "bore,0,20.9,\"a, b\",2\r\nbore,0.5,1.5,,2\r\n"
             "bore,1,0.5,,2\nbore,1,0.4,,2\nbore,2,0.3,,2\nbore,3,0.2,,2\nbore,4,0.1,,2\nbore,5,1e-2,,2");
  REQUIRE(reading.log);
  REQUIRE(reading.log->circuits.size() == 1);
  const auto &bore = reading.log->circuits.front();
  CHECK(bore.times[1].value() == Approx(30.0));
  CHECK(bore.oxygen.front() == Approx(0.209));
  CHECK(bore.oxygen.back() == Approx(1e-4));
  CHECK(units::to_litres_per_minute(bore.flow.value()) == Approx(2.0));
  REQUIRE(reading.problems.size() == 1);
  CHECK(reading.problems.front().severity == job::Severity::caution);
  CHECK(says(reading, 3, 35, "note"));
}

TEST_CASE("Faults of a log are told with line and column, all at once", "[unit][gas][log]") {
  const auto reading =
      parsed("time [s],oxygen [ppm],circuit\n0,209500,bore\n1,x,bore\n2,3,bor\n4,5\n5,300000,bore\n"
             "0.5,7,bore\n-1,7,chamber\n8,1e999,bore\n9,nan,bore\n10,\"1,5\",bore\n");
  CHECK_FALSE(reading.log);
  CHECK(says(reading, 3, 3, "oxygen"));
  CHECK(says(reading, 4, 5, "circuit"));
  CHECK(says(reading, 5, 3, "row"));
  CHECK(says(reading, 6, 3, "oxygen"));
  CHECK(says(reading, 8, 1, "time"));
  CHECK(says(reading, 9, 3, "oxygen"));
  CHECK(says(reading, 10, 3, "oxygen"));
  CHECK(says(reading, 11, 4, "oxygen"));
}

TEST_CASE("A header must name time, oxygen and circuit with their units", "[unit][gas][log]") {
  CHECK(says(parsed("time,oxygen [ppm],circuit\n" + good_rows()), 1, 1, "time"));
  CHECK(says(parsed("time [s],oxygen [mm],circuit\n" + good_rows()), 1, 10, "oxygen"));
  CHECK(says(parsed("time [s],oxygen [],circuit\n" + good_rows()), 1, 10, "oxygen"));
  CHECK(says(parsed("time [s],oxygen [ppm],circuit,time [s]\n" + good_rows()), 1, 31, "time"));
  const auto misspelt = parsed("time [s],oxygen [ppm],circiut\n" + good_rows());
  CHECK_FALSE(misspelt.log);
  CHECK(misspelt.problems.front().nearest == "circuit");
  CHECK_FALSE(parsed("").log);
  CHECK_FALSE(parsed("# nothing\n").log);
  CHECK_FALSE(parsed("time [s];oxygen [ppm];circuit\n").log);
}

TEST_CASE("A log too short, too flat or too long is refused; dark readings are left out",
          "[unit][gas][log]") {
  const std::string header = "time [s],oxygen [ppm],circuit\n";
  CHECK(parsed(header + good_rows(8)).log);
  CHECK_FALSE(parsed(header + good_rows(7)).log);
  CHECK_FALSE(parsed(header).log);
  std::string still = header;
  for (int i = 1; i < 20; ++i)
    still += "5," + std::to_string(209500.0 / (i * i)) + ",bore\n";
  CHECK_FALSE(parsed(still).log);
  std::string flat = header, endless = header;
  for (int i = 0; i < 20; ++i)
    flat += std::to_string(i) + ",100,bore\n";
  CHECK_FALSE(parsed(flat).log);
  for (int i = 0; i <= most_readings; ++i)
    endless += std::to_string(i) + ",100,bore\n";
  CHECK_FALSE(parsed(endless).log);
  const auto dark = parsed(header + good_rows() + "20,0,bore\n21,-0.1,bore\n");
  REQUIRE(dark.log);
  CHECK(dark.log->circuits.front().times.size() == 10);
  CHECK(dark.problems.front().severity == job::Severity::caution);
  std::string bad = header;
  for (int i = 0; i < 100; ++i)
    bad += "x,1,bore\n";
  CHECK(parsed(bad).problems.size() == 21);
}

TEST_CASE("A job without a log has no fit and no fault", "[unit][gas][log]") {
  const PurgeDesign d(example_job("logger-25"));
  const auto fits = fit_job_log(d.job, d.layout, d.volumes, d.areas, d.bounds);
  CHECK(fits.fits.empty());
  CHECK(fits.problems.empty());
  CHECK(log_figures(fits).empty());
}

TEST_CASE("What a log holds comes into a message cut and harmless", "[unit][gas][log]") {
  const std::string cells[] = {"\x1b[31mred", std::string(1'000'000, '9') + "x", "\xff\xfe",
                               "\xc2\x9b"
                               "31m"};
  const std::string header = "time [s],oxygen [ppm],circuit\n";
  for (const std::string &cell : cells) {
    for (const std::string &text :
         {header + cell + ",1,bore\n", header + "1," + cell + ",bore\n", header + "1,1," + cell + "\n",
          "time [" + cell + "],oxygen [ppm],circuit\n1,1,bore\n",
          cell + ",time [s],oxygen [ppm],circuit\n"}) {
      for (const auto &problem : parsed(text).problems) {
        const std::string message = job::to_text(problem);
        CHECK(message.size() < 300);
        CHECK(message.find('\x1b') == std::string::npos);
        CHECK(message.find('\xff') == std::string::npos);
        CHECK(message.find("\xc2\x9b") == std::string::npos);
      }
      CHECK_FALSE(parsed(text).problems.empty());
    }
  }
}

TEST_CASE("The made-up log gives back what it was made from", "[unit][gas][log]") {
  // Its first lines say: 3.5 tanks, delay 3 s, floor 6 ppm, noise 3 % = 0.013 decades.
  auto job = example_job("logger-25");
  job.log = std::make_shared<const job::Document>(job::Document{"log.csv", "log.csv", example_log(), {}, {}});
  const PurgeDesign d(job);
  const auto fits = fit_job_log(d.job, d.layout, d.volumes, d.areas, d.bounds);
  CHECK(fits.problems.empty());
  REQUIRE(fits.fits.size() == 1);
  const auto &bore = fits.fits.front();
  CHECK(bore.tanks.value == Approx(3.5).epsilon(0.03));
  CHECK(bore.delay.value == Approx(3.0).margin(0.05));
  CHECK(bore.lag.value == 0.0);
  CHECK(bore.floor.value == Approx(6e-6).epsilon(0.02));
  CHECK(bore.rms == Approx(0.013).epsilon(0.2));
  CHECK(bore.r_squared > 0.999);
  CHECK(std::abs(bore.tanks.value - 3.5) < 3.0 * bore.tanks.error);
  CHECK(bore.curve.size() == bore.times.size());
  units::Figures all = d.figures();
  const auto more = log_figures(fits);
  all.insert(all.end(), more.begin(), more.end());
  for (const auto &figure : more) {
    INFO(figure.id);
    CHECK_FALSE(figure.title.empty());
    CHECK_FALSE(figure.source.empty());
    for (const auto &input : figure.inputs)
      CHECK(units::find(all, input) != nullptr);
  }
  CHECK(units::find(more, "gas.log.bore.tanks") != nullptr);
  CHECK(units::find(more, "gas.log.bore.delay") != nullptr);
  CHECK(units::find(more, "gas.log.bore.fit_rms") != nullptr);
}

TEST_CASE("The same log gives the same bits", "[unit][gas][log]") {
  const auto d = example("logger-25");
  const auto log = parsed(example_log()).log;
  REQUIRE(log);
  const auto a = fit(d, *log, Circuit::bore), b = fit(d, *log, Circuit::bore);
  CHECK(a.tanks.value == b.tanks.value);
  CHECK(a.delay.value == b.delay.value);
  CHECK(a.curve == b.curve);
  CHECK_THROWS_AS(fit(d, *log, Circuit::chamber), std::domain_error);
}

TEST_CASE("A slow meter's lag is told from its line's delay", "[unit][gas][log]") {
  // Without noise to the digit; with noise the lag hides part of the mixing, so the tolerance is wide.
  auto job = example_job("logger-25");
  job.tube.length = units::millimetres(160.0);
  PurgeDesign d(job);
  const auto flow = units::litres_per_minute(1.5);
  const log::Family family(d.subject(), Circuit::bore, {.bore = flow, .chamber = d.bounds.chamber.flow},
                           units::seconds(60.0));
  const log::Meter meter(family.curve(std::log(3.5), 6e-6), 0.8, 2.5);
  for (const double spread : {0.0, 0.02}) {
    Noise noise(3);
    Readings readings{.circuit = Circuit::bore, .times = {}, .oxygen = {}, .flow = flow};
    for (int i = 0; i <= 120; ++i) {
      readings.times.push_back(units::seconds(0.5 * i));
      readings.oxygen.push_back(std::pow(10.0, meter.shows(0.5 * i)) * noise.factor(spread));
    }
    d.job.gas.log_response = units::seconds(3.0);
    const auto result = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
    const double loose = spread > 0.0 ? 1.0 : 1e-3;
    CHECK(result.tanks.value == Approx(3.5).epsilon(0.2 * loose));
    CHECK(result.delay.value == Approx(2.5).margin(0.3 * loose));
    CHECK(result.lag.value == Approx(0.8).margin(0.3 * loose));
    CHECK(result.rms < 0.01 * loose);
    // Of no stated response the meter counts as prompt: the space comes out more mixed than it is.
    d.job.gas.log_response = {};
    const auto prompt = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
    CHECK(prompt.lag.value == 0.0);
    CHECK(prompt.tanks.value < 3.2);
    // Nor does a fit go beyond the response that is stated: 0.5 s to 90 % is a lag of 0.5 s / ln 10.
    d.job.gas.log_response = units::seconds(0.5);
    const auto bounded = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
    CHECK(bounded.lag.value <= 0.5 / std::log(10.0) * (1.0 + 1e-9));
    CHECK(bounded.tanks.value < 3.4);
  }
}

TEST_CASE("What a flowmeter may be off by is carried into the fitted numbers", "[unit][gas][log]") {
  // A log without noise, by the closed form: what is left of the error is the flowmeter's, and it is what
  // another tenth of flow makes of the fit.
  const auto d = example("logger-51");
  const auto flow = units::litres_per_minute(3.0);
  const double change = (d.volumes.bore_gas / flow).value();
  Readings readings{.circuit = Circuit::bore, .times = {}, .oxygen = {}, .flow = flow};
  for (int i = 0; i <= 300; ++i) {
    const double time = 0.25 * i;
    readings.times.push_back(units::seconds(time));
    readings.oxygen.push_back(4e-6 +
                              (0.2095 - 4e-6) * tanks_remaining(3.0, std::max(0.0, time - 4.0) / change));
  }
  const auto as_read = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
  readings.flow = (1.0 + 0.5 * flowmeter_error) * flow;
  const auto more = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
  readings.flow = (1.0 - 0.5 * flowmeter_error) * flow;
  const auto less = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
  CHECK(as_read.tanks.error == Approx(std::abs(more.tanks.value - less.tanks.value)).epsilon(0.3));
  CHECK(as_read.tanks.error > 0.02 * as_read.tanks.value);
}

TEST_CASE("Logs of spreadsheets and shells are read: semicolons, tabs, decimal commas, UTF-16",
          "[unit][gas][log]") {
  std::string rows = "time [s];oxygen [ppm];circuit;note\n";
  double ppm = 209500.0;
  for (int i = 0; i < 10; ++i, ppm /= 3.0) {
    std::string number = std::to_string(ppm);
    std::ranges::replace(number, '.', ',');
    rows += std::to_string(i) + ",5;" + number + ";bore;\"a; b\"\n";
  }
  const auto utf16 = [](const std::string &ascii, bool low_first) {
    std::string text = low_first ? "\xFF\xFE" : "\xFE\xFF";
    for (const char c : ascii) {
      text += low_first ? std::string{c, '\0'} : std::string{'\0', c};
    }
    return text;
  };
  std::string tabs = rows;
  std::ranges::replace(tabs, ';', '\t');
  for (const std::string &text : {rows, tabs, utf16(rows, true), utf16(tabs, false)}) {
    const auto reading = parsed(text);
    for (const auto &problem : reading.problems) {
      INFO(job::to_text(problem));
      CHECK(problem.key == "note");
    }
    REQUIRE(reading.log);
    const auto &bore = reading.log->circuits.front();
    CHECK(bore.times.size() == 10);
    CHECK(bore.times[1].value() == Approx(1.5));
    CHECK(bore.oxygen[1] == Approx(0.2095 / 3.0));
  }
  // A comma between cells leaves the point to the decimals; a thousand's comma is no number anywhere.
  CHECK(says(parsed("time [s];oxygen [ppm];circuit\n0;1,000,000;bore\n"), 2, 3, "oxygen"));
  CHECK(says(parsed("time [s];oxygen [ppm];circuit\n0;1,000.5;bore\n"), 2, 3, "oxygen"));
  // Nor is a thousand's dot where decimals have a comma, or the other way round.
  CHECK(says(parsed("time [s];oxygen [ppm];circuit\n0,5;1.250;bore\n"), 2, 5, "oxygen"));
  CHECK(says(parsed("time [s];oxygen [ppm];circuit\n0;207.5;bore\n1;6,0;bore\n"), 3, 3, "oxygen"));
  // Signs beyond the Latin letters, in one and in two units, and halves of a pair that stand alone.
  const std::string odd("\xFF\xFE\xAC\x20\x3D\xD8\x00\xDE\x3D\xD8\x3D\x00\x00\xDE", 14);
  const auto told = parsed(odd);
  REQUIRE_FALSE(told.problems.empty());
  CHECK(told.problems.front().key.find("\u20AC\U0001F600\uFFFD=\uFFFD") == 0);
}

TEST_CASE("A log by the closed form of tanks in series is fitted, not only the network's own",
          "[unit][gas][log]") {
  const auto d = example("logger-51"); // no vent: the bore stands alone
  const auto flow = units::litres_per_minute(3.0);
  const double change = (d.volumes.bore_gas / flow).value();
  Noise noise(51);
  Readings readings{.circuit = Circuit::bore, .times = {}, .oxygen = {}, .flow = flow};
  for (int i = 0; i <= 150; ++i) {
    const double time = 0.5 * i;
    readings.times.push_back(units::seconds(time));
    const double share = tanks_remaining(3.0, std::max(0.0, time - 4.0) / change);
    readings.oxygen.push_back((4e-6 + (0.2095 - 4e-6) * share) * noise.factor(0.03));
  }
  const auto result = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
  INFO("lag " << result.lag.value << " rms " << result.rms << " tanks error " << result.tanks.error);
  CHECK(result.tanks.value == Approx(3.0).epsilon(0.05));
  CHECK(result.delay.value == Approx(4.0).margin(0.2));
  CHECK(result.r_squared > 0.999);
}

TEST_CASE("A log much shorter than one volume change is still fitted, and says how badly",
          "[unit][gas][log]") {
  const auto d = example("logger-51");
  Readings readings{.circuit = Circuit::bore, .times = {}, .oxygen = {}, .flow = {}};
  for (int i = 0; i < 10; ++i) {
    readings.times.push_back(units::seconds(0.01 * i));
    readings.oxygen.push_back(0.2 * std::pow(0.5, i));
  }
  const auto result = fit(d, {.file = "made", .circuits = {readings}}, Circuit::bore);
  CHECK(std::isfinite(result.tanks.value));
  CHECK(result.rms > 0.3);
}

TEST_CASE("Curves of any number of tanks follow the closed form", "[unit][gas][log]") {
  // Down to a hundred-thousandth of air; the closed form knows nothing of the outlet's small exchange.
  const auto d = example("logger-51");
  const plan::Stage stage{.bore = units::litres_per_minute(3.0), .chamber = units::litres_per_minute(5.0)};
  const double change = (d.volumes.bore_gas / stage.bore).value();
  const log::Family family(d.subject(), Circuit::bore, stage, units::seconds(12.0 * change));
  for (const double tanks : {1.5, 2.0, 2.5, 3.5, 5.3, 9.7, 15.2}) {
    const auto curve = family.curve(std::log(tanks), family.floor());
    double worst = 0.0;
    for (std::size_t i = 0; i < curve.oxygen.size(); ++i) {
      const double share = tanks_remaining(tanks, curve.step * static_cast<double>(i) / change);
      if (share > 1e-5)
        worst = std::max(worst, std::abs(std::log10((curve.oxygen[i] - family.floor()) / (0.2095 * share))));
    }
    INFO("tanks " << tanks << " off by " << worst << " decades");
    CHECK(worst < 0.02);
  }
}

TEST_CASE("A log's mixing replaces the model's only on request", "[unit][gas][log]") {
  auto job = example_job("logger-25");
  job.log = std::make_shared<const job::Document>(job::Document{"log.csv", "log.csv", example_log(), {}, {}});
  const PurgeDesign d(job);
  const auto fits = fit_job_log(d.job, d.layout, d.volumes, d.areas, d.bounds);
  CHECK(mixing_to_use(job, fits).bore_tanks == 0.0);
  job.gas.log_use = job::LogUse::apply;
  const MeasuredMixing mixing = mixing_to_use(job, fits);
  CHECK(mixing.bore_tanks == fits.fits.front().tanks.value);
  CHECK(mixing.chamber_tanks == 0.0); // the log holds the bore alone
  const auto purge = d.purge(mixing);
  CHECK(purge.bore.tanks == Approx(mixing.bore_tanks).epsilon(1e-6));
  CHECK(purge.bore.tanks_measured);
  CHECK_FALSE(purge.chamber.tanks_measured);
  CHECK(purge.bore.time != d.purge().bore.time);
}

namespace {

// Readings every half second for two minutes, by what a function of the time says.
Log made_log(Circuit circuit, const auto &oxygen) {
  Readings readings{.circuit = circuit, .times = {}, .oxygen = {}, .flow = {}};
  for (int i = 0; i <= 240; ++i) {
    readings.times.push_back(units::seconds(0.5 * i));
    readings.oxygen.push_back(oxygen(0.5 * i));
  }
  return {.file = "made", .circuits = {readings}};
}

} // namespace

TEST_CASE("A fit that follows nothing is not usable: neither applied nor called measured",
          "[unit][gas][log]") {
  auto job = example_job("logger-25");
  job.gas.log_use = job::LogUse::apply;
  const PurgeDesign d(job);
  const auto swinging = made_log(Circuit::bore, [](double t) { // a loose connector
    return (static_cast<int>(2.0 * t) % 2 == 0 && t < 100.0) ? 0.2 : 5e-6;
  });
  const auto rising = made_log(Circuit::bore, [](double t) { return 5e-6 * std::exp(0.09 * t); });
  for (const auto &log : {swinging, rising}) {
    const FitResult result = fit(d, log, Circuit::bore);
    INFO("R2 " << result.r_squared << " at bound " << result.at_bound);
    CHECK(result.r_squared < least_r_squared);
    CHECK_FALSE(usable(result));
    CHECK_FALSE(floor_settled(result));
    CHECK(fit_fault(result) == FitFault::poor);
    CHECK_FALSE(to_text(fit_fault(result)).empty());
    const LogFits fits{.fits = {result}, .problems = {}};
    CHECK(mixing_to_use(job, fits).bore_tanks == 0.0);
    const auto figures = log_figures(fits), plan = d.figures();
    CHECK(units::find(figures, "gas.log.bore.fit_r2") != nullptr);
    CHECK(units::find(figures, "gas.log.bore.last") != nullptr);
    for (const auto &figure : figures) {
      INFO(figure.id);
      CHECK(figure.title.find("as measured") == std::string::npos);
      for (const auto &input : figure.inputs)
        CHECK((units::find(figures, input) != nullptr || units::find(plan, input) != nullptr));
    }
  }
}

TEST_CASE("A fit that ends at a bound of its search is not usable", "[unit][gas][log]") {
  const auto d = example("logger-25");
  // Slower than one stirred tank can be: the square root of the stirred course.
  const double change = (d.volumes.bore_gas / d.bounds.bore.flow).value();
  const auto slow = made_log(
      Circuit::bore, [&](double t) { return 5e-6 + 0.2095 * std::exp(-std::sqrt(3.0 * t / change)); });
  const FitResult result = fit(d, slow, Circuit::bore);
  INFO("tanks " << result.tanks.value << " R2 " << result.r_squared);
  CHECK(result.at_bound);
  CHECK_FALSE(usable(result));
}

TEST_CASE("A log that rises again, or of another flow, is not usable however well the curve lies",
          "[unit][gas][log]") {
  auto job = example_job("logger-51");
  job.gas.log_use = job::LogUse::apply;
  const PurgeDesign d(job);
  const double change = (d.volumes.bore_gas / d.bounds.bore.flow).value();
  const auto sound = [&](double t, double slower) {
    return 6e-6 + 0.2095 * tanks_remaining(3.0, t / (slower * change));
  };
  const auto rises = made_log(
      Circuit::bore, [&](double t) { return sound(t, 1.0) * (t < 110.0 ? 1.0 : 1.0 + 0.1 * (t - 110.0)); });
  auto slow_flow = made_log(Circuit::bore, [&](double t) { return sound(t, 3.0); });
  slow_flow.circuits[0].flow = d.bounds.bore.flow / 3.0;
  for (const auto &[log, fault] :
       {std::pair{rises, FitFault::rising}, std::pair{slow_flow, FitFault::other_flow}}) {
    const FitResult result = fit(d, log, Circuit::bore);
    INFO("R2 " << result.r_squared << " tanks " << result.tanks.value);
    CHECK(fit_fault(result) == fault);
    CHECK(mixing_to_use(job, {.fits = {result}, .problems = {}}).bore_tanks == 0.0);
  }
}

TEST_CASE("Applying a log never shortens the wait below what the meter took", "[unit][gas][log]") {
  // A line of 40 s: the fit takes it for a delay and finds a quick space behind it; the welder waits all the
  // same until the meter has shown the limit, and a tenth longer for the flowmeter.
  auto job = example_job("logger-25");
  job.gas.log_use = job::LogUse::apply;
  const PurgeDesign d(job);
  const double change = (d.volumes.bore_gas / d.bounds.bore.flow).value();
  const auto log = made_log(Circuit::bore, [&](double t) {
    return 6e-6 + (0.2095 - 6e-6) * tanks_remaining(3.0, std::max(0.0, t - 40.0) / change);
  });
  const FitResult result = fit(d, log, Circuit::bore);
  REQUIRE(usable(result));
  REQUIRE(result.under);
  CHECK(result.under->value() > 40.0);
  const MeasuredMixing mixing = mixing_to_use(job, {.fits = {result}, .problems = {}});
  const auto applied = d.purge(mixing);
  CHECK(applied.wait().value() == Approx(1.1 * result.under->value()));
  CHECK(applied.wait() > d.purge().wait());
  // Of a lesser flow the same log would have taken as much longer.
  FitResult slower = result;
  slower.flow = 0.8 * result.flow;
  CHECK(measured_wait(slower)->value() == Approx(0.8 * 1.1 * result.under->value()));
  slower.under.reset();
  CHECK_FALSE(measured_wait(slower));
}

TEST_CASE("What the meter showed last and lowest does not hang on one reading", "[unit][gas][log]") {
  const auto d = example("logger-25");
  auto log =
      made_log(Circuit::bore, [](double t) { return t < 60.0 ? 0.2 * std::exp(-0.4 * t) + 8e-6 : 3e-5; });
  log.circuits[0].oxygen[100] = 1e-9;  // a drop-out
  log.circuits[0].oxygen.back() = 0.2; // the probe pulled out
  const FitResult result = fit(d, log, Circuit::bore);
  CHECK(result.last == Approx(3e-5));
  CHECK(result.lowest == Approx(8e-6).epsilon(1e-3)); // the fall is long over
}

// Hidden: run with the tag [refresh] to write the example's made-up log anew after a change of the model.
TEST_CASE("write the example's log", "[.refresh]") {
  const auto d = example("logger-25");
  const auto flow = units::litres_per_minute(8.0);
  const log::Family family(d.subject(), Circuit::bore,
                           {.bore = flow, .chamber = d.bounds.chamber.flow, .covered = true},
                           units::seconds(12.0));
  const log::Meter meter(family.curve(std::log(3.5), 6e-6), 0.0, 3.0);
  Noise noise(25);
  std::string text =
      "# Made up, not measured: the bore's curve of examples/logger-25.yaml with 3.5 tanks, a delay of 3 s "
      "and a\n"
      "# floor of 6 ppm, with noise of 3 % on every reading. It shows the form of a log (gas.log).\n"
      "time [s],oxygen [ppm],circuit,flow [L/min]\n";
  for (int i = 0; i <= 120; ++i) {
    const double ppm = 1e6 * std::pow(10.0, meter.shows(0.1 * i)) * noise.factor(0.03);
    text += fmt::format("{:.1f},{:.{}f},bore,8\n", 0.1 * i, ppm, ppm < 1000.0 ? 1 : 0);
  }
  purgewright::test::write_bytes(purgewright::test::project_file("examples/logger-25-oxygen.csv"), text);
}

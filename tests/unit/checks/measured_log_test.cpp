// Rules of the measured log, on logs made for the purpose.
#include "gas/log/family.hpp"
#include "purgewright/checks/rules.hpp"
#include "purgewright/job/sources.hpp"
#include "support/paths.hpp"

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include <cmath>
#include <functional>
#include <map>
#include <memory>
#include <string>

using namespace purgewright;
using namespace purgewright::checks;

namespace {

using Found = std::map<std::string, Status>;
using Reading = std::function<double(double time, double sound)>;

// The circuit's own curve with 3.5 tanks, a line 2 s long and a floor of 6 ppm, every reading altered.
std::string log_text(const Design &d, gas::Circuit circuit, const Reading &alter) {
  const gas::plan::Stage stage{.bore = d.bounds.bore.flow, .chamber = d.bounds.chamber.flow, .covered = true};
  const gas::log::Family family({d.job, d.layout, d.volumes, d.areas}, circuit, stage, units::seconds(240.0));
  const gas::log::Meter meter(family.curve(std::log(3.5), 6e-6), 0.0, 2.0);
  std::string text = "time [s],oxygen [ppm],circuit\n";
  for (int t = 0; t <= 240; ++t) {
    const double sound = std::pow(10.0, meter.shows(t));
    text += fmt::format("{},{},{}\n", t, 1e6 * alter(t, sound), gas::to_text(circuit));
  }
  return text;
}

// Rules that do not pass of logger-25 with such a log.
Found with_log(gas::Circuit circuit, job::LogUse use, const Reading &alter) {
  auto read = job::read_job(test::example_job("logger-25"));
  REQUIRE(read.job);
  job::Job job = std::move(*read.job);
  const std::string text = log_text(evaluate_closed_form(job), circuit, alter);
  job.gas.log = "log.csv";
  job.log = std::make_shared<const job::Document>(job::Document{"log.csv", "log.csv", text, {}, {}});
  job.gas.log_use = use;
  const Design design = evaluate(std::move(job));
  CHECK(design.log.problems.empty());
  REQUIRE(design.log.fits.size() == 1);
  Found found;
  for (const auto &result : judge(design)) {
    CHECK((result.status == Status::pass) == keeps(result.value, result.limit, result.bound));
    if (result.status != Status::pass) {
      found[result.id] = result.status;
      CHECK_FALSE(result.remedy.empty());
    }
  }
  CHECK(design.purge.bore.tanks_measured ==
        (use == job::LogUse::apply && circuit == gas::Circuit::bore && gas::usable(design.log.fits.front())));
  return found;
}

std::string id(gas::Circuit circuit, const std::string &rule) {
  return fmt::format("log.{}_{}", gas::to_text(circuit), rule);
}

constexpr auto compare = job::LogUse::compare, apply = job::LogUse::apply;
constexpr auto circuits = {gas::Circuit::bore, gas::Circuit::chamber};

} // namespace

TEST_CASE("a sound log breaks no rule") {
  for (const auto circuit : circuits) {
    CHECK(with_log(circuit, compare, [](double, double sound) { return sound; }).empty());
  }
}

TEST_CASE("a log that settles above the oxygen limit fails") {
  for (const auto circuit : circuits) {
    const auto leaky = [](double, double sound) { return sound + 200e-6; };
    CHECK(with_log(circuit, compare, leaky) ==
          Found{{id(circuit, "floor"), Status::fail}, {id(circuit, "wait"), Status::caution}});
  }
}

TEST_CASE("a log that ends above the limit while it still falls is a caution") {
  for (const auto circuit : circuits) {
    const auto early = [](double t, double sound) {
      return t < 30.0 ? sound : std::exp(-0.01 * (t - 30.0)) * 3e-3;
    };
    const Found found = with_log(circuit, compare, early);
    CAPTURE(found);
    CHECK(found.contains(id(circuit, "floor")));
  }
}

TEST_CASE("a log that rises again is a caution, and fails once it is above the limit") {
  for (const auto circuit : circuits) {
    const auto rising = [](double to) {
      return [to](double t, double sound) {
        return t < 200.0 ? sound : sound + (to - 6e-6) * (t - 200.0) / 40.0;
      };
    };
    Found little = with_log(circuit, compare, rising(20e-6)),
          much = with_log(circuit, compare, rising(90e-6));
    CAPTURE(little, much);
    CHECK(little[id(circuit, "steady")] == Status::caution);
    CHECK(little[id(circuit, "usable")] == Status::caution);
    CHECK(with_log(circuit, apply, rising(20e-6))[id(circuit, "usable")] == Status::fail);
    CHECK(much[id(circuit, "steady")] == Status::fail);
  }
}

TEST_CASE("a poor fit is a caution, and fails where the job asks to apply it") {
  const auto swinging = [](double t, double) {
    return static_cast<int>(t) % 2 == 0 && t < 200.0 ? 0.2 : 5e-6;
  };
  for (const auto circuit : circuits) {
    // Every other reading high is no drop-out.
    CHECK(with_log(circuit, compare, swinging) == Found{{id(circuit, "fit"), Status::caution},
                                                        {id(circuit, "under"), Status::fail},
                                                        {id(circuit, "wait"), Status::caution}});
    CHECK(with_log(circuit, apply, swinging) == Found{{id(circuit, "fit"), Status::fail},
                                                      {id(circuit, "under"), Status::fail},
                                                      {id(circuit, "wait"), Status::caution}});
  }
}

TEST_CASE("a log that only rises fails by all of its rules") {
  for (const auto circuit : circuits) {
    const auto rises = [](double t, double) { return 5e-6 * std::exp(0.04 * t); };
    CHECK(with_log(circuit, apply, rises) == Found{{id(circuit, "fit"), Status::fail},
                                                   {id(circuit, "floor"), Status::fail},
                                                   {id(circuit, "steady"), Status::fail},
                                                   {id(circuit, "under"), Status::fail},
                                                   {id(circuit, "wait"), Status::caution}});
  }
}

TEST_CASE("a log that comes under the limit and ends above it fails, however little it rises") {
  for (const auto circuit : circuits) {
    // 42 ppm, then 60 in the last 30 s; the limit is 50.
    const auto climbs = [](double t, double sound) {
      return std::max(sound, 42e-6) + (t < 210.0 ? 0.0 : 18e-6 * (t - 210.0) / 30.0);
    };
    Found found = with_log(circuit, compare, climbs);
    CAPTURE(found);
    CHECK(found[id(circuit, "floor")] == Status::fail);
    CHECK(found[id(circuit, "under")] == Status::fail);
    // From within scatter of the limit: never clearly under it, yet above it at the end.
    const auto little = [](double t, double sound) {
      return std::max(sound, 48e-6) + (t < 220.0 ? 0.0 : 6e-6);
    };
    CHECK(with_log(circuit, compare, little)[id(circuit, "floor")] == Status::fail);
  }
}

TEST_CASE("a rise above the limit between two quiet stretches fails; a single reading is a drop-out") {
  const auto burst = [](double from, double seconds, double to) {
    return [=](double t, double sound) { return t >= from && t < from + seconds ? to : sound; };
  };
  for (const auto circuit : circuits) {
    for (const auto use : {compare, apply}) {
      for (const auto &[seconds, to] : {std::pair{2.0, 60e-6}, {3.0, 300e-6}, {10.0, 1000e-6}}) {
        Found found = with_log(circuit, use, burst(150.0, seconds, to));
        INFO(seconds << " s at " << to);
        CHECK(found[id(circuit, "under")] == Status::fail);
      }
    }
    CHECK(with_log(circuit, compare, burst(150.0, 1.0, 1000e-6)).empty());
    CHECK(with_log(circuit, compare, burst(237.0, 3.0, 300e-6))[id(circuit, "under")] == Status::fail);
    CHECK(with_log(circuit, compare, burst(240.0, 1.0, 300e-6))[id(circuit, "under")] == Status::fail);
  }
}

TEST_CASE("single readings above the limit, again and again, are no drop-outs") {
  const auto every_third = [](double t, double sound) {
    return t > 150.0 && static_cast<int>(t) % 3 == 0 ? 2000e-6 : sound;
  };
  for (const auto circuit : circuits) {
    CHECK(with_log(circuit, compare, every_third)[id(circuit, "under")] == Status::fail);
  }
}

TEST_CASE("a rise from a little under the limit counts once a meter has had the time to answer") {
  for (const auto circuit : circuits) {
    const auto hovers = [](double t, double sound) {
      return t >= 150.0 && t < 155.0 ? 53e-6 : std::max(sound, 48e-6);
    };
    CHECK(with_log(circuit, compare, hovers)[id(circuit, "under")] == Status::fail);
  }
}

TEST_CASE("scatter of a few in a hundred is no rise, while the log falls through the limit or after") {
  for (const auto circuit : circuits) {
    const auto scattered = [](double t, double sound) { return sound * (1.0 + 0.04 * std::sin(7919.0 * t)); };
    CHECK(with_log(circuit, compare, scattered).empty());
    // Three decades more slowly: a second changes less than the scatter does.
    const auto slow = [](double t, double) {
      return (6e-6 + 3e-3 * std::exp(-0.025 * t)) * (1.0 + 0.04 * std::sin(7919.0 * t));
    };
    CHECK_FALSE(with_log(circuit, compare, slow).contains(id(circuit, "under")));
  }
}

TEST_CASE("a meter that takes longer than the wait is a caution") {
  for (const auto circuit : circuits) {
    const auto late = [](double t, double) {
      return t < 60.0 ? 0.2095 : 6e-6 + 0.2095 * std::exp(-8.0 * (t - 60.0));
    };
    CHECK(with_log(circuit, compare, late)[id(circuit, "wait")] == Status::caution);
  }
}

// Pull of the runs' shrinkage on the cap's rim, by hand.
#include "heat_jobs.hpp"

#include "purgewright/heat/figures.hpp"
#include "purgewright/heat/shrinkage.hpp"
#include "purgewright/standards/welding.hpp"

#include <cmath>

using namespace purgewright;
using namespace purgewright::heat;
using heat::test::example;
using units::millimetres;

TEST_CASE("A weld draws its sides together by a tenth of its width", "[unit][heat]") {
  CHECK(standards::transverse_shrinkage(millimetres(3.2)).value() == Approx(0.32e-3));
}

// First harmonic of 1 over a share of the round, 2 / pi x sin(half of it): a quarter 0.450, half 0.637.
TEST_CASE("Runs in a row pull the most when half the round is welded, alternating ones after every other",
          "[unit][heat]") {
  const auto pull = [](const fixture::Order &places) {
    return rim_shift(places, millimetres(1.0)).value() * 1e3;
  };
  CHECK(pull({0, 1, 2, 3}) == Approx(2.0 / units::pi));
  CHECK(pull({0, 2, 1, 3}) == Approx(2.0 / units::pi * std::sqrt(0.5)));
  CHECK(pull({0, 1, 2, 3, 4, 5, 6, 7}) == Approx(2.0 / units::pi));
  CHECK(pull({0, 4, 2, 6, 1, 5, 3, 7}) == Approx(2.0 / units::pi * std::sin(units::pi / 8.0)));
  CHECK(pull({0}) == Approx(0.0).margin(1e-12)); // all round at once
  CHECK(pull({0, 1}) == Approx(2.0 / units::pi));
}

TEST_CASE("Advice on the order: alternating pulls less, both are figures", "[unit][heat]") {
  const auto subject = example("logger-25");
  OrderAdvice advice = advise_order(subject.job, subject.layout, {});
  add_rim_shifts(subject.job, millimetres(3.0), advice);
  CHECK(advice.consecutive.rim_shift.value() == Approx(0.3e-3 * 2.0 / units::pi));
  CHECK(advice.alternating.rim_shift.value() == Approx(0.3e-3 * 2.0 / units::pi * std::sqrt(0.5)));
  CHECK(advice.alternating.cycle.value() > 60.0);
  const units::Figures list = figures(advice);
  REQUIRE(units::find(list, "heat.order.alternating.rim_shift") != nullptr);
  CHECK(units::find(list, "heat.order.consecutive.cycle")->value == advice.consecutive.cycle.value());
}

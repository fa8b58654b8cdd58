// Rosenthal's thin plate: temperatures round a moving arc, cooling times and rates, peaks beside the weld.
#include "reference_values.hpp"

#include "heat/pool.hpp"
#include "purgewright/heat/model.hpp"
#include "purgewright/standards/welding.hpp"

#include <cmath>
#include <vector>

using namespace purgewright;
using namespace purgewright::heat;
using reference::Entry;
using reference::entry;

namespace {

constexpr double second_half = 0.5; // the joint's end is a mirror: half of the plate and half of the heat

Metal metal_of(const Entry &e) {
  return constant_metal(e.number("k"), units::kilograms_per_cubic_metre(e.number("rho")), e.number("cp"),
                        0.0);
}

Accuracy careful() {
  return {.step_error = units::TemperatureDifference::from_value(0.5),
          .relative_step_error = 1e-3,
          .arc_step = 0.5,
          .longest_step = units::seconds(5.0),
          .crossing = units::TemperatureDifference::from_value(0.02)};
}

// A plate rolled so tight that heat spreads round it at once: what is left is heat flow across the weld.
// Deposits the line energy (J/m of weld) in one quick turn.
Model deposited(const Entry &e, double line_energy, double start, double length, int cells) {
  const double wall = 1e-3 * e.number("wall_mm");
  const double round = 0.55 * wall;
  const Chain chain = plain_wall(metal_of(e), units::metres(round), units::metres(wall),
                                 units::metres(length), cells, 8, 3.5);
  Model model(chain, {.ambient = units::celsius(start)}, careful());
  constexpr double moment = 0.02;
  model.weld({.power = units::Power::from_value(second_half * line_energy * 2.0 * units::pi * round / moment),
              .radius = units::millimetres(0.2),
              .joint_radius = units::metres(round),
              .speed = 2.0 * units::pi / moment},
             units::seconds(moment));
  return model;
}

} // namespace

TEST_CASE("Thin titanium wall cools as Rosenthal's formula says", "[reference][heat]") {
  const auto e = entry("ti_thin_check");
  for (const auto &row : e.values()) {
    Model model = deposited(e, 1e3 * row["line_J_mm"].as<double>(), e.number("start"), 0.4, 120);
    const Region all{0, model.chain().rings.size()};
    model.cool_until(all, units::celsius(e.number("from")), units::seconds(1000.0));
    const units::Time time = model.cool_until(all, units::celsius(e.number("to")), units::seconds(1000.0));
    CHECK(time.value() == e.near(row["t_s"].as<double>()));
  }
}

TEST_CASE("Cooling rate of the worked steel plate", "[reference][heat]") {
  const auto e = entry("rosenthal_worked_cooling");
  for (const auto &row : e.values()) {
    Model model = deposited(e, 1e3 * row["Hnet"].as<double>(), e.number("start"), 0.3, 120);
    const Region all{0, model.chain().rings.size()};
    model.cool_until(all, units::celsius(e.number("at") + 5.0), units::seconds(1000.0));
    const double before = model.hottest(all).value();
    const units::Time time =
        model.cool_until(all, units::celsius(e.number("at") - 5.0), units::seconds(1000.0));
    CHECK((before - model.hottest(all).value()) / time.value() == e.near(row["R_C_s"].as<double>()));
  }
}

TEST_CASE("Peak temperature beside the worked steel weld", "[reference][heat]") {
  const auto e = entry("rosenthal_worked_peak");
  for (const auto &row : e.values()) {
    const double start = row["T0"].as<double>();
    Model model = deposited(e, 1e3 * e.number("Hnet"), start, 0.3, 200);
    for (double t = 0.0; t < 120.0; t += 0.2) { // short steps, so that no peak falls between two
      model.cool(units::seconds(0.2));
    }
    // Distance at which a peak is reached, from the outermost ring inwards; 1 / rise is straight in distance.
    const auto &rings = model.chain().rings;
    const auto distance = [&](double celsius) {
      const double wanted = 1.0 / (celsius - start);
      for (std::size_t i = rings.size() - 1; i > 0; --i) {
        const double near = 1.0 / (model.peak(i).value() - 273.15 - start);
        const double far = 1.0 / (model.peak(i - 1).value() - 273.15 - start);
        if (wanted >= near && wanted <= far) {
          return -rings[i].position -
                 (wanted - near) / (far - near) * (rings[i - 1].position - rings[i].position);
        }
      }
      FAIL("no ring peaks at that temperature");
      return 0.0;
    };
    CAPTURE(start);
    CHECK(1e3 * (distance(row["Tp"].as<double>()) - distance(e.number("Tm"))) ==
          e.near(row["Y"].as<double>()));
  }
}

TEST_CASE("Temperatures round a moving arc on a thin plate", "[reference][heat]") {
  const auto e = entry("rosenthal_thin_steady");
  constexpr int angles = 256;
  constexpr double round = 0.04, cell = 2.0 * units::pi * round / angles; // m, of the plate rolled up
  const double wall = 1e-3 * e.number("wall_mm"), speed = 1e-3 * e.number("speed_mm_s");
  const Chain chain = plain_wall(metal_of(e), units::metres(round), units::metres(wall), units::metres(0.12),
                                 48, angles, 3.0);
  Accuracy accuracy = careful();
  accuracy.relative_step_error = 0.02;
  accuracy.arc_step = 1.0;
  Model model(chain, {.ambient = units::celsius(20.0)}, accuracy);
  const double travel = 96.5 * cell; // ends in the middle of a cell
  model.weld(
      {.power = units::Power::from_value(second_half * e.number("power")),
       .radius = units::millimetres(0.5), // a wider arc heats what lies abreast of it more than a point does
       .joint_radius = units::metres(round),
       .start = units::radians(0.0),
       .speed = speed / round},
      units::seconds(travel / speed));
  const auto rise = [&](double ahead, double across) { // bilinear between cells
    const double place = (travel + ahead) / cell - 0.5;
    const auto low = static_cast<std::size_t>(std::floor(place));
    const double part = place - std::floor(place);
    const auto along = [&](std::size_t ring) {
      return (1.0 - part) * model.at(ring, low).value() + part * model.at(ring, low + 1).value() - 293.15;
    };
    std::size_t i = chain.rings.size() - 1;
    while (i > 1 && -chain.rings[i - 1].position < across) {
      --i;
    }
    const double near = -chain.rings[i].position, far = -chain.rings[i - 1].position;
    const double share = std::max(0.0, (across - near) / (far - near));
    return (1.0 - share) * along(i) + share * along(i - 1);
  };
  for (const auto &row : e.values()) {
    const double xi = row["xi"].as<double>(), y = row["y"].as<double>();
    CAPTURE(xi, y);
    CHECK(rise(1e-3 * xi, 1e-3 * y) == e.near(row["rise"].as<double>()));
  }
}

namespace {

// Half the width of Rosenthal's isotherm: the farthest y with rise(x, y) = rise, by its own formula.
double rosenthal_half_width(const Entry &e, double rise) {
  const double k = e.number("k"), alpha = k / (e.number("rho") * e.number("cp"));
  const double speed = 1e-3 * e.number("speed_mm_s"), wall = 1e-3 * e.number("wall_mm");
  const auto rise_at = [&](double x, double y) {
    const double r = std::hypot(x, y);
    return e.number("power") / (2.0 * units::pi * k * wall) * std::exp(-speed * x / (2.0 * alpha)) *
           std::cyl_bessel_k(0.0, speed * r / (2.0 * alpha));
  };
  double widest = 0.0;
  for (double x = -0.03; x < 0.0; x += 1e-4) {
    double low = 1e-6, high = 0.03; // rise falls with y
    for (int i = 0; i < 40; ++i) {
      const double y = 0.5 * (low + high);
      (rise_at(x, y) > rise ? low : high) = y;
    }
    widest = std::max(widest, low);
  }
  return widest;
}

} // namespace

TEST_CASE("A pool is as wide as Rosenthal's isotherm", "[reference][heat]") {
  const auto e = entry("rosenthal_pool_width");
  constexpr int angles = 256;
  constexpr double round = 0.04, cell = 2.0 * units::pi * round / angles;
  for (const auto &row : e.values()) {
    const double rise = row["rise"].as<double>(), half = 1e-3 * row["half_width_mm"].as<double>();
    CHECK(half == Approx(rosenthal_half_width(e, rise)).epsilon(0.005)); // the entry, by the formula again
    Metal metal = metal_of(e);
    metal.solidus = units::celsius(20.0 + rise - 0.5);
    metal.liquidus = units::celsius(20.0 + rise);
    const Chain chain = plain_wall(metal, units::metres(round), units::metres(1e-3 * e.number("wall_mm")),
                                   units::metres(0.12), 60, angles, 3.0);
    Accuracy accuracy = careful();
    accuracy.relative_step_error = 0.02;
    accuracy.arc_step = 1.0;
    Model model(chain, {.ambient = units::celsius(20.0)}, accuracy);
    const double travel = 96.5 * cell, speed = 1e-3 * e.number("speed_mm_s");
    model.weld({.power = units::Power::from_value(second_half * e.number("power")),
                .radius = units::millimetres(0.5),
                .joint_radius = units::metres(round),
                .speed = speed / round},
               units::seconds(travel / speed));
    // From the middle of the last ring, so that half of it is missing.
    CHECK(detail::pool_of(model, round).width + 0.5 * chain.rings.back().length == e.near(half));
  }
}

// Both sheets of a butt weld: the wall's end is the mirror between them.
TEST_CASE("The charts' currents melt sheet to its bottom with a bead as wide as usual", "[reference][heat]") {
  const auto e = entry("titanium_sheet_charts");
  constexpr int angles = 192;
  constexpr double round = 0.04, cell = 2.0 * units::pi * round / angles;
  constexpr auto arc_radius = units::millimetres(1.5);
  const double speed = e.number("speed_in_min") * 25.4e-3 / 60.0;
  for (const auto &row : e.values()) {
    const auto wall = units::inches(row["wall_in"].as<double>());
    const double current = row["current"].as<double>();
    const auto chart = standards::titanium_schedule(wall);
    CHECK(chart.speed.value() == Approx(speed));
    CHECK(0.5 * (chart.least + chart.most).value() == Approx(current));
    const Metal &metal = *thermal_metal("titanium-grade-2");
    const Chain chain = plain_wall(metal, units::metres(round), wall, units::metres(0.12), 60, angles, 3.0);
    Model model(chain,
                {.ambient = units::celsius(20.0), .outside_coefficient = 10.0, .inside_coefficient = 10.0},
                {});
    const double power = e.number("efficiency") * e.number("voltage") * current, travel = 96.5 * cell;
    model.weld({.power = units::Power::from_value(second_half * power),
                .radius = arc_radius,
                .joint_radius = units::metres(round),
                .speed = speed / round},
               units::seconds(travel / speed));
    const double widest = 2.0 * detail::pool_of(model, round).width + chain.rings.back().length;
    CAPTURE(1e3 * widest, row["wall_in"].as<double>());
    CHECK(widest > e.number("walls_least") * wall.value());
    CHECK(widest < e.number("walls_most") * wall.value());
    const double flux = power / (2.0 * units::pi * arc_radius.value() * arc_radius.value());
    CHECK(model.peak(chain.joint).value() - flux * wall.value() / (6.0 * metal.pool_conductivity) >
          metal.liquidus.value());
  }
}

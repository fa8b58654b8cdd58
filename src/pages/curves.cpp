#include "curves.hpp"

#include "purgewright/gas/curves.hpp"
#include "purgewright/gas/measured_log.hpp"
#include "purgewright/pages/plots.hpp"
#include "purgewright/report/bench_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::pages {
namespace {

using report::Findings;

// Apart in brightness as well as in hue, so that a black print still tells them.
constexpr Colour dark_red{0.72, 0.11, 0.09}, blue{0.10, 0.32, 0.65}, green{0.20, 0.55, 0.25};
constexpr Colour arc_shade{1.0, 0.86, 0.62, 0.7};

double shop_temperature(const Findings &f, units::Temperature t) {
  return units::shop_value(t.value(), units::Dimension::temperature, f.design.job.shop.unit_system).value;
}

std::string temperature_unit(const Findings &f) {
  return f.design.job.shop.unit_system == units::UnitSystem::metric ? "degC" : "degF";
}

Curve temperatures(const Findings &f, std::string name, Pen pen, units::Temperature heat::Moment::*which) {
  Curve curve{std::move(name), {}, std::move(pen)};
  for (const auto &moment : f.design.heat.history) {
    curve.points.push_back({moment.time.value(), shop_temperature(f, moment.*which)});
  }
  return curve;
}

// Where the plug's rubber lies.
std::string at_seal(fixture::PlugKind kind) {
  switch (kind) {
  case fixture::PlugKind::bore_ring:
    return "tube over the plug's O-ring";
  case fixture::PlugKind::expanding:
    return "tube over the plug's sleeve";
  case fixture::PlugKind::cup:
    return "tube in the plug's O-ring";
  }
  return {};
}

void shade_arcs(const heat::HeatPlan &plan, Plot &plot) {
  const auto shade = [&](const heat::Weld &weld, std::string name) {
    plot.spans.push_back(
        {std::move(name), weld.strikes.value(), (weld.strikes + weld.welding).value(), arc_shade});
  };
  for (std::size_t i = 0; i < plan.tacks.size(); ++i) {
    shade(plan.tacks[i], fmt::format("t{}", i + 1));
  }
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    shade(plan.runs[i], fmt::format("run {}", i + 1));
  }
}

constexpr double ppm = 1e6;

Curve oxygen(const gas::OxygenCurves &curves, const std::vector<double> &values, std::string name, Pen pen) {
  Curve curve{std::move(name), {}, std::move(pen)};
  for (std::size_t i = 0; i < values.size(); ++i) {
    curve.points.push_back({curves.times[i].value(), ppm * values[i]});
  }
  return curve;
}

void add_circuit(const gas::OxygenCurves &curves, const gas::OxygenCurve &circuit, const std::string &name,
                 Colour colour, Plot &plot) {
  plot.curves.push_back(
      oxygen(curves, circuit.displaced, "", {.width = 0.2, .colour = colour, .dashes = {1.0, 0.8}}));
  plot.curves.push_back(
      oxygen(curves, circuit.stirred, "", {.width = 0.2, .colour = colour, .dashes = {1.0, 0.8}}));
  plot.curves.push_back(oxygen(curves, circuit.best, name, {.width = 0.5, .colour = colour}));
}

std::string svg_of(const Plot &plot, const std::string &title) {
  constexpr double width = 180.0, height = 90.0; // mm
  Canvas canvas(Format::svg, width, height, title);
  canvas.fill(Box{0.0, 0.0, width, height}, white);
  draw(canvas, {4.0, 4.0, width - 8.0, height - 8.0}, plot);
  return canvas.finish();
}

} // namespace

Plot temperature_plot(const Findings &f) {
  const auto &plan = f.design.heat;
  Plot plot{.title = "First part: temperature, " + temperature_unit(f)};
  plot.x = {"s since the first arc", 0.0, plan.cycle.value()};
  plot.y = {"", 0.0, 1.2 * shop_temperature(f, plan.joint_peak)};
  shade_arcs(plan, plot);
  plot.curves = {
      temperatures(f, "joint, hottest", {.width = 0.3, .colour = dark_red}, &heat::Moment::joint),
      temperatures(f, "cap under the pin", {.width = 0.5, .colour = blue}, &heat::Moment::under_pin),
      temperatures(f, at_seal(f.design.layout.plug.kind), {.width = 0.5, .colour = green},
                   &heat::Moment::o_ring)};
  plot.levels = {{"shielding " + report::limit_text(f, plan.shielding_temperature),
                  shop_temperature(f, plan.shielding_temperature),
                  {.width = 0.25, .colour = black, .dashes = {1.5, 1.0}}}};
  return plot;
}

Plot oxygen_plot(const Findings &f) {
  const auto &d = f.design;
  constexpr int intervals = 200;
  constexpr double shown = 1.4; // of the longest wait
  const units::Time duration = shown * std::max(d.purge.bore.high, d.purge.chamber.high);
  const auto curves = gas::prepurge_curves(d.job, d.layout, d.volumes, d.areas, d.bounds,
                                           gas::mixing_to_use(d.job, d.log), duration, intervals);
  Plot plot{.title = "Oxygen at the joint, ppm"};
  plot.x = {"s of prepurge (dashed: gas displaced, gas stirred)", 0.0, duration.value()};
  plot.y = {"", 1.0, 3e5, true};
  add_circuit(curves, curves.bore, "inside (bore circuit)", blue, plot);
  add_circuit(curves, curves.chamber, "outside (chamber circuit)", dark_red, plot);
  const auto limit = [&](double value, std::string name, Colour colour) {
    plot.levels.push_back(
        {std::move(name), ppm * value, {.width = 0.25, .colour = colour, .dashes = {1.5, 1.0}}});
  };
  const double inside = d.job.gas.oxygen_limit_bore, outside = d.job.gas.oxygen_limit_chamber;
  if (inside == outside) {
    limit(inside, "limit " + report::oxygen_limit_text(inside), black);
  } else {
    limit(inside, "limit inside " + report::oxygen_limit_text(inside), blue);
    limit(outside, "limit outside " + report::oxygen_limit_text(outside), dark_red);
  }
  return plot;
}

std::string temperatures_svg(const Findings &findings) {
  return svg_of(temperature_plot(findings), "Temperatures");
}

std::string oxygen_svg(const Findings &findings) {
  return svg_of(oxygen_plot(findings), "Oxygen");
}

} // namespace purgewright::pages

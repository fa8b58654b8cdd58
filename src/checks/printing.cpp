#include "purgewright/checks/printing.hpp"

#include "purgewright/fixture/cavity.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace purgewright::checks {
namespace {

using units::Temperature;

// Under the deflection temperature, so that the part keeps its shape under load for years.
constexpr auto margin = units::TemperatureDifference::from_value(10.0); // K

std::string_view plastic_for(Temperature hottest) {
  const auto all = standards::plastics();
  const auto found = std::ranges::find_if(
      all, [&](const standards::Plastic &plastic) { return hottest <= plastic.deflection - margin; });
  return found == all.end() ? std::string_view() : found->name;
}

struct Estimate {
  std::string_view part;
  Temperature hottest;
  std::string_view of, input, against;
};

// A peak of the heat plan, of the first part or on the settled fixture, with its figure.
struct Peaked {
  Temperature hottest;
  std::string_view figure;
};
Peaked peaked(const Design &d, Peak peak, std::string_view first, std::string_view settled) {
  return {hottest(d, peak), settled_is_hotter(d, peak) ? settled : first};
}

std::vector<Estimate> estimates(const Design &d) {
  using heat::HeatPlan;
  const auto &plan = d.heat;
  const heat::Series &series = d.series;
  const Peaked roller = peaked(d, &HeatPlan::roller_peak, "heat.rollers.peak", "heat.series.rollers.peak"),
               plug = peaked(d, &HeatPlan::o_ring_peak, "heat.o_ring.peak", "heat.series.o_ring.peak"),
               wiper = peaked(d, &HeatPlan::wiper_peak, "heat.wiper.peak", "heat.series.wiper.peak"),
               centre = peaked(d, &HeatPlan::cap_centre_peak, "heat.cap_centre.peak",
                               "heat.series.cap_centre.peak"),
               pin = peaked(d, &HeatPlan::pin_contact_peak, "heat.pin_contact.peak",
                            "heat.series.pin_contact.peak");
  constexpr std::string_view at_rollers = "tube at the front rollers",
                             at_plug = "tube over the plug's rubber";
  constexpr std::string_view on_base = "base plate under it, parts one after another",
                             base_figure = "heat.series.settled";
  const bool base_hotter = series.settled > roller.hottest;
  const Temperature stand = base_hotter ? series.settled : roller.hottest;
  const std::string_view of_stand = base_hotter ? on_base : at_rollers,
                         stand_figure = base_hotter ? base_figure : roller.figure;
  const bool spindle = d.layout.cradle.kind == fixture::CradleKind::spindle;
  constexpr std::string_view carries = "the welding current flows through it: metal, bare where it touches";
  constexpr std::string_view squeezes = "it squeezes the plug's sleeve part after part: machine it";
  constexpr std::string_view threaded = "dowel and axles are held tight in it day after day: machine it";
  constexpr std::string_view gas_tight = "gas-tight threads and sealing faces: machine them";
  return {{ids::chamber_body, plan.joint_peak, "joint it faces", "heat.joint.peak", gas_tight},
          {ids::chamber_top, plan.joint_peak, "joint it faces", "heat.joint.peak", gas_tight},
          {ids::chamber_side, plan.joint_peak, "joint it faces", "heat.joint.peak", gas_tight},
          {ids::chamber_floor, plan.joint_peak, "joint it faces", "heat.joint.peak", gas_tight},
          {ids::chamber_rear, plan.joint_peak, "joint it faces", "heat.joint.peak", gas_tight},
          {ids::chamber_end_plate, centre.hottest, "cap's centre it faces", centre.figure, gas_tight},
          {ids::wiper_plate, wiper.hottest, "tube in the wiper", wiper.figure, {}},
          {ids::plenum_cover, series.settled, on_base, base_figure, gas_tight},
          {ids::backing_pin, pin.hottest, "cap it touches", pin.figure, {}},
          {ids::end_plug, plug.hottest, at_plug, plug.figure, gas_tight},
          {ids::plug_bush, plug.hottest, at_plug, plug.figure, spindle ? carries : squeezes},
          {ids::spindle, plug.hottest, at_plug, plug.figure, carries},
          {ids::plug_knob, plug.hottest, at_plug, plug.figure, squeezes},
          {ids::gas_port_block, series.settled, on_base, base_figure, gas_tight},
          {ids::cradle_stand, stand, of_stand, stand_figure, threaded},
          {ids::index_collar, roller.hottest, at_rollers, roller.figure,
           "the work lead clamps on it: metal, bare where it bites"},
          {ids::axial_stop, stand, of_stand, stand_figure, {}},
          {ids::tail_foot, roller.hottest, at_rollers, roller.figure, {}},
          {ids::clamp_bar, roller.hottest, at_rollers, roller.figure,
           "its thread holds what is clamped day after day: machine it"},
          {ids::base_plate,
           series.settled_on_plastic,
           "chamber on it, parts one after another",
           "heat.series.settled_on_plastic",
           {}},
          {ids::slot_cover, plan.joint_peak, "joint it faces", "heat.joint.peak", {}}};
}

} // namespace

std::vector<PartHeat> part_heat(const Design &d) {
  std::vector<PartHeat> parts;
  if (!d.purge_known) {
    return parts;
  }
  for (const Estimate &e : estimates(d)) {
    const bool of_sleeve = e.part == ids::plug_bush || e.part == ids::plug_knob;
    const auto walls = fixture::chamber_walls(d.layout.body.kind);
    const bool absent = (fixture::is_chamber_wall(e.part) && std::ranges::count(walls, e.part) == 0) ||
                        (of_sleeve && d.layout.plug.kind != fixture::PlugKind::expanding) ||
                        (e.part == ids::axial_stop && !d.layout.stop.present) ||
                        (e.part == ids::spindle && d.layout.cradle.kind != fixture::CradleKind::spindle) ||
                        (e.part == ids::tail_foot && !d.layout.tail_foot.present);
    if (!absent) {
      parts.push_back({e.part, e.hottest, e.of, e.input, e.against,
                       e.against.empty() ? plastic_for(e.hottest) : std::string_view()});
    }
  }
  return parts;
}

units::Figures figures(const std::vector<PartHeat> &parts) {
  units::Figures all;
  for (const PartHeat &part : parts) {
    all.push_back({fmt::format("temperature.{}", part.part),
                   part.hottest.value(),
                   units::Dimension::temperature,
                   fmt::format("Hottest that {} can become", part.part),
                   fmt::format("upper bound: temperature of the {}", part.of),
                   {std::string(part.input)},
                   "heat plan; the part is cooler than what it faces or touches",
                   units::Basis::computed});
  }
  return all;
}

} // namespace purgewright::checks

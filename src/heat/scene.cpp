#include "heat/scene.hpp"

#include "heat/require.hpp"
#include "purgewright/heat/gas_film.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat::detail {

namespace {

using units::millimetres;
using units::Temperature;

// Chosen by the holds of the three examples against a mesh of half the cells (tests/reference/heat): the fine
// mode's come out up to 1 % short, the coarse mode's are up to 3 % off.
Mesh mesh_of(const job::Job &job, Detail detail) {
  const units::Length bore = job.tube.inside_diameter;
  if (detail == Detail::coarse) {
    constexpr int cap_cells = 5;
    return mesh_for(job, millimetres(1.6), 1.5, 0.5 / cap_cells * bore, millimetres(3.0), 16, 48);
  }
  constexpr int most_cap_cells = 12;
  const units::Length cap_cell = std::max(millimetres(1.0), 0.5 / most_cap_cells * bore);
  return mesh_for(job, millimetres(0.8), 1.2, cap_cell, millimetres(2.0), 32, 96);
}

Accuracy accuracy_of(Detail detail) {
  using units::TemperatureDifference;
  if (detail == Detail::coarse) {
    return {.step_error = TemperatureDifference::from_value(2.0),
            .relative_step_error = 0.1,
            .arc_step = 1.5,
            .longest_step = units::seconds(60.0),
            .crossing = TemperatureDifference::from_value(3.0)};
  }
  return {.step_error = TemperatureDifference::from_value(2.0),
          .relative_step_error = 0.05,
          .arc_step = 1.0,
          .longest_step = units::seconds(30.0),
          .crossing = TemperatureDifference::from_value(0.5)};
}

// Between the middles of the tube's first and last ring.
Place place_at(const Chain &chain, double position) {
  const auto &rings = chain.rings;
  std::size_t i = 0;
  while (i + 2 < chain.joint && rings[i + 1].position < position) {
    ++i;
  }
  const double share = (position - rings[i].position) / (rings[i + 1].position - rings[i].position);
  return {i, std::clamp(share, 0.0, 1.0)};
}

Region joint_zone(const Chain &chain, double reach) {
  Region zone{chain.joint, chain.joint + 1};
  while (zone.first > 0 && chain.rings[zone.first - 1].position >= -reach) {
    --zone.first;
  }
  while (zone.last < chain.rings.size() && chain.rings[zone.last].position <= reach) {
    ++zone.last;
  }
  return zone;
}

// Tube rings that lie mostly beyond the chamber.
Region uncovered(const Chain &chain, double chamber_end) {
  Region region{0, 0};
  while (region.last < chain.joint && chain.rings[region.last].position < chamber_end) {
    ++region.last;
  }
  return region;
}

// Rollers of the front stand, the nearest to the joint, unless the options place them.
std::optional<Place> roller_place(const Chain &chain, const fixture::CradleStand &stand,
                                  const Options &options) {
  double position = 0.0;
  if (options.contacts.rollers) {
    position = -options.contacts.rollers->from_joint.value();
  } else if (stand.bearing != nullptr) {
    position = (stand.placements[1].x + stand.roller_middle()).value();
    position = std::max(position, chain.rings.front().position); // a spindle's journal is no hotter than that
  }
  const bool on_tube =
      position < 0.0 && position > chain.rings.front().position - 0.5 * chain.rings.front().length;
  return on_tube ? std::optional(place_at(chain, position)) : std::nullopt;
}

Arc arc_of(const job::Job &job, const Options &options) {
  const auto &weld = job.weld;
  const double radius = 0.5 * job.tube.outside_diameter.value();
  return {.power = weld.arc_efficiency * weld.voltage * weld.current,
          .radius = options.arc_radius,
          .joint_radius = 0.5 * job.tube.outside_diameter,
          .speed = weld.travel_speed.value() / radius};
}

void check(const Options &o, Temperature shielding) {
  constexpr std::string_view here = "plan_heat";
  require(shielding < units::kelvins(1500.0), here, "shielding temperature must lie under 1500 K",
          shielding.value());
  require(o.ambient >= units::kelvins(250.0) && o.ambient <= units::kelvins(400.0), here,
          "ambient must lie in 250 K to 400 K", o.ambient.value());
  const Temperature fixture = o.fixture.value_or(o.ambient);
  require(fixture >= o.ambient, here, "fixture must not be colder than ambient", fixture.value());
  require(fixture <= shielding - least_cooling, here,
          "shielding temperature must lie 5 K above ambient and fixture", shielding.value());
  require(o.tack_length.value() > 0.0, here, "tack length must be above 0", o.tack_length.value());
  require(o.longest_tack.value() > 0.0, here, "longest tack must be above 0", o.longest_tack.value());
  require(o.torch_move.value() >= 0.0, here, "torch move must not be negative", o.torch_move.value());
  require(o.torch_preflow.value() >= 0.0, here, "torch preflow must not be negative",
          o.torch_preflow.value());
  require(o.longest_hold.value() > 0.0, here, "longest hold must be above 0", o.longest_hold.value());
  require(o.contacts.pin_coefficient >= 0.0, here, "pin coefficient must not be negative",
          o.contacts.pin_coefficient);
  require(o.contacts.body_loss >= 0.0, here, "body loss must not be negative", o.contacts.body_loss);
}

} // namespace

Scene scene_of(const job::Job &job, const fixture::Layout &layout, const Options &options,
               Temperature shielding) {
  check(options, shielding);
  const Temperature around = options.fixture.value_or(options.ambient);
  const Temperature film = units::kelvins(0.5 * (shielding.value() + around.value()));
  Scene scene;
  scene.chain = chain_of(job, layout, options.mesh.value_or(mesh_of(job, options.detail)), options.contacts);
  scene.surroundings = {.ambient = around,
                        .start = options.ambient,
                        .outside_coefficient = options.outside_coefficient.value_or(natural_coefficient(
                            job.gas.species, job.tube.outside_diameter, shielding, around)),
                        .inside_coefficient = options.inside_coefficient.value_or(
                            bore_coefficient(job.gas.species, job.tube.inside_diameter, film)),
                        .gas = job.gas.species};
  scene.accuracy = options.accuracy.value_or(accuracy_of(options.detail));
  scene.arc = arc_of(job, options);
  const Chain &chain = scene.chain;
  scene.joint_zone = joint_zone(chain, 0.5 * job.torch.cup_bore.value());
  scene.uncovered = uncovered(chain, layout.body.x_min.value());
  scene.everything = {0, chain.rings.size()};
  const auto &plug = layout.plug;
  const units::Length seal = plug.placement.x + plug.seal.groove_start + 0.5 * plug.seal.groove_width;
  scene.o_ring = place_at(chain, seal.value());
  // A journal in the wiper is no hotter than the tube on its plug.
  scene.wiper = layout.spindle_in_chamber(job)
                    ? scene.o_ring
                    : place_at(chain, (layout.wiper.placement.x + 0.5 * layout.wiper.thickness).value());
  scene.cap_centre = chain.rings.size() - 1;
  scene.contact_radius = layout.pin.contact_outer_radius.value();
  scene.roller = roller_place(chain, layout.stand, options);
  return scene;
}

} // namespace purgewright::heat::detail

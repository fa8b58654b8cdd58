#include "scene.hpp"

#include "purgewright/fixture/cavity.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::gas::plan {

using units::Area;
using units::Length;
using units::VolumeFlow;

namespace {

constexpr Length least_pocket = units::millimetres(1.0);
constexpr double least_open_share = 0.2; // of the slot, under a torch that covers it

} // namespace

bool vent_in_cavity(const Subject &s) {
  return s.job.tube.vent.count > 0 && -s.job.tube.vent.from_joint > s.layout.body.cavity_start;
}

Length space_height(const fixture::ChamberBody &body) {
  return body.z_max + body.cavity_radius;
}

double gas_gravity(const job::Job &job) {
  const auto air = density(Species::air, shop_temperature);
  return reduced_gravity(density(species_of(job), shop_temperature), air, air);
}

units::Velocity torch_speed(const job::Job &job) {
  return job.torch.gas_flow / (0.25 * units::pi * units::square(job.torch.cup_bore));
}

Length pocket_length(const job::Job &job, double swept) {
  if (job.tube.vent.count == 0) {
    return {};
  }
  Length depth = job.tube.vent.from_joint - swept * job.tube.inside_diameter;
  if (job.cap.shape == job::CapShape::domed) {
    depth += job.cap.dome_height - job.cap.thickness;
  }
  return depth > least_pocket ? depth : Length{};
}

double layer_froude(const job::Job &job, VolumeFlow flow) {
  const double gravity = std::abs(gas_gravity(job));
  const Length diameter = job.tube.inside_diameter;
  const units::Velocity speed = flow / (0.25 * units::pi * units::square(diameter));
  return speed.value() / std::sqrt(gravity * diameter.value());
}

Length slot_depth(const fixture::Layout &layout) {
  const auto &body = layout.body;
  if (layout.mask.present) {
    return layout.mask.thickness;
  }
  return slot_wall(body);
}

VolumeFlow slot_outflow(const Subject &s, const Stage &stage) {
  return stage.chamber + stage.torch + (vent_in_cavity(s) ? stage.bore : VolumeFlow{});
}

units::Diffusivity diffusion(const job::Job &job) {
  return diffusivity(species_of(job), Species::air, shop_temperature);
}

Area open_slot(const Subject &s, bool torch, bool covered) {
  if (covered) {
    return s.areas.slot_covered;
  }
  const Area cup = 0.25 * units::pi * units::square(s.job.torch.cup_outside_diameter);
  const Area slot = s.areas.slot_welding;
  return torch ? std::max(slot - cup, least_open_share * slot) : slot;
}

} // namespace purgewright::gas::plan

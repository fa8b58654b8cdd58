#include "heat/contacts.hpp"

#include "purgewright/fixture/cavity.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::heat {

namespace {

using units::pi;
using units::ratio;

constexpr double gap_least = 5e-6; // m, roughness: a fit tighter than this does not conduct better

// Share of the ring that lies between two positions along the tube.
double overlap(const Ring &ring, double from, double to) {
  const double low = std::max(ring.position - 0.5 * ring.length, from);
  const double high = std::min(ring.position + 0.5 * ring.length, to);
  return std::max(0.0, high - low) / ring.length;
}

double cylinder(units::Length radius, units::Length length) {
  return (pi * radius * radius * length).value();
}

Lump lump(double volume, double surface, const standards::Metal &metal, double loss) {
  return {.capacity = volume * metal.density.value() * metal.specific_heat.room(), .loss = surface * loss};
}

void touch_chamber(const job::Job &job, const fixture::ChamberBody &body, double loss, Chain &chain) {
  const double gap = (body.opening_radius - 0.5 * job.tube.outside_diameter).value();
  for (std::size_t i = 0; i < chain.joint; ++i) {
    Ring &ring = chain.rings[i];
    const double area = ring.outside * overlap(ring, body.x_min.value(), body.cavity_start.value());
    if (area > 0.0) {
      chain.contacts.push_back(
          {.ring = i, .body = Body::chamber, .area = area, .gap = std::max(gap, gap_least)});
      ring.outside -= area;
    }
  }
  const double block = (body.length() * body.width * body.height()).value();
  const double hollow = (cavity_section(body) * (body.x_max - body.cavity_start)).value() +
                        cylinder(body.opening_radius, body.cavity_start - body.x_min);
  const double surface =
      2.0 * (body.length() * (body.width + body.height()) + body.width * body.height()).value();
  chain.bodies[std::size_t(Body::chamber)] =
      lump(std::max(0.3 * block, block - hollow), surface, *job.fixture.material, loss);
}

void touch_plug(const job::Job &job, const fixture::EndPlug &plug, double loss, Chain &chain) {
  const bool cup = plug.kind == fixture::PlugKind::cup;
  const double gap = (cup ? plug.cup_radius - 0.5 * job.tube.outside_diameter
                          : 0.5 * job.tube.inside_diameter - plug.spigot_radius)
                         .value();
  const double start = plug.placement.x.value();
  const double end = start + (cup ? plug.cup_length : plug.spigot_length).value();
  for (std::size_t i = 0; i < chain.joint; ++i) {
    Ring &ring = chain.rings[i];
    double &free = cup ? ring.outside : ring.inside;
    const double area = free * overlap(ring, start, end);
    if (area > 0.0) {
      chain.contacts.push_back(
          {.ring = i, .body = Body::plug, .area = area, .gap = std::max(gap, gap_least)});
      free -= area;
    }
  }
  const double inside =
      cup ? cylinder(plug.shoulder_radius, plug.cup_length) - cylinder(plug.cup_radius, plug.cup_length)
          : cylinder(plug.spigot_radius, plug.spigot_length);
  const double volume = cylinder(plug.shoulder_radius, plug.shoulder_length) + inside;
  const double rim = (2.0 * pi * plug.shoulder_radius * (plug.shoulder_length + plug.cup_length)).value();
  const double ends = (pi * plug.shoulder_radius * plug.shoulder_radius).value();
  chain.bodies[std::size_t(Body::plug)] = lump(volume, rim + ends, *job.fixture.material, loss);
}

// Contact ring of the pin on the cap, less its two grooves.
void touch_pin(const job::Job &job, const fixture::Layout &layout, double coefficient, Chain &chain) {
  const fixture::BackingPin &pin = layout.pin;
  const double outer = pin.contact_outer_radius.value(), inner = pin.contact_inner_radius.value();
  const standards::Metal &metal = *job.fixture.pin_material;
  // Contact and half the head in series.
  const double into_pin =
      coefficient / (1.0 + coefficient * 0.5 * pin.head_length.value() / metal.conductivity.room());
  const double grooves = 4.0 * pin.groove_width.value() / (pi * (outer + inner));
  for (std::size_t i = chain.joint + 1; i < chain.rings.size(); ++i) {
    Ring &ring = chain.rings[i];
    const double far = ring.radius + 0.5 * ring.length, near = std::max(0.0, ring.radius - 0.5 * ring.length);
    const double high = std::min(far, outer), low = std::max(near, inner);
    if (high > low && grooves < 1.0) {
      const double area = std::min(ring.outside, (1.0 - grooves) * pi * (high * high - low * low));
      chain.contacts.push_back({.ring = i, .body = Body::pin, .area = area, .coefficient = into_pin});
      ring.outside -= area;
    }
  }
  const double volume = cylinder(pin.contact_outer_radius, pin.head_length) +
                        cylinder(pin.shank_radius, pin.length - pin.head_length);
  const double shank = (pi * pin.shank_radius * pin.shank_radius).value();
  const units::Length held = layout.end_plate.placement.x + 0.5 * layout.end_plate.thickness;
  const double reach = std::max(5e-3, (held - pin.placement.x - 0.5 * pin.head_length).value());
  chain.bodies[std::size_t(Body::pin)] = {.capacity =
                                              volume * metal.density.value() * metal.specific_heat.room(),
                                          .loss = metal.conductivity.room() * shank / reach};
}

void touch_rollers(const Rollers &rollers, Chain &chain) {
  std::size_t nearest = 0;
  for (std::size_t i = 0; i < chain.joint; ++i) {
    const Ring &ring = chain.rings[i];
    if (std::abs(ring.position + rollers.from_joint.value()) <= 0.5 * ring.length) {
      nearest = i;
    }
  }
  chain.contacts.push_back(
      {.ring = nearest, .body = Body::roller, .area = 1.0, .coefficient = rollers.conductance});
}

} // namespace

void add_contacts(const job::Job &job, const fixture::Layout &layout, const ContactWishes &wishes,
                  Chain &chain) {
  touch_chamber(job, layout.body, wishes.body_loss, chain);
  touch_plug(job, layout.plug, wishes.body_loss, chain);
  touch_pin(job, layout, wishes.pin_coefficient, chain);
  if (wishes.rollers) {
    touch_rollers(*wishes.rollers, chain);
  }
}

} // namespace purgewright::heat

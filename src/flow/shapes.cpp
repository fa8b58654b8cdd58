#include "shapes.hpp"

#include "purgewright/fixture/access.hpp"
#include "purgewright/fixture/cavity.hpp"
#include "purgewright/fixture/volumes.hpp"

#include <algorithm>
#include <cmath>

namespace purgewright::flow {
namespace {

using units::Length;

double across(const Point &p) {
  return std::hypot(p.y, p.z);
}

// Radius of a dome of this sphere and height at x from its rim plane; 0 beyond its apex.
double dome_radius(Length sphere, Length height, double x) {
  const double r = sphere.value(), from_middle = x + r - height.value();
  return std::sqrt(std::max(0.0, r * r - from_middle * from_middle));
}

bool in_rounded_rectangle(const fixture::Slot &slot, double x, double y) {
  const double corner = slot.corner_radius.value();
  const double middle = 0.5 * (slot.x_min + slot.x_max).value();
  const double out_x = std::abs(x - middle) - (0.5 * slot.length().value() - corner);
  const double out_y = std::abs(y) - (0.5 * slot.width.value() - corner);
  return std::hypot(std::max(out_x, 0.0), std::max(out_y, 0.0)) < corner ||
         (corner <= 0.0 && out_x < 0.0 && out_y < 0.0);
}

} // namespace

Shapes::Shapes(const job::Job &job, const fixture::Layout &layout) : job_(job), layout_(layout) {
  const auto torch = fixture::access_tools(job, layout).torch;
  cup_mouth_ = (torch.joint_radius + torch.stand_off).value();
}

Matter Shapes::bore_at(const Point &p) const {
  const auto &cap = job_.cap;
  const auto &plug = layout_.plug;
  const auto &lance = layout_.lance;
  const double r = across(p);
  const auto [from, to] = bore_ends();
  if (p.x < from || p.x > to) {
    return matter::metal;
  }
  if (p.x > 0.0) {
    return r < dome_radius(fixture::dome_sphere(cap) - cap.thickness, cap.dome_height - cap.thickness, p.x)
               ? matter::bore
               : matter::workpiece;
  }
  const bool in_nose = r < plug.nose_radius.value() && p.x < from + plug.nose_length.value();
  const bool in_lance = lance.present && p.x < (lance.placement.x + lance.length).value() &&
                        std::hypot(p.y, p.z - lance.placement.z.value()) < lance.outside_radius.value();
  const bool in_spigot = cap.shape == job::CapShape::spigot && p.x > -cap.spigot_length.value() &&
                         r < 0.5 * cap.spigot_diameter.value();
  if (in_nose || in_lance) {
    return matter::metal;
  }
  return r < bore_radius() && !in_spigot ? matter::bore : matter::workpiece;
}

bool Shapes::in_workpiece(const Point &p, double r) const {
  const auto &cap = job_.cap;
  const auto &plug = layout_.plug;
  if (p.x > 0.0) {
    return p.x < cap.reach().value() &&
           r < (cap.shape == job::CapShape::domed
                    ? dome_radius(fixture::dome_sphere(cap), cap.dome_height, p.x)
                    : 0.5 * cap.diameter.value());
  }
  const double end = -job_.tube.length.value();
  if (p.x < end) {
    return r < layout_.spindle.radius.value();
  }
  return r < (p.x < end + plug.front_x().value() ? plug.shoulder_radius.value() : tube_radius());
}

bool Shapes::in_pin(double x, double r) const {
  const auto &pin = layout_.pin;
  const double from = pin.placement.x.value();
  return x > from &&
         r < (x < from + pin.head_length.value() ? pin.contact_outer_radius : pin.shank_radius).value();
}

Matter Shapes::chamber_at(const Point &p, bool torch) const {
  const auto &body = layout_.body;
  const auto [from, to] = chamber_ends();
  const double r = across(p);
  const double cup = 0.5 * job_.torch.cup_outside_diameter.value();
  if (torch && p.z > cup_mouth_ && std::hypot(p.x, p.y) < cup) {
    return matter::torch;
  }
  if (p.z > top()) {
    return matter::room;
  }
  if (p.x < from || p.x > to) {
    return matter::metal;
  }
  if (in_workpiece(p, r)) {
    return matter::workpiece;
  }
  if (in_pin(p.x, r)) {
    return matter::metal;
  }
  const bool hollow = p.x < body.cavity_start.value()
                          ? r < body.opening_radius.value()
                          : in_cavity(body, units::metres(p.y), units::metres(p.z));
  const bool in_slot = p.z > 0.0 && in_rounded_rectangle(body.slot, p.x, p.y);
  return hollow || in_slot ? matter::chamber : matter::metal;
}

bool Shapes::in_opening(const Point &p) const {
  return in_rounded_rectangle(layout_.opening(), p.x, p.y);
}

bool Shapes::at_joint(const Point &p) const {
  return std::abs(p.x) < 0.5 * job_.torch.cup_bore.value();
}

Shapes::Ends Shapes::bore_ends() const {
  const auto &cap = job_.cap;
  const Length front = cap.shape == job::CapShape::domed ? cap.dome_height - cap.thickness : Length{};
  return {(layout_.plug.spigot_length - job_.tube.length).value(), front.value()};
}

Shapes::Ends Shapes::chamber_ends() const {
  return {layout_.body.x_min.value(), layout_.end_plate.placement.x.value()};
}

std::vector<double> Shapes::bore_steps() const {
  const double from = bore_ends().first;
  std::vector<double> steps{0.0, from + layout_.plug.nose_length.value()};
  if (layout_.lance.present) {
    steps.push_back((layout_.lance.placement.x + layout_.lance.length).value());
  }
  if (job_.cap.shape == job::CapShape::spigot) {
    steps.push_back(-job_.cap.spigot_length.value());
  }
  return steps;
}

std::vector<double> Shapes::chamber_steps() const {
  const auto &body = layout_.body;
  const auto &opening = layout_.opening();
  return {job_.cap.reach().value(), opening.x_min.value(), opening.x_max.value(), body.cavity_start.value()};
}

double Shapes::widest_radius() const {
  return std::max(cavity_reach(layout_.body), layout_.body.opening_radius).value();
}

std::vector<double> Shapes::heights() const {
  return {tube_radius(), -tube_radius(), cup_mouth_};
}

} // namespace purgewright::flow

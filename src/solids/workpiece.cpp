// The tube and the cap, shown for reference and taken out of the gas spaces.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"

#include <cmath>

namespace purgewright::solids {
namespace {

// Meridian arc of a sphere about (centre, 0) from the rim plane x = 0 to its apex; corners in joint's frame.
ProfilePoint arc_to_apex(Length centre, Length radius) {
  const Length rim = units::sqrt(units::square(radius) - units::square(centre));
  // A point on the arc half way in angle between rim and apex.
  const double half_angle = 0.5 * std::atan2(rim.value(), -centre.value());
  return {Length{}, rim,
          ProfilePoint::Via{centre + radius * std::cos(half_angle), radius * std::sin(half_angle)}};
}

Solid dome(const job::Cap &cap) {
  const ProfilePoint inside = dome_inside(cap);
  // Outer rim to apex, along the axis to the inner apex, back to the inner rim, closed by the rim's flat.
  return kernel::revolve({{}, kernel::along_x}, {dome_outside(cap),
                                                 {cap.dome_height, Length{}},
                                                 {cap.dome_height - cap.thickness, Length{}, inside.via},
                                                 {Length{}, inside.radial}});
}

} // namespace

ProfilePoint dome_outside(const job::Cap &cap) {
  const Length sphere = fixture::dome_sphere(cap);
  return arc_to_apex(cap.dome_height - sphere, sphere);
}

ProfilePoint dome_inside(const job::Cap &cap) {
  const Length sphere = fixture::dome_sphere(cap);
  return arc_to_apex(cap.dome_height - sphere, sphere - cap.thickness);
}

Solid build_tube(const job::Job &job) {
  return kernel::in_part("tube", [&] {
    const auto &tube = job.tube;
    const Length outer = 0.5 * tube.outside_diameter;
    const Length inner = 0.5 * tube.inside_diameter;
    const Solid plain =
        kernel::revolve({{}, kernel::along_x},
                        {{-tube.length, inner}, {-tube.length, outer}, {Length{}, outer}, {Length{}, inner}});
    if (tube.vent.count == 0) {
      return plain;
    }
    std::vector<Solid> vents;
    for (int hole = 0; hole < tube.vent.count; ++hole) {
      const double angle = 2.0 * units::pi * hole / tube.vent.count; // the first one points down
      const double y = std::sin(angle);
      const double z = -std::cos(angle);
      const Length start = 0.5 * inner;
      vents.push_back(kernel::cylinder({{-tube.vent.from_joint, y * start, z * start}, {0.0, y, z}},
                                       0.5 * tube.vent.diameter, outer - start + kernel::cutter_overshoot));
    }
    return kernel::cut(plain, vents);
  });
}

Solid build_cap(const job::Job &job) {
  return kernel::in_part("cap", [&] {
    const auto &cap = job.cap;
    if (cap.shape == job::CapShape::domed) {
      return dome(cap);
    }
    const Length radius = 0.5 * cap.diameter;
    std::vector<ProfilePoint> profile{{cap.thickness, Length{}}, {cap.thickness, radius}, {Length{}, radius}};
    if (cap.shape == job::CapShape::spigot) {
      const Length spigot = 0.5 * cap.spigot_diameter;
      profile.push_back({Length{}, spigot});
      profile.push_back({-cap.spigot_length, spigot});
      profile.push_back({-cap.spigot_length, Length{}});
    } else {
      profile.push_back({Length{}, Length{}});
    }
    return kernel::revolve({{}, kernel::along_x}, profile);
  });
}

} // namespace purgewright::solids

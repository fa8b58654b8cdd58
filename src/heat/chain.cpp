#include "purgewright/heat/chain.hpp"

#include "heat/contacts.hpp"
#include "heat/require.hpp"
#include "purgewright/fixture/volumes.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace purgewright::heat {

namespace {

using detail::require;
using units::pi;

void check(const Mesh &mesh) {
  constexpr std::string_view here = "heat mesh";
  require(mesh.tube >= 3, here, "at least 3 cells along the tube", mesh.tube);
  require(mesh.cap >= 3, here, "at least 3 cells over the cap", mesh.cap);
  require(mesh.angles >= 8 && mesh.angles % 2 == 0, here, "angles must be even and at least 8", mesh.angles);
  require(mesh.grading >= 0.0, here, "grading must not be negative", mesh.grading);
}

// Distance from the joint of the share `x` of the tube's cells.
double graded(double length, double grading, double x) {
  return grading < 1e-9 ? length * x : length * std::expm1(grading * x) / std::expm1(grading);
}

struct Wall {
  double outer, inner, length;
  double thickness() const { return outer - inner; }
  double middle() const { return 0.5 * (outer + inner); }
};

// Rings of the tube wall from its far end to the joint; the last one's link is left for the joint.
void add_tube(const Wall &wall, int cells, double grading, std::vector<Ring> &rings) {
  for (int i = cells - 1; i >= 0; --i) {
    const double near = graded(wall.length, grading, double(i) / cells);
    const double far = graded(wall.length, grading, double(i + 1) / cells);
    const double length = far - near;
    const double area = 2.0 * pi * wall.middle() * wall.thickness();
    rings.push_back({.position = -0.5 * (near + far),
                     .length = length,
                     .radius = wall.middle(),
                     .volume = area * length,
                     .section = wall.thickness() * length,
                     .face = area,
                     .to_face = 0.5 * length,
                     .outside = 2.0 * pi * wall.outer * length,
                     .inside = 2.0 * pi * wall.inner * length});
  }
}

// Each ring's far half of the link is the next ring's near half.
void link(std::vector<Ring> &rings) {
  for (std::size_t i = 0; i + 1 < rings.size(); ++i) {
    rings[i].from_face = 0.5 * rings[i + 1].length;
    if (rings[i].far_face == 0.0) {
      rings[i].far_face = rings[i].face;
    }
  }
  rings.back().face = 0.0;
}

// Cap plate over the tube's end: the annulus over the wall, then the disc inside the bore.
void add_disc(const job::Cap &cap, const Wall &wall, int cells, std::vector<Ring> &rings) {
  const double outer = std::max(0.5 * cap.diameter.value(), wall.middle() + 0.25 * wall.thickness());
  const double plate = cap.thickness.value();
  const double inner = wall.inner;
  const double annulus = pi * (outer * outer - inner * inner);
  const double thickness = plate + cap.spigot_length.value();
  const double half_path = 0.5 * (0.5 * plate + 0.5 * (outer - inner));
  rings.push_back({.metal = 1,
                   .position = half_path,
                   .length = 2.0 * half_path,
                   .radius = 0.5 * (outer + inner),
                   .volume = annulus * plate,
                   .section = (outer - inner) * plate,
                   .face = 2.0 * pi * inner * plate,
                   .far_face = 2.0 * pi * inner * thickness,
                   .to_face = half_path,
                   .outside = 2.0 * pi * outer * plate + annulus});
  const double step = inner / cells;
  for (int i = 0; i < cells; ++i) {
    const double far = inner - step * i, near = i + 1 == cells ? 0.0 : inner - step * (i + 1);
    const double area = pi * (far * far - near * near);
    rings.push_back({.metal = 1,
                     .position = 2.0 * half_path + step * (i + 0.5),
                     .length = step,
                     .radius = 0.5 * (far + near),
                     .volume = area * thickness,
                     .section = step * thickness,
                     .face = 2.0 * pi * near * thickness,
                     .to_face = 0.5 * step,
                     .outside = area,
                     .inside = area});
  }
}

// Dome: shell of revolution on the sphere through the middle of its metal; the rim's first strip is the
// joint.
void add_dome(const job::Cap &cap, const Wall &wall, int cells, std::vector<Ring> &rings) {
  const double thickness = cap.thickness.value();
  const double outer = fixture::dome_sphere(cap).value();
  const double sphere = outer - 0.5 * thickness;
  // Where the rim's plane cuts that sphere.
  const double rim = std::acos(std::clamp((outer - cap.dome_height.value()) / sphere, 0.0, 1.0));
  const double first = std::min(wall.thickness() / sphere, 0.25 * rim);
  const double step = (rim - first) / cells;
  double far = rim, position = 0.0;
  for (int i = 0; i <= cells; ++i) {
    const double near = i == cells ? 0.0 : rim - first - step * i;
    const double length = sphere * (far - near);
    const double area = 2.0 * pi * sphere * sphere * (std::cos(near) - std::cos(far));
    rings.push_back({.metal = 1,
                     .position = position + 0.5 * length,
                     .length = length,
                     .radius = sphere * std::sin(0.5 * (near + far)),
                     .volume = area * thickness,
                     .section = length * thickness,
                     .face = 2.0 * pi * sphere * std::sin(near) * thickness,
                     .to_face = 0.5 * length,
                     .outside = area * (outer * outer) / (sphere * sphere),
                     .inside = area * (outer - thickness) * (outer - thickness) / (sphere * sphere)});
    far = near;
    position += length;
  }
}

const Metal &metal_of(const standards::Metal &metal) {
  const Metal *found = thermal_metal(metal.name);
  if (found == nullptr) {
    throw std::domain_error(fmt::format("heat chain: no thermal properties of {}", metal.name));
  }
  return *found;
}

} // namespace

Mesh mesh_for(const job::Job &job, units::Length first_cell, double growth, units::Length cap_cell,
              units::Length angle_cell, int angles_least, int angles_most) {
  const double length = job.tube.length.value();
  const double cells = std::log1p(length * (growth - 1.0) / first_cell.value()) / std::log(growth);
  Mesh mesh;
  mesh.tube = std::max(6, static_cast<int>(std::ceil(cells)));
  mesh.grading = mesh.tube * std::log(growth);
  mesh.cap = std::max(4, static_cast<int>(std::ceil(0.5 * units::ratio(job.tube.inside_diameter, cap_cell))));
  const double round = pi * units::ratio(job.tube.outside_diameter, angle_cell);
  mesh.angles = std::clamp(2 * static_cast<int>(std::ceil(0.5 * round)), angles_least, angles_most);
  return mesh;
}

Chain chain_of(const job::Job &job, const fixture::Layout &layout, const Mesh &mesh,
               const ContactWishes &wishes) {
  check(mesh);
  Chain chain;
  chain.metals = {metal_of(*job.tube.material), metal_of(*job.cap.material)};
  chain.angles = mesh.angles;
  const Wall wall{.outer = 0.5 * job.tube.outside_diameter.value(),
                  .inner = 0.5 * job.tube.inside_diameter.value(),
                  .length = job.tube.length.value()};
  add_tube(wall, mesh.tube, mesh.grading, chain.rings);
  chain.joint = chain.rings.size();
  if (job.cap.shape == job::CapShape::domed) {
    add_dome(job.cap, wall, mesh.cap, chain.rings);
  } else {
    add_disc(job.cap, wall, mesh.cap, chain.rings);
  }
  link(chain.rings);
  add_contacts(job, layout, wishes, chain);
  return chain;
}

Chain plain_wall(const Metal &metal, units::Length mid_radius, units::Length wall, units::Length length,
                 int cells, int angles, double grading) {
  check({.tube = cells, .cap = 3, .angles = angles, .grading = grading});
  Chain chain;
  chain.metals = {metal};
  chain.angles = angles;
  const double half = 0.5 * wall.value();
  add_tube({.outer = mid_radius.value() + half, .inner = mid_radius.value() - half, .length = length.value()},
           cells, grading, chain.rings);
  chain.joint = chain.rings.size() - 1;
  link(chain.rings);
  return chain;
}

} // namespace purgewright::heat

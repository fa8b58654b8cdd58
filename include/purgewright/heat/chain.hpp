// The work as a chain of rings for conduction: the unrolled tube wall from plug to joint, the ring of metal
// at the joint, and the cap from rim to centre, with what each ring touches.
//
// Units: SI (m, m2, m3, W/K, J/K, W/(m2 K)); areas, volumes and conductances are those of the whole ring.
// Frame: `position` runs along the middle of the metal, from the joint: negative into the tube, positive over
// the cap to its centre; the angle runs round the axis.
// Model: the metal is one cell thick, so temperatures are means through the wall. The ring at the joint is
// the cap's annulus over the tube's end (flat and spigot caps) or the rim of the dome. A dome is a shell of
// revolution with its true arc length. A spigot cap is a disc as thick as plate and spigot together inside
// the bore; what crosses the spigot's clearance is left out. The vent is left out. Errors: std::domain_error
// when the mesh has less than 3 cells along the tube or cap, less than 8 or an odd number of angles, or a
// grading below 0.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/heat/metal.hpp"
#include "purgewright/job/job.hpp"

#include <array>
#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

namespace purgewright::heat {

struct Ring {
  std::size_t metal = 0; // index in Chain::metals
  double position = 0.0; // of its middle
  double length = 0.0;   // along the chain
  double radius = 0.0;   // of its middle line round the axis
  double volume = 0.0;
  double section = 0.0;   // length x thickness, what conduction round the axis passes
  double face = 0.0;      // area towards the next ring; 0 for the last
  double far_face = 0.0;  // the next ring's area towards this one
  double to_face = 0.0;   // middle to that face
  double from_face = 0.0; // that face to the next ring's middle
  double outside = 0.0;   // surface in still gas that also radiates to the surroundings
  double inside = 0.0;    // surface in the bore's gas
};

// Bodies that the work touches. Each is one lump that warms up and loses heat to the room.
enum class Body { chamber, plug, pin, roller };
inline constexpr std::size_t body_count = 4;
struct Lump {
  double capacity = std::numeric_limits<double>::infinity(); // infinite: stays at ambient
  double loss = 0.0;                                         // conductance to the room
};

struct Contact {
  std::size_t ring = 0;
  Body body = Body::chamber;
  double area = 0.0;
  double gap = 0.0;         // above 0: a gas film of this thickness; else the coefficient holds
  double coefficient = 0.0; // W/(m2 K)
};

struct Chain {
  std::vector<Metal> metals;
  std::vector<Ring> rings;
  std::vector<Contact> contacts;
  std::array<Lump, body_count> bodies;
  int angles = 0;
  std::size_t joint = 0; // ring at the joint
};

// Cells along tube and cap and round the axis. The tube's cells grow from the joint by exp(grading) over its
// length, so that doubling every count keeps the grading and halves every cell.
struct Mesh {
  int tube = 0, cap = 0, angles = 0;
  double grading = 0.0;
};

// Mesh whose first cell beside the joint and growth from cell to cell are as given; angles even.
Mesh mesh_for(const job::Job &, units::Length first_cell, double growth, units::Length cap_cell,
              units::Length angle_cell, int angles_least, int angles_most);

struct Rollers {
  units::Length from_joint{};
  double conductance = 0.0; // W/K, of all rollers together
};

struct ContactWishes {
  double pin_coefficient = 1000.0;     // W/(m2 K): hard metals lightly pressed, some 400 to 3600 (Incropera &
                                       // DeWitt, table 3.1); the value itself is common practice, no source
  double body_loss = 10.0;             // W/(m2 K) from chamber and plug to the room: still air with radiation
  std::optional<Rollers> rollers = {}; // absent: a ball bearing's touch takes no heat worth counting
};

Chain chain_of(const job::Job &, const fixture::Layout &, const Mesh &, const ContactWishes &);

// A plain open tube wall without contacts, joint at one end: for closed forms.
Chain plain_wall(const Metal &, units::Length mid_radius, units::Length wall, units::Length length, int cells,
                 int angles, double grading = 0.0);

} // namespace purgewright::heat

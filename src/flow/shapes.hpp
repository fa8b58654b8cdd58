// What stands where in a layout, in closed form, for the cells of a mesh. Private to the flow floor.
//
// Units: metres. Frame: the joint's. Errors: none. Guarantee: the shapes whose volumes volumes.hpp gives, but
// for what gas_space.hpp leaves out.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/flow/mesh.hpp"

#include <utility>
#include <vector>

namespace purgewright::flow {

namespace matter {
inline constexpr Matter torch = -3, workpiece = -2, metal = -1, bore = 0, chamber = 1, room = 2;
}

class Shapes {
 public:
  Shapes(const job::Job &, const fixture::Layout &);

  Matter bore_at(const Point &) const;
  Matter chamber_at(const Point &, bool torch) const;

  bool in_opening(const Point &) const; // of the chamber's top: slot or the mask's window
  bool at_joint(const Point &) const;   // as near to it along X as the torch's cup is wide

  using Ends = std::pair<double, double>;
  Ends bore_ends() const;                                        // spigot's face to the cap
  Ends chamber_ends() const;                                     // wiper to end plate
  std::vector<double> bore_steps() const, chamber_steps() const; // where shapes begin and end along X
  std::vector<double> heights() const;                           // and along Z in the chamber

  double bore_radius() const { return 0.5 * job_.tube.inside_diameter.value(); }
  double tube_radius() const { return 0.5 * job_.tube.outside_diameter.value(); }
  double widest_radius() const; // of cavity and rear opening
  double slot_half_width() const { return 0.5 * layout_.body.slot.width.value(); }
  double top() const { return layout_.body.z_max.value(); }
  double cup_mouth() const { return cup_mouth_; } // z, the torch upright over the joint

 private:
  bool in_workpiece(const Point &, double r) const;
  bool in_pin(double x, double r) const;

  const job::Job &job_;
  const fixture::Layout &layout_;
  double cup_mouth_ = 0.0;
};

} // namespace purgewright::flow

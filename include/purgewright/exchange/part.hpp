// A part and an assembly as files carry them: names, texts, colours, places.
//
// Units: colours are sRGB components 0 to 1, as screens and colour pickers give them.
// Frame: a part in its own frame; `placement` takes it to the assembly's (tube axis X, Z up).
// Range and errors: texts may hold any UTF-8; control characters make the writers throw
// std::invalid_argument.
// Guarantee: plain values.
// Source: common practice, no source.
#pragma once

#include "purgewright/fixture/layout.hpp"
#include "purgewright/solids/kernel/frame.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <optional>
#include <string>
#include <vector>

namespace purgewright::exchange {

// A text that travels with the part, such as {"thread, rear port", "G 1/8, 8.8 drill"}.
struct Property {
  std::string name;
  std::string value;
};

// Limits of a round face's diameter by an ISO 286 class, such as h7; the face holds the point.
struct Fit {
  std::string name;
  fixture::Position on;
  char letter = 'h'; // upper case for a hole
  int grade = 7;
};

// Diameter of a round face between its nominal less and plus this.
struct SizeTolerance {
  std::string name;
  fixture::Position on;
  units::Length plus_minus{};
};

// Where the face that holds one point lies to the datum, the faces that hold the others: circular runout of a
// round face to a round one's axis, place of its axis across a plane's, a hole's or a pair of holes' middle,
// squareness of its axis to a plane.
struct GeometricTolerance {
  enum class Kind { runout, position, squareness };
  Kind kind = Kind::runout;
  fixture::Position on;
  std::vector<fixture::Position> to;
  std::string datum = "A";
  units::Length tolerance{}; // width of the zone
  bool round_zone = false;   // its diameter instead
};

// Distance between the axes of round faces, plane faces or one of each, which hold these points.
struct Distance {
  std::string name;
  fixture::Position from, to;
  units::Length nominal{}, plus_minus{};
};

struct Colour {
  double red;
  double green;
  double blue;
};

// Semantic tolerances: STEP of a part alone carries them.
struct Tolerances {
  std::vector<Fit> fits{};
  std::vector<SizeTolerance> sizes{};
  std::vector<GeometricTolerance> geometric{};
  std::vector<Distance> distances{};
  bool empty() const { return fits.empty() && sizes.empty() && geometric.empty() && distances.empty(); }
};

struct Part {
  std::string name;
  std::string description{};
  std::vector<Property> properties{};
  std::string material{};         // as the parts list names it; empty: not said
  std::optional<Colour> colour{}; // of a part alone; in an assembly its items have theirs
  Tolerances tolerances{};
  solids::kernel::Solid solid;
};

struct AssemblyItem {
  Part part;
  Colour colour;
  solids::kernel::Placement placement{};
};

struct Assembly {
  std::string name;
  std::string description{};
  std::vector<AssemblyItem> items;
};

} // namespace purgewright::exchange

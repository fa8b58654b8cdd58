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

// Circular runout of the face that holds one point to the axis of the face that holds the other, the datum.
struct Runout {
  fixture::Position on, to;
  std::string datum = "A";
  units::Length tolerance{};
};

struct Part {
  std::string name;
  std::string description{};
  std::vector<Property> properties{};
  std::vector<Fit> fits{}; // semantic tolerances: STEP of a part alone
  std::vector<Runout> runouts{};
  solids::kernel::Solid solid;
};

struct Colour {
  double red;
  double green;
  double blue;
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

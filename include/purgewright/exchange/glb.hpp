// Binary glTF of an assembly for viewers.
//
// Units: metres in the file. Frame: Y up in the file, as the format demands; the assembly's Z becomes Y.
// Range and errors: FileError when the file cannot be written; otherwise as step.hpp.
// Guarantee: one node a part with its name and colour; same assembly, same bytes; nothing goes to stdout.
// Source: glTF 2.0.
#pragma once

#include "purgewright/exchange/part.hpp"
#include "purgewright/units/quantity.hpp"

#include <filesystem>

namespace purgewright::exchange {

struct GlbOptions {
  units::Length deflection = units::millimetres(0.05);
  units::Angle angle = units::degrees(12.0);
};

void write_glb(std::filesystem::path const &path, Assembly const &assembly, GlbOptions const &options = {});

} // namespace purgewright::exchange

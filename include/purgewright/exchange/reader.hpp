// Reads a STEP file back: solids with names and colours, where the assembly puts them.
//
// Units: millimetres whatever the file states. Frame: the file's global one.
// Range and errors: FileError when the file cannot be opened or holds no STEP; solids are not checked.
// Guarantee: parts in the file's order, assemblies taken apart; nothing goes to stdout; process-wide
// settings are put back.
// Source: OpenCASCADE 7.6.3.
#pragma once

#include "purgewright/exchange/part.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace purgewright::exchange {

struct ReadPart {
  std::string name;
  std::optional<Colour> colour;
  solids::kernel::Solid solid; // at its place
};

std::vector<ReadPart> read_step(std::filesystem::path const &path);

} // namespace purgewright::exchange

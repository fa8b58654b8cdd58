// The files of a fixture: every made part as STEP and STL, and the assembly with tube and cap shown.
//
// Units: millimetres in STEP and STL, metres in glb. Frame: parts in their own frames, the assembly in the
// joint's. Range and errors: the layout must be buildable; kernel::SolidError, also when a volume measured on
// the solids or a clearance disagrees with the closed form; FileError when a file cannot be written.
// Guarantee: same job and header, same bytes. Clashes between parts are returned for the rules to judge
// before anything is written.
#pragma once

#include "purgewright/exchange/step.hpp"
#include "purgewright/fixture/volumes.hpp"
#include "purgewright/solids/interference.hpp"
#include "purgewright/solids/parts.hpp"

#include <filesystem>
#include <functional>
#include <string_view>
#include <vector>

namespace purgewright::exchange {

// Told in a few words what is about to be done.
using OnStep = std::function<void(std::string_view)>;

struct BuiltFixture {
  solids::Assembly assembly; // agrees with the closed forms; for the drawings
  solids::GasSpaces gas;
  std::vector<solids::Clash> clashes; // parts that share metal
};

BuiltFixture build_fixture(const job::Job &, const fixture::Layout &, const fixture::Volumes &,
                           const OnStep &);

// Writes assembly.glb and gas-spaces.glb into the folder: what there is to look at.
void write_view(const std::filesystem::path &folder, const job::Job &, const fixture::Layout &,
                const BuiltFixture &, const StepHeader &);

// Writes parts/NAME.step, parts/NAME.stl and assembly.step below the folder.
void write_fixture_files(const std::filesystem::path &folder, const job::Job &, const fixture::Layout &,
                         const BuiltFixture &, const StepHeader &, const OnStep &);

} // namespace purgewright::exchange

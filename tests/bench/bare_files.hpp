// STEP, STL and glb of an assembly by the kernel's own writers, as a program without further demands would do
// it.
#pragma once

#include "purgewright/solids/parts.hpp"

#include <filesystem>

namespace purgewright::bench {

void write_bare_files(const std::filesystem::path &folder, const solids::Assembly &assembly);

} // namespace purgewright::bench

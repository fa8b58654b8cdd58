// STEP files (AP214) of one part or of an assembly; a part with tolerances is AP242 and carries them as
// meaning.
//
// Units: millimetres in the file, stated there. Frame: as part.hpp.
// Range and errors: FileError when the file cannot be written; SolidError when the kernel cannot translate
// a solid; std::invalid_argument for an assembly without items, a colour outside 0 to 1, or a text with
// control characters.
// Guarantee: same arguments, same bytes, in any order of calls and in any process: every header field is
// set, the clock is never read, and the kernel's running numbers are replaced. Names, descriptions,
// colours and placements are carried; properties are written as user-defined attributes (general property
// with descriptive items). Nothing goes to stdout. Process-wide settings are put back. One kernel thread.
// Source: ISO 10303-21 for texts and header; user-defined attributes after the recommended practices of
// the STEP implementor forum.
#pragma once

#include "purgewright/exchange/part.hpp"

#include <filesystem>
#include <string>

namespace purgewright::exchange {

struct StepHeader {
  std::string time_stamp; // ISO 8601, chosen by the caller, such as 2026-01-31T00:00:00
  std::string author{};
  std::string organization{};
  std::string originating_system{}; // the program and its version
  std::string authorisation{};
  std::string description{}; // of the file; empty: the part's or assembly's description
  std::string caution{};     // leads every description: of a design that is not for use
};

std::string step_text(Part const &part, StepHeader const &header);
std::string step_text(Assembly const &assembly, StepHeader const &header);

void write_step(std::filesystem::path const &path, Part const &part, StepHeader const &header);
void write_step(std::filesystem::path const &path, Assembly const &assembly, StepHeader const &header);

} // namespace purgewright::exchange

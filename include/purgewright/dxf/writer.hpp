// Writes sheets as DXF, in a library of its own: dxflib comes under the GPL, version 2 or later, and so does
// what is linked with it. All else is free of it.
//
// Units: the part at full size, in millimetres or, on an inch sheet, in inches; frame, title block and
// lettering are larger or smaller than on paper by the sheet's scale. Dimensions measure what they print;
// those of a view with a scale of its own by their style's factor. Frame: drawing/sheet.hpp, origin in the
// sheet's lower left corner. Range and errors: files::FileError when a file cannot be written whole.
// Guarantee: same sheet, same bytes. One thread.
// Source: DXF R2000 by dxflib.
#pragma once

#include "purgewright/drawing/sheet.hpp"

#include <filesystem>
#include <span>

namespace purgewright::dxf {

void write_dxf(const std::filesystem::path &, const drawing::Sheet &);

// All sheets of a design as SHEET.dxf, in a folder that is there.
void write_drawings(const std::filesystem::path &folder, std::span<const drawing::Sheet>);

} // namespace purgewright::dxf

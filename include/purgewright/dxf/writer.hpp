// Writes sheets as DXF, in a library of its own: dxflib comes under the GPL, version 2 or later, and so does
// what is linked with it. All else is free of it.
//
// Units: paper millimetres; dimensions carry their full-size values.
// Frame: drawing/sheet.hpp. Range and errors: files::FileError when a file cannot be written whole.
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

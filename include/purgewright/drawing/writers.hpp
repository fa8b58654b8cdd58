// Writes a sheet as PDF, SVG or DXF.
//
// Units: PDF and SVG at true paper size; DXF in paper millimetres, dimensions carry their full-size values.
// Frame: sheet.hpp. Range and errors: std::runtime_error when the file cannot be written whole.
// Guarantee: same sheet, same bytes; fonts embedded in PDF. One thread.
// Source: PDF 1.5 and SVG 1.1 by cairo, DXF R2000 by dxflib.
#pragma once

#include "purgewright/drawing/sheet.hpp"

#include <filesystem>
#include <span>

namespace purgewright::drawing {

void write_pdf(const std::filesystem::path &, std::span<const Sheet>); // one page a sheet
void write_svg(const std::filesystem::path &, const Sheet &);
void write_dxf(const std::filesystem::path &, const Sheet &);

} // namespace purgewright::drawing

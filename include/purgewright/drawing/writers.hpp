// Writes a sheet as PDF, SVG or PNG; as DXF: dxf/writer.hpp.
//
// Units: true paper size; a PNG has 150 dots an inch.
// Frame: sheet.hpp. Range and errors: files::FileError when a file cannot be written whole.
// Guarantee: same sheet, same bytes; fonts embedded in PDF. One thread.
// Source: PDF 1.5, SVG 1.1 and PNG by cairo.
#pragma once

#include "purgewright/drawing/sheet.hpp"

#include <filesystem>
#include <span>

namespace purgewright::drawing {

void write_pdf(const std::filesystem::path &, std::span<const Sheet>); // one page a sheet
void write_svg(const std::filesystem::path &, const Sheet &);
void write_png(const std::filesystem::path &, const Sheet &); // black on white

// All sheets of a design: PART.pdf with its sheets as pages, SHEET.svg, of the assembly's views SHEET.png,
// and all.pdf, in the folder, which is made.
void write_drawings(const std::filesystem::path &folder, std::span<const Sheet>);

} // namespace purgewright::drawing

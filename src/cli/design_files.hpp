// The files that purgewright-solids has made, read for a page.
//
// Units, frame: none. Errors: files::FileError. Guarantee: sheets in the order of their names, the assembly's
// first. Source: none.
#pragma once

#include "purgewright/html/report_page.hpp"

#include <filesystem>

namespace purgewright::cli {

enum class DesignFiles { view, all }; // without the sheets, which come last

html::Shown shown_in(const std::filesystem::path &folder, DesignFiles);

} // namespace purgewright::cli

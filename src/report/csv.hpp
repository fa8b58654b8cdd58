// One cell of a comma-separated file, RFC 4180; private to the report floor.
#pragma once

#include <string>

namespace purgewright::report {

std::string csv_cell(const std::string &text);

} // namespace purgewright::report

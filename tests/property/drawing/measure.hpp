// Measures a dimension again on the solid that it describes.
#pragma once

#include "purgewright/drawing/sheet.hpp"
#include "purgewright/solids/kernel/solid.hpp"

#include <optional>
#include <string>

namespace purgewright::test {

// Millimetres at full size; nothing, with the reason, when the solid has no such feature.
struct Measured {
  std::optional<double> value;
  std::string reason{};
};

Measured measure(const drawing::Dimension &, const solids::kernel::Solid &);

} // namespace purgewright::test

// One entry of shop.stock; private to the job floor.
#pragma once

#include "purgewright/job/job.hpp"

#include <optional>
#include <string_view>

namespace purgewright::job {

inline constexpr std::string_view stock_forms = "plate 20 mm, flat 20 mm x 60 mm, bar 60 mm or round 1.5 in";

// Empty when the text is not of one of the forms.
std::optional<StockItem> parse_stock(std::string_view text);

} // namespace purgewright::job

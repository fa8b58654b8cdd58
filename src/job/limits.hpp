// What a key accepts, in words for messages and for the schema.
#pragma once

#include "purgewright/job/keys.hpp"

#include <string>
#include <string_view>

namespace purgewright::job {

// The unit a user wrote behind the number of a quantity, "mm" of "0.9 mm"; empty when none.
std::string_view unit_written(std::string_view quantity);

// "a length from 0.3 mm to 6 mm"; limits stand in the unit the user wrote when it is one of that dimension.
std::string allowed_values(const FieldInfo &, std::string_view unit = {});

// A number with at most four significant digits and no exponent.
std::string plain_number(double);

} // namespace purgewright::job

// A row of a comparison as JSON and back, to the bit: for pieces of sweeps and rows kept. Private to report.
//
// Units: SI; what is not a number is null. Frame: none. Errors: nlohmann's where a value is absent or of
// another kind; BadShard where one cannot be. Guarantee: row_of(row_json(row)) is the row. Source: RFC 8259.
#pragma once

#include "purgewright/report/shard.hpp"

#include <nlohmann/json.hpp>

namespace purgewright::report::rows {

using Json = nlohmann::ordered_json;

Json row_json(const ComparedDesign &);
ComparedDesign row_of(const Json &);

template <class Enum> Enum enum_of(const Json &number, Enum last) {
  const int value = number.get<int>();
  if (value < 0 || value > static_cast<int>(last)) {
    throw BadShard("its rows are of another version");
  }
  return static_cast<Enum>(value);
}

} // namespace purgewright::report::rows

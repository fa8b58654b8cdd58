// Text to a number: the first byte chooses the dimension. A finite number or a sentence, never both; a number
// printed as a shop writes it reads back.
#include "promise.hpp"

#include "purgewright/units/parse.hpp"

#include <cmath>

using namespace purgewright;

namespace {

constexpr int digits = 15;
constexpr double noise = 1e-13; // of the number or its unit's zero: what printing with 15 digits leaves

void reads_back(double si, units::Dimension dimension) {
  for (const auto system : {units::UnitSystem::metric, units::UnitSystem::inch}) {
    const auto again = units::parse_quantity(units::shop_text(si, dimension, system, digits), dimension);
    fuzz::promise(again.si.has_value(), "a printed number reads");
    const double zero = dimension == units::Dimension::temperature ? 459.67 : 0.0;
    fuzz::promise(std::abs(*again.si - si) <= noise * (std::abs(si) + zero), "a printed number reads back");
  }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *bytes, std::size_t size) {
  constexpr auto dimensions = static_cast<int>(units::Dimension::price) + 1;
  if (size == 0) {
    return 0;
  }
  const auto dimension = static_cast<units::Dimension>(bytes[0] % dimensions);
  const units::Parsed parsed = units::parse_quantity(fuzz::text_of(bytes + 1, size - 1), dimension);
  fuzz::promise(parsed.si.has_value() == parsed.problem.empty(), "a number or a problem");
  const bool money = dimension == units::Dimension::price || dimension == units::Dimension::cost;
  fuzz::promise(parsed.currency.empty() == !(money && parsed.si), "a currency with money alone");
  if (parsed.si) {
    fuzz::promise(std::isfinite(*parsed.si), "a number is finite");
    constexpr double least = 1e-250, most = 1e250; // beyond, a unit's factor leaves the range of a double
    const double size_of = std::abs(*parsed.si);
    if (!money && (size_of == 0.0 || (size_of > least && size_of < most))) {
      reads_back(*parsed.si, dimension);
    }
  }
  return 0;
}

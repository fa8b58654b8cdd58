#include "support/random_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::test {

std::string any_text(Random &random, int most) {
  constexpr std::array letters{"a", "Z", "7",      " ",      "-",      ":",     "#",
                               "'", "%", "\u00e9", "\u00d8", "\u03bc", "\u2300"};
  std::string text = "x"; // not blank
  const int length = random.chance(0.1) ? most - 1 : random.whole(0, std::min(30, most - 1));
  for (int i = 0; i < length; ++i) {
    const std::string letter = letters[static_cast<std::size_t>(random.whole(0, int(letters.size()) - 1))];
    text += letter == "%" && text.ends_with('%') ? "a" : letter; // two of them are refused
  }
  return text;
}

std::string any_stock(Random &random) {
  const int thickness = random.whole(3, 150);
  switch (random.whole(0, 2)) {
  case 0:
    return fmt::format("plate {} mm", thickness);
  case 1:
    return fmt::format("flat {} mm x {} mm", thickness, thickness + random.whole(0, 200));
  default:
    return fmt::format("round {}/16 in", thickness);
  }
}

double spread(Random &random, double least, double most) {
  const int kind = random.whole(0, 9);
  if (kind == 0) {
    return random.chance(0.5) ? least : most;
  }
  if (kind < 5) {
    const double low = std::max(least, 1e-4 * most);
    return low > 0.0 ? std::clamp(low * std::pow(most / low, random.between(0.0, 1.0)), least, most) : least;
  }
  return random.between(least, most);
}

} // namespace purgewright::test

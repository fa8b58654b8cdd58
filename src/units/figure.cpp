#include "purgewright/units/figure.hpp"

#include <algorithm>

namespace purgewright::units {

std::string_view to_text(Basis basis) {
  switch (basis) {
  case Basis::computed:
    return "computed";
  case Basis::given:
    return "given";
  case Basis::fallback:
    return "default";
  case Basis::standard:
    return "standard";
  case Basis::common_practice:
    return "common practice";
  }
  return "";
}

const Figure *find(const Figures &figures, std::string_view id) {
  const auto found =
      std::find_if(figures.begin(), figures.end(), [id](const Figure &f) { return f.id == id; });
  return found == figures.end() ? nullptr : &*found;
}

} // namespace purgewright::units

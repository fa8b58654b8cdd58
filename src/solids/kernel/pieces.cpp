#include "purgewright/solids/kernel/pieces.hpp"

#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <TopExp_Explorer.hxx>

#include <optional>

namespace purgewright::solids::kernel {

std::vector<Solid> pieces(Solid const &solid) {
  std::vector<Solid> result;
  for (TopExp_Explorer at(occt(solid), TopAbs_SOLID); at.More(); at.Next())
    result.emplace_back(at.Current());
  if (result.empty())
    fail({"take apart", ""}, "the shape holds no solid");
  return result;
}

// The rough volume is good enough: pieces that matter differ by far more.
Solid largest_piece(Solid const &solid) {
  std::optional<Solid> largest;
  double greatest = 0.0;
  for (Solid const &piece : pieces(solid)) {
    double const volume = rough_volume(occt(piece));
    if (!largest || volume > greatest) {
      largest = Solid(occt(piece), volume);
      greatest = volume;
    }
  }
  return *largest;
}

} // namespace purgewright::solids::kernel

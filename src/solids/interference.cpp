#include "purgewright/solids/interference.hpp"

#include "standing.hpp"

#include "purgewright/solids/kernel/boolean.hpp"

namespace purgewright::solids {

std::vector<Clash> find_clashes(const Assembly &assembly) {
  std::vector<Clash> clashes;
  const auto parts = stand(assembly, Bought::included);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (std::size_t k = i + 1; k < parts.size(); ++k) {
      if (apart(parts[i].box, parts[k].box) > units::Length{}) {
        continue;
      }
      const auto shared = kernel::in_part(std::string(parts[i].name), [&] {
        return kernel::common_volume(parts[i].solid, parts[k].solid);
      });
      if (shared > touching_volume) {
        clashes.push_back({std::string(parts[i].name), std::string(parts[k].name), shared});
      }
    }
  }
  return clashes;
}

} // namespace purgewright::solids

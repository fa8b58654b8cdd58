#include "purgewright/solids/standing.hpp"

namespace purgewright::solids {

std::vector<Standing> stand(const Assembly &assembly) {
  std::vector<Standing> all;
  for (const Part &part : assembly.parts) {
    const kernel::Located own = kernel::located(part.solid);
    all.push_back({part.name, part.kind, kernel::placed(own, part.place)});
    for (const auto &place : part.more_places) {
      all.push_back({part.name, part.kind, kernel::placed(own, place)});
    }
  }
  return all;
}

} // namespace purgewright::solids

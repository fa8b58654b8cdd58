#include "purgewright/solids/interference.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/units/ids.hpp"

#include <algorithm>
#include <iterator>

namespace purgewright::solids {
namespace {

using Group = std::vector<const Standing *>;

// Threads are cosmetic: a screwed pair shares the ring between tap drill and major diameter.
bool screwed_together(const Standing &a, const Standing &b) {
  return (a.name == ids::end_plug && b.name == ids::plug_knob) ||
         (a.name == ids::plug_knob && b.name == ids::end_plug);
}

bool may_clash(const Standing &a, const Standing &b) {
  return !screwed_together(a, b) && kernel::shared(a.at.box, b.at.box) > touching_volume;
}

// Those that may clash with the part, in groups whose members keep clear of one another by their boxes: one
// operation serves a group.
std::vector<Group> neighbours(const std::vector<Standing> &parts, std::size_t of) {
  std::vector<Group> groups;
  for (std::size_t k = of + 1; k < parts.size(); ++k) {
    if (!may_clash(parts[of], parts[k])) {
      continue;
    }
    const auto clear_of = [&](const Group &group) {
      return std::ranges::all_of(group, [&](const Standing *other) {
        return kernel::apart(parts[k].at.box, other->at.box) > units::Length{};
      });
    };
    const auto room = std::ranges::find_if(groups, clear_of);
    (room == groups.end() ? groups.emplace_back() : *room).push_back(&parts[k]);
  }
  return groups;
}

units::Volume shared_metal(const Standing &part, const Group &group) {
  std::vector<kernel::Solid> others;
  std::ranges::transform(group, std::back_inserter(others),
                         [](const Standing *other) { return other->at.solid; });
  return kernel::in_part(std::string(part.name),
                         [&] { return kernel::common_volume(part.at.solid, others); });
}

} // namespace

std::vector<Clash> find_clashes(const std::vector<Standing> &parts) {
  std::vector<Clash> clashes;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (const Group &group : neighbours(parts, i)) {
      if (shared_metal(parts[i], group) <= touching_volume) {
        continue;
      }
      for (const Standing *other : group) {
        if (const auto shared = shared_metal(parts[i], {other}); shared > touching_volume) {
          clashes.push_back({std::string(parts[i].name), std::string(other->name), shared});
        }
      }
    }
  }
  return clashes;
}

} // namespace purgewright::solids

#include "scene.hpp"

#include <algorithm>
#include <array>

namespace purgewright::gas::plan {
namespace {

constexpr std::size_t cause_count = static_cast<std::size_t>(Cause::pocket) + 1;

} // namespace

Floor floor_at(const Scene &scene, const Target &target) {
  const FloorParts parts = floor_parts(scene.network, target.zone, target.position);
  // Openings and hoses of one kind count together.
  std::array<double, cause_count> sums{};
  for (std::size_t i = 0; i < parts.edges.size(); ++i) {
    sums[static_cast<std::size_t>(scene.edge_causes[i])] += parts.edges[i];
  }
  for (std::size_t i = 0; i < parts.ingress.size(); ++i) {
    sums[static_cast<std::size_t>(scene.ingress_causes[i])] += parts.ingress[i];
  }
  const auto largest = std::ranges::max_element(sums);
  Floor floor{.oxygen = parts.floor, .dominant = static_cast<Cause>(largest - sums.begin())};
  if (parts.floor > 0.0) {
    floor.dominant_share = *largest / parts.floor;
  }
  return floor;
}

} // namespace purgewright::gas::plan

namespace purgewright::gas {

std::string_view to_text(Cause cause) {
  switch (cause) {
  case Cause::supply:
    return "supply";
  case Cause::torch_gas:
    return "torch gas";
  case Cause::hose_walls:
    return "hose walls";
  case Cause::plug_rubber:
    return "the plug's rubber";
  case Cause::plug_seal:
    return "the plug's open seal";
  case Cause::vent:
    return "vent";
  case Cause::slot:
    return "slot";
  case Cause::wiper:
    return "wiper";
  case Cause::pocket:
    return "standing gas between vent and cap";
  }
  return {};
}

} // namespace purgewright::gas

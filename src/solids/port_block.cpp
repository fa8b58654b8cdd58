// gas-port-block.
#include "purgewright/solids/parts.hpp"

#include "tools.hpp"

#include "purgewright/solids/kernel/boolean.hpp"
#include "purgewright/solids/kernel/cutters.hpp"

namespace purgewright::solids {
namespace {

// Inlet port, gallery and the plugged port at the far end, one turned tool along the block.
Solid gallery(const fixture::PortBlock &block) {
  const auto inlet = port_profile(block.spot_radius, block.spot_depth, block.port.radius, block.port.depth,
                                  block.gallery_radius, 0.5 * block.length);
  std::vector<ProfilePoint> profile(inlet.begin(), inlet.end() - 1);
  for (auto corner = inlet.rbegin() + 1; corner != inlet.rend(); ++corner) {
    profile.push_back({block.length - corner->axial, corner->radial});
  }
  return kernel::revolve({{{}, {}, block.gallery_z}, kernel::along_x}, profile);
}

Solid outlet(const fixture::PortBlock &block, Length x) {
  const Length to_axis = block.height - block.gallery_z;
  auto profile = port_profile(block.spot_radius, block.spot_depth, block.port.radius, block.port.depth,
                              block.passage_radius, to_axis);
  profile.push_back({to_axis, Length{}});
  return kernel::revolve({{x, {}, block.height}, kernel::against_z}, profile);
}

Solid mount(const fixture::PortBlock &block, const fixture::Position &at) {
  const Length over = kernel::cutter_overshoot;
  return kernel::revolve({{at.x, at.y, block.height}, kernel::against_z},
                         {{-over, Length{}},
                          {-over, block.mount_counterbore_radius},
                          {block.mount_counterbore_depth, block.mount_counterbore_radius},
                          {block.mount_counterbore_depth, block.mount_radius},
                          {block.height + over, block.mount_radius},
                          {block.height + over, Length{}}});
}

} // namespace

Solid build_port_block(const fixture::Layout &layout) {
  const auto &block = layout.block;
  return kernel::in_part("gas-port-block", [&] {
    const Length half = 0.5 * block.width;
    std::vector<Solid> tools{gallery(block)};
    for (int i = 0; i < block.outlets; ++i) {
      tools.push_back(outlet(block, block.outlet_x[static_cast<std::size_t>(i)]));
    }
    for (const auto &at : block.mounts) {
      tools.push_back(mount(block, at));
    }
    return kernel::cut(kernel::box({{}, -half, {}}, {block.length, half, block.height}), tools);
  });
}

} // namespace purgewright::solids

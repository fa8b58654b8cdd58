// The parts as they stand together. Only the exact solids can tell.
#include "topics.hpp"

#include <fmt/format.h>

#include <array>

namespace purgewright::checks {
namespace {

Verdict no_interference(const Design &d) {
  units::Volume shared{};
  for (const Clash &clash : d.clashes) {
    shared += clash.shared;
  }
  return at_most(shared.value(), 0.0);
}

std::string clashing_pairs(const Design &d) {
  std::string text;
  for (const Clash &clash : d.clashes) {
    text += fmt::format("{} {} and {}", text.empty() ? ":" : ",", clash.first, clash.second);
  }
  return text;
}

constexpr std::array<Rule, 1> table{{
    {"assembly.no_interference", "No two parts claim the same metal", "common volume of every pair of solids",
     units::Dimension::volume, no_interference,
     "these clash, which is a fault of this program: report the job", Needs::solids, clashing_pairs},
}};

} // namespace

std::span<const Rule> assembly_rules() {
  return table;
}

} // namespace purgewright::checks

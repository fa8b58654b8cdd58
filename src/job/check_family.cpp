// What the jobs of a family must have in common: one gas-port block serves them all.
#include "job/checker.hpp"

#include <fmt/format.h>

#include <set>
#include <string>
#include <string_view>

namespace purgewright::job {

void Checker::family() {
  const auto differs = [this](const Job &other, Key key, std::string_view theirs, std::string_view ours) {
    if (theirs != ours) {
      report(draft_[Key::fixture_family].mark, Key::fixture_family,
             fmt::format("{} of {} is {}, here it is {}", field(key).path, other.identity.name, theirs, ours),
             fmt::format("jobs with the same {}: one gas-port block serves them all", field(key).path));
    }
  };
  const auto units_of = [](const Job &job) {
    return field(Key::shop_units).choices[static_cast<std::size_t>(job.shop.unit_system)];
  };
  std::set<std::string_view> names{job_.identity.name};
  for (const auto &member : job_.family) {
    const Job &other = *member;
    if (sound(Key::gas_port_thread, Key::tube_inside_diameter) && job_.gas.port_thread != nullptr) {
      differs(other, Key::gas_port_thread, other.gas.port_thread->name, job_.gas.port_thread->name);
    }
    differs(other, Key::fixture_circuits, std::to_string(other.fixture.circuits),
            std::to_string(job_.fixture.circuits));
    differs(other, Key::shop_units, units_of(other), units_of(job_));
    if (!names.insert(other.identity.name).second) {
      report(draft_[Key::fixture_family].mark, Key::fixture_family,
             fmt::format("two jobs are named {}", other.identity.name), "jobs of different names");
    }
  }
}

} // namespace purgewright::job

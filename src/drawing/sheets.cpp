#include "purgewright/drawing/sheets.hpp"

#include "composer.hpp"
#include "part_plans.hpp"

#include <fmt/chrono.h>

#include <charconv>
#include <cstring>

namespace purgewright::drawing {

std::string date_of_epoch(const char *seconds) {
  if (seconds == nullptr) {
    return {};
  }
  long long value = 0;
  const char *end = seconds + std::strlen(seconds);
  const auto [stop, error] = std::from_chars(seconds, end, value);
  constexpr long long latest = 253402300799; // end of the year 9999
  if (error != std::errc{} || stop != end || value < 0 || value > latest) {
    return {};
  }
  return fmt::format("{:%Y-%m-%d}", fmt::gmtime(static_cast<std::time_t>(value)));
}

std::vector<Sheet> make_sheets(const job::Job &job, const fixture::Layout &layout,
                               const fixture::Volumes &volumes, const solids::Assembly &assembly,
                               const Issue &issue) {
  const Unit unit = job.shop.unit_system == units::UnitSystem::inch ? Unit::inch : Unit::millimetre;
  const Inputs in{job, layout, volumes, assembly, Labels(unit)};
  std::vector<Sheet> sheets;
  const auto add = [&](const PartPlan &plan) {
    for (Sheet &sheet : compose(job, plan, issue)) {
      sheets.push_back(std::move(sheet));
    }
  };
  add(plan_chamber_body(in));
  add(plan_end_plate(in));
  add(plan_backing_pin(in));
  add(plan_end_plug(in));
  if (layout.lance.present) {
    add(plan_lance(in));
  }
  add(plan_port_block(in));
  add(plan_cradle_stand(in));
  add(plan_base_plate(in));
  add(plan_slot_cover(in));
  return sheets;
}

} // namespace purgewright::drawing

#include "purgewright/drawing/sheets.hpp"

#include "composer.hpp"
#include "feature_views.hpp"
#include "part_plans.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/chrono.h>

#include <algorithm>
#include <charconv>
#include <cstring>
#include <utility>

namespace purgewright::drawing {
namespace {

// A made part without a row here has no sheet unless it is a list of features turned about X: a test compares
// the assembly with the sheets.
struct PartSheet {
  std::string_view part;
  PartPlan (*plan)(const Inputs &);
};
constexpr PartSheet part_sheets[] = {
    {ids::chamber_body, plan_chamber_body},   {ids::chamber_end_plate, plan_end_plate},
    {ids::wiper_plate, plan_wiper_plate},     {ids::plenum_cover, plan_plenum_cover},
    {ids::backing_pin, plan_backing_pin},     {ids::gas_port_block, plan_port_block},
    {ids::cradle_stand, plan_cradle_stand},   {ids::index_collar, plan_index_collar},
    {ids::axial_stop, plan_axial_stop},       {ids::base_plate, plan_base_plate},
    {ids::slot_cover, plan_slot_cover},       {ids::tail_foot, plan_tail_foot},
    {ids::chamber_top, plan_chamber_top},     {ids::chamber_side, plan_chamber_side},
    {ids::chamber_floor, plan_chamber_floor}, {ids::chamber_rear, plan_chamber_rear},
    {ids::clamp_bar, plan_clamp_bar},
};

} // namespace

std::vector<PartPlan> plans(const Inputs &in) {
  std::vector<PartPlan> out;
  for (const auto &part : in.assembly.parts) {
    const auto row =
        std::find_if(std::begin(part_sheets), std::end(part_sheets),
                     [&](const PartSheet &candidate) { return part.made() && candidate.part == part.name; });
    const auto features = std::ranges::find(fixture::feature_parts(), part.name, &fixture::PartRow::id);
    if (row != std::end(part_sheets)) {
      out.push_back(row->plan(in));
    } else if (part.made() && features != fixture::feature_parts().end()) {
      out.push_back(plan_turned(in, features->make(in.layout)));
    }
  }
  return out;
}

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
  const Inputs in{job, layout, volumes, assembly, Labels(unit_of(job))};
  std::vector<Sheet> sheets;
  for (PartPlan &plan : plans(in)) {
    for (Sheet &sheet : compose(job, std::move(plan), issue)) {
      sheets.push_back(std::move(sheet));
    }
  }
  for (Sheet &sheet : compose(job, plan_assembly(in), issue)) {
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

} // namespace purgewright::drawing

#include "purgewright/report/parts_list.hpp"

#include "csv.hpp"
#include "text_parts.hpp"

#include "purgewright/checks/printing.hpp"
#include "purgewright/fixture/family.hpp"
#include "purgewright/fixture/parts_list.hpp"
#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace purgewright::report {
namespace {

using checks::Design;

// Which tubes a made part serves, so that a new tube size costs the fewest new parts.
class Serves {
 public:
  explicit Serves(const Design &d) : design_(d), diameters_(parts::diameters_served(d)) {}

  std::string operator()(std::string_view part) const {
    if (part == ids::gas_port_block) {
      return "any tube" + with_family();
    }
    if (part == ids::base_plate || part == ids::cradle_stand || part == ids::tail_foot ||
        part == ids::clamp_bar) {
      return "tubes " + diameters_ + with_family();
    }
    return part == ids::index_collar || part == ids::axial_stop ? "this tube's diameter"
                                                                : "this tube and cap";
  }

 private:
  std::string with_family() const {
    std::string text;
    for (const auto &member : design_.job.family) {
      text += (text.empty() ? "; common with " : ", ") + member->identity.name;
    }
    return text;
  }

  const Design &design_;
  std::string diameters_;
};

// "PETG" where a printed part bears its heat and nothing else stands against it; "no" otherwise.
std::string printed(const Design &d, const std::vector<checks::PartHeat> &heat, std::string_view part) {
  const auto found = std::ranges::find(heat, part, &checks::PartHeat::part);
  if (found == heat.end() || found->plastic.empty()) {
    return "no";
  }
  const bool others = !d.job.family.empty() && fixture::shared_in_family(part);
  return std::string(found->plastic) + (others ? " as far as this tube goes" : "");
}

std::string_view kind_of(fixture::ItemKind kind) {
  switch (kind) {
  case fixture::ItemKind::made:
    return "made";
  case fixture::ItemKind::workpiece:
    return "workpiece";
  case fixture::ItemKind::bought:
    return "bought";
  }
  return {};
}

} // namespace

MassUnit mass_unit(const Design &d) {
  constexpr double pound = 0.45359237; // kg, exact by definition
  return d.job.shop.unit_system == units::UnitSystem::inch ? MassUnit{"lb", pound} : MassUnit{"kg", 1.0};
}

std::vector<PartRow> part_rows(const Design &d) {
  const Serves serves(d);
  const auto heat = checks::part_heat(d);
  const auto metals = fixture::part_metals(d.job, d.layout, d.volumes);
  const MassUnit unit = mass_unit(d);
  std::vector<PartRow> rows;
  for (fixture::Item &item : fixture::parts_list(d.job, d.layout, d.volumes)) {
    const bool made = item.kind == fixture::ItemKind::made;
    const auto *metal = made ? &*std::ranges::find(metals, item.id, &fixture::PartMetal::name) : nullptr;
    PartRow row;
    row.kind = kind_of(item.kind);
    row.mass = made ? fmt::format("{:.3f}", metal->mass().value() / unit.kilograms) : "";
    row.may_be_printed = made ? printed(d, heat, item.id) : "";
    row.serves = made ? serves(item.id) : item.purpose;
    row.item = std::move(item);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string parts_list_csv(const Design &d) {
  std::string text = fmt::format(
      "item,name,kind,quantity,material,stock or size,mass a piece [{}],may be printed,serves\r\n",
      mass_unit(d).name);
  for (const PartRow &row : part_rows(d)) {
    const fixture::Item &item = row.item;
    const bool made = item.kind == fixture::ItemKind::made;
    text += fmt::format("{},{},{},{},{},{},{},{},{}\r\n", item.number, csv_cell(made ? item.id : item.title),
                        row.kind, item.quantity, csv_cell(item.material), csv_cell(item.size), row.mass,
                        row.may_be_printed, csv_cell(row.serves));
  }
  return text;
}

} // namespace purgewright::report

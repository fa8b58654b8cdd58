#include "purgewright/checks/remedy.hpp"

#include "knobs.hpp"
#include "trial.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::checks {
namespace {

using job::Key;
using enum job::Key;

constexpr auto own_knobs = std::to_array<Knob>({
    {"access.slot_width", fixture_slot_width, +1},
    {"access.slot_width", torch_cup_outside_diameter, -1},
    {"access.slot_behind", fixture_slot_length, +1},
    {"access.slot_ahead", fixture_slot_length, +1},
    {"access.swing_clear", rotation_swing_radius, +1},
    {"access.loading_path", fixture_slot_width, +1},
    {"access.loading_path", fixture_slot_length, +1},
    {"access.tube_turns_clear", rotation_swing_radius, -1},
    {"access.torch_clear", torch_tilt, -1},
    {"access.torch_clear", torch_cup_length, +1},
    {"access.torch_clear", fixture_slot_width, +1},
    {"access.axle_screws", tube_length, +1},
    {"access.line_of_sight", fixture_slot_width, +1},
    {"access.line_of_sight", torch_stickout, +1},
    {"access.line_of_sight", torch_cup_outside_diameter, -1},
    {"bench.axial_stop", tube_length, +1},
    {"seal.plug_squeeze_least", tube_wall_tolerance, -1},
    {"seal.plug_squeeze_least", tube_outside_diameter_tolerance, -1},
    {"seal.plug_squeeze_most", tube_wall_tolerance, -1},
    {"seal.plug_squeeze_most", tube_outside_diameter_tolerance, -1},
    {"seal.plug_fill", tube_wall_tolerance, -1},
    {"seal.plug_fill", tube_outside_diameter_tolerance, -1},
    {"machining.diffuser_drill", fixture_diffuser_hole, +1},
    {"machining.diffuser_drill", fixture_wall, -1},
    {"machining.gallery_drill", fixture_circuits, -1},
    {"machining.slot_corner", fixture_slot_length, +1},
    {"machining.slot_corner", fixture_radial_clearance, -1},
    {"machining.slot_corner", fixture_radial_clearance, +1},
    {"machining.thinnest_wall", fixture_diffuser_hole, +1},
    {"machining.thinnest_wall", fixture_wall, +1},
    {"gas.bore_limit", gas_hose_bore_length, -1},
    {"gas.bore_limit", gas_hose_supply_length, -1},
    {"gas.bore_limit", gas_oxygen_in_supply, -1},
    {"gas.bore_limit", tube_vent_diameter, -1},
    {"gas.bore_limit", tube_vent_from_joint, -1},
    {"gas.bore_limit", tube_vent_from_joint, +1},
    {"gas.chamber_limit", gas_hose_chamber_length, -1},
    {"gas.chamber_limit", gas_oxygen_in_supply, -1},
    {"gas.bore_welding_floor", tube_vent_diameter, +1},
    {"gas.bore_welding_floor", gas_oxygen_in_supply, -1},
    {"gas.bore_welding_floor", gas_hose_bore_length, -1},
    {"gas.chamber_welding_floor", torch_gas_flow, +1},
    {"gas.chamber_welding_floor", gas_oxygen_in_supply, -1},
    {"gas.bore_pressure", tube_vent_diameter, +1},
    {"gas.bore_pressure", tube_vent_count, +1},
    {"gas.torch_undisturbed", fixture_slot_length, +1},
    {"gas.torch_undisturbed", torch_gas_flow, +1},
    {"gas.torch_laminar", torch_cup_bore, +1},
    {"gas.torch_laminar", torch_gas_flow, -1},
    {"gas.torch_core", torch_gas_flow, +1},
    {"gas.torch_core", torch_stickout, -1},
    {"gas.torch_core", torch_cup_bore, +1},
    {"gas.prepurge_time", tube_vent_from_joint, -1},
    {"gas.prepurge_time", gas_supply_pressure, +1},
    {"gas.torch_back", torch_gas_flow, +1},
    {"gas.torch_back", fixture_radial_clearance, -1},
    {"gas.torch_back", fixture_radial_clearance, +1},
    {"gas.torch_preflow", torch_gas_flow, +1},
    {"gas.torch_preflow", fixture_radial_clearance, -1},
    {"gas.draught", shop_draught, -1},
    {"gas.supply_pressure", gas_supply_pressure, +1},
    {"gas.supply_pressure", gas_hose_inside_diameter, +1},
    {"gas.room_oxygen", shop_room_air_changes_per_hour, +1},
    {"gas.room_oxygen", shop_room_volume, +1},
    {"layout.tube_length", tube_length, +1},
    {"layout.slot_in_chamber", fixture_slot_length, -1},
    {"layout.plug_reach", tube_length, +1},
    {"layout.meter_port", fixture_radial_clearance, +1},
    {"layout.vent_covered", tube_vent_from_joint, -1},
    {"layout.vent_covered", tube_vent_from_joint, +1},
});

// Tried for a rule without knobs of its own, by closed form alone.
constexpr auto general = std::to_array<Knob>({
    {"", fixture_radial_clearance, +1},
    {"", fixture_radial_clearance, -1},
    {"", fixture_end_clearance, +1},
    {"", fixture_end_clearance, -1},
    {"", fixture_wall, +1},
    {"", fixture_wall, -1},
    {"", fixture_slot_length, +1},
    {"", fixture_slot_width, +1},
    {"", rotation_swing_radius, +1},
    {"", rotation_swing_radius, -1},
    {"", tube_length, +1},
});

bool known(std::string_view rule) {
  return std::ranges::any_of(own_knobs, [&](const Knob &knob) { return knob.rule == rule; });
}

// The key's value as the design has it, SI.
double value_now(const Design &design, Key key) {
  if (key == fixture_slot_length) {
    return design.layout.body.slot.length().value();
  }
  if (key == fixture_slot_width) {
    return design.layout.body.slot.width.value();
  }
  const auto figures = job::figures(design.job);
  const auto *figure = units::find(figures, job::field(key).path);
  return figure != nullptr ? figure->value : 0.0;
}

// The nearest number of three digits in the shop's unit, onward in the way it moves; `more` steps beyond it.
double rounded_onward(double value, const job::FieldInfo &field, int way, units::UnitSystem system,
                      int more = 0) {
  if (field.kind == job::FieldKind::count || value == 0.0) {
    return way > 0 ? std::ceil(value) : std::floor(value);
  }
  constexpr int digits = 3;
  const double per_unit = units::shop_value(value, field.dimension, system).value / value;
  const double shown = value * per_unit;
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(shown))) - (digits - 1));
  constexpr double noise = 0.02; // of a step: the search ends that near to its edge
  const double onward = way > 0 ? std::ceil(shown / step - noise) : std::floor(shown / step + noise);
  return std::clamp((onward + more * way) * step / per_unit, field.least, field.most);
}

class Search {
 public:
  Search(const Trial &trial, const Knob &knob, double now, units::UnitSystem system)
      : trial_(trial), knob_(knob), field_(job::field(knob.key)), now_(now), system_(system) {}

  std::optional<Change> run() const {
    double bad = now_;
    const double end = knob_.way > 0 ? field_.most : field_.least;
    const bool whole = field_.kind == job::FieldKind::count;
    constexpr double first_share = 0.01, start_share = 1e-3;
    double step =
        whole ? 1.0 : std::max(first_share * std::abs(now_), start_share * (field_.most - field_.least));
    while (bad != end) {
      double next = bad + knob_.way * step;
      if (knob_.way > 0 ? next >= end : next <= end) {
        next = end;
      }
      if (passes(next)) {
        return settle(bad, next);
      }
      bad = next;
      step *= whole ? 1.0 : 1.6;
    }
    return std::nullopt;
  }

 private:
  bool passes(double value) const { return trial_.cures({knob_.key, now_, value}); }

  std::optional<Change> settle(double bad, double good) const {
    if (field_.kind != job::FieldKind::count) {
      constexpr int halvings = 16; // of the last step: finer than three digits
      for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (bad + good);
        (passes(middle) ? good : bad) = middle;
      }
    }
    for (const int more : {0, 1}) {
      const double neat = rounded_onward(good, field_, knob_.way, system_, more);
      if (passes(neat)) {
        return Change{knob_.key, now_, neat};
      }
    }
    return Change{knob_.key, now_, good};
  }

  const Trial &trial_;
  const Knob &knob_;
  const job::FieldInfo &field_;
  double now_;
  units::UnitSystem system_;
};

// How far a value moves, by what it was; by a twentieth of what the key allows where it was next to nothing.
double size(const Change &change) {
  constexpr double small_share = 0.05;
  const auto &field = job::field(change.key);
  return std::abs(change.to - change.from) /
         std::max(std::abs(change.from), small_share * (field.most - field.least));
}

} // namespace

std::span<const Knob> knobs() {
  return own_knobs;
}

std::optional<Change> find_change(const job::Draft &draft, const Design &design, std::string_view rule,
                                  std::span<const Key> keys) {
  const Trial trial(draft, design, rule);
  if (!trial.searchable()) {
    return std::nullopt;
  }
  std::vector<Change> found;
  const bool own = known(rule);
  for (const Knob &knob : own ? knobs() : std::span<const Knob>(general)) {
    const bool wanted = keys.empty() || std::ranges::find(keys, knob.key) != keys.end();
    if (!wanted || (own && knob.rule != rule) || (!own && trial.needs_purge())) {
      continue;
    }
    if (const auto change =
            Search(trial, knob, value_now(design, knob.key), design.job.shop.unit_system).run()) {
      found.push_back(*change);
    }
  }
  std::ranges::stable_sort(found, {}, size);
  const auto best = std::ranges::find_if(found, [&](const Change &change) { return trial.holds(change); });
  return best == found.end() ? std::nullopt : std::optional(*best);
}

std::string value_text(Key key, double value, units::UnitSystem system) {
  const auto &field = job::field(key);
  return field.kind == job::FieldKind::choice
             ? std::string(field.choices[static_cast<std::size_t>(std::lround(value))])
             : units::shop_text(value, field.dimension, system);
}

std::string to_text(const Change &change, units::UnitSystem system) {
  const auto &field = job::field(change.key);
  return fmt::format("{} {} {} (now {})", field.path, change.to > change.from ? "at least" : "at most",
                     value_text(change.key, change.to, system), value_text(change.key, change.from, system));
}

void add_changes(const job::Draft &draft, const Design &design, std::vector<RuleResult> &results) {
  for (RuleResult &result : results) {
    if (result.status == Status::pass) {
      continue;
    }
    if (const auto change = find_change(draft, design, result.id)) {
      result.remedy += fmt::format("; smallest change of one value that passes: {}",
                                   to_text(*change, design.job.shop.unit_system));
    }
  }
}

} // namespace purgewright::checks

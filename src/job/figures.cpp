#include "purgewright/job/job.hpp"

#include <fmt/format.h>

#include <optional>

namespace purgewright::job {
namespace {

using enum Key;

std::optional<double> tube_value(const Tube &t, Key key) {
  switch (key) {
  case tube_outside_diameter:
    return t.outside_diameter.value();
  case tube_wall:
    return t.wall.value();
  case tube_inside_diameter:
    return t.inside_diameter.value();
  case tube_length:
    return t.length.value();
  case tube_outside_diameter_tolerance:
    return t.outside_diameter_tolerance.value();
  case tube_wall_tolerance:
    return t.wall_tolerance.value();
  case tube_vent_count:
    return t.vent.count;
  case tube_vent_diameter:
    return t.vent.count > 0 ? std::optional(t.vent.diameter.value()) : std::nullopt;
  case tube_vent_from_joint:
    return t.vent.count > 0 ? std::optional(t.vent.from_joint.value()) : std::nullopt;
  default:
    return std::nullopt;
  }
}

std::optional<double> cap_value(const Cap &c, Key key) {
  const auto of_shape = [&](CapShape shape, units::Length size) {
    return c.shape == shape ? std::optional(size.value()) : std::nullopt;
  };
  switch (key) {
  case cap_diameter:
    return c.diameter.value();
  case cap_thickness:
    return c.thickness.value();
  case cap_dome_height:
    return of_shape(CapShape::domed, c.dome_height);
  case cap_spigot_length:
    return of_shape(CapShape::spigot, c.spigot_length);
  case cap_spigot_clearance:
    return of_shape(CapShape::spigot, c.spigot_clearance);
  default:
    return std::nullopt;
  }
}

std::optional<double> work_value(const Job &job, Key key) {
  switch (key) {
  case torch_cup_bore:
    return job.torch.cup_bore.value();
  case torch_cup_outside_diameter:
    return job.torch.cup_outside_diameter.value();
  case torch_cup_length:
    return job.torch.cup_length.value();
  case torch_stickout:
    return job.torch.stickout.value();
  case torch_tilt:
    return job.torch.tilt.value();
  case torch_gas_flow:
    return job.torch.gas_flow.value();
  case rotation_tacks:
    return job.rotation.tacks;
  case rotation_runs:
    return job.rotation.runs;
  case rotation_overlap:
    return job.rotation.overlap.value();
  case rotation_swing_radius:
    return job.rotation.swing_radius.value();
  case rotation_start_angle:
    return job.rotation.start_angle.value();
  case weld_current:
    return job.weld.current.value();
  case weld_voltage:
    return job.weld.voltage.value();
  case weld_travel_speed:
    return job.weld.travel_speed.value();
  case weld_arc_efficiency:
    return job.weld.arc_efficiency;
  case weld_bead_height:
    return job.weld.bead_height.value();
  case weld_shielding_temperature:
    return job.weld.shielding_temperature.value();
  case weld_interpass_temperature:
    return job.weld.interpass_temperature ? std::optional(job.weld.interpass_temperature->value())
                                          : std::nullopt;
  default:
    return std::nullopt;
  }
}

std::optional<double> gas_value(const Gas &g, Key key) {
  switch (key) {
  case gas_oxygen_in_supply:
    return g.oxygen_in_supply;
  case gas_oxygen_limit_bore:
    return g.oxygen_limit_bore;
  case gas_oxygen_limit_chamber:
    return g.oxygen_limit_chamber;
  case gas_supply_pressure:
    return g.supply_pressure.value();
  case gas_hose_inside_diameter:
    return g.hose.inside_diameter.value();
  case gas_hose_wall:
    return g.hose.wall.value();
  case gas_hose_supply_length:
    return g.hose.supply_length.value();
  case gas_hose_bore_length:
    return g.hose.bore_length.value();
  case gas_hose_chamber_length:
    return g.hose.chamber_length.value();
  case gas_log_response:
    return g.log_response.value();
  default:
    return std::nullopt;
  }
}

std::optional<double> place_value(const Job &job, Key key) {
  const auto wish = [](const std::optional<units::Length> &size) {
    return size ? std::optional(size->value()) : std::nullopt;
  };
  switch (key) {
  case fixture_radial_clearance:
    return job.fixture.radial_clearance.value();
  case fixture_end_clearance:
    return job.fixture.end_clearance.value();
  case fixture_wall:
    return job.fixture.wall.value();
  case fixture_slot_length:
    return wish(job.fixture.slot_length);
  case fixture_slot_width:
    return wish(job.fixture.slot_width);
  case fixture_diffuser_hole:
    return job.fixture.diffuser_hole.value();
  case fixture_circuits:
    return job.fixture.circuits;
  case shop_argon_price:
    return job.shop.argon_price;
  case shop_bottle_water_volume:
    return job.shop.bottle_water_volume.value();
  case shop_bottle_pressure:
    return job.shop.bottle_pressure.value();
  case shop_room_volume:
    return job.shop.room_volume.value();
  case shop_room_air_changes_per_hour:
    return job.shop.room_air_changes_per_hour;
  case shop_draught:
    return job.shop.draught.value();
  default:
    return std::nullopt;
  }
}

std::optional<double> value_of(const Job &job, Key key) {
  if (key <= tube_vent_count) {
    return tube_value(job.tube, key);
  }
  if (key <= cap_material) {
    return cap_value(job.cap, key);
  }
  if (key <= weld_interpass_temperature) {
    return work_value(job, key);
  }
  return key <= gas_port_thread ? gas_value(job.gas, key) : place_value(job, key);
}

// How a value that the file does not state follows from others that it does.
struct Rule {
  Key key;
  std::string_view formula;
  std::array<Key, 5> inputs{};
  std::size_t count = 0;

  template <class... Keys>
  constexpr Rule(Key of, std::string_view text, Keys... from)
      : key(of), formula(text), inputs{from...}, count(sizeof...(from)) {}
};

constexpr std::array rules{
    Rule{tube_wall, "(tube.outside_diameter - tube.inside_diameter) / 2", tube_outside_diameter,
         tube_inside_diameter},
    Rule{tube_inside_diameter, "tube.outside_diameter - 2 * tube.wall", tube_outside_diameter, tube_wall},
    Rule{tube_outside_diameter_tolerance, "row of the table for tube.outside_diameter",
         tube_outside_diameter},
    Rule{tube_wall_tolerance, "10 % of tube.wall", tube_wall},
    Rule{tube_vent_from_joint, "least of 1.5 * tube.outside_diameter and tube.length / 2",
         tube_outside_diameter, tube_length},
    Rule{tube_vent_diameter, "least of 3 mm and tube.inside_diameter / 4", tube_inside_diameter},
    Rule{cap_dome_height, "cap.diameter / 4", cap_diameter},
    Rule{cap_spigot_clearance,
         "greatest of 0.10 mm and tube.outside_diameter_tolerance / 2 + tube.wall_tolerance + 0.05 mm",
         tube_outside_diameter_tolerance, tube_wall_tolerance},
    Rule{torch_cup_outside_diameter, "cup nearest to torch.cup_bore", torch_cup_bore},
    Rule{rotation_swing_radius, "greatest of tube.outside_diameter / 2 + 5 mm and 20 mm",
         tube_outside_diameter},
    Rule{weld_current, "heat of a moving pool 3.5 walls wide / (weld.arc_efficiency * weld.voltage)",
         tube_wall, cap_thickness, weld_travel_speed, weld_arc_efficiency, weld_voltage},
};

void add_rule(units::Figure &figure, Key key) {
  for (const Rule &rule : rules) {
    if (rule.key == key) {
      figure.formula = rule.formula;
      for (std::size_t i = 0; i < rule.count; ++i) {
        figure.inputs.emplace_back(field(rule.inputs.at(i)).path);
      }
    }
  }
}

std::string title_of(const FieldInfo &info) {
  std::string title(info.meaning);
  if (title.ends_with('.')) {
    title.pop_back();
  }
  return title;
}

// Never the file's path: the same job gives the same bytes wherever it lies.
std::string source_of(const Origin &origin) {
  if (origin.basis != units::Basis::given) {
    return std::string(origin.reason);
  }
  return origin.mark.line > 0
             ? fmt::format("job file, line {}, column {}", origin.mark.line, origin.mark.column)
             : "job file";
}

} // namespace

units::Figures figures(const Job &job) {
  units::Figures list;
  for (const auto &info : fields()) {
    const auto value = value_of(job, info.key);
    if (!value) {
      continue;
    }
    const Origin &origin = job.origin(info.key);
    units::Figure figure;
    figure.id = info.path;
    figure.value = *value;
    figure.dimension = info.dimension;
    figure.title = title_of(info);
    figure.source = source_of(origin);
    figure.basis = origin.basis;
    if (origin.basis != units::Basis::given) {
      add_rule(figure, info.key);
    }
    list.push_back(std::move(figure));
  }
  return list;
}

} // namespace purgewright::job

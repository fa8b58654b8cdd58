#include "job/checker.hpp"
#include "job/fault.hpp"
#include "job/limits.hpp"
#include "job/stock.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace purgewright::job {

using units::Length;
using enum Key;

namespace {

// Shop sizes are written to the micrometre or to a ten-thousandth of an inch.
Length written_step(units::UnitSystem system) {
  return system == units::UnitSystem::inch ? units::inches(1e-4) : units::micrometres(1);
}

// Below this share of a step a size counts as lying on it.
constexpr double on_step = 1e-6;
constexpr int written_digits = 7;

} // namespace

Diagnostics Checker::check() {
  required();
  limits();
  wall();
  tolerances();
  vent();
  vent_spacing();
  cap_keys();
  cap_diameter_band();
  dome();
  spigot_fit();
  spigot_reach();
  torch();
  rotation();
  oxygen();
  stock();
  family();
  return std::move(problems_);
}

void Checker::stock() {
  for (const std::string &text : draft_[shop_stock].list) {
    if (!parse_stock(text)) {
      report(draft_[shop_stock].mark, shop_stock, fmt::format("'{}' is no bar or plate", text),
             fmt::format("entries such as {}", stock_forms));
    }
  }
}

void Checker::report(Mark mark, Key key, std::string problem, std::string allowed) {
  problems_.push_back(fault(mark, std::string(field(key).path), std::move(problem), std::move(allowed)));
}

std::string Checker::text(Length size) const {
  return units::shop_text(size.value(), units::Dimension::length, job_.shop.unit_system);
}

std::string Checker::at_least(Length size) const {
  const Length step = written_step(job_.shop.unit_system);
  const double steps = std::ceil(units::ratio(size, step) - on_step);
  return units::shop_text(steps * step.value(), units::Dimension::length, job_.shop.unit_system,
                          written_digits);
}

std::string Checker::at_most(Length size) const {
  const Length step = written_step(job_.shop.unit_system);
  const double steps = std::floor(units::ratio(size, step) + on_step);
  return units::shop_text(steps * step.value(), units::Dimension::length, job_.shop.unit_system,
                          written_digits);
}

Mark Checker::mark_of(Key key) const {
  if (stated(key)) {
    return draft_[key].mark;
  }
  const auto path = field(key).path;
  const auto section = path.substr(0, path.find('.') + 1);
  Mark first{};
  for (const auto &info : fields()) {
    const Mark mark = draft_[info.key].mark;
    if (info.path.starts_with(section) && stated(info.key) && (first.line == 0 || mark.line < first.line)) {
      first = mark;
    }
  }
  return first;
}

void Checker::required() {
  for (const auto &info : fields()) {
    if (info.required && !stated(info.key) && sound(info.key)) {
      report(mark_of(info.key), info.key, "the key is missing", allowed_values(info));
      spoil(info.key);
    }
  }
}

// The reader has checked the file's own values; a sweep writes numbers of its own.
void Checker::limits() {
  for (const auto &info : fields()) {
    const Entry &entry = draft_[info.key];
    if (!entry.stated || info.kind == FieldKind::text || info.kind == FieldKind::text_list) {
      continue;
    }
    const bool is_choice = info.kind == FieldKind::choice;
    const double least = entry.is_share || is_choice ? 0.0 : info.least;
    const double most = entry.is_share ? 1.0
                        : is_choice    ? static_cast<double>(info.choices.size()) - 1.0
                                       : info.most;
    const bool inside = entry.number >= least && entry.number <= most;
    const bool whole = info.kind == FieldKind::quantity || entry.number == std::floor(entry.number);
    if ((inside && whole) || !sound(info.key)) {
      continue;
    }
    const auto shown = info.kind == FieldKind::quantity && !entry.is_share
                           ? units::shop_text(entry.number, info.dimension, job_.shop.unit_system)
                           : plain_number(entry.number);
    report(entry.mark, info.key,
           fmt::format("{} is {}", shown,
                       inside                 ? "not a whole number"
                       : entry.number < least ? "too small"
                                              : "too large"),
           allowed_values(info));
    spoil(info.key);
  }
}

void Checker::torch() {
  const Torch &t = job_.torch;
  if (sound(torch_cup_bore, torch_cup_outside_diameter) && t.cup_outside_diameter <= t.cup_bore) {
    report(mark_of(torch_cup_outside_diameter), torch_cup_outside_diameter,
           fmt::format("{} is not larger than the cup's bore of {}", text(t.cup_outside_diameter),
                       text(t.cup_bore)),
           fmt::format("more than {}", text(t.cup_bore)));
  }
}

void Checker::rotation() {
  const Rotation &r = job_.rotation;
  const Length radius = 0.5 * job_.tube.outside_diameter;
  if (sound(rotation_swing_radius, tube_outside_diameter) && r.swing_radius < radius - same_size) {
    report(mark_of(rotation_swing_radius), rotation_swing_radius,
           fmt::format("{} is less than the tube's own radius", text(r.swing_radius)),
           fmt::format("at least {}", at_least(radius)));
  }
  const double run = 2.0 * units::pi / std::max(1, r.runs);
  if (sound(rotation_overlap, rotation_runs) && r.overlap.value() >= run) {
    report(mark_of(rotation_overlap), rotation_overlap,
           fmt::format("an overlap of {} deg is as long as each of the {} runs",
                       plain_number(units::to_degrees(r.overlap)), r.runs),
           fmt::format("less than {} deg", plain_number(units::to_degrees(units::radians(run)))));
  }
}

void Checker::oxygen() {
  const Gas &g = job_.gas;
  struct Limit {
    Key key;
    double limit;
  };
  for (const auto [key, limit] : {Limit{gas_oxygen_limit_bore, g.oxygen_limit_bore},
                                  Limit{gas_oxygen_limit_chamber, g.oxygen_limit_chamber}}) {
    if (!sound(key, gas_oxygen_in_supply) || limit > g.oxygen_in_supply) {
      continue;
    }
    const Key at_fault = stated(key) ? key : gas_oxygen_in_supply;
    report(mark_of(at_fault), key,
           fmt::format("a limit of {} ppm cannot be reached with gas that holds {} ppm of oxygen",
                       plain_number(limit * 1e6), plain_number(g.oxygen_in_supply * 1e6)),
           fmt::format("a limit above {} ppm, or purer gas", plain_number(g.oxygen_in_supply * 1e6)));
  }
}

Diagnostics conflicts(const Draft &draft, const Job &job, KeySet faulty) {
  return Checker(draft, job, faulty).check();
}

} // namespace purgewright::job

#include "support/random_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace purgewright::test {
namespace {

using job::CapShape;
using job::Draft;
using job::Key;
using enum job::Key;

constexpr double mm = 1e-3; // m

class Maker {
 public:
  Maker(std::uint64_t seed, Sizes sizes) : random_(seed), sizes_(sizes) {}
  Draft make() {
    draft_.file = "random";
    text(job_name, "random");
    tube();
    vent();
    cap();
    torch_and_rotation();
    gas();
    fixture();
    return draft_;
  }

 private:
  void set(Key key, double number) {
    draft_[key].stated = true;
    draft_[key].number = number;
  }
  void text(Key key, std::string words) {
    draft_[key].stated = true;
    draft_[key].text = std::move(words);
  }
  // A choice of the key, by index.
  void any(Key key) { set(key, random_.whole(0, static_cast<int>(job::field(key).choices.size()) - 1)); }

  // The step this job's sizes are written in, mm.
  double step() const { return sizes_ == Sizes::free ? 1e-3 : sizes_ == Sizes::metric ? 0.1 : 0.0254; }

  // Metres between two sizes in mm, on a step; the lower one where no step lies between.
  double on_step(double low_mm, double high_mm, double step) {
    const double least = std::ceil(low_mm / step), most = std::floor(high_mm / step);
    const double steps = std::round(random_.between(low_mm, high_mm) / step);
    return (most < least ? low_mm : step * std::clamp(steps, least, most)) * mm;
  }
  double size(double low_mm, double high_mm) { return on_step(low_mm, high_mm, step()); }
  double size(Key key, double low_mm, double high_mm) {
    const double value = size(low_mm, high_mm);
    set(key, value);
    return value / mm;
  }

  void tube();
  void tolerances();
  void vent();
  void cap();
  void torch_and_rotation();
  void gas();
  void fixture();

  Random random_;
  Sizes sizes_;
  Draft draft_;
  double outside_ = 0, wall_ = 0, bore_ = 0, length_ = 0; // mm
  double vent_edge_ = 1e9;                                // mm from the joint
};

void Maker::tube() {
  any(tube_material);
  outside_ = size(tube_outside_diameter, 8.0, random_.chance(0.5) ? 30.0 : 90.0);
  wall_ = size(0.4, std::min(3.0, 0.09 * outside_)) / mm;
  bore_ = outside_ - 2.0 * wall_;
  if (random_.chance(0.2)) {
    set(tube_inside_diameter, bore_ * mm);
  } else {
    set(tube_wall, wall_ * mm);
  }
  const double least = 110.0 + 0.8 * outside_; // room for chamber, hand and plug
  length_ = size(tube_length, least, least + 300.0);
  if (random_.chance(0.6)) {
    tolerances();
  }
}

void Maker::tolerances() {
  const bool tight = random_.chance(0.6);
  const double fine = 0.1 * step();
  set(tube_outside_diameter_tolerance, on_step(0.01, tight ? 0.06 : 0.2, fine));
  const double share = std::round(random_.between(1.0, tight ? 4.0 : 12.0)) / 100.0;
  const bool as_share = random_.chance(0.5);
  set(tube_wall_tolerance, as_share ? share : on_step(0.0, share * wall_, fine));
  draft_[tube_wall_tolerance].is_share = as_share;
}

void Maker::vent() {
  if (random_.chance(0.35)) {
    return;
  }
  const double diameter = size(tube_vent_diameter, 1.0, std::min(5.0, 0.3 * bore_));
  set(tube_vent_count, random_.whole(1, 3));
  const double far_least = 50.0 + outside_; // beyond the chamber
  const double near_most = 1.5 * outside_ - 0.5 * diameter - 2.1;
  const bool near = random_.chance(0.3) && near_most > 10.0;
  const double from_joint =
      near ? size(tube_vent_from_joint, 6.0, near_most)
           : size(tube_vent_from_joint, std::min(far_least, length_ - 50.0), length_ - 49.0);
  vent_edge_ = from_joint - 0.5 * diameter;
}

void Maker::cap() {
  const auto shape = static_cast<CapShape>(random_.whole(0, 2));
  set(cap_shape, static_cast<double>(shape));
  double diameter = outside_;
  if (random_.chance(0.4)) {
    diameter = size(outside_ - wall_, outside_ + 2.0 * wall_) / mm;
  }
  set(cap_diameter, diameter * mm);
  if (shape == CapShape::domed) {
    const double height = size(cap_dome_height, 0.12 * diameter, 0.499 * diameter);
    size(cap_thickness, 0.4, std::min(3.0, 0.7 * height));
    return;
  }
  size(cap_thickness, 0.5, 4.0);
  if (shape == CapShape::spigot && random_.chance(0.5)) {
    size(cap_spigot_length, 0.6, std::max(0.7, std::min(8.0, vent_edge_ - 0.2)));
  }
}

void Maker::torch_and_rotation() {
  if (random_.chance(0.5)) {
    size(torch_cup_bore, 6.0, 19.0);
    set(torch_tilt, random_.between(0.0, 30.0) * units::pi / 180.0);
    size(torch_stickout, 3.0, 15.0);
  }
  set(rotation_tacks, random_.whole(2, 8));
  set(rotation_runs, random_.whole(1, 8));
}

void Maker::gas() {
  if (random_.chance(0.3)) {
    any(gas_port_thread);
  }
  if (random_.chance(0.3)) {
    size(gas_hose_inside_diameter, 2.5, 8.0);
    size(gas_hose_bore_length, 300.0, 3000.0);
    size(gas_hose_chamber_length, 300.0, 3000.0);
  }
}

void Maker::fixture() {
  if (random_.chance(0.3)) {
    set(shop_units, 1);
  }
  if (random_.chance(0.25)) {
    size(fixture_radial_clearance, 3.0, 15.0);
  }
  if (random_.chance(0.25)) {
    size(fixture_end_clearance, 6.0, 25.0);
  }
  if (random_.chance(0.25)) {
    size(fixture_wall, 2.0, 9.0);
  }
  if (random_.chance(0.1)) {
    size(fixture_slot_length, 12.0, 60.0);
  }
  if (random_.chance(0.1)) {
    size(fixture_slot_width, 0.9 * outside_, 1.4 * outside_ + 5.0);
  }
  if (random_.chance(0.2)) {
    size(fixture_diffuser_hole, 1.0, 3.0);
  }
  if (random_.chance(0.3)) {
    set(fixture_circuits, random_.whole(2, 4));
  }
  if (random_.chance(0.2)) {
    any(fixture_material);
  }
}

std::string value_text(const job::FieldInfo &info, const job::Entry &entry, LengthUnit unit) {
  switch (info.kind) {
  case job::FieldKind::text:
    return entry.text;
  case job::FieldKind::choice:
    return std::string(info.choices[static_cast<std::size_t>(entry.number)]);
  case job::FieldKind::count:
    return fmt::format("{:.0f}", entry.number);
  case job::FieldKind::text_list:
    throw std::invalid_argument("lists are not written");
  case job::FieldKind::quantity:
    break;
  }
  if (entry.is_share) {
    return fmt::format("{:.15g} %", entry.number * 100.0);
  }
  if (info.dimension == units::Dimension::length) {
    return unit == LengthUnit::inch ? fmt::format("{:.15g} in", entry.number / 0.0254)
                                    : fmt::format("{:.15g} mm", entry.number * 1e3);
  }
  if (info.dimension == units::Dimension::angle) {
    return fmt::format("{:.17g} rad", entry.number);
  }
  throw std::invalid_argument(std::string(info.path) + ": no such quantity is written");
}

} // namespace

job::Draft random_draft(std::uint64_t seed, Sizes sizes) {
  return Maker(seed, sizes).make();
}

job::Draft random_draft(std::uint64_t seed) {
  constexpr std::array kinds{Sizes::free, Sizes::metric, Sizes::inch};
  return random_draft(seed, kinds[seed % kinds.size()]);
}

RandomJob JobStream::next() {
  constexpr int patience = 1000; // draws in a row without a buildable one: the generator is at fault
  for (int tries = 0; tries < patience; ++tries) {
    const std::uint64_t seed = next_++;
    ++drawn_;
    auto resolution = job::resolve(random_draft(seed));
    if (!resolution.job) {
      ++refused_;
      continue;
    }
    auto layout = fixture::lay_out(*resolution.job);
    if (!layout.buildable()) {
      ++clashes_[layout.conflicts.front().rule];
      continue;
    }
    ++accepted_;
    return {seed, std::move(*resolution.job), std::move(layout)};
  }
  throw std::runtime_error("no random job is buildable");
}

std::string to_yaml(const job::Draft &draft, LengthUnit unit) {
  // Keys are nested by their dots; the table lists the keys of a section together.
  std::string yaml;
  std::string open;
  for (const auto &info : job::fields()) {
    const auto &entry = draft[info.key];
    if (!entry.stated) {
      continue;
    }
    const auto last = info.path.rfind('.');
    const std::string sections(info.path.substr(0, last));
    if (sections != open) {
      const auto dot = sections.find('.');
      const std::string section = sections.substr(0, dot);
      if (section != open.substr(0, open.find('.'))) {
        yaml += section + ":\n";
      }
      if (dot != std::string::npos) {
        yaml += "  " + sections.substr(dot + 1) + ":\n";
      }
      open = sections;
    }
    const std::string indent(sections.find('.') == std::string::npos ? 2 : 4, ' ');
    yaml += fmt::format("{}{}: {}\n", indent, info.path.substr(last + 1), value_text(info, entry, unit));
  }
  return yaml;
}

} // namespace purgewright::test

#include "support/random_job.hpp"

#include "support/paths.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <memory>
#include <stdexcept>

namespace purgewright::test {
namespace {

using job::CapShape;
using job::Draft;
using job::Key;
using enum job::Key;

constexpr double mm = 1e-3; // m

// What other keys leave of a key's range; SI.
struct Bounds {
  double least = -std::numeric_limits<double>::infinity(), most = std::numeric_limits<double>::infinity();
};

class Maker {
 public:
  Maker(std::uint64_t seed, Sizes sizes, Reach reach)
      : random_(seed), whole_(~seed), sizes_(sizes), reach_(reach), wide_(whole_.chance(0.5)) {}
  Draft make() {
    draft_.file = "random";
    draft_[job_name].stated = true;
    draft_[job_name].text = "random";
    tube();
    vent();
    cap();
    torch_and_rotation();
    gas();
    fixture();
    if (reach_ == Reach::whole) {
      bounded_keys();
      family(); // before the rest: what it settles stays
      remaining_keys();
    }
    return draft_;
  }

 private:
  void set(Key key, double number) {
    draft_[key].stated = true;
    draft_[key].number = number;
  }

  // The step this job's sizes are written in, mm.
  double step() const { return sizes_ == Sizes::free ? 1e-3 : sizes_ == Sizes::metric ? 0.1 : 0.0254; }

  // Metres between two sizes in mm, on a step; the lower one where no step lies between.
  static double on_step(Random &random, double low_mm, double high_mm, double step) {
    const double least = std::ceil(low_mm / step), most = std::floor(high_mm / step);
    const double steps = std::round(random.between(low_mm, high_mm) / step);
    return (most < least ? low_mm : step * std::clamp(steps, least, most)) * mm;
  }
  double size(double low_mm, double high_mm) { return on_step(random_, low_mm, high_mm, step()); }
  // The usual size, now and then another one that the table and the other keys allow; mm.
  double size(Key key, double low_mm, double high_mm, Bounds bounds = {}) {
    set(key, size(low_mm, high_mm));
    stretch(key, bounds);
    return draft_[key].number / mm;
  }
  void usual(Key key, double number, Bounds bounds = {}) {
    set(key, number);
    stretch(key, bounds);
  }
  void any(Key key) { set(key, any_choice(random_, key)); }
  static double any_choice(Random &random, Key key) {
    return random.whole(0, static_cast<int>(job::field(key).choices.size()) - 1);
  }

  // Draws of the whole reach come from a generator of their own, so that the usual ones stay what they are.
  void stretch(Key key, Bounds bounds) {
    if (reach_ == Reach::whole && wide_ && whole_.chance(0.15)) {
      anywhere(key, bounds);
    }
  }
  void anywhere(Key key, Bounds bounds = {});
  void now_and_then(Key key, Bounds bounds = {}) {
    if (whole_.chance(wide_ ? 0.3 : 0.1)) {
      anywhere(key, bounds);
    }
  }
  bool decided(Key key) const;

  void tube();
  void tolerances();
  void vent();
  void cap();
  void torch_and_rotation();
  void gas();
  void fixture();
  void bounded_keys();
  void family();
  void remaining_keys();

  Random random_, whole_;
  Sizes sizes_;
  Reach reach_;
  bool wide_; // this job leaves the usual ranges here and there
  Draft draft_;
  double outside_ = 0, wall_ = 0, bore_ = 0, length_ = 0; // mm
  double vent_edge_ = 1e9;                                // mm from the joint
};

void Maker::anywhere(Key key, Bounds bounds) {
  const auto &info = job::field(key);
  const double least = std::max(info.least, bounds.least), most = std::min(info.most, bounds.most);
  job::Entry entry;
  entry.stated = true;
  switch (info.kind) {
  case job::FieldKind::text:
    entry.text = any_text(whole_, static_cast<int>(most));
    break;
  case job::FieldKind::text_list:
    for (int i = whole_.whole(1, 6); i > 0; --i) {
      entry.list.push_back(any_stock(whole_));
    }
    break;
  case job::FieldKind::choice:
    entry.number = any_choice(whole_, key);
    break;
  case job::FieldKind::count:
    entry.number = whole_.whole(static_cast<int>(least), static_cast<int>(most));
    break;
  case job::FieldKind::quantity:
    if (least > most) {
      return; // the other keys leave nothing
    }
    entry.number = spread(whole_, least, most);
    if (info.dimension == units::Dimension::length) {
      const double size_mm = entry.number / mm;
      entry.number = on_step(whole_, std::max(least / mm, size_mm - step()),
                             std::min(most / mm, size_mm + step()), step());
    }
    entry.text = info.dimension == units::Dimension::price ? "SEK" : "";
    break;
  }
  draft_[key] = std::move(entry);
}

void Maker::tube() {
  any(tube_material);
  outside_ = size(tube_outside_diameter, 8.0, random_.chance(0.5) ? 30.0 : 90.0);
  const double widest = 0.5 * (outside_ - 4.0); // leaves the least bore, mm
  wall_ = size(tube_wall, 0.4, std::min({3.0, 0.09 * outside_, widest}), {.most = widest * mm});
  bore_ = outside_ - 2.0 * wall_;
  if (random_.chance(0.2)) {
    draft_[tube_wall] = {};
    set(tube_inside_diameter, bore_ * mm);
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
  usual(tube_outside_diameter_tolerance, on_step(random_, 0.01, tight ? 0.06 : 0.2, fine),
        {.most = 0.2 * bore_ * mm});
  const double share = std::round(random_.between(1.0, tight ? 4.0 : 12.0)) / 100.0;
  const bool as_share = random_.chance(0.5);
  usual(tube_wall_tolerance, as_share ? share : on_step(random_, 0.0, share * wall_, fine),
        {.most = std::min(0.5 * wall_, 0.14 * bore_) * mm});
  // A stretched one is a length.
  draft_[tube_wall_tolerance].is_share = as_share && draft_[tube_wall_tolerance].number == share;
}

void Maker::vent() {
  if (random_.chance(0.35)) {
    return;
  }
  const double diameter =
      size(tube_vent_diameter, 1.0, std::min(5.0, 0.3 * bore_), {.most = 0.49 * bore_ * mm});
  usual(tube_vent_count, random_.whole(1, 3), {.most = 2.0 * outside_ / diameter});
  const double far_least = 50.0 + outside_; // beyond the chamber
  const double near_most = 1.5 * outside_ - 0.5 * diameter - 2.1;
  const bool near = random_.chance(0.3) && near_most > 10.0;
  const double nearest = 0.5 * diameter + 0.2, furthest = length_ - nearest; // within the tube
  const Bounds within{.least = nearest * mm, .most = furthest * mm};
  const double low = near ? 6.0 : std::min(far_least, length_ - 50.0);
  const double from_joint = size(tube_vent_from_joint, std::clamp(low, nearest, furthest),
                                 std::clamp(near ? near_most : length_ - 49.0, nearest, furthest), within);
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
    const double height =
        size(cap_dome_height, 0.12 * diameter, 0.499 * diameter, {.most = 0.499 * diameter * mm});
    size(cap_thickness, std::min(0.4, 0.7 * height), std::min(3.0, 0.7 * height),
         {.most = 0.98 * height * mm});
    return;
  }
  size(cap_thickness, 0.5, 4.0);
  if (shape == CapShape::spigot && random_.chance(0.5)) {
    const double most = std::min(vent_edge_ - 0.2, 0.5 * length_);
    size(cap_spigot_length, 0.6, std::max(0.7, std::min(8.0, most)), {.most = most * mm});
  }
}

void Maker::torch_and_rotation() {
  if (random_.chance(0.5)) {
    size(torch_cup_bore, 6.0, 19.0);
    usual(torch_tilt, random_.between(0.0, 30.0) * units::pi / 180.0);
    size(torch_stickout, 3.0, 15.0);
  }
  usual(rotation_tacks, random_.whole(2, 8));
  usual(rotation_runs, random_.whole(1, 8));
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
    usual(fixture_circuits, random_.whole(2, 4));
  }
  if (random_.chance(0.2)) {
    any(fixture_material);
  }
}

// Keys that the job's own checks hold against others.
void Maker::bounded_keys() {
  constexpr double apart = 0.1 * mm;
  const bool toleranced = draft_[tube_outside_diameter_tolerance].stated;
  if (draft_[cap_shape].number == static_cast<double>(CapShape::spigot) && toleranced) {
    const auto &tolerance = draft_[tube_wall_tolerance];
    const double wall_tolerance = tolerance.number * (tolerance.is_share ? wall_ * mm : 1.0);
    now_and_then(cap_spigot_clearance,
                 {.least = 0.5 * draft_[tube_outside_diameter_tolerance].number + wall_tolerance + 0.05 * mm,
                  .most = 0.5 * bore_ * mm - apart});
  }
  if (draft_[torch_cup_bore].stated) {
    now_and_then(torch_cup_outside_diameter, {.least = draft_[torch_cup_bore].number + apart});
  }
  now_and_then(rotation_overlap, {.most = 0.99 * 2.0 * units::pi / draft_[rotation_runs].number});
  now_and_then(rotation_swing_radius, {.least = 0.5 * outside_ * mm});
  constexpr double usual_limit = 20e-6; // below both limits' defaults
  now_and_then(gas_oxygen_in_supply, {.most = usual_limit});
  for (const Key limit : {gas_oxygen_limit_bore, gas_oxygen_limit_chamber}) {
    now_and_then(limit, {.least = 1.01 * usual_limit});
  }
  const bool limited = draft_[gas_oxygen_limit_bore].stated && draft_[gas_oxygen_limit_chamber].stated;
  if (limited && whole_.chance(0.5)) {
    anywhere(gas_oxygen_in_supply, {.most = 0.99 * std::min(draft_[gas_oxygen_limit_bore].number,
                                                            draft_[gas_oxygen_limit_chamber].number)});
  }
  if (whole_.chance(0.03)) {
    draft_[gas_log].stated = true;
    draft_[gas_log].text = project_file("examples/logger-25-oxygen.csv");
    set(gas_log_use, any_choice(whole_, gas_log_use));
  }
}

// A second tube on the same bench, which has the same ports, circuits and units.
void Maker::family() {
  if (!whole_.chance(0.04)) {
    return;
  }
  Draft other = random_draft(static_cast<std::uint64_t>(whole_.whole(1, 1'000'000)), sizes_, Reach::usual);
  other[job_name].text = "other";
  set(gas_port_thread, any_choice(whole_, gas_port_thread));
  for (const Key key : {gas_port_thread, fixture_circuits, shop_units}) {
    other[key] = draft_[key];
  }
  const auto resolution = job::resolve(other);
  if (resolution.job) {
    draft_[fixture_family].stated = true;
    draft_[fixture_family].list = {"other.yaml"};
    draft_.family = {std::make_shared<const job::Job>(*resolution.job)};
  }
}

// Whether a key's presence is settled by others: the rest may be drawn over all their range.
bool Maker::decided(Key key) const {
  constexpr std::array settled{tube_wall,
                               tube_inside_diameter,
                               tube_outside_diameter_tolerance,
                               tube_wall_tolerance,
                               tube_vent_diameter,
                               tube_vent_from_joint,
                               tube_vent_count,
                               cap_dome_height,
                               cap_spigot_length,
                               cap_spigot_clearance,
                               torch_cup_bore,
                               torch_cup_outside_diameter,
                               rotation_overlap,
                               rotation_swing_radius,
                               gas_oxygen_in_supply,
                               gas_oxygen_limit_bore,
                               gas_oxygen_limit_chamber,
                               gas_log,
                               gas_log_use,
                               fixture_family};
  const bool one_of_family = !draft_.family.empty() && (key == fixture_circuits || key == shop_units);
  return draft_[key].stated || one_of_family || std::ranges::find(settled, key) != settled.end();
}

void Maker::remaining_keys() {
  for (const auto &info : job::fields()) {
    if (!decided(info.key)) {
      now_and_then(info.key);
    }
  }
}

} // namespace

job::Draft random_draft(std::uint64_t seed, Sizes sizes, Reach reach) {
  return Maker(seed, sizes, reach).make();
}

job::Draft random_draft(std::uint64_t seed, Reach reach) {
  constexpr std::array kinds{Sizes::free, Sizes::metric, Sizes::inch};
  return random_draft(seed, kinds[seed % kinds.size()], reach);
}

RandomJob JobStream::next() {
  constexpr int patience = 1000; // draws in a row without a buildable one: the generator is at fault
  for (int tries = 0; tries < patience; ++tries) {
    const std::uint64_t seed = next_++;
    ++drawn_;
    auto resolution = job::resolve(random_draft(seed, reach_));
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

} // namespace purgewright::test

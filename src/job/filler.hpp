// Fills a job from a draft: what is stated, or the default that suits tube, cap and shop, each with its
// reason.
#pragma once

#include "job/defaults.hpp"
#include "job/resolving.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

namespace purgewright::job {

// Common practice: a tube under 10 mm has hardly any metal, one under 20 mm or shorter than 80 mm little.
constexpr double mm = 1e-3, smallest_tube = 10.0 * mm, small_tube = 20.0 * mm, short_tube = 80.0 * mm; // m

class Filler {
 public:
  Filler(const Draft &draft, Job &job) : draft_(draft), job_(job) {}

  void fill() {
    job_.file = draft_.file;
    shop(); // first: the unit system chooses other defaults
    identity();
    tube();
    vent();
    cap();
    torch();
    seam(); // before weld, which follows it
    weld();
    rotation(); // after weld: the number of runs goes by its heat
    gas();
    fixture();
  }

 private:
  using Basis = units::Basis;

  bool stated(Key key) const { return draft_[key].stated; }
  double value(Key key) const { return draft_[key].number; }
  void set_origin(Key key, Basis basis, std::string_view reason) {
    job_.origins[static_cast<std::size_t>(key)] = {basis, {}, reason};
  }
  // The stated number, or the one computed here with its reason.
  double number(Key key, double otherwise, Basis basis, std::string_view reason) {
    const Entry &entry = draft_[key];
    if (!entry.stated) {
      set_origin(key, basis, reason);
      return otherwise;
    }
    job_.origins[static_cast<std::size_t>(key)] = {Basis::given, entry.mark, {}, entry.inches};
    return entry.number;
  }
  double number(Key key) {
    const Fallback &f = fallback(key);
    return number(key, f.number, f.basis, f.reason);
  }
  units::Length length(Key key) { return units::metres(number(key)); }
  int count(Key key) { return static_cast<int>(std::lround(number(key))); }
  template <class Enum> Enum choice(Key key) { return static_cast<Enum>(std::lround(number(key))); }
  std::string text(Key key, std::string_view otherwise, std::string_view reason) {
    number(key, 0, Basis::fallback, reason);
    return stated(key) ? draft_[key].text : std::string(otherwise);
  }
  // A choice out of range is reported by conflicts(); any name does until then.
  static std::string_view name_of(Key key, double index) {
    const auto choices = field(key).choices;
    const auto last = static_cast<double>(choices.size()) - 1.0;
    return choices[static_cast<std::size_t>(index >= 0.0 && index <= last ? index : 0.0)];
  }
  // The table's default in metric shops, the size that is sold in inch ones.
  units::Length length(Key key, units::Length inch, std::string_view inch_reason) {
    return job_.shop.unit_system == units::UnitSystem::inch
               ? units::metres(number(key, inch.value(), Basis::common_practice, inch_reason))
               : length(key);
  }
  // Default with one name for metric shops and one for inch shops.
  double by_units(Key key, std::string_view metric, std::string_view inch, std::string_view metric_reason,
                  std::string_view inch_reason) {
    const bool is_inch = job_.shop.unit_system == units::UnitSystem::inch;
    return number(key, stated(key) ? 0 : choice_index(key, is_inch ? inch : metric), Basis::fallback,
                  is_inch ? inch_reason : metric_reason);
  }

  void identity();
  void tube();
  void tube_tolerances();
  void vent();
  void cap();
  void spigot();
  void torch();
  bool little_metal() const;
  bool bakes_its_plug() const;
  bool small_dome() const;
  bool hot_small_cap() const;
  bool thick_for_its_size() const;
  units::Length joint_thickness() const;
  int default_runs();
  units::Angle default_overlap();
  void seam();
  void order();
  void rotation();
  units::Length pool_on_sheet() const;
  units::Velocity default_speed(std::string_view &reason) const;
  void weld();
  void bead_height();
  void current(units::Current pool);
  void shielding_temperature();
  bool waits_between_runs() const;
  void interpass_temperature();
  void gas();
  void hose();
  units::Length bore_hose_length();
  void port_thread();
  void fixture();
  void shop();

  const Draft &draft_;
  Job &job_;
  bool bakes_ = false; // the plug's rubber, at the current that charts give
};

} // namespace purgewright::job

// What the values of a job say together, one function a question; conflicts() asks them all.
//
// Guarantee: nothing is formatted or allocated while there is no fault.
#pragma once

#include "job/resolving.hpp"

#include <string>
#include <string_view>

namespace purgewright::job {

// Two sizes from different units of the same job are equal within this; 1 nm is far below any tolerance here.
inline constexpr units::Length same_size = units::metres(1e-9);

class Checker {
 public:
  Checker(const Draft &draft, const Job &job, KeySet faulty) : draft_(draft), job_(job), faulty_(faulty) {}

  Diagnostics check();

 private:
  bool stated(Key key) const { return draft_[key].stated; }
  template <class... Keys> bool sound(Keys... keys) const { return (!contains(faulty_, keys) && ...); }
  bool tube_is_sound() const {
    return sound(Key::tube_outside_diameter, Key::tube_wall, Key::tube_inside_diameter);
  }
  std::string text(units::Length) const;
  // A size as text, rounded so that the printed number itself is allowed.
  std::string at_least(units::Length) const;
  std::string at_most(units::Length) const;
  void report(Mark, Key, std::string problem, std::string allowed);
  // The value's place, or that of the first value stated in its section.
  Mark mark_of(Key key) const;
  void spoil(Key key) { faulty_.set(static_cast<std::size_t>(key)); }

  void required();
  void limits();
  void wall();
  void stated_wall();
  void stated_inside_diameter();
  void tolerances();
  void vent();
  void vent_spacing();
  void cap_keys();
  void cap_diameter_band();
  void dome();
  void spigot_fit();
  void spigot_reach();
  void torch();
  void rotation();
  void oxygen();
  void stock();
  void family();

  const Draft &draft_;
  const Job &job_;
  KeySet faulty_;
  Diagnostics problems_;
};

} // namespace purgewright::job

// Numbers, fits and callouts as a drawing spells them, in the shop's unit.
//
// Units: quantity types in; text in millimetres or inches. Frame: none.
// Range and errors: fits where the tables end fall back to the general tolerance (no limits printed).
// Guarantee: the decimal point, whatever the locale. Source: ISO 129-1, ISO 286-1, ISO 6410-1; ASME Y14.5 for
// inches.
#pragma once

#include "view.hpp"

#include "purgewright/job/job.hpp"

namespace purgewright::drawing {

class Labels {
 public:
  explicit Labels(Unit unit) : unit_(unit) {}
  Unit unit() const { return unit_; }

  std::string number(fixture::Length) const; // "25.4", ".063"
  std::string number(fixture::Length, int decimals) const;
  Label size(fixture::Length, std::string before = {}, std::string after = {}) const;
  // "Ø25.3 (25.31/25.28)", in inches "Ø.9865-.9875 (.9878 h8)" with the nominal for reference: limits rounded
  // to the inside, so that none is wider than it was.
  Label limited(fixture::Length, fixture::Length most, fixture::Length least, std::string_view sign,
                std::string_view symbol = {}) const;
  Label diameter(fixture::Length radius, std::string before = {}, std::string after = {}) const;
  // "Ø23.35 h7 (0/-0.021)", in inches with both limits of size; a hole has an upper-case letter.
  Label fitted(fixture::Length radius, char letter, int grade) const;
  Label plus_minus(fixture::Length, fixture::Length tolerance, std::string before = {}) const;
  // Width of a tolerance zone, no wider than it is.
  std::string zone(fixture::Length) const;
  // Tapped hole of a machine screw, depth of thread and of drill: lines of text.
  std::vector<std::string> tapped(const standards::Screw &, int count, fixture::Length thread,
                                  const fixture::Drilling &) const;
  std::string roughness(double ra_micrometres) const;
  static Label text(std::vector<std::string> lines);

 private:
  Unit unit_;
  Label size(fixture::Length, int places, std::string before, std::string after = {}) const;
  Label inch_plus_minus(fixture::Length, fixture::Length tolerance, std::string before) const;
  double in_unit(fixture::Length) const;
  fixture::Length from_unit(double v) const {
    return unit_ == Unit::inch ? units::inches(v) : units::millimetres(v);
  }
  int decimals() const { return unit_ == Unit::inch ? 3 : 2; }
  int fit_decimals() const { return unit_ == Unit::inch ? 4 : 3; }
};

inline double in_mm(fixture::Length v) {
  return units::to_millimetres(v);
}

} // namespace purgewright::drawing

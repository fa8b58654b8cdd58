#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {

namespace {

using units::millimetres;

constexpr std::string_view screw_source =
    "ISO 261 pitch, ISO 273 medium clearance, ISO 4762 head; counterbore from memory of DIN 974-1 row 1";

constexpr Screw screw_row(std::string_view name, double major, double pitch, double tap_drill,
                          double clearance, double head_diameter, double head_height, double bore_diameter,
                          double bore_depth) {
  return {name,
          millimetres(major),
          millimetres(pitch),
          millimetres(tap_drill),
          millimetres(clearance),
          millimetres(head_diameter),
          millimetres(head_height),
          millimetres(bore_diameter),
          millimetres(bore_depth),
          screw_source};
}

// Name, major, pitch, tap drill, clearance, head diameter and height, counterbore diameter and depth; mm.
constexpr std::array<Screw, 7> screw_rows{{
    screw_row("M3", 3.0, 0.5, 2.5, 3.4, 5.5, 3, 6.5, 3.4),
    screw_row("M4", 4.0, 0.7, 3.3, 4.5, 7, 4, 8, 4.4),
    screw_row("M5", 5.0, 0.8, 4.2, 5.5, 8.5, 5, 10, 5.4),
    screw_row("M6", 6.0, 1, 5.0, 6.6, 10, 6, 11, 6.4),
    screw_row("M8", 8.0, 1.25, 6.8, 9.0, 13, 8, 15, 8.6),
    screw_row("M10", 10.0, 1.5, 8.5, 11.0, 16, 10, 18, 10.6),
    screw_row("M12", 12.0, 1.75, 10.2, 13.5, 18, 12, 20, 12.6),
}};

constexpr std::string_view shoulder_source =
    "ISO 7379 shoulder, length, thread and head height as suppliers list them; head diameter, key and thread "
    "length from memory";

constexpr ShoulderScrew shoulder_row(std::string_view name, double shoulder, double thread, double pitch,
                                     double tap_drill, double thread_length, double head_diameter,
                                     double head_height, double key) {
  constexpr double shortest = 10.0; // mm, of every shoulder in ISO 7379
  return {name,
          millimetres(shoulder),
          millimetres(shortest),
          millimetres(thread),
          millimetres(pitch),
          millimetres(tap_drill),
          millimetres(thread_length),
          millimetres(head_diameter),
          millimetres(head_height),
          millimetres(key),
          shoulder_source};
}

// Name, shoulder, thread, pitch, tap drill, thread length, head diameter and height, key; mm.
constexpr std::array<ShoulderScrew, 2> shoulder_rows{{
    shoulder_row("8 x 10 M6", 8.0, 6.0, 1.0, 5.0, 11.0, 13.0, 5.5, 4.0),
    shoulder_row("10 x 10 M8", 10.0, 8.0, 1.25, 6.8, 13.0, 16.0, 7.0, 5.0),
}};

} // namespace

std::span<const ShoulderScrew> shoulder_screws() {
  return shoulder_rows;
}

const ShoulderScrew *shoulder_screw(Length shoulder) {
  const auto *row = std::ranges::find(shoulder_rows, shoulder, &ShoulderScrew::shoulder);
  return row == shoulder_rows.end() ? nullptr : row;
}

std::span<const Screw> screws() {
  return screw_rows;
}

const Screw *screw(std::string_view name) {
  const auto *row =
      std::find_if(screw_rows.begin(), screw_rows.end(), [name](const Screw &s) { return s.name == name; });
  return row == screw_rows.end() ? nullptr : row;
}

} // namespace purgewright::standards

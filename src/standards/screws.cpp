#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {

namespace {

using units::millimetres;

constexpr std::string_view screw_source =
    "ISO 261 pitch, ISO 273 medium clearance, ISO 4762 head; counterbore from memory of DIN 974-1 row 1";

constexpr Screw screw_row(std::string_view name, std::string_view callout, double major, double pitch,
                          double tap_drill, double clearance, double head_diameter, double head_height,
                          double bore_diameter, double bore_depth) {
  return {name,
          millimetres(major),
          millimetres(pitch),
          millimetres(tap_drill),
          millimetres(clearance),
          millimetres(head_diameter),
          millimetres(head_height),
          millimetres(bore_diameter),
          millimetres(bore_depth),
          screw_source,
          callout};
}

// Name, callout, major, pitch, tap drill, clearance, head diameter and height, counterbore diameter and
// depth; mm.
constexpr std::array<Screw, 7> screw_rows{{
    screw_row("M3", "M3×0.5-6H", 3.0, 0.5, 2.5, 3.4, 5.5, 3, 6.5, 3.4),
    screw_row("M4", "M4×0.7-6H", 4.0, 0.7, 3.3, 4.5, 7, 4, 8, 4.4),
    screw_row("M5", "M5×0.8-6H", 5.0, 0.8, 4.2, 5.5, 8.5, 5, 10, 5.4),
    screw_row("M6", "M6×1-6H", 6.0, 1, 5.0, 6.6, 10, 6, 11, 6.4),
    screw_row("M8", "M8×1.25-6H", 8.0, 1.25, 6.8, 9.0, 13, 8, 15, 8.6),
    screw_row("M10", "M10×1.5-6H", 10.0, 1.5, 8.5, 11.0, 16, 10, 18, 10.6),
    screw_row("M12", "M12×1.75-6H", 12.0, 1.75, 10.2, 13.5, 18, 12, 20, 12.6),
}};

constexpr std::string_view inch_source =
    "ASME B1.1 UNC threads, ASME B18.3 heads, normal holes and counterbores, usual tap drills; from memory";

constexpr Screw inch_row(std::string_view name, std::string_view callout, double major, double per_inch,
                         double tap_drill, double clearance, double head_diameter, double bore_diameter) {
  constexpr double sink = 1.0 / 64.0; // head under the face
  using units::inches;
  return {name,
          inches(major),
          inches(1.0 / per_inch),
          inches(tap_drill),
          inches(clearance),
          inches(head_diameter),
          inches(major), // a head is as high as its screw is thick
          inches(bore_diameter),
          inches(major + sink),
          inch_source,
          callout,
          true};
}

// Name, callout, major, threads an inch, tap drill, clearance, head diameter, counterbore diameter; in.
constexpr std::array<Screw, 7> inch_rows{{
    inch_row("4-40", "4-40 UNC-2B", 0.112, 40, 0.089, 0.136, 0.183, 7.0 / 32.0),
    inch_row("8-32", "8-32 UNC-2B", 0.164, 32, 0.136, 0.1935, 0.27, 5.0 / 16.0),
    inch_row("10-24", "10-24 UNC-2B", 0.19, 24, 0.1495, 0.221, 0.312, 3.0 / 8.0),
    inch_row("1/4-20", "1/4-20 UNC-2B", 0.25, 20, 0.201, 9.0 / 32.0, 0.375, 7.0 / 16.0),
    inch_row("5/16-18", "5/16-18 UNC-2B", 0.3125, 18, 0.257, 11.0 / 32.0, 0.469, 17.0 / 32.0),
    inch_row("3/8-16", "3/8-16 UNC-2B", 0.375, 16, 0.3125, 13.0 / 32.0, 0.562, 5.0 / 8.0),
    inch_row("1/2-13", "1/2-13 UNC-2B", 0.5, 13, 27.0 / 64.0, 17.0 / 32.0, 0.75, 13.0 / 16.0),
}};

constexpr std::string_view shoulder_source =
    "ISO 7379 shoulder, length, thread and head height as suppliers list them; f9, head diameter, key and "
    "thread length from memory";

constexpr ShoulderScrew shoulder_row(std::string_view thread_name, std::string_view callout, double shoulder,
                                     double thread, double pitch, double tap_drill, double thread_length,
                                     double head_diameter, double head_height, double key) {
  constexpr double shortest = 10.0; // mm, of every shoulder in ISO 7379
  return {thread_name,
          callout,
          millimetres(shoulder),
          millimetres(shortest),
          {units::micrometres(-49.0), units::micrometres(-13.0)}, // f9, 6 to 10 mm
          millimetres(thread),
          millimetres(pitch),
          millimetres(tap_drill),
          millimetres(thread_length),
          millimetres(head_diameter),
          millimetres(head_height),
          millimetres(key),
          shoulder_source};
}

constexpr std::string_view inch_shoulder_source =
    "ASME B18.3 shoulder screws: thread, shoulder .002 to .004 in under nominal, head, key, thread length, "
    "from memory; lengths as dealers list them, from memory; usual tap drills";

constexpr ShoulderScrew inch_shoulder(std::string_view thread_name, std::string_view callout, double shoulder,
                                      double thread, double per_inch, double tap_drill, double thread_length,
                                      double head_diameter, double head_height, double key) {
  constexpr double shortest = 3.0 / 8.0;
  using units::inches;
  return {thread_name,
          callout,
          inches(shoulder),
          inches(shortest),
          {inches(-0.004), inches(-0.002)},
          inches(thread),
          inches(1.0 / per_inch),
          inches(tap_drill),
          inches(thread_length),
          inches(head_diameter),
          inches(head_height),
          inches(key),
          inch_shoulder_source,
          true};
}

// Thread and its callout, shoulder, thread's diameter, pitch (threads an inch), tap drill, thread length,
// head diameter and height, key; mm, then in.
constexpr std::array<ShoulderScrew, 4> shoulder_rows{{
    shoulder_row("M6", "M6×1-6H", 8.0, 6.0, 1.0, 5.0, 11.0, 13.0, 5.5, 4.0),
    shoulder_row("M8", "M8×1.25-6H", 10.0, 8.0, 1.25, 6.8, 13.0, 16.0, 7.0, 5.0),
    inch_shoulder("1/4-20", "1/4-20 UNC-2B", 5.0 / 16.0, 0.25, 20, 0.201, 7.0 / 16.0, 7.0 / 16.0, 7.0 / 32.0,
                  5.0 / 32.0),
    inch_shoulder("5/16-18", "5/16-18 UNC-2B", 3.0 / 8.0, 0.3125, 18, 0.257, 0.5, 9.0 / 16.0, 0.25,
                  3.0 / 16.0),
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

std::span<const Screw> inch_screws() {
  return inch_rows;
}

const Screw *screw(std::string_view name) {
  for (const auto &rows : {screws(), inch_screws()}) {
    const auto row = std::ranges::find(rows, name, &Screw::name);
    if (row != rows.end()) {
      return &*row;
    }
  }
  return nullptr;
}

const Screw *inch_screw(std::string_view name) {
  const auto *row = std::ranges::find(screw_rows, name, &Screw::name);
  return row == screw_rows.end() ? nullptr : &inch_rows[static_cast<std::size_t>(row - screw_rows.begin())];
}

} // namespace purgewright::standards

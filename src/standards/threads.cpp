#include "purgewright/standards/tables.hpp"

#include <algorithm>
#include <array>

namespace purgewright::standards {

namespace {

using units::inches;
using units::millimetres;

// Across corners of the hexagon a spanner of this size fits.
constexpr Length across_corners(Length across_flats) {
  return across_flats * 1.1547005383792515;
} // 2 / sqrt(3)

// Drill depth of a blind hole: full thread and the tap's lead of four pitches (practice: three to five), to
// the next half millimetre.
constexpr PortThread thread_10_32{
    .name = "10-32 UNF",
    .callout = "10-32 UNF-2B",
    .drill = inches(0.159), // number drill 21
    .major = inches(0.190),
    .pitch = inches(1.0 / 32.0),
    .full_thread = millimetres(5.0),
    .drill_depth = millimetres(8.5),
    .spot_face = millimetres(9.0),
    .fitting_width = across_corners(millimetres(8.0)),
    .source =
        "ASME B1.1; drill from memory; depths, spot face and hexagon: common practice for miniature ports"};

constexpr PortThread thread_m5{
    .name = "M5",
    .callout = "M5×0.8-6H",
    .drill = millimetres(4.2),
    .major = millimetres(5.0),
    .pitch = millimetres(0.8),
    .full_thread = millimetres(5.0),
    .drill_depth = millimetres(8.5),
    .spot_face = millimetres(9.0),
    .fitting_width = across_corners(millimetres(8.0)),
    .source = "ISO 261; depths, spot face and hexagon: common practice for miniature ports, from memory"};

constexpr PortThread thread_g_1_8{
    .name = "G1/8",
    .callout = "G 1/8 ISO 228-1",
    .drill = millimetres(8.8),
    .major = millimetres(9.728),
    .pitch = millimetres(0.907),
    .full_thread = millimetres(8.0),
    .drill_depth = millimetres(12.0),
    .spot_face = millimetres(17.2),
    .fitting_width = across_corners(millimetres(14.0)),
    .source =
        "ISO 228-1; full thread and spot face from memory of ISO 1179-1; hexagon 14 mm: common practice"};

// Taper threads: full thread is the larger of L2 and L1 plus the three threads of wrench make-up; major is
// the pipe's outside diameter.
constexpr PortThread thread_npt_1_8{.name = "1/8 NPT",
                                    .callout = "1/8-27 NPT",
                                    .drill = inches(0.339), // letter drill R, tapped without reaming
                                    .major = inches(0.405),
                                    .pitch = inches(1.0 / 27.0),
                                    .full_thread = inches(0.162 + 3.0 / 27.0),
                                    .drill_depth = millimetres(11.0),
                                    .spot_face = millimetres(0.0),
                                    .fitting_width = across_corners(inches(0.5)),
                                    .source = "ASME B1.20.1; hexagon 1/2 in: common practice"};

constexpr PortThread thread_g_1_4{
    .name = "G1/4",
    .callout = "G 1/4 ISO 228-1",
    .drill = millimetres(11.8),
    .major = millimetres(13.157),
    .pitch = millimetres(1.337),
    .full_thread = millimetres(12.0),
    .drill_depth = millimetres(17.5),
    .spot_face = millimetres(20.7),
    .fitting_width = across_corners(millimetres(19.0)),
    .source =
        "ISO 228-1; full thread and spot face from memory of ISO 1179-1; hexagon 19 mm: common practice"};

constexpr PortThread thread_npt_1_4{.name = "1/4 NPT",
                                    .callout = "1/4-18 NPT",
                                    .drill = inches(7.0 / 16.0), // tapped without reaming
                                    .major = inches(0.540),
                                    .pitch = inches(1.0 / 18.0),
                                    .full_thread = inches(0.4018),
                                    .drill_depth = millimetres(16.0),
                                    .spot_face = millimetres(0.0),
                                    .fitting_width = across_corners(inches(9.0 / 16.0)),
                                    .source = "ASME B1.20.1; hexagon 9/16 in: common practice"};

constexpr std::array<PortThread, 6> threads{thread_10_32,   thread_m5,    thread_g_1_8,
                                            thread_npt_1_8, thread_g_1_4, thread_npt_1_4};

} // namespace

std::span<const PortThread> port_threads() {
  return threads;
}

const PortThread *port_thread(std::string_view name) {
  const auto *row =
      std::find_if(threads.begin(), threads.end(), [name](const PortThread &t) { return t.name == name; });
  return row == threads.end() ? nullptr : row;
}

} // namespace purgewright::standards

// Torch, seam and its runs, current and speed, temperatures to wait for.
#include "job/filler.hpp"

#include "purgewright/standards/welding.hpp"

#include <array>

namespace purgewright::job {

using enum Key;

constexpr double least_current = 5.0; // A, what a small power source holds; common practice

// A cup about as wide as the tube hides the joint from the eye: small tubes are welded with small cups, whose
// gas covers them as well. Over a wide slot more gas is wanted, which leaves a usual cup turbulent. Common
// practice.
struct TubeTorch {
  double from, below; // outside diameter of the tube, m
  double cup_bore, stickout, flow;
  std::string_view cup_reason, stickout_reason, flow_reason;
};
constexpr double lpm = 1e-3 / 60.0;       // m3/s
constexpr double large_tube = 100.0 * mm; // outside diameter
constexpr std::array<TubeTorch, 3> torches{
    {{0.0, 10.0 * mm, 6.35 * mm, 6.0 * mm, 5.0 * lpm,
      "cup number 4, bore 4/16 in, on a tube under 10 mm; common practice",
      "6 mm, so that the eye sees past a small cup; common practice",
      "5 L/min through a number 4 cup; common practice"},
     {10.0 * mm, 20.0 * mm, 9.525 * mm, 6.5 * mm, 8.0 * lpm,
      "cup number 6, bore 6/16 in, on a tube under 20 mm; common practice",
      "6.5 mm, so that the eye sees past the cup; common practice",
      "8 L/min through a number 6 cup; common practice"},
     {large_tube, 1e3, 19.05 * mm, 8.0 * mm, 20.0 * lpm,
      "cup number 12, bore 12/16 in: the gas that a wide slot wants leaves a number 8 turbulent; common "
      "practice",
      "8 mm, under half the cup's bore, with a gas lens; common practice",
      "20 L/min over the wide slot of a tube from 100 mm on; common practice"}}};

void Filler::torch() {
  Torch &t = job_.torch;
  const double outside_diameter = job_.tube.outside_diameter.value();
  const auto *own = std::ranges::find_if(torches, [&](const TubeTorch &row) {
    return outside_diameter >= row.from && outside_diameter < row.below;
  });
  const auto fitting = [&](Key key, double TubeTorch::*number_of, std::string_view TubeTorch::*reason) {
    return own == torches.end() ? number(key)
                                : number(key, own->*number_of, Basis::common_practice, own->*reason);
  };
  t.cup_bore = units::metres(fitting(torch_cup_bore, &TubeTorch::cup_bore, &TubeTorch::cup_reason));
  const auto cups = standards::torch_cups();
  const auto distance = [&](const standards::TorchCup &cup) {
    return std::abs((cup.bore - t.cup_bore).value());
  };
  const auto nearest = std::ranges::min_element(cups, {}, distance);
  // Half a cup number, 1/32 in: beyond it the cup is not one of the numbered ones.
  const bool listed =
      nearest != cups.end() && distance(*nearest) < 0.8 * mm && nearest->outside_diameter > t.cup_bore;
  const double outside = listed ? nearest->outside_diameter.value() : t.cup_bore.value() + 4.0 * mm;
  t.cup_outside_diameter =
      units::metres(number(torch_cup_outside_diameter, outside, Basis::common_practice,
                           listed ? "usual cup of this number; common practice, measure the real cup"
                                  : "the bore and 2 mm of wall; common practice, measure the real cup"));
  t.cup_length = length(torch_cup_length);
  t.stickout = units::metres(fitting(torch_stickout, &TubeTorch::stickout, &TubeTorch::stickout_reason));
  t.tilt = units::radians(number(torch_tilt));
  t.gas_flow =
      units::cubic_metres_per_second(fitting(torch_gas_flow, &TubeTorch::flow, &TubeTorch::flow_reason));
}

// One long run would melt the middle of its cap or bake its plug's rubber. Common practice.
bool Filler::little_metal() const {
  return job_.tube.outside_diameter.value() < small_tube || job_.tube.length.value() < short_tube;
}

// A short tube that takes up so much of the weld's heat that the plug's rubber, at its end, would bake: by
// how much tube and cap would warm if nothing of it left them. Common practice, no source.
bool Filler::bakes_its_plug() const {
  constexpr double warmed_most = 1000.0; // K
  const Tube &t = job_.tube;
  const Cap &c = job_.cap;
  const Weld &w = job_.weld;
  const units::Length girth = units::pi * t.outside_diameter;
  const units::Length plate = c.thickness + c.spigot_length;
  const units::Mass mass =
      t.material->density * (units::pi * (t.outside_diameter - t.wall) * t.wall * t.length) +
      c.material->density * (0.25 * units::pi * units::square(c.diameter) * plate);
  const double heat = w.arc_efficiency * (w.current * w.voltage).value() * (girth / w.travel_speed).value();
  return t.length.value() < short_tube &&
         heat > warmed_most * mass.value() * t.material->specific_heat.room();
}

// A dome so small that its top, where the pin touches it, lies within the arc's reach. Common practice.
bool Filler::small_dome() const {
  const double outside = job_.tube.outside_diameter.value();
  return job_.cap.shape == CapShape::domed && outside >= smallest_tube && outside < small_tube;
}

// A cap so small beside its thick joint that the current of a sheet as thick would melt the middle of it: the
// heat has nowhere to go. Where the heat model finds it so on tubes that stockists list; no source.
bool Filler::hot_small_cap() const {
  constexpr double thin_cap = 1.2, middling_cap = 2.5; // of the wall
  const Tube &t = job_.tube;
  const Cap &c = job_.cap;
  const double per_wall = units::ratio(c.thickness, t.wall);
  const bool heats_through = (c.shape == CapShape::domed && per_wall < middling_cap) ||
                             (c.shape == CapShape::flat && per_wall < thin_cap);
  return thick_for_its_size() && t.outside_diameter.value() < smallest_tube && heats_through;
}

bool Filler::thick_for_its_size() const {
  constexpr double thick_share = 0.095; // of the diameter
  return job_.tube.wall > thick_share * job_.tube.outside_diameter;
}

// A tube under 10 mm would have to turn quicker than a hand does, and slower its cap melts: it is welded spot
// by spot.
void Filler::seam() {
  const bool spots = job_.tube.outside_diameter.value() < smallest_tube;
  job_.rotation.seam = static_cast<Seam>(std::lround(number(
      rotation_seam, static_cast<double>(spots ? Seam::spots : Seam::runs), Basis::common_practice,
      spots ? "spots: a tube under 10 mm would turn quicker under an arc than a hand rolls it, and gets too "
              "hot when it turns slowly; common practice"
            : "runs: the tube turns under the arc; common practice")));
}

int Filler::default_runs() {
  const auto runs = [&](int count, std::string_view reason) {
    return static_cast<int>(std::lround(number(rotation_runs, count, Basis::common_practice, reason)));
  };
  if (job_.rotation.seam == Seam::spots) {
    constexpr double pitch = 1.0 * mm, step = 2.0; // opposite each other in pairs; common practice
    constexpr double least = 6.0, most = 24.0;     // places round the joint that a collar shows apart
    const double girth = units::pi * job_.tube.outside_diameter.value();
    return runs(static_cast<int>(std::clamp(step * std::ceil(girth / pitch / step), least, most)),
                "a spot each millimetre, 24 at most, so that small pools overlap; common practice");
  }
  if (!little_metal()) {
    return runs(4, "four runs of a quarter turn, as far as a wrist turns; common practice");
  }
  if (hot_small_cap()) {
    return runs(6,
                "six short runs with little current: a small cap on a thick joint heats through as a whole; "
                "common practice");
  }
  if (job_.tube.outside_diameter.value() < smallest_tube) {
    return runs(12, "twelve very short runs: a tube under 10 mm has hardly any metal to take up the heat of "
                    "one; common practice");
  }
  if (bakes_) {
    return runs(16, "sixteen very short runs: a short tube on a thick joint hands each run's heat on to its "
                    "plug's rubber; common practice");
  }
  if (small_dome()) {
    return thick_for_its_size()
               ? runs(16, "sixteen very short runs: the top of a dome on a tube under 20 mm, which the pin "
                          "touches, lies near the arc; common practice")
               : runs(12, "twelve very short runs: the top of a dome on a tube under 20 mm, which the pin "
                          "touches, lies near the arc; common practice");
  }
  return runs(8, "eight short runs: a tube under 20 mm or shorter than 80 mm has little metal to take up the "
                 "heat of one; common practice");
}

// The closing run welds over the first one's start until its own pool has passed it whole.
units::Angle Filler::default_overlap() {
  constexpr double least = 10.0, step = 5.0, most_of_run = 1.0 / 3.0; // deg; share of a run
  const double pool = units::to_degrees(
      units::radians(2.0 * standards::pool_walls * units::ratio(job_.tube.wall, job_.tube.outside_diameter)));
  const double most = std::floor(most_of_run * 360.0 / job_.rotation.runs);
  const double wanted = std::min(most, std::max(least, step * std::ceil(pool / step)));
  return units::radians(number(rotation_overlap, units::degrees(wanted).value(), Basis::common_practice,
                               "one pool of 3.5 walls over the end of the run before, 10 degrees at least, "
                               "a third of a run at most; common practice"));
}

void Filler::rotation() {
  constexpr double least_plug = 20.0 * mm; // radius; common practice, no source
  Rotation &r = job_.rotation;
  r.tacks = count(rotation_tacks);
  r.runs = default_runs();
  r.overlap = default_overlap();
  r.swing_radius = units::metres(number(
      rotation_swing_radius, std::max(0.5 * job_.tube.outside_diameter.value() + 5.0 * mm, least_plug),
      Basis::fallback,
      "the tube's radius and 5 mm for the end plug's shoulder, 20 mm at least for its fittings and the "
      "fingers; nothing else turns with the tube"));
  r.start_angle = units::radians(number(rotation_start_angle));
  r.direction = choice<Direction>(rotation_direction);
  order();
}

// Runs in a row pull the cap's rim to one side the most when half of the round is welded: by 2 / pi of what a
// run draws (heat/shrinkage.hpp).
void Filler::order() {
  const Tube &t = job_.tube;
  const units::Length pool = standards::kept_pool(t.wall, t.outside_diameter); // before the foot answers
  const bool pulls = 2.0 / units::pi * standards::transverse_shrinkage(pool) >
                     standards::fit_up(t.wall, job_.weld.with_wire()).gap;
  const bool spots = job_.rotation.seam == Seam::spots;
  job_.rotation.order = static_cast<RunOrder>(std::lround(number(
      rotation_order, static_cast<double>(pulls || spots ? RunOrder::alternating : RunOrder::consecutive),
      Basis::common_practice,
      spots ? "each spot opposite the one before: they pull evenly, and each falls on cooler metal; common "
              "practice"
      : pulls
          ? "each opposite the one before: in a row they would pull the cap's rim to one side by more than "
            "the gap that the weld bridges; common practice"
          : "each where the one before ended: the tube turns on by one run, and the cap's rim is pulled to "
            "one side by less than the gap that the weld bridges; common practice")));
}

// The lower of the two metals'.
units::Temperature metals_shielding_temperature(const Job &job) {
  const units::Temperature none = units::kelvins(1e9);
  return std::min(job.tube.material->shielding_temperature.value_or(none),
                  job.cap.material->shielding_temperature.value_or(none));
}

// What the arc has to melt: half tube, half cap, of whose edge what is deeper than 2.6 walls stays cold. A
// spigot lies under the tube's edge as well, and of a thin tube all that the arc reaches. Common practice, no
// source.
units::Length Filler::joint_thickness() const {
  constexpr auto reached = units::millimetres(4.0);
  const units::Length wall = job_.tube.wall;
  const bool backed = job_.cap.shape == CapShape::spigot;
  const units::Length deep = 2.6 * wall;
  return 0.5 * (wall + (backed ? std::max(deep, reached) : std::min(job_.cap.thickness, deep)));
}

// On sheet, where nothing but the cap's free rim narrows it.
units::Length Filler::pool_on_sheet() const {
  constexpr auto sheet = units::metres(1e3);
  return standards::kept_pool(job_.tube.wall, sheet, job_.cap.rim());
}

units::Velocity Filler::default_speed(std::string_view &reason) const {
  constexpr double step = 0.1 * mm; // of a speed that a hand keeps to, m/s
  const auto chart = standards::titanium_schedule(joint_thickness()).speed;
  const auto by_hand = standards::hand_speed(job_.tube.outside_diameter);
  if (job_.rotation.seam == Seam::runs && by_hand < chart) {
    reason = "five turns of the tube in a minute, as a hand rolls it evenly; charts for hand welding of "
             "titanium sheet say 10 in/min, from memory; common practice";
    return units::metres_per_second(step * std::floor(by_hand.value() / step));
  }
  reason = "10 in/min, charts for hand welding of titanium sheet, slower in proportion above 0.060 in, from "
           "memory; common practice";
  const bool thick = chart < standards::titanium_schedule({}).speed;
  return thick ? units::metres_per_second(step * std::round(chart.value() / step)) : chart;
}

void Filler::weld() {
  Weld &w = job_.weld;
  w.voltage = units::volts(number(weld_voltage));
  w.arc_efficiency = number(weld_arc_efficiency);
  std::string_view reason;
  const units::Velocity speed = default_speed(reason);
  w.travel_speed =
      units::metres_per_second(number(weld_travel_speed, speed.value(), Basis::common_practice, reason));
  const units::Power heat = standards::pool_power(joint_thickness(), pool_on_sheet(), w.travel_speed);
  const auto pool = units::amperes(heat.value() / (w.arc_efficiency * w.voltage.value()));
  w.current = units::amperes(stated(weld_current) ? value(weld_current) : pool.value());
  bakes_ = bakes_its_plug();
  current(pool);
  w.filler = choice<WireUse>(weld_filler);
  bead_height();
  shielding_temperature();
  interpass_temperature();
}

void Filler::bead_height() {
  const bool wire = job_.weld.with_wire();
  job_.weld.bead_height =
      units::metres(number(weld_bead_height, (wire ? 1.0 : 0.5) * mm, Basis::common_practice,
                           wire ? "1 mm over the tube, weld with wire; common practice"
                                : "0.5 mm over the tube, weld without wire; common practice"));
}

// `pool`: what a pool of the usual width takes of cold metal.
void Filler::current(units::Current pool) {
  // For melting, which the law of the pool's heat leaves out: or tacks on thick caps take too long. Fitted to
  // the heat model on tubes that stockists list, no source.
  constexpr double with_melting = 1.08;
  const bool keeps_heat = bakes_ || hot_small_cap();
  const double amperes = std::ceil((keeps_heat ? 1.0 : with_melting) * pool.value());
  job_.weld.current = units::amperes(number(
      weld_current, std::max(amperes, least_current), Basis::common_practice,
      keeps_heat
          ? "what a pool 3.5 walls wide, twice the cap's free rim at most, takes of wall and cap while they "
            "are cold, at "
            "weld.travel_speed (Wells 1952, from memory), whole amperes: a short tube or a small cap on "
            "a thick joint keeps its heat; common practice"
          : "what a pool 3.5 walls wide, twice the cap's free rim at most, takes of wall and cap while they "
            "are cold, at "
            "weld.travel_speed (Wells 1952, from memory), and 8 % for melting them, whole amperes; "
            "common practice"));
}

void Filler::shielding_temperature() {
  constexpr units::Temperature strict = units::celsius(315.0), rubber = units::celsius(200.0);
  const units::Temperature metals = metals_shielding_temperature(job_);
  const auto set = [&](units::Temperature limit, std::string_view reason) {
    job_.weld.shielding_temperature = units::kelvins(
        number(weld_shielding_temperature, std::min(limit, metals).value(), Basis::common_practice, reason));
  };
  if (bakes_ && !waits_between_runs()) {
    set(rubber, "200 degC, what silicone rubber stands for good: a short tube on a thick joint cools so far "
                "before the next run for the sake of its plug's rubber; common practice");
  } else if (small_dome() || job_.tube.outside_diameter.value() < smallest_tube) {
    set(rubber,
        "200 degC: a tube under 10 mm, or a dome on one under 20 mm, cools so far before the next run, "
        "or its cap melts under the pin; common practice");
  } else if (job_.tube.length.value() < short_tube) {
    set(strict, "315 degC (600 degF), as stricter procedures have it: a tube under 80 mm cools for the sake "
                "of its plug's rubber; common practice");
  } else {
    set(metals, "427 degC (800 degF), usual for titanium; stricter procedures say 260 to 370 degC; common "
                "practice");
  }
}

// Of the tubes that bake their plug the shortest: its rubber lies so near that what a run brings it must find
// it cold. Under 10 mm the work is too light to bake it far.
bool Filler::waits_between_runs() const {
  constexpr double shortest_tube = 40.0 * mm;
  return bakes_ && job_.tube.length.value() < shortest_tube &&
         job_.tube.outside_diameter.value() >= smallest_tube;
}

// The torch's gas covers the hold; the wait after it needs none, so that it may be long.
void Filler::interpass_temperature() {
  constexpr units::Temperature cold = units::celsius(120.0);
  const bool waits = waits_between_runs();
  const double interpass =
      number(weld_interpass_temperature, waits ? cold.value() : 0.0,
             waits ? Basis::common_practice : Basis::fallback,
             waits ? "120 degC: a tube under 40 mm on a thick joint hands each run's heat on to its plug's "
                     "rubber, and "
                     "waits so long before the next, without the torch's gas; common practice"
                   : "absent: a run starts as soon as its hold is over");
  if (waits || stated(weld_interpass_temperature)) {
    job_.weld.interpass_temperature = units::kelvins(interpass);
  }
}

} // namespace purgewright::job

#include "job/defaults.hpp"
#include "job/resolving.hpp"
#include "job/stock.hpp"

#include "purgewright/standards/welding.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace purgewright::job {
namespace {

using units::Basis;
using enum Key;

constexpr double mm = 1e-3;           // m
constexpr double least_current = 5.0; // A, what a small power source holds; common practice

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
  void current(units::Current pool);
  void shielding_temperature();
  bool waits_between_runs() const;
  void interpass_temperature();
  void gas();
  void hose();
  void port_thread();
  void fixture();
  void shop();

  const Draft &draft_;
  Job &job_;
  bool bakes_ = false; // the plug's rubber, at the current that charts give
};

void Filler::identity() {
  Identity &id = job_.identity;
  id.name = text(job_name, "", "required");
  id.title = text(job_title, id.name, "the job's name");
  id.revision = text(job_revision, "A", "first issue");
  id.prepared_by = text(job_prepared_by, "", "left blank");
}

void Filler::tube() {
  Tube &t = job_.tube;
  t.material = standards::metal(name_of(tube_material, number(tube_material, 0, Basis::given, "required")));
  const double outside = number(tube_outside_diameter, 0, Basis::given, "required");
  t.outside_diameter = units::metres(outside);
  t.length = units::metres(number(tube_length, 0, Basis::given, "required"));
  const double wall = number(tube_wall, 0.5 * (outside - value(tube_inside_diameter)), Basis::computed,
                             "half of outside less inside diameter");
  const double inside = number(tube_inside_diameter, outside - 2.0 * value(tube_wall), Basis::computed,
                               "outside diameter less twice the wall");
  t.wall = units::metres(wall);
  t.inside_diameter = units::metres(inside);
  tube_tolerances();
}

void Filler::tube_tolerances() {
  Tube &t = job_.tube;
  const auto listed = standards::tube_outside_tolerance(t.outside_diameter);
  // Beyond the table's end: 0.3 % of the diameter, the slope of its last row.
  const double beyond = 0.003 * t.outside_diameter.value();
  t.outside_diameter_tolerance = units::metres(
      listed ? number(tube_outside_diameter_tolerance, listed->value(), Basis::standard,
                      "ASTM B338, permissible variation in outside diameter for this diameter, from "
                      "memory")
             : number(tube_outside_diameter_tolerance, beyond, Basis::common_practice,
                      "0.3 % of the diameter, beyond the table of ASTM B338; common practice"));
  const Entry &entry = draft_[tube_wall_tolerance];
  const double given = number(tube_wall_tolerance, standards::tube_wall_tolerance() * t.wall.value(),
                              Basis::standard, "ASTM B338: 10 % of the wall, from memory");
  t.wall_tolerance = units::metres(entry.is_share ? given * t.wall.value() : given);
}

void Filler::vent() {
  constexpr std::string_view absent = "no vent is stated: the bore breathes through the end plug";
  Vent &v = job_.tube.vent;
  if (!stated(tube_vent_diameter) && !stated(tube_vent_from_joint) && !stated(tube_vent_count)) {
    for (const Key key : {tube_vent_diameter, tube_vent_from_joint, tube_vent_count}) {
      set_origin(key, Basis::fallback, absent);
    }
    v = {};
    return;
  }
  const Tube &t = job_.tube;
  v.count = count(tube_vent_count);
  v.diameter = units::metres(number(tube_vent_diameter, std::min(3.0 * mm, 0.25 * t.inside_diameter.value()),
                                    Basis::common_practice,
                                    "3 mm, at most a quarter of the inside diameter; common practice"));
  // Near the joint the bore's gas sweeps all the way to the cap and leaves into the chamber's argon; far from
  // it the gas beyond the vent would stand still.
  constexpr double near_joint = 10.0 * mm;
  const double from_joint = std::max(near_joint, 2.0 * v.diameter.value());
  v.from_joint = units::metres(
      number(tube_vent_from_joint, std::min(from_joint, 0.5 * t.length.value()), Basis::common_practice,
             "10 mm, two vent diameters at least: the gas sweeps up to the cap; common practice"));
}

void Filler::cap() {
  Cap &c = job_.cap;
  c.shape = static_cast<CapShape>(std::lround(number(cap_shape, 0, Basis::given, "required")));
  c.diameter = units::metres(number(cap_diameter, 0, Basis::given, "required"));
  c.thickness = units::metres(number(cap_thickness, 0, Basis::given, "required"));
  const double material = number(cap_material, value(tube_material), Basis::fallback, "the tube's metal");
  c.material = standards::metal(name_of(cap_material, material));
  const bool domed = c.shape == CapShape::domed;
  const double dome = domed ? 0.25 * c.diameter.value() : 0.0;
  c.dome_height =
      units::metres(number(cap_dome_height, dome, domed ? Basis::common_practice : Basis::fallback,
                           domed ? "a quarter of the diameter; common practice" : "the cap is not domed"));
  spigot();
}

void Filler::spigot() {
  constexpr std::string_view none = "the cap has no spigot";
  Cap &c = job_.cap;
  const Tube &t = job_.tube;
  if (c.shape != CapShape::spigot) {
    c.spigot_length = units::metres(number(cap_spigot_length, 0, Basis::fallback, none));
    c.spigot_clearance = units::metres(number(cap_spigot_clearance, 0, Basis::fallback, none));
    c.spigot_diameter = {};
    return;
  }
  c.spigot_length = length(cap_spigot_length);
  const double smallest_bore = 0.5 * (t.inside_diameter - t.inside_diameter_least()).value() + 0.05 * mm;
  const bool usual = smallest_bore <= 0.10 * mm;
  c.spigot_clearance = units::metres(
      number(cap_spigot_clearance, usual ? 0.10 * mm : smallest_bore, Basis::common_practice,
             usual ? "0.10 mm all round; common practice"
                   : "0.05 mm all round in the smallest bore the tube's tolerances allow; common practice"));
  c.spigot_diameter = t.inside_diameter - 2.0 * c.spigot_clearance;
}

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

// Small or short: one long run would melt the middle of its cap or bake its plug's rubber. Common practice.
constexpr double smallest_tube = 10.0 * mm, small_tube = 20.0 * mm, short_tube = 80.0 * mm;

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
  const bool pulls = 2.0 / units::pi * standards::transverse_shrinkage(pool) > standards::fit_up(t.wall).gap;
  const bool spots = job_.rotation.seam == Seam::spots;
  job_.rotation.order = static_cast<RunOrder>(std::lround(number(
      rotation_order, static_cast<double>(pulls || spots ? RunOrder::alternating : RunOrder::consecutive),
      Basis::common_practice,
      spots ? "each spot opposite the one before: they pull evenly, and each falls on cooler metal; common "
              "practice"
      : pulls
          ? "each opposite the one before: in a row they would pull the cap's rim to one side by more than "
            "the gap that a weld without wire bridges; common practice"
          : "each where the one before ended: the tube turns on by one run, and the cap's rim is pulled to "
            "one side by less than the gap that a weld without wire bridges; common practice")));
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
  w.bead_height = length(weld_bead_height);
  shielding_temperature();
  interpass_temperature();
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

void Filler::gas() {
  Gas &g = job_.gas;
  g.species = choice<GasSpecies>(gas_species);
  g.oxygen_in_supply = number(gas_oxygen_in_supply);
  g.oxygen_limit_bore = number(gas_oxygen_limit_bore);
  g.oxygen_limit_chamber = number(gas_oxygen_limit_chamber);
  g.supply_pressure = units::pascals(number(gas_supply_pressure));
  g.log = text(gas_log, "", "no measured readings are named");
  job_.log = draft_.log;
  g.log_use = choice<LogUse>(gas_log_use);
  g.log_response = units::seconds(number(gas_log_response));
  hose();
  port_thread();
}

void Filler::hose() {
  Hose &h = job_.gas.hose;
  h.material = name_of(gas_hose_material, number(gas_hose_material));
  constexpr std::string_view sold = "hose .170 in bore by 1/4 in, as inch dealers list it; common practice";
  h.inside_diameter = length(gas_hose_inside_diameter, units::inches(0.170), sold);
  h.wall = length(gas_hose_wall, units::inches(0.040), sold);
  h.supply_length = length(gas_hose_supply_length);
  h.bore_length = length(gas_hose_bore_length);
  h.chamber_length = length(gas_hose_chamber_length);
}

void Filler::port_thread() {
  const bool wide = job_.tube.inside_diameter >= units::millimetres(16);
  const double thread =
      wide ? by_units(gas_port_thread, "G1/8", "1/8 NPT", "G1/8, as most metric gas fittings",
                      "1/8 NPT, as most inch gas fittings")
           : by_units(gas_port_thread, "M5", "10-32 UNF", "M5, a bore under 16 mm leaves no room for G1/8",
                      "10-32 UNF, a bore under 16 mm leaves no room for 1/8 NPT");
  job_.gas.port_thread = standards::port_thread(name_of(gas_port_thread, thread));
}

void Filler::fixture() {
  FixtureWishes &f = job_.fixture;
  f.radial_clearance = length(fixture_radial_clearance);
  f.end_clearance = length(fixture_end_clearance);
  f.wall = length(fixture_wall);
  f.diffuser_hole =
      length(fixture_diffuser_hole, units::inches(0.081),
             "No. 46 drill, the smallest whose webs keep 1.5 mm, as many holes as slow the gas; "
             "common practice");
  f.circuits = count(fixture_circuits);
  f.plug = choice<PlugWish>(fixture_plug);
  f.cradle = choice<CradleWish>(fixture_cradle);
  f.chamber = choice<ChamberWish>(fixture_chamber);
  number(fixture_family, 0, Basis::fallback, "no other tube shares the bench");
  job_.family = draft_.family;
  const double slot_length = number(fixture_slot_length, 0, Basis::fallback, "absent: sized by the layout");
  const double slot_width = number(fixture_slot_width, 0, Basis::fallback, "absent: sized by the layout");
  f.slot_length = stated(fixture_slot_length) ? std::optional(units::metres(slot_length)) : std::nullopt;
  f.slot_width = stated(fixture_slot_width) ? std::optional(units::metres(slot_width)) : std::nullopt;
  const double material =
      by_units(fixture_material, "aluminium-6082", "aluminium-6061",
               "the usual machining bar of metric stockists", "the usual machining bar of inch stockists");
  f.material = standards::metal(name_of(fixture_material, material));
  constexpr double thick_share = 0.055; // of the diameter; common practice, no source
  const bool hot = little_metal() || job_.tube.wall > thick_share * job_.tube.outside_diameter;
  const double pin =
      hot ? number(fixture_pin_material, choice_index(fixture_pin_material, "titanium-grade-2"),
                   Basis::common_practice,
                   "a small cap, or one on a thick wall, gets hot under the pin: titanium forms "
                   "nothing that melts early with it; common practice")
          : number(fixture_pin_material, choice_index(fixture_pin_material, "stainless-304"),
                   Basis::common_practice,
                   "the pin's tip stands in the heat; stainless keeps its edge; common practice");
  f.pin_material = standards::metal(name_of(fixture_pin_material, pin));
}

void Filler::shop() {
  Shop &s = job_.shop;
  s.unit_system = choice<units::UnitSystem>(shop_units);
  s.sheet = static_cast<Sheet>(
      std::lround(by_units(shop_sheet, "A3", "Tabloid", "metric paper that holds a part on one sheet",
                           "inch paper that holds a part on one sheet")));
  s.projection = static_cast<Projection>(
      std::lround(by_units(shop_projection, "first", "third", "ISO 5456-2 practice of metric shops",
                           "ASME Y14.3 practice of inch shops")));
  s.argon_price = number(shop_argon_price);
  s.currency = stated(shop_argon_price) ? draft_[shop_argon_price].text : "EUR";
  s.bottle_water_volume = units::cubic_metres(number(shop_bottle_water_volume));
  s.bottle_pressure = units::pascals(number(shop_bottle_pressure));
  s.room_volume = units::cubic_metres(number(shop_room_volume));
  s.room_air_changes_per_hour = number(shop_room_air_changes_per_hour);
  s.draught = units::metres_per_second(number(shop_draught));
  number(shop_stock, 0, Basis::fallback, "no stock is listed");
  for (const std::string &text : draft_[shop_stock].list) {
    if (const auto item = parse_stock(text)) { // one that is not read is reported by conflicts()
      s.stock.push_back(*item);
    }
  }
}

} // namespace

void fill(const Draft &draft, Job &job) {
  Filler(draft, job).fill();
}

} // namespace purgewright::job

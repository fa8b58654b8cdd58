// What the sheets say: a sheet a part, every feature once, every length of the layout somewhere, and each printed number
// as measured on the solid.
#include "drawn_job.hpp"
#include "measure.hpp"

#include "drawing/part_plans.hpp"
#include "support/layout_lengths.hpp"

#include "purgewright/units/ids.hpp"

#include <fmt/format.h>

#include <map>
#include <set>

using namespace purgewright;
using namespace purgewright::test;
using namespace purgewright::drawing;

namespace {

const solids::kernel::Solid &solid_of(const DrawnJob &drawn_job, const std::string &part) {
  for (const auto &candidate : drawn_job.assembly.parts) {
    if (candidate.name == part) {
      return candidate.solid;
    }
  }
  FAIL("no part " << part);
  throw std::logic_error("unreachable");
}

double printed_mm(const Sheet &sheet, double shown) {
  constexpr double inch = 25.4;
  return sheet.unit == Unit::inch ? shown * inch : shown;
}

// Returns how many dimensions were measured.
int check_measures(const DrawnJob &drawn_job) {
  int measured = 0;
  for (const Sheet &sheet : drawn_job.sheets) {
    for (const Dimension &d : sheet.dimensions) {
      if (d.probe == Probe::none || d.probe == Probe::angle) {
        continue;
      }
      INFO(d.feature << ": " << fmt::format("{}", fmt::join(d.lines, " / ")));
      const Measured found = measure(d, solid_of(drawn_job, sheet.part));
      INFO(found.reason);
      CHECK(found.value);
      if (!found.value) {
        continue;
      }
      const double half_digit = 0.5 * printed_mm(sheet, d.last_digit);
      CHECK(std::abs(*found.value - printed_mm(sheet, d.shown)) <= half_digit + 1e-6);
      ++measured;
    }
  }
  return measured;
}

void check_once(const DrawnJob &drawn_job) {
  std::map<std::string, int> count;
  for (const Sheet &sheet : drawn_job.sheets) {
    for (const Dimension &d : sheet.dimensions) {
      ++count[sheet.part + ": " + d.feature];
    }
  }
  for (const auto &[feature, times] : count) {
    INFO(feature);
    CHECK(times == 1);
  }
}

void check_a_sheet_a_part(const DrawnJob &drawn_job) {
  std::set<std::string> made, drawn_parts;
  for (const auto &part : drawn_job.assembly.parts) {
    if (part.made()) {
      made.insert(part.name);
    }
  }
  for (const Sheet &sheet : drawn_job.sheets) {
    if (sheet.part != assembly_sheet) {
      drawn_parts.insert(sheet.part);
    }
  }
  CHECK(drawn_parts == made);
}

template <class Check> void on_examples_and_random_jobs(std::uint64_t seed, int jobs, Check &&check) {
  for (const auto &name : example_names) {
    INFO(name);
    check(drawn(example_job(name)));
  }
  JobStream stream(seed);
  for (int i = 0; i < jobs; ++i) {
    const RandomJob random = stream.next();
    INFO("seed " << random.seed);
    check(drawn(random.job));
  }
}

// ---- completeness: no length may change without a sheet saying so ----
std::string words_of(const Inputs &in) {
  std::string out;
  for (const PartPlan &plan : plans(in)) {
    out += plan.stock + "\n";
    for (const auto &row : plan.rows) {
      for (const ViewPlan &view : row) {
        for (const Linear &linear : view.linears) {
          out += fmt::format("{} {}\n", linear.feature, fmt::join(linear.label.lines, "/"));
        }
        for (const Callout &callout : view.callouts) {
          out += fmt::format("{} {}\n", callout.feature, fmt::join(callout.label.lines, "/"));
        }
      }
    }
    for (const auto &note : plan.notes) {
      out += note + "\n";
    }
  }
  return out;
}

// Lengths that no part's sheet may show: places in the assembly, needs, and copies of a symmetric pattern, whose other
// half is checked.
std::set<const fixture::Length *> not_of_a_part(const fixture::Layout &l) {
  std::set<const fixture::Length *> out;
  const auto position = [&](const fixture::Position &p) { out.insert({&p.x, &p.y, &p.z}); };
  for (const auto *place : {&l.end_plate.placement, &l.pin.placement, &l.plug.placement, &l.lance.placement,
                            &l.block.placement, &l.collar.placement, &l.stop.placement, &l.base.placement,
                            &l.cover.placement, &l.stand.placements[0], &l.stand.placements[1]}) {
    position(*place);
  }
  out.insert({&l.body.slot_needs.x_min, &l.body.slot_needs.x_max, &l.body.slot_needs.width, &l.stand.washer,
              &l.stop.room, &l.stop.room_needed, &l.cover.travel});
  const auto patterns = [&](const auto &...arrays) {
    const auto each = [&](const auto &array) {
      for (const auto &p : array) {
        position(p);
      }
    };
    (each(arrays), ...);
  };
  patterns(l.body.end_screws, l.body.base_screws, l.body.dowels, l.end_plate.screws, l.base.chamber_screws,
           l.base.block_screws, l.base.stand_screws, l.base.stop_screws, l.base.dowels, l.base.feet, l.block.mounts);
  return out;
}

// Further lengths that a layout holds but this one's parts do not have.
void add_absent(const fixture::Layout &l, std::set<const fixture::Length *> &out) {
  if (!l.plug.has_exhaust) {
    const auto &e = l.plug.exhaust;
    out.insert({&e.z, &e.port_radius, &e.port_depth, &e.radius, &e.end_x, &e.seat_radius, &e.seat_depth});
    out.insert({&l.plug.inlet.seat_radius, &l.plug.inlet.seat_depth, &l.plug.inlet.z});
  } else {
    const auto &e = l.plug.exhaust; // its port is one of "2x"
    out.insert({&e.port_radius, &e.port_depth, &e.end_x, &e.seat_radius, &e.seat_depth, &l.plug.inlet.end_x});
    out.insert({&l.plug.nose_radius, &l.plug.nose_length, &l.plug.side_hole_radius, &l.plug.side_first_x,
                &l.plug.side_pitch});
  }
  if (l.plug.side_rows < 2) {
    out.insert(&l.plug.side_pitch);
  }
  if (!l.lance.present) {
    out.insert({&l.lance.outside_radius, &l.lance.inside_radius, &l.lance.length});
  }
  if (!l.stop.present) {
    const auto &s = l.stop;
    out.insert({&s.thickness, &s.width, &s.z_min, &s.notch_radius, &s.plunger_tap_radius, &s.plunger_y, &s.plunger_z,
                &s.foot_y, &s.foot_tapping.radius, &s.foot_tapping.depth, &l.base.stop_travel});
  }
  if (!(l.pin.head_length > fixture::Length{})) {
    out.insert({&l.pin.contact_outer_radius, &l.pin.head_length});
  }
  if (l.body.diffuser.columns < 2) {
    out.insert(&l.body.diffuser.x_pitch);
  }
  if (l.body.diffuser.rows < 2) {
    out.insert(&l.body.diffuser.y_pitch);
  }
  for (std::size_t i = 2; i < l.block.outlet_x.size(); ++i) { // the pitch is that of the first two
    out.insert(&l.block.outlet_x[i]);
  }
  if (l.block.outlets < 2) {
    out.insert(&l.block.outlet_x[1]);
  }
  if (l.cover.exits < 1) {
    out.insert(&l.cover.exit_radius);
  }
  if (l.cover.exits < 2) {
    out.insert(&l.cover.exit_pitch);
  }
  if (!(l.block.spot_depth > fixture::Length{})) {
    out.insert({&l.block.spot_radius, &l.block.spot_depth});
  }
}

void check_complete(const job::Job &job) {
  const fixture::Layout layout = fixture::lay_out(job);
  const auto volumes = fixture::volumes(job, layout);
  solids::Assembly assembly = solids::build_assembly(job, layout);
  const Unit unit = job.shop.unit_system == units::UnitSystem::inch ? Unit::inch : Unit::millimetre;
  fixture::Layout changed = layout;
  const Inputs in{job, changed, volumes, assembly, Labels(unit), false};
  const std::string before = words_of(in);
  auto skipped = not_of_a_part(changed);
  add_absent(changed, skipped);
  int index = 0, asked = 0;
  for_each_length(changed, [&](fixture::Length &length) {
    ++index;
    if (skipped.contains(&length)) {
      return;
    }
    const fixture::Length kept = length;
    length = kept + units::millimetres(0.25);
    INFO("length " << index << " of the layout, " << units::to_millimetres(kept) << " mm");
    CHECK(words_of(in) != before);
    length = kept;
    ++asked;
  });
  CHECK(asked > 100);
}

} // namespace

TEST_CASE("every made part has a sheet") {
  on_examples_and_random_jobs(300, 5, check_a_sheet_a_part);
}

TEST_CASE("no feature is dimensioned twice") { on_examples_and_random_jobs(310, 5, check_once); }

TEST_CASE("every number on a sheet is the one measured on the solid") {
  on_examples_and_random_jobs(320, 10, [](const DrawnJob &drawn_job) { CHECK(check_measures(drawn_job) > 80); });
}

TEST_CASE("no length of a part changes without its sheet") {
  for (const auto &name : example_names) {
    INFO(name);
    check_complete(example_job(name));
  }
  JobStream stream(330);
  for (int i = 0; i < 10; ++i) {
    const RandomJob random = stream.next();
    INFO("seed " << random.seed);
    check_complete(random.job);
  }
}

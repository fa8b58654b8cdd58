// What an assembler and a machinist ask of the sheets of plugs for strangers' tubes.
#include "drawn_job.hpp"
#include "sheet_faults.hpp"

#include "purgewright/fixture/part_faces.hpp"
#include "purgewright/units/ids.hpp"

#include <algorithm>

using namespace purgewright;
using namespace purgewright::test;
using namespace purgewright::drawing;

namespace {

DrawnJob drawn_tube(const std::string &tube, const std::string &diameter) {
  auto reading =
      job::read_draft_text("job: {name: plug}\ntube: {material: titanium-grade-2, " + tube +
                               "}\ncap: {shape: flat, diameter: " + diameter + ", thickness: 1.2 mm}\n",
                           "job.yaml");
  REQUIRE(reading.problems.empty());
  auto resolution = job::resolve(reading.draft);
  REQUIRE(resolution.job);
  return drawn(*resolution.job);
}

const Sheet &sheet_of(const DrawnJob &drawn_job, std::string_view part) {
  const auto found = std::ranges::find(drawn_job.sheets, part, &Sheet::part);
  REQUIRE(found != drawn_job.sheets.end());
  return *found;
}

// All lettering of the sheet in one text; a note may be broken into lines.
std::string words(const Sheet &sheet) {
  std::string out;
  for (const Text &text : sheet.texts) {
    out += text.content + " ";
  }
  for (const Dimension &dimension : sheet.dimensions) {
    for (const std::string &line : dimension.lines) {
      out += line + " ";
    }
  }
  return out;
}

const Dimension *named(const Sheet &sheet, std::string_view feature) {
  const auto found = std::ranges::find(sheet.dimensions, feature, &Dimension::feature);
  return found == sheet.dimensions.end() ? nullptr : &*found;
}

// Full circles of this radius about the axis in a view, visible lines alone.
int circles(const Sheet &sheet, std::string_view view_name, fixture::Length radius) {
  int count = 0;
  for (const View &view : sheet.views) {
    if (view.name != view_name) {
      continue;
    }
    for (const Stroke &stroke : view.strokes) {
      const auto *arc = std::get_if<Arc>(&stroke.curve);
      count += arc != nullptr && stroke.line == Line::visible && arc->is_circle() &&
               std::abs(arc->radius - view.scale * units::to_millimetres(radius)) < 1e-6;
    }
  }
  return count;
}

void check_sheets(const DrawnJob &drawn_job) {
  for (const Sheet &sheet : drawn_job.sheets) {
    INFO(sheet.name);
    CHECK(overlaps(sheet) == std::vector<std::string>{});
  }
  CHECK(wrong_measures(drawn_job).faults == std::vector<std::string>{});
  CHECK(silent_lengths(drawn_job).faults == std::vector<std::string>{});
}

} // namespace

using Catch::Contains;

TEST_CASE("sheets of an expanding plug say what holds it and how far its knob is turned") {
  const DrawnJob job =
      drawn_tube("outside_diameter: 88.9 mm, wall: 2 mm, length: 300 mm, wall_tolerance: 0.3 mm", "88.9 mm");
  const auto &plug = job.layout.plug;
  REQUIRE(plug.kind == fixture::PlugKind::expanding);
  const Sheet &body = sheet_of(job, ids::end_plug), &knob = sheet_of(job, ids::plug_knob);
  CHECK_THAT(words(body), Contains("2 flats"));
  CHECK_THAT(words(knob), Contains("turns from finger-tight"));
  CHECK_THAT(words(knob), Contains("N m at most"));
  CHECK_THAT(words(knob), Contains("ISO 13444-RGE"));
  // The flange hides shank and hub from the front; from the rear they are seen.
  CHECK(circles(body, "from-right", plug.spigot_radius) == 1);
  CHECK(circles(body, "from-right", plug.shank_radius) == 0);
  CHECK(circles(body, "from-left", plug.shank_radius) == 1);
  check_sheets(job);
}

TEST_CASE("the sheet of a cup says its datum, what runs true to it, and what closes the cross drilling") {
  const DrawnJob job = drawn_tube("outside_diameter: 0.375 in, wall: 0.035 in, length: 60 mm", "0.375 in");
  REQUIRE(job.layout.plug.kind == fixture::PlugKind::cup);
  const Sheet &body = sheet_of(job, ids::end_plug), &lance = sheet_of(job, ids::purge_lance);
  CHECK(named(body, "datum.A") != nullptr);
  CHECK(named(body, "end-plug.seal.runout") != nullptr);
  CHECK(named(body, "end-plug.front.cup.roughness") != nullptr);
  CHECK(named(body, "end-plug.front.lead_in") != nullptr);
  CHECK_THAT(words(body), Contains("closed by set screw ISO 4026 M5"));
  CHECK_THAT(words(body), Contains("Seat bored to the lance as bought") && Contains("Glued"));
  CHECK_THAT(words(lance), Contains("retaining compound"));
  check_sheets(job);
}

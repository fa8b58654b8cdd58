// The sheets' contents, one plan a part: which views, and every feature dimensioned once from functional
// datums.
//
// Units: quantity types in, millimetres at full size out. Frame: each part's own (fixture/layout.hpp).
// Range and errors: a buildable layout; SolidError when a section fails.
// Guarantee: same input, same plan. Source: ISO 129-1; datums and roughness as each file says.
#pragma once

#include "labels.hpp"
#include "solid_views.hpp"

#include "purgewright/drawing/sheets.hpp"
#include "purgewright/fixture/tolerances.hpp"

namespace purgewright::drawing {

struct Inputs {
  const job::Job &job;
  const fixture::Layout &layout;
  const fixture::Volumes &volumes;
  const solids::Assembly &assembly;
  Labels labels;
  bool draw = true; // false: words alone, nothing is cut or projected

  const solids::kernel::Solid &solid(std::string_view part) const;
};

// One a made part, in the assembly's order.
std::vector<PartPlan> plans(const Inputs &);

PartPlan plan_assembly(const Inputs &); // with a list of all parts

PartPlan plan_chamber_body(const Inputs &);
ViewPlan chamber_base_view(const Inputs &); // one of its views
PartPlan plan_chamber_top(const Inputs &);
PartPlan plan_chamber_side(const Inputs &);
PartPlan plan_chamber_floor(const Inputs &);
PartPlan plan_chamber_rear(const Inputs &);
PartPlan plan_wiper_plate(const Inputs &);
PartPlan plan_plenum_cover(const Inputs &);
PartPlan plan_end_plate(const Inputs &);
PartPlan plan_backing_pin(const Inputs &);
PartPlan plan_port_block(const Inputs &);
PartPlan plan_cradle_stand(const Inputs &);
PartPlan plan_index_collar(const Inputs &);
PartPlan plan_axial_stop(const Inputs &);
PartPlan plan_tail_foot(const Inputs &);
PartPlan plan_clamp_bar(const Inputs &);
PartPlan plan_base_plate(const Inputs &);
PartPlan plan_slot_cover(const Inputs &);

// Name, title, metal, mass and stock of a part, and the notes that every sheet carries.
PartPlan started_plan(const Inputs &, std::string_view part);

// "Plate 12 thick; faces as rolled where the stock is that thick."
std::string plate_note(const Inputs &, fixture::Length thickness);

// Cut face of the part, and on a view its outline and hatching. A detail shares the cut of its section.
CutFace cut_of(const Inputs &, std::string_view part, const Looking &, Vec through = {});
void add_cut(ViewPlan &, const CutFace &);
ViewPlan pictorial_view(const Inputs &, std::string_view part);

// The view next to its neighbour as the job's projection puts it: first angle left view on the right.
void add_left_view(const Inputs &, std::vector<ViewPlan> &row, ViewPlan view);
void add_right_view(const Inputs &, std::vector<ViewPlan> &row, ViewPlan view);
// A row of views from above: first angle under the plan's rows, third angle over them.
void add_top_row(const Inputs &, PartPlan &, std::vector<ViewPlan> row);

// A rectangle across the axis seen from the left, one in the plane of X and Y seen from above: outline and
// middle line.
struct Rectangle {
  double first_min = 0.0, first_max = 0.0, second_min = 0.0, second_max = 0.0;
};
ViewPlan face_from_left(const Rectangle &yz);
ViewPlan face_from_above(const Rectangle &xy);

// Cosmetic thread seen end on: three quarters of a narrow circle. Cut along its axis: two narrow lines.
void thread_end_on(ViewPlan &, Vec centre, double major_radius);
void thread_cut(ViewPlan &, Vec mouth, Vec inwards, Vec across, double major_radius, double depth,
                double drill_radius);

// Rectangle with rounded corners in the plane of X and Y, symmetric about y = 0.
struct RoundedOutline {
  double x_min = 0.0, x_max = 0.0, half_width = 0.0, corner = 0.0;
};
void rounded_outline(ViewPlan &, const RoundedOutline &);

void tapped_end_on(ViewPlan &, Vec centre, fixture::Length major, fixture::Length drill_radius);
// Plain hole with a centre mark.
void hole_end_on(ViewPlan &, Vec centre, fixture::Length radius);

// ---- wishes ----
Callout note(std::string feature, Vec tip, std::vector<std::string> lines);
Callout roughness(std::string feature, Vec tip, const Labels &, double ra);
Callout frame(std::string feature, Vec tip, std::string cells);
Callout datum(Vec tip, std::string letter, double direction);
// Of two holes alike, on one of them: the datum is the plane amid them, as a note says.
Callout datum_of_pair(Vec hole, fixture::Length radius, std::string letter, double direction);
// Of a zone so wide across the datum.
std::string position_cells(const Labels &, fixture::Length width, std::string_view datum);
// Of a round face along `axis` that holds `tip`.
Callout bore(std::string feature, Label, Vec tip, Vec axis, double towards);
// Leg of a 45 degree chamfer, `tip` in its middle.
Callout chamfer(std::string feature, const Labels &, fixture::Length leg, Vec tip, double towards);
// Of a hole seen end on: the leader meets its circle from outside. `along` is a point of its wall.
Callout hole_note(std::string feature, Label, Vec centre, fixture::Length radius, Vec axis, double towards);
// Clearance hole with counterbore: two lines of text.
Label counterbored(const Labels &, int count, fixture::Length clearance_radius,
                   fixture::Length counterbore_radius, fixture::Length depth);
std::string through_thread(const standards::Screw &, int count);
// Reamed for a dowel pin that is tapped in (H7), or that slides in it (F7): count, fit with its limits.
enum class Dowel { tapped_in, slides };
Label reamed(const Labels &, int count, fixture::Length radius, Dowel = Dowel::tapped_in);
// Holes in line with a dowel are placed by the dowel's dimension.
inline bool in_line(fixture::Length a, fixture::Length b) {
  constexpr double same = 1e-6; // mm
  return std::abs(in_mm(a - b)) < same;
}
// Directions of leaders, radians.
inline constexpr double rightwards = 0.0, upwards = 0.5 * std::numbers::pi, leftwards = std::numbers::pi,
                        downwards = -0.5 * std::numbers::pi;
inline constexpr double up_right = 0.3 * std::numbers::pi, up_left = 0.7 * std::numbers::pi,
                        down_right = -0.3 * std::numbers::pi, down_left = -0.7 * std::numbers::pi;

} // namespace purgewright::drawing

// How features look and what they say on a sheet: once for each kind, for every part that has them.
//
// Units: millimetres at full size. Frame: the part's own. Range and errors: plain values.
// Guarantee: no kernel types. Source: ISO 128, ISO 129-1, ISO 6410-1 (threads).
#pragma once

#include "part_plans.hpp"

#include "purgewright/fixture/part_faces.hpp"

namespace purgewright::drawing {

Vec vec(const fixture::Position &);
Vec vec(const fixture::Direction &);

// Diameter with its tolerance: fit with both limits, plus-minus, or the sheet's general one.
Label diameter_label(const Labels &, fixture::Length radius, const fixture::Tolerance &,
                     std::string before = {}, std::string after = {});
Label length_label(const Labels &, fixture::Length, const fixture::Tolerance &, std::string before = {});

// How a hole of this size is made: "drill" or "bore".
std::string_view drilled_or_bored(fixture::Length radius);
// "2x G 1/8 ISO 228-1, depth", and the drill under it.
std::vector<std::string> thread_lines(const Labels &, const fixture::Hole &, int count);
std::string external_thread(const Labels &, const fixture::Thread &);

// A hole whose axis lies in the cutting plane: edges seen beyond the cut, its thread, its axis.
void hole_cut(ViewPlan &, const fixture::Hole &, const fixture::HoleAt &);
// The same seen along its axis from the mouth.
void hole_end_on(ViewPlan &, const fixture::Hole &, const fixture::HoleAt &);

// Sheet of a part turned about X: section, end view, a detail of each groove; every size of every feature.
PartPlan plan_turned(const Inputs &, const fixture::Part &);

} // namespace purgewright::drawing

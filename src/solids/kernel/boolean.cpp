#include "purgewright/solids/kernel/boolean.hpp"

#include "purgewright/solids/kernel/measure.hpp"
#include "purgewright/solids/kernel/scale.hpp"
#include "purgewright/solids/kernel/solid_occt.hpp"
#include "solids/kernel/guard.hpp"

#include <BRepAlgoAPI_BooleanOperation.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace purgewright::solids::kernel {

namespace {

// rough_volume() is good to about 1e-4; bounds that must hold exactly get this much slack.
constexpr double rough_slack = 1e-3;

std::string box_text(Solid const &solid) {
  Bounds const b = bounding_box(solid);
  return text(b.least) + ".." + text(b.greatest);
}

// Only filled in once something has gone wrong: boxes cost more than many an operation.
Task described(std::string const &operation, std::vector<Solid> const &arguments,
               std::vector<Solid> const &tools) {
  std::string inputs = "arguments";
  for (Solid const &s : arguments)
    inputs += " " + box_text(s);
  inputs += ", tools";
  for (Solid const &s : tools)
    inputs += " " + box_text(s);
  return {operation, inputs};
}

TopTools_ListOfShape shapes(std::vector<Solid> const &solids) {
  TopTools_ListOfShape list;
  for (Solid const &s : solids)
    list.Append(occt(s));
  return list;
}

TopoDS_Shape built(Task const &task, BRepAlgoAPI_BooleanOperation &operation,
                   std::vector<Solid> const &arguments, std::vector<Solid> const &tools) {
  operation.SetArguments(shapes(arguments));
  operation.SetTools(shapes(tools));
  operation.SetNonDestructive(Standard_True);
  operation.SetRunParallel(Standard_False);
  operation.SetFuzzyValue(0.0);
  operation.SetToFillHistory(Standard_False);
  operation.SetCheckInverted(Standard_False); // no Solid is inside out: its volume was found positive
  operation.Build();
  if (!operation.IsDone() || operation.HasErrors() || operation.HasWarnings()) {
    std::ostringstream report;
    operation.DumpErrors(report);
    operation.DumpWarnings(report);
    fail(task, report.str().empty() ? "the operation is not done" : report.str());
  }
  return operation.Shape();
}

// Runs the work with a short task text, and again names the inputs in full if it fails.
template <class Work>
auto with_inputs(std::string const &operation, std::vector<Solid> const &arguments,
                 std::vector<Solid> const &tools, Work &&work) {
  Task const task{operation, ""};
  try {
    return guarded(task, [&] { return work(task); });
  } catch (SolidError const &error) {
    fail(described(operation, arguments, tools), error.kernel_text);
  }
}

double sum_of_volumes(std::vector<Solid> const &solids) {
  double sum = 0.0;
  for (Solid const &s : solids)
    sum += rough_volume(s);
  return sum;
}

double largest_volume(std::vector<Solid> const &solids) {
  double largest = 0.0;
  for (Solid const &s : solids)
    largest = std::max(largest, rough_volume(s));
  return largest;
}

// The exact volumes settle it: the rough ones could hide a small hole.
void require_removed(Task const &task, Solid const &base, Solid const &result) {
  if (face_count(base) == face_count(result) && !(volume(result) < volume(base)))
    fail(task, "the tools remove nothing");
}

} // namespace

Solid cut(Solid const &base, std::vector<Solid> const &tools, int expected_solids) {
  if (tools.empty())
    return base;
  return with_inputs("cut", {base}, tools, [&](Task const &task) {
    BRepAlgoAPI_Cut operation;
    TopoDS_Shape const shape = built(task, operation, {base}, tools);
    double const whole = rough_volume(base);
    double const least = whole * (1.0 - rough_slack) - sum_of_volumes(tools) * (1.0 + rough_slack);
    Solid result = checked(task, shape,
                           {.solids = expected_solids,
                            .least_volume = std::max(0.0, least),
                            .greatest_volume = whole * (1.0 + rough_slack)});
    require_removed(task, base, result);
    return result;
  });
}

Solid fuse(std::vector<Solid> const &solids, int expected_solids) {
  if (solids.empty())
    fail({"fuse", ""}, "there is nothing to fuse");
  if (solids.size() == 1)
    return solids.front();
  std::vector<Solid> const first{solids.front()};
  std::vector<Solid> const others(solids.begin() + 1, solids.end());
  return with_inputs("fuse", first, others, [&](Task const &task) {
    BRepAlgoAPI_Fuse operation;
    TopoDS_Shape const shape = built(task, operation, first, others);
    return checked(task, shape,
                   {.solids = expected_solids,
                    .least_volume = largest_volume(solids) * (1.0 - rough_slack),
                    .greatest_volume = sum_of_volumes(solids) * (1.0 + rough_slack)});
  });
}

std::optional<Solid> common(Solid const &a, Solid const &b) {
  return common(a, std::vector<Solid>{b});
}

std::optional<Solid> common(Solid const &a, std::vector<Solid> const &others) {
  return with_inputs("common", {a}, others, [&](Task const &task) -> std::optional<Solid> {
    BRepAlgoAPI_Common operation;
    TopoDS_Shape const shape = built(task, operation, {a}, others);
    int const solids = shape.IsNull() ? 0 : count_solids(shape);
    if (solids == 0)
      return std::nullopt;
    double const smaller = std::min(rough_volume(a), sum_of_volumes(others));
    return checked(task, shape, {.solids = solids, .greatest_volume = smaller * (1.0 + rough_slack)});
  });
}

units::Volume common_volume(Solid const &a, Solid const &b) {
  return common_volume(a, std::vector<Solid>{b});
}

units::Volume common_volume(Solid const &a, std::vector<Solid> const &others) {
  std::optional<Solid> const shared = common(a, others);
  return shared ? volume(*shared) : units::Volume{};
}

} // namespace purgewright::solids::kernel

#include "purgewright/gas/curves.hpp"

#include "scene.hpp"

namespace purgewright::gas {
namespace {

using plan::Stage;
using plan::Subject;

std::vector<double> at_target(const Course &course, const Target &target) {
  const std::size_t tank = tank_at(course.map, target.zone, target.position);
  std::vector<double> values;
  values.reserve(course.times.size());
  for (std::size_t i = 0; i < course.times.size(); ++i) {
    values.push_back(course.state(i)[tank]);
  }
  return values;
}

} // namespace

OxygenCurves prepurge_curves(const job::Job &job, const fixture::Layout &layout,
                             const fixture::Volumes &volumes, const fixture::Areas &areas,
                             const Bounds &bounds, const MeasuredMixing &measured, units::Time duration,
                             int intervals) {
  const Subject subject{job, layout, volumes, areas};
  Stage stage = plan::prepurge_stage(bounds, measured);
  OxygenCurves curves;
  const auto follow = [&](std::vector<double> OxygenCurve::*way) {
    const plan::Scene scene = plan::build_scene(subject, stage);
    const Course course = solve(scene.network, plan::between_parts(scene), duration, intervals);
    curves.bore.*way = at_target(course, scene.bore_joint);
    curves.chamber.*way = at_target(course, scene.chamber_joint);
    curves.times = course.times;
  };
  follow(&OxygenCurve::best);
  stage.bore_tanks = stage.chamber_tanks = plan::stirred_tanks;
  follow(&OxygenCurve::stirred);
  stage.bore_tanks = plan::displaced_tanks;
  stage.chamber_tanks = plan::displaced_chamber_tanks;
  follow(&OxygenCurve::displaced);
  return curves;
}

} // namespace purgewright::gas
